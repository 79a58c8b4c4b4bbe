import type { Strand } from "../model/catalog.ts";
import type { GuyHardware } from "../model/study.ts";
import { balancedTensions } from "../physics/guy/balance.ts";
import type { GuyLevel } from "../physics/mast/types.ts";
import type { Star } from "../problem/star.ts";
import { type ArmModel, guySpan, tipsOf } from "../problem/torque-arm.ts";
import type { Problem } from "../problem/types.ts";

/** Guys of one level. */
export interface LevelModel {
  readonly height: number;
  readonly strand: Strand;
  /** Initial tension at the anchor, of breaking strength. */
  readonly tension: number;
  readonly hardware?: GuyHardware;
  /** Whose tips take two guys from each anchor; on the axis where there is none. */
  readonly arm?: ArmModel | null;
}

/**
 * A guy of this chord as one rope, N and N/m: its hardware is smeared over it and does not stretch.
 * @throws RangeError where the hardware leaves no strand
 */
export function ropeOf({ strand, hardware }: Pick<LevelModel, "strand" | "hardware">, chord: number) {
  // seven wires
  const ea = 7 * (Math.PI / 4) * strand.wire ** 2 * strand.modulus;
  if (!hardware) return { ea, weight: strand.weight };
  const cut = chord - hardware.length;
  if (!(cut > 0))
    throw new RangeError(
      `guy: found hardware of ${hardware.length} m in a guy of ${chord} m, expected less than the guy`,
    );
  return { ea: (ea * chord) / cut, weight: (strand.weight * cut + hardware.weight) / chord };
}

/** Weight of a guy of this chord, N, its hardware with it. */
export const guyWeight = (strand: Strand, chord: number, hardware?: GuyHardware): number =>
  hardware ? strand.weight * Math.max(chord - hardware.length, 0) + hardware.weight : strand.weight * chord;

/** Guys of a structure, every key resolved. */
export interface GuyModel {
  readonly star: Star;
  /** Bottom up. */
  readonly levels: readonly LevelModel[];
}

/** Guys of one level as the solver is given them. */
export function rigged(star: Star, level: LevelModel): GuyLevel {
  const { height, strand } = level;
  const own = star.even ? [] : levelTensions(star, level);
  const ropes = star.even ? [] : places(star, level);
  const tips = level.arm ? tipsOf(level.arm) : [undefined];
  return {
    z: height,
    anchors: star.anchors.flatMap(({ radius, elevation }, i) => {
      const angle = (2 * Math.PI * i) / star.perLevel;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      return tips.map((tip) => ({
        x: radius * cos,
        y: radius * sin,
        z: elevation,
        anchor: i,
        head: tip && { x: tip[0] * cos - tip[1] * sin, y: tip[0] * sin + tip[1] * cos },
        tension: own[i],
        ea: ropes[i]?.ea,
        weight: ropes[i]?.weight,
      }));
    }),
    ...ropeOf(
      level,
      Math.hypot(height - star.anchors[0].elevation, guySpan(star.anchors[0].radius, level.arm)),
    ),
    tension: level.tension * strand.breakingStrength,
  };
}

/**
 * Initial tension at each anchor, N: the stated one, and on uneven anchors what leaves the mast plumb.
 * @throws RangeError where a guy can't be rigged at its tension
 */
export function levelTensions(star: Star, level: LevelModel): number[] {
  const stated = level.tension * level.strand.breakingStrength;
  // guys that are alike leave the mast plumb, each at what is stated
  if (star.even || level.arm) return star.anchors.map(() => stated);
  return balancedTensions(places(star, level), stated);
}

/** Every guy of a level: where it runs, and as what rope. */
const places = (star: Star, level: LevelModel) =>
  star.anchors.map(({ radius, elevation }) => {
    const span = guySpan(radius, level.arm);
    const rise = level.height - elevation;
    return { span, rise, ...ropeOf(level, Math.hypot(span, rise)) };
  });

/** Initial tension of every guy, of breaking strength; the stated ones where a guy can't be rigged. */
export const initialTensions = ({ star, levels }: GuyModel): number[] =>
  levels.flatMap((level) => {
    if (star.even) return [level.tension];
    try {
      return levelTensions(star, level).map((tension) => tension / level.strand.breakingStrength);
    } catch (error) {
      // the analysis says that it can't be rigged
      if (error instanceof RangeError) return [level.tension];
      throw error;
    }
  });

/** Does every guy lie in the rule set's window of initial tension? */
export const insideWindow = (problem: Problem, guys: GuyModel): boolean => {
  const { least, most } = problem.rules.tension;
  return initialTensions(guys).every((tension) => tension >= least - 1e-12 && tension <= most + 1e-12);
};
