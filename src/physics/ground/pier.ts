import type { FootingLoads, Resistance, TakeOff } from "./loads.ts";
import { passiveCoefficient } from "./rankine.ts";
import { type GroundRules, type SoilGivens, submergedUnitWeight, weakestTo } from "./soil.ts";

/** A round drilled pier, its top at grade. m. */
export interface PierGeometry {
  readonly diameter: number;
  /** Grade to its tip. */
  readonly depth: number;
}

const TWELVE_FEET = 12 * 0.3048;

/**
 * A pier as a post free at grade, N m: IBC 1807.3.2.1 solved for the load, the 12 ft limit read literally.
 * Holds as the soil row states it: allowable. docs/theory/ground.md.
 */
export function pierAsPost(
  { diameter, depth }: PierGeometry,
  { shear, moment }: FootingLoads,
  soil: SoilGivens,
  rules: GroundRules,
): Resistance {
  const uniform = weakestTo(soil, depth);
  const slope = uniform.lateralPerDepth * (rules.lateralMultiplier ?? 1);
  const pressure = Math.min(
    slope * Math.min(depth / 3, TWELVE_FEET),
    uniform.lateralCap ?? Number.POSITIVE_INFINITY,
  );
  return {
    demand: Math.abs(shear) * depth + 1.09 * Math.abs(moment),
    capacity: (pressure * diameter * depth ** 2) / 2.34,
  };
}

/** A pier as a short rigid pile in sand about its tip, N m, ultimate: Broms 1964. Null without a friction angle. */
export function pierInSand(
  { diameter, depth }: PierGeometry,
  { shear, moment }: FootingLoads,
  soil: SoilGivens,
  rules: GroundRules,
): Resistance | null {
  const uniform = weakestTo(soil, depth);
  if (!uniform.frictionAngle) return null;
  // water anywhere above the tip lifts the whole depth: safe
  const wet = (rules.waterTable ?? Number.POSITIVE_INFINITY) < depth;
  const unitWeight = wet ? submergedUnitWeight(uniform) : uniform.unitWeight;
  return {
    demand: Math.abs(shear) * depth + Math.abs(moment),
    capacity: 0.5 * unitWeight * diameter * depth ** 3 * passiveCoefficient(uniform.frictionAngle),
  };
}

/** Drilled and filled neat; the collar of 6 in. is formed, common practice, no source. */
export function pierTakeOff({ diameter, depth }: PierGeometry): TakeOff {
  const volume = (Math.PI / 4) * diameter ** 2 * depth;
  return { concrete: volume, dug: volume, hole: depth, formed: Math.PI * diameter * Math.min(0.1524, depth) };
}
