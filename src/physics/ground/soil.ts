import { fallShare } from "./rankine.ts";

/** Weight of water, N/m3. */
export const WATER_UNIT_WEIGHT = 9806.65;

/** What the ground checks read of one layer of soil. SI, the friction angle in degrees. */
export interface SoilLayer {
  /** Pa. */
  readonly bearing: number;
  /** Lateral bearing per depth below grade, Pa/m. */
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
  /** Shear on a buried upright side over the effective stress there; absent: `jakyFriction` of the friction angle. */
  readonly sideFriction?: number;
  /** Pressure per settlement under a footing of the size in hand, N/m3: Winkler's. */
  readonly subgradeModulus?: number;
}

/**
 * The profile that the ground checks read; a catalog soil is one. Its own values hold from grade down to the first
 * of `layers`, the last of them without end. A plain soil is a profile of one layer.
 */
export interface SoilGivens extends SoilLayer {
  /** What lies beneath, top down, each from its depth below grade, m. */
  readonly layers?: readonly (SoilLayer & { readonly from: number })[];
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
  /** Of the ground, per distance: before every face it is taken to fall away. Default: level. */
  readonly fall?: number;
  /** Share of own weight that a load combination counts. Default 1. */
  readonly deadShare?: number;
}

/** Effective unit weight of soil below the water table, N/m3; the stated unit weight is taken as the saturated one. */
export const submergedUnitWeight = (soil: Pick<SoilLayer, "unitWeight">): number =>
  Math.max(0, soil.unitWeight - WATER_UNIT_WEIGHT);

/**
 * Own weight where it holds, N: the share of it that the load combination counts, less all of the water that it
 * displaces, for water lifts whatever the weight turns out to be (EN 1997-1 2.4.7.4: 0.9 of the one, all of the other;
 * from memory).
 * @param dry N @param submerged m3
 */
export const heldWeight = (dry: number, submerged: number, { deadShare = 1 }: GroundRules): number =>
  deadShare * dry - submerged * WATER_UNIT_WEIGHT;

/** What is left of own weight by its share: it presses, where that is worse, as much as it holds. N. */
export const unheld = (dry: number, { deadShare = 1 }: GroundRules): number => (1 - deadShare) * dry;

const count = (soil: SoilGivens): number => 1 + (soil.layers?.length ?? 0);
const layer = (soil: SoilGivens, i: number): SoilLayer => (i === 0 ? soil : soil.layers![i - 1]);
const topOf = (soil: SoilGivens, i: number): number => (i === 0 ? 0 : soil.layers![i - 1].from);
const bottomOf = (soil: SoilGivens, i: number): number => soil.layers?.[i]?.from ?? Number.POSITIVE_INFINITY;

/** A layer and the part of a stretch of depth that lies in it, m below grade. */
export interface Stretch<L extends SoilLayer = SoilLayer> {
  readonly layer: L;
  readonly from: number;
  readonly to: number;
}

/** The layers met between two depths, top down. A plain soil gives the whole stretch. */
export function stretches<S extends SoilGivens>(
  soil: S,
  from: number,
  to: number,
): Stretch<S | NonNullable<S["layers"]>[number]>[] {
  const found: Stretch<S | NonNullable<S["layers"]>[number]>[] = [];
  for (let i = 0; i < count(soil); i++) {
    const a = Math.max(from, topOf(soil, i));
    const b = Math.min(to, bottomOf(soil, i));
    if (b > a) found.push({ layer: layer(soil, i) as S, from: a, to: b });
  }
  return found;
}

/** The layer that a base at this depth rests on: at a boundary the lower one. */
export function soilAt(soil: SoilGivens, depth: number): SoilLayer {
  let i = count(soil) - 1;
  while (i > 0 && topOf(soil, i) > depth) i--;
  return layer(soil, i);
}

/**
 * What multiplies the lateral bearing on a face down to a depth: the rule set's own multiplier, what a slope leaves of
 * it, and under water the share of its weight that the soil keeps there. Water anywhere above counts for the whole face: safe.
 */
export function lateralMultiplier(soil: SoilGivens, depth: number, rules: GroundRules): number {
  const multiplier = (rules.lateralMultiplier ?? 1) * fallShare(rules.fall ?? 0);
  if (!((rules.waterTable ?? Number.POSITIVE_INFINITY) < depth)) return multiplier;
  let share = 1;
  for (const { layer: met } of stretches(soil, 0, depth))
    share = Math.min(share, submergedUnitWeight(met) / met.unitWeight);
  return multiplier * share;
}

const leastOf = (values: readonly (number | undefined)[]): number | undefined =>
  values.some((value) => value === undefined) ? undefined : Math.min(...(values as number[]));

/**
 * A plain soil no layer down to this depth is weaker than: for methods that are derived for uniform ground only.
 * What one layer does not state, it does not state; a cap that one layer states holds for all.
 */
