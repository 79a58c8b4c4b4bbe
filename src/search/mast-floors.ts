import type { Strand } from "../model/catalog.ts";
import type { PlacedStar } from "../problem/star.ts";
import type { Problem } from "../problem/types.ts";
import { leanOf, partFeet, SLACK } from "./floors.ts";
import { leastOfAim, type Minded } from "./ground.ts";
import { type Level, together } from "./level-facts.ts";
import type { Node, Root } from "./node.ts";
import type { Recall } from "./recall.ts";
import { type RiggedLevel, riggedFloor } from "./rigged-floor.ts";
import { Shares, sharedThrust } from "./sharing-floors.ts";
import { guyFloor, type StarGuys, windwardFloor } from "./star-floors.ts";
import { type StarFloor, starFloor } from "./thrust-floors.ts";

/** A guy's unstretched length over its chord: taut, it is shorter by its strain; what weights lend is given away too. */
const TAUT = 0.985;

/** Least use of every completion, and what its anchors and base must at least hold. */
type Known = Pick<Node, "use" | "uplift" | "lateral" | "thrust">;
/** That, or the rule that says that no completion can pass. */
export type MastFloor = Known | { readonly forbidden: string };

const PRESSED = "legs or buckling under what the guys press";

/** What statics knows of the mast of a partial design, whatever it costs and stands in. docs/theory/search.md. */
export class MastFloors {
  private readonly problem: Problem;
  private readonly lean: number;
  private readonly shares: Shares | null;
  /** Of all strands, as the guys' floor counts it. */
  private readonly strongest: Strand;

  /**
   * @param recall of the worker, open on the same problem
   * @param minded what the search looks at beside the aim
   */
  constructor(problem: Problem, recall: Recall, minded: Minded) {
    this.problem = problem;
    // a base costs little beside a mast: where cents alone count, what the thrust makes it dearer by is not worth the work
    const poured = minded.concrete || minded.dug || leastOfAim(problem.study.aim) !== "cost";
    this.shares = poured ? new Shares(problem, recall.shares) : null;
    this.lean = leanOf(problem);
    const strength = ({ breakingStrength, efficiency }: Strand) => breakingStrength * efficiency;
    this.strongest = problem.strands.reduce(
      (a, b) => (strength(b) > strength(a) ? b : a),
      problem.strands[0],
    );
  }

  /** Is this utilisation beyond what the wished margin leaves, or less? A hair over is for `verify` to say. */
  beyond(use: number, allowed = this.problem.allowed): boolean {
    return use > allowed * (1 + 1e-9);
  }

  /**
   * Once the star is known: each level with the worst of any strand.
   * @param use known of the node on any star
   * @param allowed utilisation above which a completion is of no use: the wish's, or less
   */
  placed(
    { root, levels }: Node,
    star: PlacedStar,
    guys: readonly Level[],
    use: number,
    allowed: number,
  ): MastFloor {
    const guyed = together(star, root.arm, guys, []);
    const floor = windwardFloor(root.floors.moment, guyed, this.lean);
    const held = this.starFloor(allowed, root, levels, guyed, floor.uplift, 0);
    if (this.beyond(Math.max(use, held.use), allowed)) return { forbidden: PRESSED };
    const still = this.stillAir(
      root,
      star,
      guys.map((level) => level.rigged(undefined)),
    );
    const shared = this.shared(root, star, guys, (shares, level) => shares.least(star, level, undefined));
    return {
      use: Math.max(use, held.use),
      uplift: Math.max(floor.uplift, still.uplift),
      lateral: Math.max(floor.lateral, still.lateral),
      thrust: Math.max(held.thrust, still.thrust, shared),
    };
  }

