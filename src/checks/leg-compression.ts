import type { SectionModel } from "../problem/types.ts";
import {
  type MastLimitState,
  ratedNote,
  type SolvedCase,
  type Stressed,
  worstStation,
} from "./mast-checks.ts";

/** A share of the demand that is worth a word. */
const TOLD = 0.01;

/**
 * The worst leg: its share of the thrust, the moment over the lever of the legs, and what the wind on itself between
 * its panel points uses of it (docs/theory/steel.md).
 */
const stressed =
  ({ model }: SolvedCase) =>
  ({ lattice, legDragWidth, dragWidth }: SectionModel): Stressed => ({
    compression: lattice.axialShare,
    moment: 1 / lattice.momentArm,
    shear: 0,
    torque: 0,
    wind: (lattice.legBent * legDragWidth) / (dragWidth + model.package.runDragWidth),
    capacity: lattice.legCompression,
  });

/** The worst leg at the worst station. */
export const legCompression: MastLimitState = {
  id: "leg-compression",
  title: "Leg compression",
  unit: "force",
  kind: "strength",
  measure(c) {
    const { demand, capacity, at, section, blown } = worstStation(c, stressed(c));
    const { required, source } = c.problem.rules.leg;
    const note =
      ratedNote(section.lattice.legsRatedBy) ??
      (blown > TOLD * demand
        ? `${((100 * blown) / demand).toFixed(1)} % of it stands for the wind on the leg itself between its panel points`
        : undefined);
    return [{ limitState: legCompression.id, demand, capacity, at, required, source, of: 0, note }];
  },
};
