import { Forces } from "../physics/mast/recover.ts";
import { Mast } from "../physics/mast/solver.ts";
import type { MastInput } from "../physics/mast/types.ts";
import {
  type AntennaModel,
  type PackageModel,
  type SectionModel,
  type StackModel,
  sideHeight,
} from "../problem/types.ts";
import { type GuyModel, rigged } from "./rigging.ts";

/** A structure with its keys resolved: what the analysis reads. */
export interface StructureModel {
  readonly package: PackageModel;
  readonly stack: StackModel;
  readonly guys: GuyModel | null;
}

/** Torque arms on the mast, and the height of each. */
export const armsOf = ({ guys }: StructureModel): { z: number; hung: AntennaModel }[] =>
  (guys?.levels ?? []).flatMap(({ height, arm }) => (arm ? [{ z: height, hung: arm.hung }] : []));

/** What the solver is given: the same from search, verdict, sheets and audit. */
export function mastInput(
  model: StructureModel,
  elementsPerSpan?: number,
  baseStiffness?: number,
): MastInput {
  const { guys, stack } = model;
  let from = 0;
  const segments = stack.parts.map(({ section, length }) => {
    const segment = {
      from,
      to: from + length,
      ei: section.lattice.bendingStiffness,
      ea: section.lattice.axialStiffness,
      ga: section.lattice.shearStiffness,
      weight: section.lattice.weightPerLength + model.package.row.runWeight,
    };
    from += length;
    return segment;
  });
  // joints measured once: the top of the last segment is the height itself
  segments[segments.length - 1].to = stack.height;
  return {
    segments,
    base: guys ? "pinned" : "fixed",
    baseStiffness,
    elementsPerSpan,
    pointWeights: [
      ...model.package.antennas.map(({ above, weight }) => ({ z: stack.height, weight, arm: above })),
      { z: stack.height, weight: model.package.pipeWeight, arm: 0.5 * model.package.exposed },
      ...model.package.sides.map((side) => ({
        z: sideHeight(side, stack.height),
        weight: side.weight,
        arm: 0,
      })),
      ...armsOf(model).map(({ z, hung }) => ({ z, weight: hung.weight, arm: 0 })),
    ],
    levels: guys ? guys.levels.map((level) => rigged(guys.star, level)) : [],
  };
}

/** Section at a height: the lower one at a joint. */
export function sectionAt(stack: StackModel, z: number): SectionModel {
  let top = 0;
  for (const { section, length } of stack.parts) {
    top += length;
    if (z <= top + 1e-9) return section;
  }
  return stack.parts[stack.parts.length - 1].section;
}

/** Where masts are put up, one after the other: a mast and room for its forces. */
export interface Workbench {
  readonly mast: Mast;
  readonly forces: Forces;
}

/** The one that nobody works at. */
let idle: Workbench | null = null;

/**
 * Puts up the mast of a structure and works at it. Its room goes on to the next structure: nothing of it may be
 * kept. `unriggable` where a guy can't be rigged at its tension.
 */
export function atWorkbench<T>(input: () => MastInput, work: (bench: Workbench) => T, unriggable: T): T {
  let bench = idle;
  idle = null;
  try {
    if (bench) bench.mast.rig(input());
    else {
      const mast = new Mast(input());
      bench = { mast, forces: new Forces(mast.elements) };
    }
  } catch (error) {
    idle = bench;
    if (error instanceof RangeError) return unriggable;
    throw error;
  }
  bench.forces.fit(bench.mast.elements);
  try {
    return work(bench);
  } finally {
    idle = bench;
  }
}
