import { pipeBending } from "../checks/pipe.ts";
import type { LevelModel } from "../checks/rigging.ts";
import { fallsOnLine } from "../checks/site.ts";
import { utilisation } from "../parts/types.ts";
import type { ArmModel } from "../problem/torque-arm.ts";
import type { Problem } from "../problem/types.ts";
import { BARRED, Bars } from "./bars.ts";
import { Grid } from "./grid.ts";
import { ALL_MINDED, capped, type GroundChoices, greater, type Minded, NOTHING } from "./ground.ts";
import { type MastFloor, MastFloors } from "./mast-floors.ts";
import { leastOfNode, levelsOf, type Node, oneMore, type Root } from "./node.ts";
import { Pricing } from "./pricing.ts";
import { Recall } from "./recall.ts";
import { type Mount, mountsOf, rootNode, rootOf } from "./roots.ts";
import { dealt, type OwnStar, type Share, takesFree, WHOLE } from "./share.ts";
import { Tally } from "./tally.ts";

/** The rule under which designs are counted that cost, pour or dig more than the study allows. */
export const CAP = "more money, concrete or digging than is allowed";

const NOTHING_HOLDS = "no anchor or base holds";
const NO_REELS = "no reels to cut the guys from";

/**
 * The tree of partial designs: stack first, then guy heights top down, star, strands top down, tensions.
 * It knows what each step must at least cost and use, and nothing of the order in which it is walked.
 */
export class Tree {
  readonly grid: Grid;
  readonly problem: Problem;
  readonly tally = new Tally();

  readonly share: Share;
  /** Stars walked here, and their places on the grid, each times the anchors and footings of its ground. */
  readonly own: ReadonlyMap<3 | 4, { readonly stars: readonly OwnStar[]; readonly grounds: number }>;
  /** What each root is, by its index. */
  readonly mounts: readonly Mount[];
  readonly pricing: Pricing;
  private readonly mast: MastFloors;
  readonly bars: Bars;
  /** Masts solved before, here or in an earlier search of the same worker. */
  readonly recall: Recall;

  readonly minded: Minded;
  /** Prices, volumes and digging that every completion is held to: is any stated? */
  private readonly hasCaps: boolean;

  /** @param minded what the floors must know beside the aim */
  constructor(
    problem: Problem,
    share: Share = WHOLE,
    recall: Recall = new Recall(),
    minded: Minded = ALL_MINDED,
  ) {
    this.problem = problem;
    this.minded = minded;
    const { cents, concrete, dug } = capped(problem);
    this.hasCaps = cents || concrete || dug;
    this.share = share;
    this.grid = new Grid(problem);
    this.own = new Map(
      problem.study.parts.guysPerLevel.map((perLevel) => {
        const stars = dealt(problem, perLevel, share);
        const all = stars.reduce(
          (sum, { star, topStrands }) =>
            sum + star.places * this.grid.perPlaceAt(star.hold) * topStrands.length,
          0,
        );
        return [perLevel, { stars, grounds: all / problem.strands.length }];
      }),
    );
    this.recall = recall;
    recall.open(problem);
    this.pricing = new Pricing(
      problem,
      new Map([...this.own].map(([perLevel, { stars }]) => [perLevel, stars])),
      minded,
    );
    this.mounts = mountsOf(problem);
    this.bars = new Bars(problem);
    this.mast = new MastFloors(problem, recall, minded);
  }

  get pruned(): Readonly<Record<string, number>> {
    return this.tally.pruned;
  }

  /** Anchors and footings, best first. */
  get ground(): GroundChoices {
    return this.pricing.ground;
  }

  /** Counts designs that a rule removed. @param node what fell, where another price or ground may bring it back */
  prune(rule: string, designs: number, node?: Node): void {
    this.tally.prune(rule, designs, node);
  }

  /** Must every completion cost, pour or dig more than the study allows? Rounding of each part is given away. */
  beyondCap(node: Node): boolean {
    if (!this.hasCaps) return false;
    const { cents, concrete, dug } = leastOfNode(node);
    const { concreteCap, digCap, budget } = this.problem.study.wishes;
    return (
      (concreteCap !== undefined && concrete - 5 > concreteCap * 1e4) ||
      (digCap !== undefined && dug - 5 > digCap * 1e4) ||
      (budget !== undefined && cents > 100 * budget + 1e-6)
    );
  }

