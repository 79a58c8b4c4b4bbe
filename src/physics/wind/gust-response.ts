import { flexibleGustFactor } from "./asce7-gust.ts";
import { structuralFactor } from "./en1991-structural.ts";
import { editionOf, RIGID_GUST_FACTOR, risingGround, type WindGivens } from "./wind-action.ts";

/** A structure whose first frequency is at least this is rigid. ASCE 7-16 section 26.2. */
export const RIGID = 1;
/** A mast that sways slower than this is none: the formulas stop here, Hz. */
const SLOWEST = 0.05;

/** What gusts need to know of a structure. */
export interface Swaying {
  /** m. */
  readonly height: number;
  /** Across the wind, m. */
  readonly breadth: number;
  /** First frequency of sway, Hz. */
  readonly frequency: number;
}

/**
 * The gust factor (ASCE 7) or structural factor (EN 1991-1-4) that a structure asks for; null under a uniform
 * pressure, which has its gusts inside. The least is 0.85, and 1.
 */
export function gustAsked(givens: WindGivens, { height, breadth, frequency }: Swaying): number | null {
  const sways = Math.max(frequency, SLOWEST);
  switch (givens.basis) {
    case "uniform":
      return null;
    case "asce7-16":
    case "asce7-22":
      if (sways >= RIGID || givens.speed <= 0) return RIGID_GUST_FACTOR;
      return Math.max(
        RIGID_GUST_FACTOR,
        flexibleGustFactor(editionOf(givens.basis), givens.exposure, givens.speed, height, breadth, sways),
      );
    case "en1991": {
      const orographyFactor = risingGround(givens).factor(0.6 * height);
      return structuralFactor({ ...givens, orographyFactor }, height, breadth, sways);
    }
  }
}

/** Is the factor worked out for each mast? */
export const gustComputed = (givens: WindGivens): boolean =>
  givens.basis === "en1991"
    ? givens.structuralFactor === "computed"
    : givens.basis !== "uniform" && givens.gustFactor === "computed";
