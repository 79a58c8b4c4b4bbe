import type { FootingChoice } from "./design.ts";

/** How deep a footing reaches below grade, its dowels with it, m. */
export const footingReach = (footing: FootingChoice): number =>
  footing.depth + ("socket" in footing ? footing.socket : 0);

/** How wide a footing lies in the ground, m. */
export const footingAcross = (footing: FootingChoice): number =>
  "diameter" in footing ? footing.diameter : footing.width;
