import { guyWind } from "../checks/loads.ts";
import { guyWeight } from "../checks/rigging.ts";
import { levelFloor } from "../cost/bill.ts";
import type { Strand } from "../model/catalog.ts";
import type { Star } from "../problem/star.ts";
import { type ArmModel, guysAtAnchor } from "../problem/torque-arm.ts";
import type { Problem } from "../problem/types.ts";
import { leanOf } from "./floors.ts";
import { leastRigged, type RiggedLevel, riggedLevel } from "./rigged-floor.ts";
import { guyWindLoss, guyWindMoment, pairWindMoment, type StarGuys } from "./star-floors.ts";

/** Chords are a little shorter than the guys that sag along them: weights that a floor takes off allow for it. */
const SAGGING = 1.001;

/** What the guys of one anchor at one level bring to the star's floor. */
export type LevelFacts = Pick<StarGuys, "weight" | "wind" | "pull" | "moment">;

/** Guys of several levels, as the star's floor reads them: all of one anchor hang on it together. */
export function together(
  star: Star,
  heights: readonly number[],
  levels: readonly LevelFacts[],
  arm: ArmModel | null,
): StarGuys {
  const sum = {
    star,
    arm,
    top: heights[0],
    lowest: heights[heights.length - 1],
    weight: 0,
    wind: 0,
    pull: 0,
    moment: 0,
  };
  for (const { weight, wind, pull, moment } of levels) {
    sum.weight += weight;
    sum.wind += wind;
    sum.pull += pull;
    sum.moment += moment;
  }
  return sum;
}

/** Levels of guys before and after their strand is known, worked out once for each star and height. */
export class Levels {
  private readonly problem: Problem;
  private readonly arm: ArmModel | null;
  private readonly known = new Map<Star, Map<number, LevelFacts & { readonly cents: number }>>();
  private readonly still = new Map<Star, Map<string, RiggedLevel>>();
  private readonly upright = new Map<string, Star>();

  /** @param arm at these levels; null where their guys meet the axis */
  constructor(problem: Problem, arm: ArmModel | null = null) {
    this.problem = problem;
    this.arm = arm;
  }

  /** Of any strand: the heaviest, the thickest, the strongest; the least that its wind lends; the least cents. */
  ofAny(star: Star, height: number): LevelFacts & { readonly cents: number } {
    let heights = this.known.get(star);
    if (!heights) {
      heights = new Map();
      this.known.set(star, heights);
    }
    let facts = heights.get(height);
    if (!facts) {
      facts = this.worked(star, height);
      heights.set(height, facts);
    }
    return facts;
  }

  private worked(star: Star, height: number): LevelFacts & { readonly cents: number } {
    const { strands, rules, study } = this.problem;
    const { arm } = this;
    const count = guysAtAnchor(arm);
    const chord = longest(star, height);
    let weight = 0;
    let wind = 0;
    let pull = 0;
    let cents = Number.POSITIVE_INFINITY;
    for (const strand of strands) {
      weight = Math.max(weight, guyWeight(strand, chord, study.parts.guyHardware));
      wind = Math.max(wind, guyWind(this.problem, star, height, strand));
      pull = Math.max(pull, this.mostPull(strand));
      cents = Math.min(cents, levelFloor(this.problem, height, star, strand, arm));
    }
    return {
      weight: count * weight * SAGGING * Math.max(1, rules.deadFactors.values[0]),
      wind: count * wind * chord,
      pull: count * pull,
      moment: arm
        ? Math.min(0, pairWindMoment(wind, height, star, arm)) - this.drifted(height)
        : guyWindLoss(wind, height, star),
      cents,
    };
  }

  of(star: Star, height: number, strand: Strand): LevelFacts {
    const { rules, study } = this.problem;
    const { arm } = this;
    const count = guysAtAnchor(arm);
    const chord = longest(star, height);
    const wind = guyWind(this.problem, star, height, strand);
    return {
      weight:
        count *
        guyWeight(strand, chord, study.parts.guyHardware) *
        SAGGING *
        Math.max(1, rules.deadFactors.values[0]),
      wind: count * wind * chord,
      pull: count * this.mostPull(strand),
      moment: arm
        ? pairWindMoment(wind, height, star, arm) - this.drifted(height)
        : guyWindMoment(wind, height, star),
    };
  }

  /** As rigged at the least tension that the rule set lets the study have, with this strand or the best of any. */
  rigged(star: Star, height: number, strand: Strand | undefined): RiggedLevel {
    let known = this.still.get(star);
    if (!known) this.still.set(star, (known = new Map()));
    const key = `${height} ${strand?.id ?? ""}`;
    let level = known.get(key);
    if (!level) {
      const { problem, arm } = this;
      const { tensions, guyHardware: hardware } = problem.study.parts;
      const usable = tensions.filter((tension) => tension >= problem.rules.tension.least - 1e-12);
      const tension = usable.length > 0 ? Math.min(...usable) : 0;
      level = strand
        ? riggedLevel(star, { height, strand, tension, arm, hardware })
        : leastRigged(problem.strands.map((each) => this.rigged(star, height, each)));
      known.set(key, level);
    }
    return level;
  }

  /** Least cents of a level whose star is not known yet: guys straight down to the highest anchor of any. */
  shortestCents(height: number, perLevel: 3 | 4, highestAnchor: number): number {
    const elevation = Math.min(highestAnchor, height);
    const key = `${perLevel} ${elevation}`;
    let star = this.upright.get(key);
    if (!star) {
      const anchors = Array.from({ length: perLevel }, () => ({ radius: 0, elevation }));
      star = { perLevel, anchors, radius: 0, head: 0, alike: true, even: elevation === 0, key: "" };
      this.upright.set(key, star);
    }
    return this.ofAny(star, height).cents;
  }

  /** What the weight of the arm takes off as it drifts, the wind on it left out, N m. */
  private drifted(height: number): number {
    const { rules } = this.problem;
    const weight = Math.max(1, rules.deadFactors.values[0]) * (this.arm?.row.weight ?? 0);
    return leanOf(this.problem) * weight * height;
  }

  /** What the guy check lets a strand pull, N. */
  private mostPull({ breakingStrength, efficiency }: Strand): number {
    return (breakingStrength * efficiency * this.problem.allowed) / this.problem.rules.guy.required;
  }
}

/** Chord of the longest guy of a level, m. */
const longest = (star: Star, height: number): number => {
  let most = 0;
  for (const { radius, elevation } of star.anchors)
    most = Math.max(most, Math.hypot(height - elevation, radius));
  return most;
};
