import type { Strand } from "../model/catalog.ts";
import type { IceFactors } from "../model/rule-set.ts";
import { balancedTensions } from "../physics/guy/balance.ts";
import { Forces } from "../physics/mast/recover.ts";
import { Mast } from "../physics/mast/solver.ts";
import type { GuyLevel, MastInput } from "../physics/mast/types.ts";
import type { Star } from "../problem/star.ts";
import {
  type PackageModel,
  type Problem,
  type SectionModel,
  type StackModel,
  sideHeight,
} from "../problem/types.ts";

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

/** A structure with its keys resolved: what the analysis reads. */
export interface StructureModel {
  readonly package: PackageModel;
  readonly stack: StackModel;
  readonly guys: GuyModel | null;
}

/** A load case: where the wind blows, in which weather, and what dead weight counts. */
export interface WindCase {
  readonly id: string;
  readonly title: string;
  /** Degrees from anchor 1; null in still air. */
  readonly toward: number | null;
  /** Do guys and wind share a mirror plane? */
  readonly planar: boolean;
  readonly weather: "bare" | "iced";
  /** Factors of a combination with ice. */
  readonly ice?: IceFactors;
  /** Factor on dead weight. */
  readonly dead: number;
}

type Azimuth = Pick<WindCase, "id" | "title" | "toward" | "planar">;

/**
 * Wind azimuths that can govern, the killing one first: toward a guy (it slackens, two share the pull and the mast
 * leans furthest), away from one (it takes all), across, and 15 degrees off away, where the one guy is tightest by a
 * percent (docs/theory/checks.md). Four guys: along a pair, and between.
 */
const azimuths: Readonly<Record<0 | 3 | 4, readonly Azimuth[]>> = {
  0: [{ id: "wind", title: "wind, worst direction", toward: 0, planar: true }],
  3: [
    { id: "toward", title: "wind toward a guy", toward: 0, planar: true },
    { id: "away", title: "wind away from a guy", toward: 180, planar: true },
    { id: "across", title: "wind across a guy", toward: 90, planar: false },
    { id: "aslant", title: "wind 15 degrees off a guy", toward: 195, planar: false },
  ],
  4: [
    { id: "along", title: "wind along two guys", toward: 0, planar: true },
    { id: "between", title: "wind between guys", toward: 45, planar: true },
  ],
};

/** Where no two anchors are alike every guy has cases of its own, and no wind keeps the mast in a plane. */
const unevenAzimuths: Readonly<Record<3 | 4, readonly Azimuth[]>> = {
  3: azimuths[3].flatMap((wind) =>
    [0, 1, 2].flatMap((guy) => {
      const toward = (wind.toward as number) + 120 * guy;
      const ways = wind.id === "toward" || wind.id === "away" ? [toward] : [toward, 240 * guy - toward];
      return ways.map((way, side) => ({
        id: `${wind.id}-${guy + 1}${side === 0 ? "" : "-left"}`,
        title: `${wind.title.replace("a guy", `guy ${guy + 1}`)}${side === 0 ? "" : ", other side"}`,
        toward: ((way % 360) + 360) % 360,
        planar: false,
      }));
    }),
  ),
  4: azimuths[4].flatMap((wind) =>
    [0, 1, 2, 3].map((guy) => ({
      id: `${wind.id}-${guy + 1}`,
      title: `${wind.title}, toward ${guy + 1}${wind.id === "between" ? ` and ${((guy + 1) % 4) + 1}` : ""}`,
      toward: ((wind.toward as number) + 90 * guy) % 360,
      planar: false,
    })),
  ),
};
const still: Azimuth = { id: "still", title: "still air", toward: null, planar: true };

/**
 * The load cases of verdict and search alike. Still air is the mast as rigged, dead weight as it is; ice comes
 * with its own wind and alone.
 */
export function windCases(problem: Problem, guys: GuyModel | null): readonly WindCase[] {
  const winds =
    guys && !guys.star.even ? unevenAzimuths[guys.star.perLevel] : azimuths[guys?.star.perLevel ?? 0];
  const { values } = problem.rules.deadFactors;
  const bare = values.flatMap((dead) =>
    winds.map(
      (wind): WindCase => ({
        ...wind,
        id: values.length > 1 ? `${wind.id}-${dead}` : wind.id,
        title: dead === 1 ? wind.title : `${wind.title}, dead weight x ${dead}`,
        weather: "bare",
        dead,
      }),
    ),
  );
  const { iced: leading, icedWind } = problem.rules;
  const iced = problem.iced
    ? [
        ...winds.map((wind) => icedCase(wind, leading, "iced", `ice and ${wind.title}`)),
        stillCase(problem, "iced"),
        ...(icedWind
          ? winds.map((wind) => icedCase(wind, icedWind, "icy", `${wind.title}, ice along with it`))
          : []),
      ]
    : [];
  return [...bare, ...iced, stillCase(problem, "bare")];
}

const icedCase = (wind: Azimuth, ice: IceFactors, id: string, title: string): WindCase => ({
  ...wind,
  id: `${wind.id}-${id}`,
  title,
  weather: "iced",
  ice,
  dead: ice.dead,
});

/** The mast as it stands in still air, bare or under the ice of the study. */
export const stillCase = (problem: Problem, weather: WindCase["weather"]): WindCase =>
  weather === "bare"
    ? { ...still, weather, dead: 1 }
    : icedCase(still, problem.rules.iced, "iced", "ice in still air");

/** What the solver is given: the same from search, verdict, sheets and audit. */
export function mastInput(model: StructureModel, elementsPerSpan?: number): MastInput {
  const { guys, stack } = model;
  let from = 0;
  const segments = stack.parts.map(({ section, length }) => {
    const segment = {
      from,
      to: from + length,
      ei: section.lattice.bendingStiffness,
      ea: section.lattice.axialStiffness,
      ga: section.lattice.shearStiffness,
      weight: section.lattice.weightPerLength,
    };
    from += length;
    return segment;
  });
  // joints measured once: the top of the last segment is the height itself
  segments[segments.length - 1].to = stack.height;
  return {
    segments,
    base: guys ? "pinned" : "fixed",
    elementsPerSpan,
    pointWeights: [
      ...model.package.antennas.map(({ above, weight }) => ({ z: stack.height, weight, arm: above })),
      { z: stack.height, weight: model.package.pipeWeight, arm: 0.5 * model.package.exposed },
      ...model.package.sides.map((side) => ({
        z: sideHeight(side, stack.height),
        weight: side.weight,
        arm: 0,
      })),
    ],
    levels: guys ? guys.levels.map((level) => rigged(guys.star, level)) : [],
  };
}

function rigged(star: Star, level: LevelModel): GuyLevel {
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

/** Section at a height: the lower one at a joint. */
export function sectionAt(stack: StackModel, z: number): SectionModel {
  let top = 0;
  for (const { section, length } of stack.parts) {
    top += length;
    if (z <= top + 1e-9) return section;
  }
  return stack.parts[stack.parts.length - 1].section;
}

/** The mast of a structure with room for its forces. Null where a guy can't be rigged at its tension. */
export function buildMast(
  model: StructureModel,
  elementsPerSpan?: number,
): { mast: Mast; forces: Forces } | null {
  try {
    const mast = new Mast(mastInput(model, elementsPerSpan));
    return { mast, forces: new Forces(mast.elements) };
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
