import { liftedWeight } from "./lifted-soil.ts";
import { pierAsPost } from "./pier.ts";
import {
  type GroundRules,
  heldWeight,
  lateralMoment,
  lateralMultiplier,
  type SoilGivens,
  stretches,
  submergedUnitWeight,
} from "./soil.ts";

/** A square block, its top at grade, with a post that the guys pull at a height above it. m. */
export interface AnchorPostGeometry {
  readonly width: number;
  /** Grade to the underside of the block. */
  readonly depth: number;
  /** Of the guys' hold above grade. */
  readonly height: number;
}

/** What the block holds, nominal. Its lateral values are as the soil row states them. docs/theory/ground.md. */
export interface AnchorPostCapacity {
  /** N: own weight less buoyancy, and the shear of the soil on its sides, at most the prism that it would lift. */
  readonly uplift: number;
  /** N at the height of the guys: the block as a post free at grade, IBC 1807.3.2.1. */
  readonly lateral: number;
  /** N m about the toe: half the width of its weight, and lateral bearing on its face. */
  readonly overturning: number;
}

const RADIANS = Math.PI / 180;

/** Shear over effective stress on upright concrete in sand: `K0 tan(phi)` with `K0 = 1 - sin(phi)` (Jaky 1944). */
export const jakyFriction = (frictionAngle: number): number =>
  (1 - Math.sin(frictionAngle * RADIANS)) * Math.tan(frictionAngle * RADIANS);
/** Share of the undrained strength that sticks to concrete: our choice, low among textbooks' 0.3 to 1. */
const ADHESION = 0.5;

/**
 * Shear of the soil on upright concrete from grade down, N: sand its side friction on the effective stress, clay its
 * cohesion, or half its undrained strength; the rest holds nothing.
 */
export function sideShear(soil: SoilGivens, perimeter: number, depth: number, waterTable: number): number {
  let stress = 0;
  let sum = 0;
  for (const { layer, from, to } of stretches(soil, 0, depth)) {
    const cut = Math.min(Math.max(waterTable, from), to);
    for (const [a, b, weight] of [
      [from, cut, layer.unitWeight],
      [cut, to, submergedUnitWeight(layer)],
    ]) {
      const thick = b - a;
      const { frictionAngle: angle, cohesion, undrainedStrength } = layer;
      const friction = layer.sideFriction ?? (angle === undefined ? undefined : jakyFriction(angle));
      const shear =
        friction !== undefined
          ? friction * (stress + (weight * thick) / 2)
          : (cohesion ?? ADHESION * (undrainedStrength ?? 0));
      sum += perimeter * thick * shear;
      stress += weight * thick;
    }
  }
  return sum;
}

/** @throws RangeError where a size is not above 0 */
export function anchorPostCapacity(
  post: AnchorPostGeometry,
  soil: SoilGivens,
  rules: GroundRules,
): AnchorPostCapacity {
  const { width, depth, height } = post;
  if (!(width > 0 && depth > 0 && height > 0))
    throw new RangeError(
      `anchor post: found width ${width}, depth ${depth}, height ${height} m, expected all above 0`,
    );
  const water = rules.waterTable ?? Number.POSITIVE_INFINITY;
  const drowned = Math.max(0, depth - Math.max(0, water));
  const weight = heldWeight(width ** 2 * depth * rules.concreteUnitWeight, width ** 2 * drowned, rules);
  const prism = liftedWeight({ length: width, width, height: depth, depth }, soil, rules);
  // the diagonal of a square, as the code says
  const asPost = pierAsPost({ diameter: width * Math.SQRT2, depth }, soil, rules)?.of({
    compression: 0,
    shear: 1,
    moment: height,
  });
  return {
    uplift: Math.max(0, Math.min(weight + sideShear(soil, 4 * width, depth, water), prism)),
    lateral: asPost ? asPost.capacity / asPost.demand : 0,
    overturning:
      (weight * width) / 2 + width * lateralMoment(soil, depth, lateralMultiplier(soil, depth, rules)),
  };
}

/** Moment of a pull about the toe on the mast's side, N m. */
export const postOverturning = (
  { width, depth, height }: AnchorPostGeometry,
  uplift: number,
  lateral: number,
): number => lateral * (height + depth) + (uplift * width) / 2;
