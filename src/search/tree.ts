import { pipeBending } from "../checks/pipe.ts";
import type { LevelModel } from "../checks/rigging.ts";
import { fixedCents } from "../cost/bill.ts";
import type { Strand } from "../model/catalog.ts";
import { utilisation } from "../parts/types.ts";
import type { PlacedStar } from "../problem/star.ts";
import type { ArmModel } from "../problem/torque-arm.ts";
import { type PackageModel, type Problem, type StackModel, sideHeight } from "../problem/types.ts";
import { BARRED, Bars } from "./bars.ts";
import { leanOf, partFeet, SLACK } from "./floors.ts";
import { Grid } from "./grid.ts";
import { ALL_MINDED, capped, type GroundChoices, greater, type Minded, NOTHING } from "./ground.ts";
import { together } from "./level-facts.ts";
import { leastOfNode, levelsOf, type Node, type Root } from "./node.ts";
import { Pricing } from "./pricing.ts";
import { Recall } from "./recall.ts";
import { type RiggedLevel, riggedFloor } from "./rigged-floor.ts";
import { rootFloors } from "./root-floors.ts";
import { dealt, type OwnStar, type Share, takesFree, WHOLE } from "./share.ts";
import { guyFloor, type StarGuys, windwardFloor } from "./star-floors.ts";
import { statics } from "./statics.ts";
import { Tally } from "./tally.ts";
import { type StarFloor, starFloor } from "./thrust-floors.ts";

/** The rule under which safe designs are counted that are neither cheaper than the answer nor better at its price. */
export const SAFE = "safe, but no better than the answer";

/** A guy's unstretched length over its chord: taut, it is shorter by its strain; what weights lend is given away too. */
const TAUT = 0.985;

/** The rule under which designs are counted that cost, pour or dig more than the study allows. */
export const CAP = "more money, concrete or digging than is allowed";

const NOTHING_HOLDS = "no anchor or base holds";
const NO_REELS = "no reels to cut the guys from";

/** What stands on a root's base, and where its top guys meet it. */
interface Mount {
  readonly pack: PackageModel;
  readonly stack: StackModel;
  readonly arm: ArmModel | null;
}