  *roots(): Generator<Node> {
    const { problem } = this;
    const most = problem.study.wishes.heightLimit ?? Number.POSITIVE_INFINITY;
    for (const [index, mount] of this.mounts.entries()) {
      const { pack, stack, arm } = mount;
      const pipe = utilisation(pipeBending(problem, pack, stack.height));
      const designs = this.designsOf(index, stack.height, arm);
      if (stack.height > most + 1e-9) this.prune("height limit", designs);
      else if (fallsOnLine(problem, stack.height, pack.exposed)) this.prune("fall zone", designs);
      else if (this.mast.beyond(pipe)) this.prune("antenna pipe", designs);
      else {
        const root = rootOf(problem, mount, index, this.grid.candidates(stack.height));
        const node = rootNode(root, pipe, designs);
        if (this.bars.mast(node)) this.prune(BARRED, designs);
        else yield node;
      }
    }
  }

  /** Designs of a root that are walked here. */
  private designsOf(root: number, height: number, arm: ArmModel | null): number {
    const { supports, guysPerLevel } = this.problem.study.parts;
    let designs = this.standsFree({ index: root, arm }) ? this.grid.perFree : 0;
    if (supports.includes("guyed"))
      for (const perLevel of guysPerLevel)
        designs += this.grid.completions(0, this.grid.candidates(height).length) * this.grounds(perLevel);
    return designs;
  }

  /** Is the free-standing mast of this root walked here? One with arms is that of the root without. */
  private standsFree({ index, arm }: Pick<Root, "index" | "arm">): boolean {
    const { supports } = this.problem.study.parts;
    return arm === null && supports.includes("freestanding") && takesFree(index, this.share);
  }

  private grounds(perLevel: 0 | 3 | 4): number {
    return perLevel === 0 ? 0 : (this.own.get(perLevel)?.grounds ?? 0);
  }

  /**
   * The next choice, every way that is walked here. What a rule removes is counted and not returned.
   * @param allowed utilisation above which a completion is of no use: the wish's, or less
   */
  children(node: Node, allowed = this.problem.allowed): Node[] {
    switch (node.stage) {
      case "root":
        return this.supports(node, allowed);
      case "levels":
        return [...this.closed(node, allowed), ...this.lower(node, allowed)];
      case "star":
      case "strands":
        return node.strands.length < node.levels.length
          ? this.nextStrand(node, allowed)
          : this.tensions(node, allowed);
      default:
        throw new Error(`a node at stage "${node.stage}" has no children; it is analysed`);
    }
  }

  private supports(node: Node, allowed: number): Node[] {
    const { root } = node;
    const { supports, guysPerLevel } = this.problem.study.parts;
    const found: Node[] = [];
    if (this.standsFree(root)) {
      const free = this.freeStanding(node, allowed);
      if (free) found.push(free);
    }
    if (supports.includes("guyed"))
      for (const perLevel of guysPerLevel)
        for (const [index, at] of root.candidates.entries()) {
          const designs = this.grid.completions(1, index) * this.grounds(perLevel);
          if (designs === 0) continue;
          const use = Math.max(node.use, root.floors.cantilever[at]);
          if (this.mast.beyond(use, allowed)) {
            this.prune("cantilever above the top guys", designs);
            continue;
          }
          const child = this.priced(
            { ...node, stage: "levels", perLevel, levels: [index], use, designs },
            "no anchor holds inside the lot",
          );
          if (child) found.push(child);
        }
    return found;
  }

  private freeStanding(node: Node, allowed: number): Node | null {
    const designs = this.grid.perFree;
    const use = Math.max(node.use, node.root.floors.cantilever[0]);
    if (this.mast.beyond(use, allowed)) {
      this.prune("free-standing legs at the base", designs);
      return null;
    }
    return this.priced({ ...node, stage: "structure", use, designs }, "no footing holds it free-standing");
  }

  /** A node with the least that it costs and what holds it in the ground; null where nothing does. */
  private priced(node: Node, rule = NOTHING_HOLDS): Node | null {
    const worth = this.worth(node, rule);
    return worth && { ...node, spent: worth.spent, ground: greater(node.ground, worth.ground) };
  }

