import { type GroundRules, heldWeight, type SoilGivens, stretches, weakestTo } from "./soil.ts";
import { upliftPrism, upliftRounded } from "./uplift-pyramid.ts";

/** How the soil that a buried block lifts is bounded: a prism with square corners, or cones from its edges. */
export type LiftedShape = "prism" | "cone";

/** Concrete in the ground that is pulled up. m. */
export interface LiftedBlock {
  /** Across the pull. */
  readonly length: number;
  readonly height: number;
  /** Along the pull. */
  readonly width: number;
  /** Grade to the bottom of the block. */
  readonly depth: number;
  /** Default: the prism. */
  readonly shape?: LiftedShape;
}

export interface UpliftHold {
  /** Weight of concrete and lifted soil, less buoyancy, N; 0 where the method does not hold. */
  readonly uplift: number;
  /** Depth over the shorter side of its plan, and the most at which the soil over it breaks out to grade. */
  readonly ratio: number;
  readonly mostRatio: number;
}

/** Half-angle of the cones, degrees: CPUC General Order 95 (original) rule 48.5; TIA-222-F, from memory. */
export const CONE_ANGLE = 30;

/** Friction angle, degrees, and greatest depth ratio of a square anchor that breaks out to grade: Meyerhof and Adams 1968. */
const BREAKOUT: readonly (readonly [number, number])[] = [
  [20, 2.5],
  [25, 3],
  [30, 4],
  [35, 5],
  [40, 7],
  [45, 9],
  [48, 11],
];

/**
 * Greatest depth, in widths, at which the soil over an anchor still breaks out to grade; deeper, it flows round the
 * anchor and the weight above is not what holds. Square in sand: Meyerhof and Adams 1968; in clay: Das 1980; a
 * rectangle reaches deeper: Das and Jones 1982; all from memory. A soil that states neither angle nor strength is
 * taken as the weakest sand.
 */
export function breakoutRatio(soil: SoilGivens, length: number, width: number): number {
  const aspect = Math.max(length, width) / Math.min(length, width);
  return squareBreakout(soil) * Math.min(1.4, 0.867 + 0.133 * aspect);
}

function squareBreakout({ frictionAngle, undrainedStrength }: SoilGivens): number {
  if (frictionAngle === undefined)
    return undrainedStrength === undefined
      ? BREAKOUT[0][1]
      : Math.min(7, 2.5 + (0.107 * undrainedStrength) / 1000);
  const above = BREAKOUT.findIndex(([angle]) => angle >= frictionAngle);
  if (above === 0) return BREAKOUT[0][1];
  if (above < 0) return BREAKOUT[BREAKOUT.length - 1][1];
  const [[a, low], [b, high]] = [BREAKOUT[above - 1], BREAKOUT[above]];
  return low + ((high - low) * (frictionAngle - a)) / (b - a);
}

/** Weight of a block and of the soil that it lifts, less buoyancy, N. docs/theory/ground.md. */
export function liftedWeight(block: LiftedBlock, soil: SoilGivens, rules: GroundRules): number {
  const { length, height, width, depth, shape = "prism" } = block;
  const volume = (rise: number) =>
    shape === "prism"
      ? upliftPrism(length, width, rise, rules.upliftAngle)
      : upliftRounded(length, width, rise, CONE_ANGLE);
  const concrete = length * height * width;
  const lifted = stretches(soil, 0, depth).reduce((sum, { layer, from, to }) => {
    const inside = Math.min(height, depth - from) - Math.min(height, depth - to);
    return sum + (volume(depth - from) - volume(depth - to) - length * inside * width) * layer.unitWeight;
  }, 0);
  const water = rules.waterTable ?? Number.POSITIVE_INFINITY;
  const submerged = water < depth ? volume(depth - Math.max(0, water)) : 0;
  return heldWeight(concrete * rules.concreteUnitWeight + lifted, submerged, rules);
}

/** What holds a buried block down, nominal, where its soil breaks out to grade. */
export function upliftHold(block: LiftedBlock, soil: SoilGivens, rules: GroundRules): UpliftHold {
  const { length, width, depth } = block;
  const ratio = depth / Math.min(length, width);
  const mostRatio = breakoutRatio(weakestTo(soil, depth), length, width);
  const beyond = ratio > mostRatio * (1 + 1e-9);
  return { uplift: beyond ? 0 : Math.max(0, liftedWeight(block, soil, rules)), ratio, mostRatio };
}
