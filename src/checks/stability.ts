import type { MastLimitState } from "./mast-checks.ts";

/**
 * How far the mast's compression may grow before the deformed mast buckles, guys at their tangent stiffness.
 * Demand 1, capacity the factor: utilisation is required / factor.
 */
export const stability: MastLimitState = {
  id: "stability",
  title: "Whole-mast stability",
  unit: "ratio",
  kind: "strength",
  measure(c) {
    const factor = c.mast.bucklingFactor();
    const capacity = factor === Number.POSITIVE_INFINITY ? 1e9 : factor;
    return [{ limitState: stability.id, demand: 1, capacity, ...c.problem.rules.stability, of: 0 }];
  },
};
