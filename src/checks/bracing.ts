import { type MastLimitState, worstStation } from "./mast-checks.ts";

/** Shear square to the bent mast against the diagonals of its faces, at the worst direction. */
export const bracing: MastLimitState = {
  id: "bracing-shear",
  title: "Bracing shear",
  unit: "force",
  kind: "strength",
  measure(c) {
    const { shear } = c.forces;
    const worst = worstStation(
      c,
      (s) => shear[s],
      ({ lattice }) => lattice.shearStrength,
    );
    return [{ limitState: bracing.id, ...worst, ...c.problem.rules.bracing, of: 0 }];
  },
};