export function weakestTo(soil: SoilGivens, depth: number): SoilGivens {
  const met = stretches(soil, 0, depth).map((part) => part.layer);
  if (met.length < 2) return soil.layers ? { ...soil, layers: undefined } : soil;
  const least = (key: Exclude<keyof SoilLayer, "bearing" | "lateralPerDepth" | "unitWeight">) =>
    leastOf(met.map((one) => one[key]));
  const cap = Math.min(...met.map((one) => one.lateralCap ?? Number.POSITIVE_INFINITY));
  return {
    bearing: Math.min(...met.map((one) => one.bearing)),
    lateralPerDepth: Math.min(...met.map((one) => one.lateralPerDepth)),
    lateralCap: Number.isFinite(cap) ? cap : undefined,
    unitWeight: Math.min(...met.map((one) => one.unitWeight)),
    friction: least("friction"),
    cohesion: least("cohesion"),
    frictionAngle: least("frictionAngle"),
    undrainedStrength: least("undrainedStrength"),
    groutBond: least("groutBond"),
    sideFriction: least("sideFriction"),
    subgradeModulus: least("subgradeModulus"),
  };
}

/** Unit weight between two depths by thickness, N/m3, water left out. */
export function meanUnitWeight(soil: SoilGivens, from: number, to: number): number {
  const met = stretches(soil, from, to);
  if (met.length < 2) return (met[0]?.layer ?? soilAt(soil, from)).unitWeight;
  return met.reduce((sum, part) => sum + part.layer.unitWeight * (part.to - part.from), 0) / (to - from);
}

/**
 * Bearing under a square base, Pa of its own pressure: of the layer it rests on, and of each weaker layer beneath
 * under the load spread at 2 down to 1 out. docs/theory/ground.md.
 */
export function bearingUnder(soil: SoilGivens, depth: number, width: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count(soil); i++) {
    if (bottomOf(soil, i) <= depth) continue;
    const below = Math.max(0, topOf(soil, i) - depth);
    least = Math.min(least, layer(soil, i).bearing * (1 + below / width) ** 2);
  }
  return least;
}

/** Depth at which lateral bearing of a layer stops growing, m. */
function capDepth(soil: SoilLayer, slope: number): number {
  if (soil.lateralCap === undefined) return Number.POSITIVE_INFINITY;
  return slope > 0 ? soil.lateralCap / slope : Number.POSITIVE_INFINITY;
}

/** Lateral bearing at a depth, Pa. */
export function lateralPressure(soil: SoilGivens, depth: number, multiplier = 1): number {
  const { lateralPerDepth, lateralCap } = soilAt(soil, depth);
  return Math.min(multiplier * lateralPerDepth * depth, lateralCap ?? Number.POSITIVE_INFINITY);
}

/** Force of lateral bearing per width of face between two depths, N/m. */
export function lateralForce(soil: SoilGivens, from: number, to: number, multiplier = 1): number {
  let sum = 0;
  for (let i = 0, n = count(soil); i < n; i++) {
    const a = Math.max(from, topOf(soil, i));
    const b = Math.min(to, bottomOf(soil, i));
    if (!(b > a)) continue;
    const here = layer(soil, i);
    const slope = multiplier * here.lateralPerDepth;
    const kink = Math.min(Math.max(capDepth(here, slope), a), b);
    sum += (slope * (kink ** 2 - a ** 2)) / 2 + (b > kink ? here.lateralCap! * (b - kink) : 0);
  }
  return sum;
}

/** Moment of lateral bearing, from grade to `depth`, about that depth, per width of face, N m/m. */
export function lateralMoment(soil: SoilGivens, depth: number, multiplier = 1): number {
  let sum = 0;
  for (let i = 0, n = count(soil); i < n; i++) {
    const a = topOf(soil, i);
    const b = Math.min(depth, bottomOf(soil, i));
    if (!(b > a)) continue;
    const here = layer(soil, i);
    const slope = multiplier * here.lateralPerDepth;
    const kink = Math.min(Math.max(capDepth(here, slope), a), b);
    // the triangle from grade to a depth, less the one that belongs to the layers above
    const grown =
      slope * (kink ** 2 / 2) * (depth - (2 / 3) * kink) - slope * (a ** 2 / 2) * (depth - (2 / 3) * a);
    const capped = b > kink ? (here.lateralCap! * ((depth - kink) ** 2 - (depth - b) ** 2)) / 2 : 0;
    sum += grown + capped;
  }
  return sum;
}

/**
 * Hold of the base against sliding, N. IBC 1806.3.2.
 * @param soil of the layer that the base rests on
 */
export function baseHold(soil: SoilLayer, normal: number, area: number): number {
  if (normal <= 0) return 0;
  if (soil.friction !== undefined) return soil.friction * normal;
  return Math.min((soil.cohesion ?? 0) * area, normal / 2);
}
