import { type BlockGeometry, blockResistance } from "./block.ts";
import { balancedSoilMoment } from "./block-pivot.ts";
import { unrestrainedDepth } from "./embedded-post.ts";
import type { FootingLoads } from "./loads.ts";
import {
  type GroundRules,
  lateralForce,
  lateralMoment,
  lateralMultiplier,
  type SoilGivens,
  weakestTo,
} from "./soil.ts";

/** Two further views of a block that the toe method judges. */
export interface BlockBeside {
  /** Depth that a post of the block's plan would need, m. IBC 1807.3.2.1, no more than 12 ft counting for its pressure. */
  readonly postDepth: number;
  /** Factor about the toe with the soil's push held in balance. */
  readonly balancedFactor: number;
}

/**
 * A block as a post, and with its horizontal forces in balance; null where nothing pushes, nothing holds sideways
 * or the block lifts off. docs/theory/ground.md.
 */
export function blockBeside(
  block: BlockGeometry,
  loads: FootingLoads,
  soil: SoilGivens,
  rules: GroundRules,
): BlockBeside | null {
  const { width, depth } = block;
  // the depth it asks for is not known yet: every layer counts
  const uniform = weakestTo(soil, Number.POSITIVE_INFINITY);
  const shear = Math.abs(loads.shear);
  const multiplier = lateralMultiplier(soil, depth, rules);
  const { overturning, sliding } = blockResistance(block, loads, soil, rules);
  if (!(shear > 0 && lateralForce(uniform, 0, 1, multiplier) > 0 && Number.isFinite(overturning.demand)))
    return null;
  const base = sliding.capacity - width * lateralForce(soil, 0, depth, multiplier);
  const balanced = balancedSoilMoment(width, depth, soil, shear + base, multiplier);
  const dead = overturning.capacity - width * lateralMoment(soil, depth, multiplier);
  return {
    postDepth: unrestrainedDepth(
      {
        lateralForce: shear,
        forceHeight: Math.abs(loads.moment) / shear,
        width: width * Math.SQRT2,
        lateralBearingPerDepth: uniform.lateralPerDepth,
        multiplier,
        cap: uniform.lateralCap,
      },
      "conservative",
    ),
    balancedFactor: (dead + balanced.moment) / overturning.demand,
  };
}
