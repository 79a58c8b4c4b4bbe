import type { SectionModel } from "../problem/types.ts";
import { type MastLimitState, ratedNote, type Stressed, worstStation } from "./mast-checks.ts";

const stressed = ({ lattice }: SectionModel): Stressed => ({
  compression: lattice.axialShare,
  moment: 1 / lattice.momentArm,
  shear: 0,
  torque: 0,
  capacity: lattice.legCompression,
});

/** The worst leg at the worst station: its share of the thrust and the moment over the lever of the legs. */
export const legCompression: MastLimitState = {
  id: "leg-compression",
  title: "Leg compression",
  unit: "force",
  kind: "strength",
  measure(c) {
    const { demand, capacity, at, section } = worstStation(c, stressed);
    const { required, source } = c.problem.rules.leg;
    const note = ratedNote(section.lattice.legsRatedBy);
    return [{ limitState: legCompression.id, demand, capacity, at, required, source, of: 0, note }];
  },
};
