import { flexibleGustFactor } from "../physics/wind/asce7-gust.ts";
import type { MastLimitState } from "./mast-checks.ts";

/** A structure whose first frequency is at least this is rigid. ASCE 7-16 section 26.2. */
const RIGID = 1;

/**
 * Does the gust factor that the study states cover this mast? A rigid structure takes 0.85; one that sways slower
 * than once a second resonates with gusts and asks more. Measured once, on the mast as rigged.
 */
export const gust: MastLimitState = {
  id: "gust-factor",
  title: "Gust factor",
  unit: "ratio",
  kind: "limit",
  measure({ problem, model, mast, wind }) {
    const basis = problem.study.site.wind;
    if (wind.toward !== null || wind.weather !== "bare") return [];
    if (basis.basis !== "asce7-16" && basis.basis !== "asce7-22") return [];
    const frequency = mast.swayFrequency();
    const breadth = model.stack.parts[0].section.lattice.outerWidth;
    const asked =
      frequency >= RIGID
        ? 0.85
        : flexibleGustFactor(
            basis.exposure,
            basis.speed,
            model.stack.height,
            breadth,
            Math.max(frequency, 0.05),
          );
    return [
      {
        limitState: gust.id,
        demand: asked,
        capacity: basis.gustFactor,
        required: 1,
        source: `ASCE ${basis.basis.slice(4)} section 26.11, from memory`,
        of: 0,
        note: `first sway frequency ${frequency.toFixed(2)} Hz${
          asked > basis.gustFactor ? `: state a gust factor of ${asked.toFixed(2)} or more` : ""
        }`,
      },
    ];
  },
};
