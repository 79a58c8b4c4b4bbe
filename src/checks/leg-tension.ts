import type { SectionModel } from "../problem/types.ts";
import { type MastLimitState, type Stressed, worstStation } from "./mast-checks.ts";

const stressed = ({ lattice }: SectionModel): Stressed => ({
  compression: -lattice.axialShare,
  moment: 1 / lattice.momentArm,
  shear: 0,
  torque: 0,
  wind: 0,
  capacity: lattice.legTension,
});

/** The windward leg, which the thrust relieves; the splice counts where the catalog rates it. */
export const legTension: MastLimitState = {
  id: "leg-tension",
  title: "Leg tension",
  unit: "force",
  kind: "strength",
  measure(c) {
    const { demand, capacity, at } = worstStation(c, stressed);
    const { required, source } = c.problem.rules.legTension;
    return [{ limitState: legTension.id, demand, capacity, at, required, source, of: 0 }];
  },
};