const mountsOf = ({ packages, stacks, arms }: Problem): Mount[] =>
  packages.flatMap((pack) =>
    stacks.flat().flatMap((stack) => [null, ...arms].map((arm) => ({ pack, stack, arm }))),
  );

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
  /** What each root is: package by package, height by height, stack by stack, arm by arm. */
  readonly mounts: readonly Mount[];
  readonly pricing: Pricing;
  private readonly lean: number;
  readonly bars: Bars;
  /** Of all strands, as the guys' floor counts it. */
  private readonly strongest: Strand;

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
    const strength = ({ breakingStrength, efficiency }: Strand) => breakingStrength * efficiency;
    this.strongest = problem.strands.reduce(
      (a, b) => (strength(b) > strength(a) ? b : a),
      problem.strands[0],
    );
    this.lean = leanOf(problem);
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

  /** Is this utilisation beyond what the wished margin leaves? A hair over is for `verify` to say. */
  private beyond(use: number): boolean {
    return use > this.problem.allowed * (1 + 1e-9);
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
    for (const [index, { pack, stack, arm }] of this.mounts.entries()) {
      const pipe = utilisation(pipeBending(problem, pack, stack.height));
      const designs = this.designsOf(index, stack.height, arm);
      if (stack.height > most + 1e-9) this.prune("height limit", designs);
      else if (this.beyond(pipe)) this.prune("antenna pipe", designs);
      else {
        const root = this.rootNode(index, pipe, designs);
        if (this.bars.mast(root)) this.prune(BARRED, designs);
        else yield root;
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

  private rootNode(index: number, use: number, designs: number): Node {
    const { problem } = this;
    const { pack, stack, arm } = this.mounts[index];
    const guys = this.grid.candidates(stack.height);
    const sides = pack.sides.map((side) => sideHeight(side, stack.height));
    const known = [0, ...guys, ...partFeet(stack).map((foot) => foot.z)];
    const apart = sides.filter((z) => !known.some((height) => Math.abs(height - z) < 1e-6));
    const heights = [...new Set([...known, ...apart])].sort((a, b) => a - b);
    const s = statics(problem, pack, stack, heights);
    const root: Root = {
      index,
      pack,
      stack,
      arm,
      cents: this.rootCents(index),
      candidates: guys.map((z) => heights.indexOf(z)),
      statics: s,
      floors: rootFloors(problem, stack, s, arm !== null),
    };
    return {
      stage: "root",
      root,
      spent: root.cents,
      ground: NOTHING,
      use,
      designs,
      perLevel: 0,
      levels: [],
      star: null,
      guys: [],
      topStrands: [],
      uplift: 0,
      lateral: 0,
      thrust: 0,
      strands: [],
      tensions: [],
    };
  }

  /** Antennas, steel, raising, permit: whole cents. */
  rootCents(index: number): number {
    const { pack, stack } = this.mounts[index];
    return fixedCents(this.problem, pack, stack.height) + stack.cents;
  }

  /** The next choice, every way that is walked here. What a rule removes is counted and not returned. */
  children(node: Node): Node[] {
    switch (node.stage) {
      case "root":
        return this.supports(node);
      case "levels":
        return [...this.closed(node), ...this.lower(node)];
      case "star":
      case "strands":
        return node.strands.length < node.levels.length ? this.nextStrand(node) : this.tensions(node);
      default:
        throw new Error(`a node at stage "${node.stage}" has no children; it is analysed`);
    }
  }

  private supports(node: Node): Node[] {
    const { root } = node;
    const { supports, guysPerLevel } = this.problem.study.parts;
    const found: Node[] = [];
    if (this.standsFree(root)) {
      const free = this.freeStanding(node);
      if (free) found.push(free);
    }
    if (supports.includes("guyed"))
      for (const perLevel of guysPerLevel)
        for (const [index, at] of root.candidates.entries()) {
          const designs = this.grid.completions(1, index) * this.grounds(perLevel);
          if (designs === 0) continue;
          const use = Math.max(node.use, root.floors.cantilever[at]);
          if (this.beyond(use)) {
            this.prune("cantilever above the top guys", designs);
            continue;
          }
          const child = this.settled(
            { ...node, stage: "levels", perLevel, levels: [index], use, designs },
            "no anchor holds inside the lot",
          );
          if (child) found.push(child);
        }
    return found;
  }

  private freeStanding(node: Node): Node | null {
    const designs = this.grid.perFree;
    const use = Math.max(node.use, node.root.floors.cantilever[0]);
    if (this.beyond(use)) {
      this.prune("free-standing legs at the base", designs);
      return null;
    }
    return this.settled({ ...node, stage: "structure", use, designs }, "no footing holds it free-standing");
  }

  /** A node of which the mast alone is known, with the least that it costs and what holds it; null where nothing does. */
  priced(mast: Node): Node | null {
    const spent = this.pricing.spent(mast);
    const ground = this.pricing.held(mast);
    if (ground && spent < Number.POSITIVE_INFINITY) return { ...mast, spent, ground };
    this.prune(ground ? NO_REELS : NOTHING_HOLDS, mast.designs, mast);
    return null;
  }

  /** The node with the least ground that holds it; null, counted and kept, where none does. */
  settled(node: Node, rule: string): Node | null {
    const ground = this.pricing.held(node);
    if (ground) return { ...node, ground: greater(node.ground, ground) };
    this.prune(rule, node.designs, node);
    return null;
  }

  /** A level under the lowest. */
  private lower(node: Node): Node[] {
    const { root, levels } = node;
    const most = Math.max(...this.problem.study.parts.levelCounts);
    if (levels.length >= most || node.perLevel === 0) return [];
    const lowest = levels[levels.length - 1];
    const found: Node[] = [];
    for (let index = 0; index < lowest; index++) {
      const designs = this.grid.completions(levels.length + 1, index) * this.grounds(node.perLevel);
      if (designs === 0) continue;
      const use = Math.max(node.use, root.floors.spans.free(root.candidates[index], root.candidates[lowest]));
      if (this.beyond(use)) {
        this.prune("legs between two guy levels", designs);
        continue;
      }
      const child: Node = { ...node, levels: [...levels, index], use, designs };
      found.push({ ...child, spent: this.pricing.spent(child) });
    }
    return found;
  }

  /** No further level: a child for every radius whose star fits the lot. */
  private closed(node: Node): Node[] {
    const { root, levels, perLevel } = node;
    const { study, strands } = this.problem;
    if (!study.parts.levelCounts.includes(levels.length) || perLevel === 0) return [];
    const count = levels.length;
    const each = strands.length ** count * this.grid.tensions(count);
    const lowest = root.candidates[levels[levels.length - 1]];
    const base = Math.max(node.use, root.floors.spans.fromBase(lowest));
    if (this.beyond(base)) {
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
      const guyed = together(star, root.arm, guys, []);
      const floor = windwardFloor(root.floors.moment, guyed, this.lean);
      const held = starFloor(
        this.problem,
        root.stack,
        root.statics,
        root.floors.spans,
        levels.map((index) => root.candidates[index]),
        guyed,
        root.floors.moment,
        floor.uplift,
        0,
      );
      const use = Math.max(base, held.use);
      if (this.beyond(use)) {
        this.prune("legs or buckling under what the guys press", designs);
        continue;
      }
      const still = this.stillAir(
        root,
        star,
        guys.map((level) => level.rigged(undefined)),
      );
      const child: Node = {
        ...node,
        stage: "star",
        star,
        guys,
        topStrands,
        uplift: Math.max(floor.uplift, still.uplift),
        lateral: Math.max(floor.lateral, still.lateral),
        thrust: Math.max(held.thrust, still.thrust),
        // that of the top guys of any star knew less
        ground: NOTHING,
        use,
        designs,
      };
      const settled = this.settled({ ...child, spent: this.pricing.spent(child) }, NOTHING_HOLDS);
      if (settled) found.push(settled);
    }
    return found;
  }

  private nextStrand(node: Node): Node[] {
    const { problem } = this;
    const place = node.strands.length;
    const strands = place === 0 ? node.topStrands : problem.strands;
    const designs = node.designs / strands.length;
    const found: Node[] = [];
    for (const strand of strands) {
      const child: Node = { ...node, stage: "strands", strands: [...node.strands, strand], designs };
      if (this.bars.mast(child)) {
        this.prune(BARRED, designs);
        continue;
      }
      const spent = this.pricing.spent(child);
      if (spent === Number.POSITIVE_INFINITY) {
        this.prune(NO_REELS, designs, child);
        continue;
      }
      const floored = this.guyed({ ...child, spent });
      if (floored) found.push(floored);
    }
    return found;
  }

  /**
   * The strands known so far sharpen the floors by the wind on the guys, their weight and strength; a level whose
   * strand is not known has the worst of any.
   */
  private guyed(node: Node): Node | null {
    const { root, strands } = node;
    const star = node.star as PlacedStar;
    const { problem } = this;
    const guyed = together(star, root.arm, node.guys, strands);
    const floor = windwardFloor(root.floors.moment, guyed, this.lean);
    const held = this.pressed(node, guyed);
    const use = Math.max(
      node.use,
      guyFloor(problem, floor, node.guys, (level) => strands[level] ?? this.strongest, this.lean),
    );
    if (this.beyond(use)) {
      this.prune("guys under the wind's moment", node.designs);
      return null;
    }
    if (this.beyond(held.use)) {
      this.prune("legs or buckling under what the guys press", node.designs);
      return null;
    }
    const still = this.stillAir(
      root,
      star,
      node.guys.map((level, i) => level.rigged(strands[i])),
    );
    return this.grounded(
      { ...node, use: Math.max(use, held.use) },
      Math.max(floor.uplift, still.uplift),
      Math.max(floor.lateral, still.lateral),
      Math.max(held.thrust, still.thrust),
    );
  }

  /** What the guys press is asked again with their wind and weight; on torque arms what was known before stands. */
  private pressed({ root, levels, strands, use, thrust }: Node, guyed: StarGuys): StarFloor {
    if (guyed.arm) return { use, thrust };
    const known = strands.length === levels.length;
    // wind on four guys has less moment between them than along two
    const along = guyed.star.even && guyed.star.perLevel === 4 ? { ...guyed, moment: 0 } : guyed;
    return starFloor(
      this.problem,
      root.stack,
      root.statics,
      root.floors.spans,
      levels.map((index) => root.candidates[index]),
      guyed,
      root.floors.moment,
      windwardFloor(root.floors.moment, along, this.lean).uplift,
      known ? (guyed.weight * root.statics.light * TAUT) / root.statics.heavy : 0,
    );
  }

  /** The node with ground that holds at least this; null where there is none. */
  private grounded(node: Node, uplift: number, lateral: number, pressed: number): Node | null {
    return this.settled(
      {
        ...node,
        uplift: Math.max(uplift, node.uplift),
        lateral: Math.max(lateral, node.lateral),
        thrust: Math.max(pressed, node.thrust),
      },
      NOTHING_HOLDS,
    );
  }

  /** What still air asks of anchors and base. */
  private stillAir({ pack, statics: s }: Root, star: PlacedStar, levels: readonly RiggedLevel[]) {
    const { uplift, lateral, pull } = riggedFloor(levels);
    // antennas off the axis lean the mast in still air: on even anchors the one pulled more is above this, on uneven
    // it need not be the one that is pulled most
    const leans = [...pack.antennas, ...pack.sides].some((antenna) => antenna.offset > 0);
    const known = star.even || !leans ? SLACK : 0;
    return { uplift: uplift * known, lateral: lateral * known, thrust: (s.weight[0] + pull) * SLACK };
  }

  /** Rigged, everything is statics: what still air alone asks of legs, anchors and base. */
  private tensions(node: Node): Node[] {
    const { root, levels } = node;
    const star = node.star as PlacedStar;
    const { problem, grid } = this;
    const designs = node.designs / grid.tensions(levels.length);
    const found: Node[] = [];
    const feet = partFeet(root.stack);
    for (const tensions of grid.drawn(levels.length)) {
      const drawn = node.guys.map((level, i) => level.drawn(node.strands[i], tensions[i]));
      if (drawn.some(({ inside }) => !inside)) {
        this.prune("initial tension outside its window", designs);
        continue;
      }
      const rigged = drawn.map((level) => level.rigged);
      let { use } = node;
      for (const foot of feet) {
        let above = 0;
        node.guys.forEach(({ height }, i) => {
          if (height > foot.z + 1e-9) above += rigged[i].pull;
        });
        const weight = root.statics.weight[root.statics.z.indexOf(foot.z)];
        const { lattice } = foot.section;
        use = Math.max(
          use,
          (SLACK * (weight + above) * lattice.axialShare * problem.rules.leg.required) /
            lattice.legCompression,
        );
      }
      if (this.beyond(use)) {
        this.prune("legs when rigged", designs);
        continue;
      }
      const still = this.stillAir(root, star, rigged);
      const child = this.grounded(
        { ...node, stage: "structure", tensions, use, designs },
        still.uplift,
        still.lateral,
        still.thrust,
      );
      if (child) found.push(child);
    }
    return found;
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
