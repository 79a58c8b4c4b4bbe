import { type MastLimitState, worstStation } from "./mast-checks.ts";

/** The windward leg, which the thrust relieves; the splice counts where the catalog rates it. */
export const legTension: MastLimitState = {
  id: "leg-tension",
  title: "Leg tension",
  unit: "force",
  kind: "strength",
  measure(c) {
    const { compression, moment } = c.forces;
    const { section: _, ...worst } = worstStation(
      c,
      (s, { lattice }) => moment[s] / lattice.momentArm - compression[s] * lattice.axialShare,
      ({ lattice }) => lattice.legTension,
    );
    return [{ limitState: legTension.id, ...worst, ...c.problem.rules.legTension, of: 0 }];
  },
};
