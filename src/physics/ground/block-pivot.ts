import { lateralForce, lateralMoment, type SoilGivens } from "./soil.ts";

/** A block's soil moment with its horizontal forces in balance. */
export interface BalancedSoil {
  /** Depth of the point about which the block turns, m; its full depth where nothing pushes back. */
  readonly pivotDepth: number;
  /** About the toe, N m. */
  readonly moment: number;
}

/**
 * Soil moment about the toe when the push of the soil may not exceed what holds it: wind shear, base friction and
 * the soil pushing back below the pivot. docs/theory/ground.md; statics.
 * @param held wind shear and base friction together, N
 */
export function balancedSoilMoment(
  width: number,
  depth: number,
  soil: SoilGivens,
  held: number,
  multiplier = 1,
): BalancedSoil {
  const push = (from: number, to: number) => width * lateralForce(soil, from, to, multiplier);
  const whole = width * lateralMoment(soil, depth, multiplier);
  if (push(0, depth) <= held) return { pivotDepth: depth, moment: whole };
  let low = 0;
  let high = depth;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (push(0, middle) - push(middle, depth) < held) low = middle;
    else high = middle;
  }
  // above the pivot, about the toe: the moment about the pivot, and the push times the way down to the toe
  const above = width * lateralMoment(soil, low, multiplier) + push(0, low) * (depth - low);
  return { pivotDepth: low, moment: 2 * above - whole };
}
