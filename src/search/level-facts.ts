import { guyWind } from "../checks/loads.ts";
import { guyWeight, insideWindow } from "../checks/rigging.ts";
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

/** What the guys of one anchor at one level bring to the star's floor, and the least cents of the level. */
export interface LevelFacts extends Pick<StarGuys, "weight" | "wind" | "pull" | "moment"> {
  readonly cents: number;
}

/** A level drawn to a tension: is every guy inside the window of the rule set, and what does still air ask then? */
export interface Drawn {
  readonly inside: boolean;
  readonly rigged: RiggedLevel;
}

/** Guys of several levels, top down, as the star's floor reads them: all of one anchor hang on it together. */
export function together(
  star: Star,
  arm: ArmModel | null,
  levels: readonly Level[],
  strands: readonly Strand[],
): StarGuys {
  let weight = 0;
  let wind = 0;
  let pull = 0;
  let moment = 0;
  for (let i = 0; i < levels.length; i++) {
    const facts = i < strands.length ? levels[i].of(strands[i]) : levels[i].ofAny;
    weight += facts.weight;
    wind += facts.wind;
    pull += facts.pull;
    moment += facts.moment;
  }
  const [{ height: top }] = levels;
  const lowest = levels[levels.length - 1].height;
  return { star, arm, top, lowest, weight, wind, pull, moment };
}

/** Levels of guys by star and height, each made once: a tree asks for the same ones at node after node. */
export class Levels {
  private readonly problem: Problem;
  private readonly arm: ArmModel | null;
  private readonly known = new Map<Star, Map<number, Level>>();
  private readonly upright = new Map<string, Star>();

  /** @param arm at these levels; null where their guys meet the axis */
  constructor(problem: Problem, arm: ArmModel | null = null) {
    this.problem = problem;
    this.arm = arm;
  }

  at(star: Star, height: number): Level {
    let heights = this.known.get(star);
    if (!heights) this.known.set(star, (heights = new Map()));
    let level = heights.get(height);
    if (!level) heights.set(height, (level = new Level(this.problem, this.arm, star, height)));
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
    return this.at(star, height).ofAny.cents;
  }
}

/** The guys of one height on one star, before and after their strand and tension are known: each worked out once. */
export class Level {
  readonly height: number;
  readonly arm: ArmModel | null;
  private readonly problem: Problem;
  private readonly star: Star;
  private any: LevelFacts | null = null;
  private leastStill: RiggedLevel | null = null;
  private readonly facts = new Map<Strand, LevelFacts>();
  private readonly still = new Map<Strand, RiggedLevel>();
  private readonly pulled = new Map<number, Map<Strand, Drawn>>();

  constructor(problem: Problem, arm: ArmModel | null, star: Star, height: number) {
    this.problem = problem;
    this.arm = arm;
    this.star = star;
    this.height = height;
  }

  /** Of any strand: the heaviest, the thickest, the strongest; the least that its wind lends; the least cents. */
  get ofAny(): LevelFacts {
    this.any ??= this.worst();
    return this.any;
  }

  of(strand: Strand): LevelFacts {
    let facts = this.facts.get(strand);
    if (!facts) this.facts.set(strand, (facts = this.worked(strand)));
    return facts;
  }

  /** As rigged at the least tension that the rule set lets the study have, with this strand or the best of any. */
  rigged(strand: Strand | undefined): RiggedLevel {
    if (!strand) {
      this.leastStill ??= leastRigged(this.problem.strands.map((each) => this.rigged(each)));
      return this.leastStill;
    }
    let level = this.still.get(strand);
    if (!level) {
      const { tensions } = this.problem.study.parts;
      const usable = tensions.filter((tension) => tension >= this.problem.rules.tension.least - 1e-12);
      level = this.drawn(strand, usable.length > 0 ? Math.min(...usable) : 0).rigged;
      this.still.set(strand, level);
    }
    return level;
  }

  drawn(strand: Strand, tension: number): Drawn {
    let strands = this.pulled.get(tension);
    if (!strands) this.pulled.set(tension, (strands = new Map()));
    let drawn = strands.get(strand);
    if (!drawn) {
      const { problem, star, height, arm } = this;
      const level = { height, strand, tension, arm, hardware: problem.study.parts.guyHardware };
      drawn = {
        inside: insideWindow(problem, { star, levels: [level] }),
        rigged: riggedLevel(star, level),
      };
      strands.set(strand, drawn);
    }
    return drawn;
  }

  private worst(): LevelFacts {
    const { problem, star, height, arm } = this;
    const { strands, rules, study } = problem;
    const count = guysAtAnchor(arm);
    const chord = longest(star, height);
    let weight = 0;
    let wind = 0;
    let pull = 0;
    let cents = Number.POSITIVE_INFINITY;
    for (const strand of strands) {
      weight = Math.max(weight, guyWeight(strand, chord, study.parts.guyHardware));
      wind = Math.max(wind, guyWind(problem, star, height, strand));
      pull = Math.max(pull, this.mostPull(strand));
      cents = Math.min(cents, levelFloor(problem, height, star, strand, arm));
    }
    return {
      weight: count * weight * SAGGING * Math.max(1, rules.deadFactors.values[0]),
      wind: count * wind * chord,
      pull: count * pull,
      moment: arm
        ? Math.min(0, pairWindMoment(wind, height, star, arm)) - this.drifted()
        : guyWindLoss(wind, height, star),
      cents,
    };
  }

  private worked(strand: Strand): LevelFacts {
    const { problem, star, height, arm } = this;
    const { rules, study } = problem;
    const count = guysAtAnchor(arm);
    const chord = longest(star, height);
    const wind = guyWind(problem, star, height, strand);
    return {
      weight:
        count *
        guyWeight(strand, chord, study.parts.guyHardware) *
        SAGGING *
        Math.max(1, rules.deadFactors.values[0]),
      wind: count * wind * chord,
      pull: count * this.mostPull(strand),
      moment: arm
        ? pairWindMoment(wind, height, star, arm) - this.drifted()
        : guyWindMoment(wind, height, star),
      cents: levelFloor(problem, height, star, strand, arm),
    };
  }

  /** What the weight of the arm takes off as it drifts, the wind on it left out, N m. */
  private drifted(): number {
    const weight = Math.max(1, this.problem.rules.deadFactors.values[0]) * (this.arm?.row.weight ?? 0);
    return leanOf(this.problem) * weight * this.height;
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
