import type { TakeOff } from "./loads.ts";
import { activeCoefficient, passiveCoefficient } from "./rankine.ts";
import { type GroundRules, lateralForce, type SoilGivens, WATER_UNIT_WEIGHT } from "./soil.ts";
import { upliftPyramid } from "./uplift-pyramid.ts";

/** A buried concrete beam across the pull. m. */
export interface DeadmanGeometry {
  /** Across the pull. */
  readonly length: number;
  readonly height: number;
  /** Along the pull. */
  readonly width: number;
  /** Grade to the bottom of the block. */
  readonly depth: number;
}

export interface DeadmanCapacity {
  /** N: weight of concrete and of the soil it lifts. */
  readonly uplift: number;
  /** N, against the soil in front of the face. */
  readonly lateral: number;
  /** Where the lateral value comes from: Rankine's is ultimate, lateral bearing is as the soil row states it. */
  readonly lateralBasis: "rankine" | "lateral-bearing";
}

/** Integral of the effective vertical stress between two depths, N/m. */
function stressIntegral(unitWeight: number, from: number, to: number, waterTable: number): number {
  const dry = (unitWeight * (to ** 2 - from ** 2)) / 2;
  const wetFrom = Math.max(from, waterTable);
  if (wetFrom >= to) return dry;
  const pore = (WATER_UNIT_WEIGHT * ((to - waterTable) ** 2 - (wetFrom - waterTable) ** 2)) / 2;
  return Math.max(0, dry - pore);
}

/**
 * What a deadman holds, nominal. docs/theory/ground.md.
 * @throws RangeError where the block is higher than it is deep
 */
export function deadmanCapacity(
  deadman: DeadmanGeometry,
  soil: SoilGivens,
  rules: GroundRules,
): DeadmanCapacity {
  const { length, height, width, depth } = deadman;
  if (!(height <= depth && length > 0 && height > 0 && width > 0))
    throw new RangeError(
      `deadman: found length ${length}, height ${height}, width ${width}, depth ${depth} m, expected sizes above 0 and the block below grade`,
    );
  const water = rules.waterTable ?? Number.POSITIVE_INFINITY;
  const share = rules.deadShare ?? 1;
  const concrete = length * height * width;
  const lifted = upliftPyramid(length, width, depth, rules.upliftAngle);
  const submerged =
    water < depth ? upliftPyramid(length, width, depth - Math.max(0, water), rules.upliftAngle) : 0;
  const uplift =
    share *
    (concrete * rules.concreteUnitWeight +
      (lifted - concrete) * soil.unitWeight -
      submerged * WATER_UNIT_WEIGHT);
  const top = depth - height;
  if (soil.frictionAngle === undefined)
    return {
      uplift: Math.max(0, uplift),
      lateral: length * lateralForce(soil, top, depth, rules.lateralMultiplier ?? 1),
      lateralBasis: "lateral-bearing",
    };
  const net = passiveCoefficient(soil.frictionAngle) - activeCoefficient(soil.frictionAngle);
  return {
    uplift: Math.max(0, uplift),
    lateral: length * net * stressIntegral(soil.unitWeight, top, depth, water),
    lateralBasis: "rankine",
  };
}

export function deadmanTakeOff({ length, height, width, depth }: DeadmanGeometry): TakeOff {
  return { concrete: length * height * width, dug: length * width * depth, formed: 0 };
}