  /** The least that a node costs and what holds it; null, counted and kept, where nothing does. */
  worth(node: Node, rule = NOTHING_HOLDS): Pick<Node, "spent" | "ground"> | null {
    const spent = this.pricing.spent(node);
    const ground = spent === Number.POSITIVE_INFINITY ? null : this.pricing.held(node);
    if (ground) return { spent, ground };
    this.prune(spent === Number.POSITIVE_INFINITY ? NO_REELS : rule, node.designs, node);
    return null;
  }

  /** A level under the lowest. */
  private lower(node: Node, allowed: number): Node[] {
    const { root, levels } = node;
    const most = Math.max(...this.problem.study.parts.levelCounts);
    if (levels.length >= most || node.perLevel === 0) return [];
    const lowest = levels[levels.length - 1];
    const found: Node[] = [];
    for (let index = 0; index < lowest; index++) {
      const designs = this.grid.completions(levels.length + 1, index) * this.grounds(node.perLevel);
      if (designs === 0) continue;
      const use = Math.max(node.use, root.floors.spans.free(root.candidates[index], root.candidates[lowest]));
      if (this.mast.beyond(use, allowed)) {
        this.prune("legs between two guy levels", designs);
        continue;
      }
      const child: Node = { ...node, levels: oneMore(levels, index), use, designs };
      found.push({ ...child, spent: this.pricing.spent(child) });
    }
    return found;
  }

  /** No further level: a child for every radius whose star fits the lot. */
  private closed(node: Node, allowed: number): Node[] {
    const { root, levels, perLevel } = node;
    const { study, strands } = this.problem;
    if (!study.parts.levelCounts.includes(levels.length) || perLevel === 0) return [];
    const count = levels.length;
    const each = strands.length ** count * this.grid.tensions(count);
    const lowest = root.candidates[levels[levels.length - 1]];
    const base = Math.max(node.use, root.floors.spans.fromBase(lowest));
    if (this.mast.beyond(base, allowed)) {
      this.prune("legs over the base", each * this.grounds(perLevel));
      return [];
    }
    const heights = levels.map((index) => root.statics.z[root.candidates[index]]);
    const found: Node[] = [];
    for (const { star, topStrands } of this.own.get(perLevel)?.stars ?? []) {
      const designs =
        (each * star.places * this.grid.perPlaceAt(star.hold) * topStrands.length) / strands.length;
      if (star.rotation === null) {
        this.prune("no place on the lot for its anchors", designs);
        continue;
      }
      if (star.anchors.some((anchor) => anchor.elevation >= heights[count - 1])) {
        this.prune("an anchor above its guys", designs);
        continue;
      }
      const guys = this.pricing.levels(node, star);
      // the ground of any star knew less than that of this one
      const child: Node = { ...node, stage: "star", star, guys, topStrands, ground: NOTHING, designs };
      const known = this.mast.placed(node, star, guys, base, allowed);
      this.keep(found, child, known);
    }
    return found;
  }

  private nextStrand(node: Node, allowed: number): Node[] {
    const { problem } = this;
    const place = node.strands.length;
    const strands = place === 0 ? node.topStrands : problem.strands;
    const designs = node.designs / strands.length;
    const found: Node[] = [];
    for (const strand of strands) {
      const child: Node = { ...node, stage: "strands", strands: oneMore(node.strands, strand), designs };
      if (this.bars.mast(child)) {
        this.prune(BARRED, designs);
        continue;
      }
      this.keep(found, child, this.mast.stranded(child, allowed));
    }
    return found;
  }

  private tensions(node: Node, allowed: number): Node[] {
    const { grid } = this;
    const count = node.levels.length;
    const designs = node.designs / grid.tensions(count);
    const found: Node[] = [];
    for (const tensions of grid.drawn(count))
      this.keep(
        found,
        { ...node, stage: "structure", tensions, designs },
        this.mast.drawn(node, tensions, allowed),
      );
    return found;
  }

  /** Adds a child with what is known of its mast, where nothing forbids it and something holds it. */
  private keep(found: Node[], child: Node, known: MastFloor): void {
    if ("forbidden" in known) {
      this.prune(known.forbidden, child.designs);
      return;
    }
    const priced = this.priced({ ...child, ...known });
    if (priced) found.push(priced);
  }
}

/** Guys of a complete node, bottom up. */
export const guysOf = (node: Node, problem: Problem): LevelModel[] =>
  levelsOf(node, (i) => node.strands[i])
    .map((level, i) => ({
      ...level,
      tension: node.tensions[i],
      hardware: problem.study.parts.guyHardware,
    }))
    .reverse();
