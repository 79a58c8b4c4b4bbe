import type { Strand } from "../model/catalog.ts";
import { balancedTensions } from "../physics/guy/balance.ts";
import { Forces } from "../physics/mast/recover.ts";
import { Mast } from "../physics/mast/solver.ts";
import type { GuyLevel, LoadCase, MastInput, PointForce, PointWeight } from "../physics/mast/types.ts";
import type { Iced } from "../problem/iced.ts";
import type { Star } from "../problem/star.ts";
import {
  type AntennaModel,
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
  const { dead } = problem.rules.iced;
  const iced = problem.iced
    ? [...winds, still].map(
        (wind): WindCase => ({
          ...wind,
          id: `${wind.id}-iced`,
          title: wind.toward === null ? "ice in still air" : `ice and ${wind.title}`,
          weather: "iced",
          dead,
        }),
      )
    : [];
  return [...bare, ...iced, { ...still, weather: "bare", dead: 1 }];
}

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

/** Wind on the antennas and their pipe: force and moment on the mast top. */
export function topForce(problem: Problem, pack: PackageModel, height: number): PointForce {
  let force = 0;
  let moment = 0;
  const add = (f: number, arm: number) => {
    force += f;
    moment += f * arm;
  };
  for (const antenna of pack.antennas)
    add(problem.pressure(height + antenna.above) * antenna.dragArea, antenna.above);
  const middle = 0.5 * pack.exposed;
  add(problem.pressure(height + middle) * pack.pipeDragWidth * pack.exposed, middle);
  return { z: height, force, moment };
}

/** Wind on the mast per height, N/m. */
export function lineLoad(problem: Problem, model: StructureModel): (z: number) => number {
  const { stack } = model;
  const run = model.package.runDragWidth;
  if (stack.parts.length === 1) {
    const width = stack.parts[0].section.dragWidth + run;
    return (z) => problem.pressure(z) * width;
  }
  return (z) => problem.pressure(z) * (sectionAt(stack, z).dragWidth + run);
}

/**
 * The even pressure on the guys of a level, Pa: of a guy from the foot of the mast, and of one from the highest anchor,
 * the greater.
 */
const starPressure = (air: Pick<Problem, "guyPressure">, star: Star, height: number): number => {
  const level = air.guyPressure(0, height);
  if (star.even) return level;
  const highest = Math.max(...star.anchors.map(({ elevation }) => elevation));
  return highest > 0 ? Math.max(level, air.guyPressure(highest, height)) : level;
};

/** Wind on a guy of a level lying square to it, N/m, on its diameter over the wires. */
export const guyWind = (problem: Problem, star: Star, height: number, strand: Strand): number =>
  starPressure(problem, star, height) * problem.roundFactor * 3 * strand.wire;

export function loadCase(problem: Problem, model: StructureModel, wind: WindCase): LoadCase {
  const blown =
    wind.weather === "iced" ? icedLoads(problem, model, wind.dead) : bareLoads(problem, model, wind.dead);
  const { hung, wind: points, ...loads } = blown;
  const leaning = hung
    .filter(({ offset }) => offset > 0)
    .map(({ z, weight, offset }) => ({ z, force: 0, moment: weight * offset }));
  if (wind.toward === null)
    return {
      ...loads,
      toward: [1, 0],
      line: () => 0,
      points: leaning,
      guyWind: loads.guyWind.map(() => 0),
      planar: true,
    };
  const angle = (wind.toward * Math.PI) / 180;
  return {
    ...loads,
    toward: [Math.cos(angle), Math.sin(angle)],
    points: [...points, ...leaning],
    torques: hung
      .filter(({ offset }) => offset > 0)
      .map(({ z, force, offset }) => ({ z, torque: force * offset })),
    planar: wind.planar,
  };
}

/**
 * An antenna as it loads the mast: at the joint that carries it, the wind on it and what it weighs in the case.
 * One that hangs off the axis stands where it is worst: downwind for its weight, abreast for its twist.
 */
interface Hung {
  readonly z: number;
  readonly force: number;
  readonly weight: number;
  readonly offset: number;
}

type Blown = Omit<LoadCase, "toward" | "planar" | "points"> & {
  readonly wind: readonly PointForce[];
  readonly hung: readonly Hung[];
};

