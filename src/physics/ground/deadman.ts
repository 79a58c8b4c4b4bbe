import { CONE_ANGLE, type LiftedBlock, type UpliftHold, upliftHold } from "./lifted-soil.ts";
import type { TakeOff } from "./loads.ts";
import { netPassiveForce } from "./passive.ts";
import { type GroundRules, lateralForce, lateralMultiplier, type SoilGivens } from "./soil.ts";

/** A buried concrete beam across the pull. */
export type DeadmanGeometry = LiftedBlock;

export interface DeadmanCapacity extends UpliftHold {
  /** N, against the soil in front of the face. */
  readonly lateral: number;
  /** Where the lateral value comes from: Rankine's is ultimate, lateral bearing is as the soil row states it. */
  readonly lateralBasis: "rankine" | "lateral-bearing";
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
  const held = upliftHold(deadman, soil, rules);
  const top = depth - height;
  const water = rules.waterTable ?? Number.POSITIVE_INFINITY;
  const rankine = netPassiveForce(soil, length, top, depth, water, rules.fall);
  return rankine === null
    ? {
        ...held,
        lateral: length * lateralForce(soil, top, depth, lateralMultiplier(soil, depth, rules)),
        lateralBasis: "lateral-bearing",
      }
    : { ...held, lateral: rankine, lateralBasis: "rankine" };
}

/**
 * The most that the soil beyond the block's ends can be of what holds it down, as a share: that of a slice at grade,
 * which is the most of any slice, however soil and water are layered.
 */
export function heldAtEnds({ length, depth, shape = "prism" }: DeadmanGeometry, rules: GroundRules): number {
  const angle = shape === "prism" ? rules.upliftAngle : CONE_ANGLE;
  const beyond = 2 * depth * Math.tan((angle * Math.PI) / 180);
  return beyond / (length + beyond);
}

export function deadmanTakeOff({ length, height, width, depth }: DeadmanGeometry): TakeOff {
  return { concrete: length * height * width, dug: length * width * depth, hole: depth, formed: 0 };
}
