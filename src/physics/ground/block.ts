import { effectiveSquare, meyerhofPressure } from "./eccentric.ts";
import { type FootingLoads, type FootingResistance, lifted, type TakeOff } from "./loads.ts";
import {
  baseHold,
  bearingUnder,
  type GroundRules,
  heldWeight,
  lateralForce,
  lateralMoment,
  lateralMultiplier,
  type SoilGivens,
  soilAt,
  unheld,
} from "./soil.ts";

/** Height of the formed collar of a block cast in a neat hole, m (6 in.): common practice, no source. */
const COLLAR = 0.1524;

/** A square concrete block, its top at grade. m. */
export interface BlockGeometry {
  readonly width: number;
  readonly depth: number;
}

/**
 * A block under a mast, wind from any direction. docs/theory/ground.md, exact way.
 * The soil's push on the side relieves the base before the base bears eccentrically.
 */
export function blockResistance(
  block: BlockGeometry,
  loads: FootingLoads,
  soil: SoilGivens,
  rules: GroundRules,
): FootingResistance {
  const { width, depth } = block;
  const multiplier = lateralMultiplier(soil, depth, rules);
  const submerged = Math.max(0, depth - (rules.waterTable ?? Number.POSITIVE_INFINITY));
  const dry = width ** 2 * depth * rules.concreteUnitWeight;
  const normal = loads.compression + heldWeight(dry, width ** 2 * submerged, rules);
  const bearing = bearingUnder(soil, depth, width);
  if (!(normal > 0)) return lifted(bearing);

  const soilMoment = width * lateralMoment(soil, depth, multiplier);
  const demand = Math.abs(loads.moment) + Math.abs(loads.shear) * depth;
  const atBase = Math.max(0, demand - soilMoment);
  const eccentricity = atBase / normal;
  const area = effectiveSquare(width, eccentricity);
  return {
    bearing: { demand: meyerhofPressure(width, normal, atBase, unheld(dry, rules)), capacity: bearing },
    overturning: { demand, capacity: (normal * width) / 2 + soilMoment },
    sliding: {
      demand: Math.abs(loads.shear),
      capacity:
        baseHold(soilAt(soil, depth), normal, area) + width * lateralForce(soil, 0, depth, multiplier),
    },
    normal,
    eccentricity,
  };
}

/** Cast in a neat hole, whatever holds it there: a block under a mast, round an anchor post or on rock. */
export function blockTakeOff({ width, depth }: BlockGeometry): TakeOff {
  const volume = width ** 2 * depth;
  return { concrete: volume, dug: volume, hole: depth, formed: 4 * width * Math.min(COLLAR, depth) };
}
