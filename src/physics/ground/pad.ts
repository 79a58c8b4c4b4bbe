import { effectiveSquare, meyerhofPressure } from "./eccentric.ts";
import { type FootingLoads, type FootingResistance, lifted, type TakeOff } from "./loads.ts";
import {
  baseHold,
  bearingUnder,
  type GroundRules,
  heldWeight,
  lateralForce,
  lateralMultiplier,
  meanUnitWeight,
  type SoilGivens,
  soilAt,
  unheld,
} from "./soil.ts";

/** A square pad with a square pedestal up to grade. m. */
export interface PadGeometry {
  readonly width: number;
  readonly thickness: number;
  /** Grade to underside; at least the thickness. */
  readonly depth: number;
  /** Side of the pedestal. */
  readonly pedestal: number;
}

/** Own weight with the soil on the pad, N: dry, and as it holds, less buoyancy. */
export function padWeight(
  pad: PadGeometry,
  soil: SoilGivens,
  rules: GroundRules,
): { readonly dry: number; readonly held: number } {
  const stem = pad.depth - pad.thickness;
  const concrete = pad.width ** 2 * pad.thickness + pad.pedestal ** 2 * stem;
  const fill = (pad.width ** 2 - pad.pedestal ** 2) * stem;
  // fill and concrete together fill the hole, so water lifts the whole plan below its table
  const submerged = pad.width ** 2 * Math.max(0, pad.depth - (rules.waterTable ?? Number.POSITIVE_INFINITY));
  const dry = concrete * rules.concreteUnitWeight + fill * meanUnitWeight(soil, 0, stem);
  return { dry, held: heldWeight(dry, submerged, rules) };
}

/** Concrete and fill over the underside outside the pedestal, Pa: as the weight of the pad counts, and dry. */
export function padCover(
  pad: PadGeometry,
  soil: SoilGivens,
  rules: GroundRules,
): { readonly counted: number; readonly dry: number } {
  const stem = pad.depth - pad.thickness;
  const dry = pad.thickness * rules.concreteUnitWeight + stem * meanUnitWeight(soil, 0, stem);
  const submerged = Math.max(0, pad.depth - (rules.waterTable ?? Number.POSITIVE_INFINITY));
  return { counted: heldWeight(dry, submerged, rules), dry };
}

/**
 * A pad under a mast, wind from any direction. docs/theory/ground.md.
 * @throws RangeError where the pad is thicker than it is deep or narrower than its pedestal
 */
export function padResistance(
  pad: PadGeometry,
  loads: FootingLoads,
  soil: SoilGivens,
  rules: GroundRules,
): FootingResistance {
  const { width, thickness, depth, pedestal } = pad;
  if (!(depth >= thickness && width >= pedestal))
    throw new RangeError(
      `pad: found depth ${depth} m, thickness ${thickness} m, width ${width} m, pedestal ${pedestal} m, expected depth at least the thickness and width at least the pedestal`,
    );
  const { dry, held } = padWeight(pad, soil, rules);
  const normal = loads.compression + held;
  const bearing = bearingUnder(soil, depth, width);
  if (!(normal > 0)) return lifted(bearing);

  const demand = Math.abs(loads.moment) + Math.abs(loads.shear) * depth;
  const eccentricity = demand / normal;
  const area = effectiveSquare(width, eccentricity);
  const lateral = width * lateralForce(soil, depth - thickness, depth, lateralMultiplier(soil, depth, rules));
  return {
    bearing: { demand: meyerhofPressure(width, normal, demand, unheld(dry, rules)), capacity: bearing },
    overturning: { demand, capacity: (normal * width) / 2 },
    sliding: {
      demand: Math.abs(loads.shear),
      capacity: baseHold(soilAt(soil, depth), normal, area) + lateral,
    },
    normal,
    eccentricity,
  };
}

export function padTakeOff({ width, thickness, depth, pedestal }: PadGeometry): TakeOff {
  const stem = Math.max(0, depth - thickness);
  return {
    concrete: width ** 2 * thickness + pedestal ** 2 * stem,
    dug: width ** 2 * depth,
    hole: depth,
    formed: 4 * pedestal * stem,
  };
}