/** Every antenna of a package: height of its middle, and the height of the joint that carries it. */
const mounted = (
  pack: PackageModel,
  height: number,
): { antenna: AntennaModel; z: number; joint: number }[] => [
  ...pack.antennas.map((antenna) => ({ antenna, z: height + antenna.above, joint: height })),
  ...pack.sides.map((antenna) => {
    const z = sideHeight(antenna, height);
    return { antenna, z, joint: z };
  }),
];

/** Wind on the antennas beside the mast. */
export const sideForces = (problem: Problem, pack: PackageModel, height: number): PointForce[] =>
  pack.sides.map((side) => {
    const z = sideHeight(side, height);
    return { z, force: problem.pressure(z) * side.dragArea, moment: 0 };
  });

function bareLoads(problem: Problem, model: StructureModel, dead: number): Blown {
  const { stack, package: pack, guys } = model;
  return {
    dead,
    line: lineLoad(problem, model),
    wind: [topForce(problem, pack, stack.height), ...sideForces(problem, pack, stack.height)],
    hung: mounted(pack, stack.height).map(({ antenna, z, joint }) => ({
      z: joint,
      force: problem.pressure(z) * antenna.dragArea,
      weight: dead * antenna.weight,
      offset: antenna.offset,
    })),
    guyWind: guys ? guys.levels.map(({ height, strand }) => guyWind(problem, guys.star, height, strand)) : [],
  };
}

/** Antennas and pipe under ice: what they catch and what hangs on them. */
function icedTop(iced: Iced, pack: PackageModel, height: number) {
  const pipe = iced.pipe(pack);
  const parts = [
    ...pack.antennas.map((antenna) => ({ ...iced.antenna(antenna), above: antenna.above })),
    {
      dragArea: pipe.dragWidth * pack.exposed,
      weight: pipe.weight * pack.exposed,
      above: 0.5 * pack.exposed,
    },
  ];
  let force = 0;
  let moment = 0;
  for (const { dragArea, above } of parts) {
    const f = iced.pressure(height + above) * dragArea;
    force += f;
    moment += f * above;
  }
  return { parts, force: { z: height, force, moment } };
}

/**
 * Greatest moment on the foot of the antenna pipe, N m: wind, and antennas that hang off its axis, bare or iced.
 * Dead weight counts with the greatest factor of any case.
 */
export function pipeMomentDemand(problem: Problem, pack: PackageModel, height: number): number {
  const { rules } = problem;
  const iced = problem.iced?.(height);
  const leaning = (factor: number, ice: (antenna: AntennaModel) => number) =>
    pack.antennas.reduce((sum, a) => sum + a.offset * (factor * a.weight + ice(a)), 0);
  const bare =
    topForce(problem, pack, height).moment + leaning(Math.max(...rules.deadFactors.values), () => 0);
  if (!iced) return bare;
  const under = icedTop(iced, pack, height).force.moment;
  return Math.max(bare, under + leaning(rules.iced.dead, (a) => iced.antenna(a).weight));
}

function icedLoads(problem: Problem, model: StructureModel, dead: number): Blown {
  const { stack, package: pack, guys } = model;
  const iced = problem.iced?.(stack.height);
  if (!iced) throw new Error("a case with ice in a study without any");
  const run = iced.run(pack);
  const at = (z: number) => iced.section(sectionAt(stack, z));
  const top = icedTop(iced, pack, stack.height);
  const grown = mounted(pack, stack.height).map(({ antenna, z, joint }) => {
    const { dragArea, weight } = iced.antenna(antenna);
    return { antenna, z: joint, force: iced.pressure(z) * dragArea, ice: weight };
  });
  const sides = grown.slice(pack.antennas.length);
  return {
    dead,
    line: (z) => iced.pressure(z) * (at(z).dragWidth + run.dragWidth),
    wind: [top.force, ...sides.map(({ z, force }) => ({ z, force, moment: 0 }))],
    hung: grown.map(({ antenna, z, force, ice }) => ({
      z,
      force,
      weight: dead * antenna.weight + ice,
      offset: antenna.offset,
    })),
    guyWind: guys
      ? guys.levels.map(
          ({ height, strand }) => starPressure(iced, guys.star, height) * iced.strand(strand).dragWidth,
        )
      : [],
    added: (z) => at(z).weight + run.weight,
    addedPoints: [
      ...top.parts.map(({ weight, above }): PointWeight => ({ z: stack.height, weight, arm: above })),
      ...sides.map(({ z, ice }) => ({ z, weight: ice, arm: 0 })),
    ],
    guyAdded: (guys?.levels ?? []).map(({ strand }) => iced.strand(strand).weight),
  };
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
