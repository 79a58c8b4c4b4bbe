import type { Strand } from "../model/catalog.ts";
import type { LoadCase, PointForce, PointTorque, PointWeight } from "../physics/mast/types.ts";
import { STEEL_EXPANSION } from "../physics/steel/expansion.ts";
import type { Iced } from "../problem/iced.ts";
import type { Star } from "../problem/star.ts";
import { type AntennaModel, type PackageModel, type Problem, sideHeight } from "../problem/types.ts";
import { armsOf, type StructureModel, sectionAt } from "./structure.ts";
import type { Upwind, WindCase } from "./wind-cases.ts";

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

const none = (): number => 0;

/** Loads of the cases of one structure: what differs only in where the wind blows is worked out once. */
export function loadsOf(problem: Problem, model: StructureModel): (wind: WindCase) => LoadCase {
  const kept: { readonly of: WindCase; readonly loads: Loads }[] = [];
  return (wind) => {
    for (const { of, loads } of kept) if (sameLoads(of, wind)) return towards(loads, model, wind);
    const blown =
      wind.weather === "iced" ? icedLoads(problem, model, wind) : bareLoads(problem, model, wind.dead);
    const loads = loadsIn(altered(blown, wind), wind.upwind);
    kept.push({ of: wind, loads });
    return towards(loads, model, wind);
  };
}

const sameLoads = (a: WindCase, b: WindCase): boolean =>
  a.weather === b.weather &&
  a.dead === b.dead &&
  a.ice === b.ice &&
  a.share === b.share &&
  a.warmer === b.warmer &&
  a.upwind === b.upwind &&
  a.lost === b.lost;

export const loadCase = (problem: Problem, model: StructureModel, wind: WindCase): LoadCase =>
  loadsOf(problem, model)(wind);

/** All of a case but where its wind blows: what stands in any air, and what the wind adds. */
interface Loads {
  readonly blown: Blown;
  readonly leaning: readonly PointForce[];
  readonly points: readonly PointForce[];
  readonly torques: readonly PointTorque[];
}

const NOTHING: readonly [] = [];

function loadsIn(blown: Blown, upwind: Upwind | undefined): Loads {
  const offAxis = blown.hung.filter(({ offset }) => offset > 0).sort((a, b) => a.z - b.z);
  if (offAxis.length === 0) return { blown, leaning: NOTHING, points: blown.wind, torques: NOTHING };
  let place = 0;
  const leaning = offAxis.map(({ z, weight, offset }, i) => {
    // what hangs at one height turns the mast there alike: on two sides it does less than on one
    if (i > 0 && z > offAxis[i - 1].z + SAME_HEIGHT) place++;
    return { z, force: 0, moment: (standsUpwind(upwind, place) ? -1 : 1) * weight * offset };
  });
  const torques = offAxis.map(({ z, force, offset }) => ({ z, torque: force * offset }));
  return { blown, leaning, points: [...blown.wind, ...leaning], torques };
}

/** m */
const SAME_HEIGHT = 1e-9;

/** @param place among the heights of the antennas off the axis, from the lowest up */
const standsUpwind = (upwind: Upwind = 0, place: number): boolean =>
  Math.floor(upwind / 2 ** place) % 2 === 1;

function towards(
  { blown, leaning, points, torques }: Loads,
  model: StructureModel,
  wind: WindCase,
): LoadCase {
  const { dead, added, addedPoints, guyAdded, guyStretch, lost, mastStrain } = blown;
  const still = wind.toward === null;
  const angle = ((wind.toward ?? 0) * Math.PI) / 180;
  return {
    toward: [Math.cos(angle), Math.sin(angle)],
    line: still ? none : blown.line,
    points: still ? leaning : points,
    guyWind: still ? NOTHING : blown.guyWind,
    torques: still ? undefined : torques,
    // in still air an uneven star has no mirror plane: its tangents couple the two ways of swaying
    planar: still ? (model.guys?.star.even ?? true) : wind.planar,
    dead,
    added,
    addedPoints,
    guyAdded,
    guyStretch,
    lost,
    mastStrain,
  };
}

/**
 * An antenna as it loads the mast: at the joint that carries it, the wind on it and what it weighs in the case.
 * One that hangs off the axis stands where it is worst: down- or upwind for its weight, abreast for its twist.
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

/** The case's share of the wind, its air, and the guy that it lost. */
function altered(blown: Blown, { share = 1, warmer = 0, lost }: WindCase): Blown {
  if (share === 1 && warmer === 0 && !lost) return blown;
  const { line, wind, hung, guyWind: onGuys } = blown;
  const strain = STEEL_EXPANSION * warmer;
  const air = warmer === 0 ? {} : { guyStretch: onGuys.map(() => 1 + strain), mastStrain: strain };
  const scaled =
    share === 1
      ? blown
      : {
          ...blown,
          line: (z: number) => share * line(z),
          wind: wind.map((point) => ({ ...point, force: share * point.force, moment: share * point.moment })),
          hung: hung.map((antenna) => ({ ...antenna, force: share * antenna.force })),
          guyWind: onGuys.map((w) => share * w),
        };
  return { ...scaled, ...air, lost };
}

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
    wind: [
      topForce(problem, pack, stack.height),
      ...sideForces(problem, pack, stack.height),
      ...armsOf(model).map(({ z, hung }) => ({ z, force: problem.pressure(z) * hung.dragArea, moment: 0 })),
    ],
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
  const leaning = (factor: number, ice: (antenna: AntennaModel) => number) =>
    pack.antennas.reduce((sum, a) => sum + a.offset * (factor * a.weight + ice(a)), 0);
  const bare =
    topForce(problem, pack, height).moment + leaning(Math.max(...rules.deadFactors.values), () => 0);
  const under = [rules.iced, rules.icedWind].flatMap((factors) => {
    const iced = factors && problem.iced?.(height, factors);
    if (!iced) return [];
    return icedTop(iced, pack, height).force.moment + leaning(factors.dead, (a) => iced.antenna(a).weight);
  });
  return Math.max(bare, ...under);
}

function icedLoads(problem: Problem, model: StructureModel, { dead, ice: factors }: WindCase): Blown {
  const { stack, package: pack, guys } = model;
  const iced = problem.iced?.(stack.height, factors);
  if (!iced) throw new Error("a case with ice in a study without any");
  const run = iced.run(pack);
  const at = (z: number) => iced.section(sectionAt(stack, z));
  const top = icedTop(iced, pack, stack.height);
  const grown = mounted(pack, stack.height).map(({ antenna, z, joint }) => {
    const { dragArea, weight } = iced.antenna(antenna);
    return { antenna, z: joint, force: iced.pressure(z) * dragArea, ice: weight };
  });
  const sides = [
    ...grown.slice(pack.antennas.length),
    ...armsOf(model).map(({ z, hung }) => {
      const { dragArea, weight } = iced.antenna(hung);
      return { z, force: iced.pressure(z) * dragArea, ice: weight };
    }),
  ];
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
