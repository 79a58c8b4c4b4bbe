import type { SectionModel } from "../problem/types.ts";
import { type MastLimitState, ratedNote, type Stressed, worstStation } from "./mast-checks.ts";

const stressed = ({ lattice }: SectionModel): Stressed => ({
  compression: 0,
  moment: 0,
  shear: 1,
  torque: lattice.shearStrength / lattice.torsionStrength,
  wind: 0,
  capacity: lattice.shearStrength,
});

/**
 * Shear square to the bent mast against the diagonals of its faces, at the worst direction. Torque goes round all
 * faces alike and adds to the shear of the worst one: it counts as the shear that would use the bracing as much.
 */
export const bracing: MastLimitState = {
  id: "bracing-shear",
  title: "Bracing shear",
  unit: "force",
  kind: "strength",
  measure(c) {
    const { demand, capacity, at, section } = worstStation(c, stressed);
    const { required, source } = c.problem.rules.bracing;
    const rated = ratedNote(section.lattice.bracingRatedBy);
    const turned = c.twist ? "with the torque of antennas beside the axis" : undefined;
    const note = turned && rated ? `${turned}; ${rated}` : (turned ?? rated);
    return [{ limitState: bracing.id, demand, capacity, at, required, source, of: 0, note }];
  },
};
