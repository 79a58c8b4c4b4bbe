/** Weight of water, N/m3. */
export const WATER_UNIT_WEIGHT = 9806.65;

/** What the ground checks read of a soil; a catalog soil is one. SI, the friction angle in degrees. */
export interface SoilGivens {
  /** Pa. */
  readonly bearing: number;
  /** Lateral bearing per depth, Pa/m. */
  readonly lateralPerDepth: number;
  /** Pa. */
  readonly lateralCap?: number;
  /** Coefficient on the dead load. */
  readonly friction?: number;
  /** Pa, on the contact area. */
  readonly cohesion?: number;
  /** N/m3. */
  readonly unitWeight: number;
  /** Degrees. */
  readonly frictionAngle?: number;
  /** Undrained shear strength of a clay, ultimate, Pa: `cu` of Broms. Never `cohesion`, which a code allows on the base. */
  readonly undrainedStrength?: number;
  /** Ultimate bond of grout to rock, Pa. */
  readonly groutBond?: number;
}

/** What the ground checks read of a rule set and a site. */
export interface GroundRules {
  /** N/m3. */
  readonly concreteUnitWeight: number;
  /** Half-angle of lifted soil from the vertical, degrees. */
  readonly upliftAngle: number;
  /** On lateral bearing: 2 where the doubling of IBC 1806.3.4 is chosen. Default 1. */
  readonly lateralMultiplier?: number;
  /** Depth of the water table, m. Default: deeper than anything. */
  readonly waterTable?: number;
  /** Share of own weight that a load combination counts. Default 1. */
  readonly deadShare?: number;
}

/** Effective unit weight of soil below the water table, N/m3; the stated unit weight is taken as the saturated one. */
export const submergedUnitWeight = (soil: Pick<SoilGivens, "unitWeight">): number =>
  Math.max(0, soil.unitWeight - WATER_UNIT_WEIGHT);

/** Depth at which lateral bearing stops growing, m. */
function capDepth(soil: SoilGivens, multiplier: number): number {
  if (soil.lateralCap === undefined) return Number.POSITIVE_INFINITY;
  const slope = multiplier * soil.lateralPerDepth;
  return slope > 0 ? soil.lateralCap / slope : Number.POSITIVE_INFINITY;
}

/** Force of lateral bearing per width of face between two depths, N/m. */
export function lateralForce(soil: SoilGivens, from: number, to: number, multiplier = 1): number {
  const slope = multiplier * soil.lateralPerDepth;
  const kink = Math.min(Math.max(capDepth(soil, multiplier), from), to);
  return (slope * (kink ** 2 - from ** 2)) / 2 + (to > kink ? soil.lateralCap! * (to - kink) : 0);
}

/** Moment of lateral bearing, from grade to `depth`, about that depth, per width of face, N m/m. */
export function lateralMoment(soil: SoilGivens, depth: number, multiplier = 1): number {
  const slope = multiplier * soil.lateralPerDepth;
  const kink = Math.min(capDepth(soil, multiplier), depth);
  const below = depth - kink;
  return (
    slope * (kink ** 2 / 2) * (depth - (2 / 3) * kink) + (below > 0 ? (soil.lateralCap! * below ** 2) / 2 : 0)
  );
}

/** Hold of the base against sliding, N. IBC 1806.3.2. */
export function baseHold(soil: SoilGivens, normal: number, area: number): number {
  if (normal <= 0) return 0;
  if (soil.friction !== undefined) return soil.friction * normal;
  return Math.min((soil.cohesion ?? 0) * area, normal / 2);
}
