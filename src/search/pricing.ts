import { reelCents, reelShare } from "../cost/reels.ts";
import type { Strand } from "../model/catalog.ts";
import type { PlacedStar } from "../problem/star.ts";
import type { ArmModel } from "../problem/torque-arm.ts";
import type { Problem } from "../problem/types.ts";
import { leanOf, SLACK } from "./floors.ts";
import {
  type Aimed,
  type GroundChoices,
  groundChoices,
  type Minded,
  NOTHING,
  starAmounts,
} from "./ground.ts";
import { GroundFloors } from "./ground-floors.ts";
import { type Level, Levels } from "./level-facts.ts";
import { levelsOf, type Node, type Root } from "./node.ts";
import type { OwnStar } from "./share.ts";
import { liftOf, type StarGuys, windwardFloor } from "./star-floors.ts";

/**
 * What a partial design must at least cost and what can hold it in the ground: all that prices and soil say of a
 * node, worked out from what is known of its mast.
 */
export class Pricing {
  readonly ground: GroundChoices;
  readonly floors: GroundFloors;
  private readonly problem: Problem;
  private readonly stars: ReadonlyMap<3 | 4, readonly OwnStar[]>;
  private readonly lean: number;
  /** Levels whose guys meet the axis, and those on each arm. */
  private readonly guys: Levels;
  private readonly onArms: ReadonlyMap<ArmModel, Levels>;
  /** Of any star, over the base, m. */
  private readonly highestAnchor: number;
  /** Ground of the nodes whose star is not known, by root, guys per level and top level. */
  private readonly unplaced = new WeakMap<Root, Map<number, Aimed | null>>();

  /**
   * @param stars those that are walked
   * @param minded what the floors must know beside the aim
   */
  constructor(problem: Problem, stars: ReadonlyMap<3 | 4, readonly OwnStar[]>, minded: Minded) {
    this.problem = problem;
    this.stars = stars;
    this.lean = leanOf(problem);
    this.ground = groundChoices(problem);
    this.floors = new GroundFloors(problem, this.ground, minded);
    this.guys = new Levels(problem);
    this.onArms = new Map(problem.arms.map((arm) => [arm, new Levels(problem, arm)]));
    this.highestAnchor = Math.max(
      0,
      ...[...problem.stars.values()].flat().flatMap((star) => star.anchors.map((a) => a.elevation)),
    );
  }

  /** What is known of the levels of a node on a star, top down: only at the top may an arm be. */
  levels({ root, levels }: Pick<Node, "root" | "levels">, star: PlacedStar): Level[] {
    return levels.map((index, i) =>
      (i === 0 ? this.topGuys(root) : this.guys).at(star, root.statics.z[root.candidates[index]]),
    );
  }

  private topGuys({ arm }: Root): Levels {
    return (arm && this.onArms.get(arm)) ?? this.guys;
  }

  /** Least cents of all but the ground; Infinity where no reels yield the guys. */
  spent({ root, perLevel, levels, star, guys, strands }: Node): number {
    const { cents } = root;
    if (!star || perLevel === 0) {
      let sum = cents;
      // the top guys are counted with the ground that they hang on
      for (let i = 1; i < levels.length && perLevel !== 0; i++)
        sum += this.guys.shortestCents(
          root.statics.z[root.candidates[levels[i]]],
          perLevel,
          this.highestAnchor,
        );
      return sum;
    }
    let sum = cents;
    for (let i = 0; i < guys.length; i++)
      sum += i < strands.length ? guys[i].of(strands[i]).cents : guys[i].ofAny.cents;
    return sum + this.beyondReels(root, star, levels, strands);
  }

  /** Cents of whole reels beyond the floors of the levels, once all strands are known. */
  private beyondReels(
    root: Root,
    star: PlacedStar,
    levels: readonly number[],
    strands: readonly Strand[],
  ): number {
    const { problem } = this;
    if (strands.length < levels.length || !problem.study.parts.wholeReels) return 0;
    const guys = levelsOf({ root, levels }, (i) => strands[i]);
    return reelCents(problem, star, guys) - guys.reduce((sum, guy) => sum + reelShare(problem, star, guy), 0);
  }

  /** The least that holds a node in the ground, with the top guys as long as its star is not known; null: nothing does. */
  held(node: Node): Aimed | null {
    if (node.stage === "root") return NOTHING;
    if (node.perLevel === 0) return this.free(node.root);
    return node.star ? this.floors.of(node) : this.heldAnywhere(node.root, node.perLevel, node.levels[0]);
  }

  private heldAnywhere(root: Root, perLevel: 3 | 4, top: number): Aimed | null {
    let known = this.unplaced.get(root);
    if (!known) this.unplaced.set(root, (known = new Map()));
    const key = 10 * top + perLevel;
    let least = known.get(key);
    if (least === undefined) known.set(key, (least = this.leastStar(root, perLevel, top)));
    return least;
  }

  private free({ stack, statics: s, floors }: Root): Aimed | null {
    return this.floors.free(stack, {
      compression: s.weight[0] * this.problem.rules.deadFactors.values[0],
      shear: s.shear[0] * SLACK,
      moment: floors.moment,
    });
  }

  /** Cheapest ground and top guys over every radius, for a top level. */
  private leastStar(root: Root, perLevel: 3 | 4, index: number): Aimed | null {
    let cents = Number.POSITIVE_INFINITY;
    let concrete = Number.POSITIVE_INFINITY;
    let dug = Number.POSITIVE_INFINITY;
    let aimed = Number.POSITIVE_INFINITY;
    const mostLevels = Math.max(...this.problem.study.parts.levelCounts);
    const height = root.statics.z[root.candidates[index]];
    for (const { star } of this.stars.get(perLevel) ?? []) {
      if (star.rotation === null) continue;
      // no guy comes down to its anchor from below
      const rising = root.candidates.filter((at) =>
        star.anchors.every((a) => root.statics.z[at] > a.elevation),
      );
      if (!rising.includes(root.candidates[index])) continue;
      const most = this.topGuys(root).at(star, height).ofAny;
      // every level that may still come hangs on the same anchors, none higher than this one; on a hill the wind
      // may blow harder on a lower guy than on this one
      let lost = most.moment;
      let blown = most.wind;
      if (!star.even || root.arm)
        for (const at of rising.filter((candidate) => candidate < root.candidates[index])) {
          const lower = this.guys.at(star, root.statics.z[at]).ofAny;
          lost = Math.min(lost, lower.moment);
          blown = Math.max(blown, lower.wind);
        }
      const guys: StarGuys = {
        star,
        arm: root.arm,
        top: height,
        lowest: root.statics.z[rising[0]],
        weight: mostLevels * most.weight,
        wind: most.wind + (mostLevels - 1) * blown,
        pull: mostLevels * most.pull,
        moment: most.moment + (mostLevels - 1) * lost,
      };
      const floor = windwardFloor(root.floors.moment, guys, this.lean);
      const anchor = this.floors.anchor(star.hold, floor.uplift, floor.lateral);
      const footing = this.floors.footing(
        root.stack,
        root.statics.light * root.statics.weight[0] + Math.max(floor.uplift - liftOf(guys), 0),
      );
      if (!anchor || !footing) continue;
      const ground = starAmounts(perLevel, anchor, footing);
      cents = Math.min(cents, ground.cents + most.cents);
      concrete = Math.min(concrete, ground.concrete);
      dug = Math.min(dug, ground.dug);
      aimed = Math.min(aimed, ground.aimed + most.cents);
    }
    return cents === Number.POSITIVE_INFINITY ? null : { cents, concrete, dug, aimed };
  }
}
