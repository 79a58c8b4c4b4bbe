import type { TakeOff } from "./loads.ts";
import { netPassiveForce } from "./passive.ts";
import {
  type GroundRules,
  lateralForce,
  lateralMultiplier,
  type SoilGivens,
  stretches,
  WATER_UNIT_WEIGHT,
} from "./soil.ts";
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

/** Weight of the soil in the prism above a block, the block's own room left out, N, as if dry. */
function liftedSoil(
  { length, height, width, depth }: DeadmanGeometry,
  soil: SoilGivens,
  angle: number,
): number {
  const below = (level: number) => upliftPyramid(length, width, depth - level, angle);
  return stretches(soil, 0, depth).reduce((sum, { layer, from, to }) => {
    const block = Math.min(height, depth - from) - Math.min(height, depth - to);
    return sum + (below(from) - below(to) - length * block * width) * layer.unitWeight;
  }, 0);
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
  const submerged =
    water < depth ? upliftPyramid(length, width, depth - Math.max(0, water), rules.upliftAngle) : 0;
  const uplift =
    share *
    (concrete * rules.concreteUnitWeight +
      liftedSoil(deadman, soil, rules.upliftAngle) -
      submerged * WATER_UNIT_WEIGHT);
  const top = depth - height;
  const rankine = netPassiveForce(soil, length, top, depth, water);
  return rankine === null
    ? {
        uplift: Math.max(0, uplift),
        lateral: length * lateralForce(soil, top, depth, lateralMultiplier(soil, depth, rules)),
        lateralBasis: "lateral-bearing",
      }
    : { uplift: Math.max(0, uplift), lateral: rankine, lateralBasis: "rankine" };
}

export function deadmanTakeOff({ length, height, width, depth }: DeadmanGeometry): TakeOff {
  return { concrete: length * height * width, dug: length * width * depth, hole: depth, formed: 0 };
}