  /**
   * The strands known so far sharpen the floors by the wind on the guys, their weight and strength; a level whose
   * strand is not known has the worst of any.
   */
  stranded(node: Node, allowed: number): MastFloor {
    const { root, strands, guys } = node;
    const star = node.star as PlacedStar;
    const guyed = together(star, root.arm, guys, strands);
    const floor = windwardFloor(root.floors.moment, guyed, this.lean);
    const strand = (level: number) => strands[level] ?? this.strongest;
    const use = Math.max(node.use, guyFloor(this.problem, floor, guys, strand, this.lean));
    if (this.beyond(use, allowed)) return { forbidden: "guys under the wind's moment" };
    const held = this.pressed(node, guyed, allowed);
    if (this.beyond(held.use, allowed)) return { forbidden: PRESSED };
    const still = this.stillAir(
      root,
      star,
      guys.map((level, i) => level.rigged(strands[i])),
    );
    const shared = this.shared(root, star, guys, (shares, level, i) => shares.least(star, level, strands[i]));
    return atLeast(node, {
      use: Math.max(use, held.use),
      uplift: Math.max(floor.uplift, still.uplift),
      lateral: Math.max(floor.lateral, still.lateral),
      thrust: Math.max(held.thrust, still.thrust, shared),
    });
  }

  /** Rigged, everything is statics: what still air alone asks of legs, anchors and base. */
  drawn(node: Node, tensions: readonly number[], allowed: number): MastFloor {
    const { root } = node;
    const drawn = node.guys.map((level, i) => level.drawn(node.strands[i], tensions[i]));
    if (drawn.some(({ inside }) => !inside)) return { forbidden: "initial tension outside its window" };
    const rigged = drawn.map((level) => level.rigged);
    const use = Math.max(node.use, this.riggedLegs(node, rigged));
    if (this.beyond(use, allowed)) return { forbidden: "legs when rigged" };
    const star = node.star as PlacedStar;
    const still = this.stillAir(root, star, rigged);
    const shared = this.shared(root, star, node.guys, (shares, level, i) =>
      shares.at(star, level, node.strands[i], tensions[i]),
    );
    return atLeast(node, { ...still, use, thrust: Math.max(still.thrust, shared) });
  }

  /** Thrust under wind, whatever share of its moment each level takes; 0 where it is not asked. */
  private shared(
    { stack, floors, statics }: Root,
    star: PlacedStar,
    guys: readonly Level[],
    shareOf: (shares: Shares, level: Level, i: number) => Float64Array | null,
  ): number {
    const { shares } = this;
    if (!shares) return 0;
    const each = guys.map((level, i) => shareOf(shares, level, i));
    return sharedThrust({ stack, star }, each, floors.moment, statics.light * statics.weight[0]);
  }

  /** Use of the legs at the foot of each part, under what stands above and what the guys press. */
  private riggedLegs({ root, guys }: Node, rigged: readonly RiggedLevel[]): number {
    const { required } = this.problem.rules.leg;
    let use = 0;
    for (const foot of partFeet(root.stack)) {
      let above = 0;
      for (let i = 0; i < guys.length; i++) if (guys[i].height > foot.z + 1e-9) above += rigged[i].pull;
      const weight = root.statics.weight[root.statics.z.indexOf(foot.z)];
      const { lattice } = foot.section;
      use = Math.max(
        use,
        (SLACK * (weight + above) * lattice.axialShare * required) / lattice.legCompression,
      );
    }
    return use;
  }

  /** What the guys press is asked again with their wind and weight; on torque arms what was known before stands. */
  private pressed({ root, levels, strands, use, thrust }: Node, guyed: StarGuys, allowed: number): StarFloor {
    if (guyed.arm) return { use, thrust };
    const known = strands.length === levels.length;
    // wind on four guys has less moment between them than along two
    const along = guyed.star.even && guyed.star.perLevel === 4 ? { ...guyed, moment: 0 } : guyed;
    const { uplift } = windwardFloor(root.floors.moment, along, this.lean);
    const weight = known ? (guyed.weight * root.statics.light * TAUT) / root.statics.heavy : 0;
    return this.starFloor(allowed, root, levels, guyed, uplift, weight);
  }

  private starFloor(
    allowed: number,
    root: Root,
    levels: readonly number[],
    guyed: StarGuys,
    uplift: number,
    weight: number,
  ): StarFloor {
    return starFloor(
      this.problem,
      allowed,
      root.stack,
      root.statics,
      root.floors.spans,
      levels.map((index) => root.candidates[index]),
      guyed,
      root.floors.moment,
      uplift,
      weight,
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
}

/** What was known before stands where it was more. */
const atLeast = (before: Known, now: Known): Known => ({
  use: now.use,
  uplift: Math.max(before.uplift, now.uplift),
  lateral: Math.max(before.lateral, now.lateral),
  thrust: Math.max(before.thrust, now.thrust),
});
