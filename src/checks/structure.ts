import type { Strand } from "../model/catalog.ts";
import type { Design, Structure } from "../model/design.ts";
import { Forces } from "../physics/mast/recover.ts";
import { Mast } from "../physics/mast/solver.ts";
import type { LoadCase, MastInput, PointForce } from "../physics/mast/types.ts";
import type { PackageModel, Problem, SectionModel, StackModel } from "../problem/types.ts";

/** Guys of a structure, every key resolved. */
export interface GuyModel {
  readonly perLevel: 3 | 4;
  readonly radius: number;
  readonly tension: number;
  /** Bottom up. */
  readonly levels: readonly { readonly height: number; readonly strand: Strand }[];
}

/** A structure with its keys resolved: what the analysis reads. */
export interface StructureModel {
  readonly package: PackageModel;
  readonly stack: StackModel;
  readonly guys: GuyModel | null;
}

/** A wind azimuth that can govern, from anchor 1, and whether guys and wind share a mirror plane. */
export interface WindCase {
  readonly id: string;
  readonly title: string;
  /** Degrees; null in still air. */
  readonly toward: number | null;
  readonly planar: boolean;
}

const still: WindCase = { id: "still", title: "still air", toward: null, planar: true };

/**
 * The load cases of verdict and search alike, the killing one first: toward a guy (it slackens, two share the
 * pull and the mast leans furthest), away from one (it takes all), across, still air. Four guys: along a pair,
 * and between.
 */
export function windCases(guys: GuyModel | null): readonly WindCase[] {
  if (!guys) return [{ id: "wind", title: "wind, worst direction", toward: 0, planar: true }, still];
  if (guys.perLevel === 3)
    return [
      { id: "toward", title: "wind toward a guy", toward: 0, planar: true },
      { id: "away", title: "wind away from a guy", toward: 180, planar: true },
      { id: "across", title: "wind across a guy", toward: 90, planar: false },
      still,
    ];
  return [
    { id: "along", title: "wind along two guys", toward: 0, planar: true },
    { id: "between", title: "wind between guys", toward: 45, planar: true },
    still,
  ];
}

export const structureOf = (design: Design): Structure => ({
  package: design.package,
  height: design.height,
  stack: design.stack,
  guys: design.guys && {
    perLevel: design.guys.perLevel,
    radius: design.guys.radius,
    tension: design.guys.tension,
    levels: design.guys.levels,
  },
});

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
    ],
    levels: (guys?.levels ?? []).map(({ height, strand }) => ({
      z: height,
      anchors: Array.from({ length: guys?.perLevel ?? 0 }, (_, i) => {
        const angle = (2 * Math.PI * i) / (guys?.perLevel ?? 1);
        return { x: (guys?.radius ?? 0) * Math.cos(angle), y: (guys?.radius ?? 0) * Math.sin(angle), z: 0 };
      }),
      ea: strandStiffness(strand),
      weight: strand.weight,
      tension: (guys?.tension ?? 0) * strand.breakingStrength,
    })),
  };
}

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
  const cable = model.package.cableDragWidth;
  if (stack.parts.length === 1) {
    const width = stack.parts[0].section.dragWidth + cable;
    return (z) => problem.pressure(z) * width;
  }
  return (z) => problem.pressure(z) * (sectionAt(stack, z).dragWidth + cable);
}

/** Wind on a guy of a level lying square to it, N/m: the pressure at half its height, its diameter over the wires. */
export const guyWind = (problem: Problem, height: number, strand: Strand): number =>
  problem.pressure(0.5 * height) * problem.roundFactor * 3 * strand.wire;

export function loadCase(problem: Problem, model: StructureModel, wind: WindCase): LoadCase {
  if (wind.toward === null)
    return {
      toward: [1, 0],
      line: () => 0,
      points: [],
      guyWind: model.guys?.levels.map(() => 0) ?? [],
      planar: true,
    };
  const angle = (wind.toward * Math.PI) / 180;
  return {
    toward: [Math.cos(angle), Math.sin(angle)],
    line: lineLoad(problem, model),
    points: [topForce(problem, model.package, model.stack.height)],
    guyWind: (model.guys?.levels ?? []).map(({ height, strand }) => guyWind(problem, height, strand)),
    planar: wind.planar,
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
