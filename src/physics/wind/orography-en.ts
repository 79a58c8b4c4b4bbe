import type { Topography } from "./topography.ts";

/** Rising ground as EN 1991-1-4 annex A.3 sees it, m. */
export interface EnHill {
  /** Hills and ridges, or cliffs and escarpments. */
  readonly shape: "hill" | "escarpment";
  /** H. */
  readonly height: number;
  /** Lu, actual length of the upwind slope. */
  readonly upwindLength: number;
  /** Ld, of the downwind slope; an escarpment has none. */
  readonly downwindLength?: number | undefined;
  /** From the crest to the mast. */
  readonly distance: number;
  readonly side: "upwind" | "downwind";
}

/** Slopes below this are flat, and slopes above `STEEP` count as that steep. */
const FLAT = 0.05;
const STEEP = 0.3;

/** The share of upwind figures A.2 and A.3 and of the downwind side of hills: A of z / Le. */
const amplitude = (t: number): number =>
  0.1552 * t ** 4 - 0.8575 * t ** 3 + 1.8133 * t ** 2 - 1.9115 * t + 1.0124;

/** Downwind of a cliff, figure A.2: X / Le from 0.1 on. */
function behindCliff(along: number, up: number): number {
  const l = Math.log10(Math.max(up, 0.1));
  const a = -1.342 * l ** 3 - 0.8222 * l ** 2 + 0.4609 * l - 0.0791;
  const b = -1.0196 * l ** 3 - 0.891 * l ** 2 + 0.5343 * l - 0.1156;
  const c = 0.803 * l ** 3 + 0.4236 * l ** 2 - 0.5738 * l + 0.1606;
  const x = Math.log10(along);
  return a * x ** 2 + b * x + c;
}

/** Effective length of the upwind slope, Le. */
const effectiveLength = ({ height, upwindLength }: EnHill): number =>
  height / upwindLength > STEEP ? height / STEEP : upwindLength;

/**
 * Orographic location factor s of EN 1991-1-4 annex A.3, its formulas for figures A.2 and A.3; from memory.
 * @param z above the ground, m
 */
export function orographicLocation(hill: EnHill, z: number): number {
  const { shape, height, upwindLength, downwindLength, distance, side } = hill;
  const up = Math.max(z, 0) / effectiveLength(hill);
  if (up > 2) return 0;
  if (side === "upwind") {
    const along = distance / upwindLength;
    const decay = 0.3542 * up ** 2 - 1.0577 * up + 2.6456;
    return along > 1.5 ? 0 : Math.max(0, amplitude(up) * Math.exp(-decay * along));
  }
  // a hill that falls off more gently than what counts as a slope is an escarpment
  if (shape === "hill" && downwindLength !== undefined && height / downwindLength >= FLAT) {
    const along = distance / downwindLength;
    const decay = -0.3056 * up ** 2 + 1.0212 * up - 1.7637;
    return along > 2 ? 0 : Math.max(0, amplitude(up) * Math.exp(decay * along));
  }
  const along = distance / effectiveLength(hill);
  if (along > 3.5) return 0;
  if (along >= 0.1) return Math.max(0, behindCliff(along, up));
  const crest = amplitude(up);
  return Math.max(0, crest + (along / 0.1) * (behindCliff(0.1, up) - crest));
}

/** co of EN 1991-1-4 section 4.3.3 and annex A.3, from memory. */
export function orography(hill: EnHill): Topography {
  const slope = hill.height / hill.upwindLength;
  if (!(slope >= FLAT - 1e-12))
    return {
      factor: () => 1,
      reason: `its upwind slope is ${slope.toFixed(3)}, below 0.05 (EN 1991-1-4 4.3.3)`,
    };
  if (orographicLocation(hill, 0) === 0)
    return { factor: () => 1, reason: "the mast stands beyond the reach of its speed-up (EN 1991-1-4 A.3)" };
  const growth = slope > STEEP ? 0.6 : 2 * slope;
  return { reason: null, factor: (z) => 1 + growth * orographicLocation(hill, z) };
}
