import type { Strand } from "../model/catalog.ts";
import { balancedTensions } from "../physics/guy/balance.ts";
import type { GuyLevel } from "../physics/mast/types.ts";
import type { Star } from "../problem/star.ts";
import type { Problem } from "../problem/types.ts";

/** Guys of one level. */
export interface LevelModel {
  readonly height: number;
  readonly strand: Strand;
  /** Initial tension at the anchor, of breaking strength. */
  readonly tension: number;
}

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
  return {
    z: height,
    anchors: star.anchors.map(({ radius, elevation }, i) => {
      const angle = (2 * Math.PI * i) / star.perLevel;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), z: elevation, tension: own[i] };
    }),
    ea: strandStiffness(strand),
    weight: strand.weight,
    tension: level.tension * strand.breakingStrength,
  };
}

/**
 * Initial tension at each anchor, N: the stated one, and on uneven anchors what leaves the mast plumb.
 * @throws RangeError where a guy can't be rigged at its tension
 */
export function levelTensions(star: Star, { height, strand, tension }: LevelModel): number[] {
  const stated = tension * strand.breakingStrength;
  if (star.even) return star.anchors.map(() => stated);
  return balancedTensions(
    star.anchors.map(({ radius, elevation }) => ({ span: radius, rise: height - elevation })),
    stated,
    strandStiffness(strand),
    strand.weight,
  );
}

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

/** Seven wires of the strand, N. */
export const strandStiffness = (strand: Strand): number =>
  7 * (Math.PI / 4) * strand.wire ** 2 * strand.modulus;
