import type { MastLimitState } from "./mast-checks.ts";

/** After an accident the mast need only stand: so far the method's small turns hold (docs/theory/mast.md), degrees. */
const ACCIDENT = 10;

/**
 * Lean from plumb anywhere on the mast: the slope of the chord of every element and the turn of every node.
 * It keeps antennas pointed, and it bounds the drift that the search's bounds allow for (docs/theory/search.md).
 */
export const tilt: MastLimitState = {
  id: "tilt",
  title: "Lean of the mast",
  unit: "angle",
  kind: "strength",
  measure(c) {
    const { mast } = c;
    const per = mast.perNode;
    const two = per === 5;
    let most = 0;
    let at = 0;
    const { d } = mast;
    for (let i = 0; i < mast.nodes; i++) {
      const o = i * per;
      const across = two ? d[o + 4] : 0;
      let lean = d[o + 2] * d[o + 2] + across * across;
      if (i > 0) {
        const chord = (d[o + 1] - d[o - per + 1]) / mast.length[i - 1];
        const aside = two ? (d[o + 3] - d[o - per + 3]) / mast.length[i - 1] : 0;
        lean = Math.max(lean, chord * chord + aside * aside);
      }
      if (lean > most) {
        most = lean;
        at = mast.z[i];
      }
    }
    const stated = c.problem.rules.tilt;
    const accident = c.wind.purpose === "accident";
    const degrees = accident ? ACCIDENT : stated.most;
    const source = accident ? "range of the method" : stated.source;
    return [
      {
        limitState: tilt.id,
        demand: Math.sqrt(most),
        capacity: (degrees * Math.PI) / 180,
        required: 1,
        source,
        of: 0,
        at,
      },
    ];
  },
};
