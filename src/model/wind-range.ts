import { type InputError, inputError } from "./input-error.ts";
import type { Study, WindGivens } from "./study.ts";

const FOOT = 0.3048;
/** A pipe ends a little above its highest antenna, m. */
const PIPE_END = 0.3;

/** Gradient heights of ASCE 7 table 26.11-1, ft: its profile ends there. */
const gradients = {
  "asce7-16": { B: 1200, C: 900, D: 700 },
  "asce7-22": { B: 3280, C: 2460, D: 1935 },
} as const;

/** Greatest height over the ground that a wind basis speaks of, m, and why. docs/theory/wind.md has the table. */
export function windReach(wind: WindGivens): { readonly height: number; readonly why: string } {
  switch (wind.basis) {
    case "uniform":
      return {
        height: 300 * FOOT,
        why: "one pressure over the height was the practice to 300 ft (RS-222-C, from memory)",
      };
    case "en1991":
      return { height: 200, why: "the profile of EN 1991-1-4 ends at 200 m (4.3.2)" };
    default:
      return {
        height: gradients[wind.basis][wind.exposure] * FOOT,
        why: `the profile of ASCE ${wind.basis.slice(4)} ends at the gradient height of exposure ${wind.exposure} (table 26.11-1)`,
      };
  }
}

/** Refuses a study whose masts or antennas stand higher than its wind is known. */
export function windOutOfReach({ site, wishes }: Study): InputError[] {
  const { height } = wishes;
  const highest = typeof height === "number" ? height : "from" in height ? height.to : Math.max(...height);
  const above = Math.max(0, ...wishes.packages.flatMap(({ items }) => items.map((item) => item.above ?? 0)));
  const { height: reach, why } = windReach(site.wind);
  const tip = highest + above + PIPE_END;
  if (tip <= reach) return [];
  return [
    inputError(
      ["wishes", "height"],
      `masts whose antennas reach ${tip.toFixed(1)} m over the ground`,
      `at most ${reach.toFixed(1)} m: ${why}`,
    ),
  ];
}
