import type { Exposure } from "./asce7.ts";

const FOOT = 0.3048;

export type HillShape = "ridge" | "escarpment" | "axisymmetric";

/** A hill as ASCE 7 sees it, m. */
export interface AsceHill {
  readonly shape: HillShape;
  /** H, of the crest over the ground upwind. */
  readonly height: number;
  /** Lh, from the crest upwind to where the ground is at half the height. */
  readonly halfLength: number;
  /** x, from the crest to the mast. */
  readonly distance: number;
  /** Which side of the crest the mast stands on, for the wind that counts. */
  readonly side: "upwind" | "downwind";
}

/** What ground that rises does to the wind: a factor by height, or 1 with the reason why. */
export interface Topography {
  /** At a height above the ground at the mast, m. */
  readonly factor: (height: number) => number;
  /** Why the rise does not count; null where it does. */
  readonly reason: string | null;
}

/** K1 / (H / Lh) by exposure, gamma, mu upwind and downwind: ASCE 7-16 figure 26.8-1. */
const shapes: Record<
  HillShape,
  {
    readonly steepness: Record<Exposure, number>;
    readonly decay: number;
    readonly upwind: number;
    readonly downwind: number;
  }
> = {
  ridge: { steepness: { B: 1.3, C: 1.45, D: 1.55 }, decay: 3, upwind: 1.5, downwind: 1.5 },
  escarpment: { steepness: { B: 0.75, C: 0.85, D: 0.95 }, decay: 2.5, upwind: 1.5, downwind: 4 },
  axisymmetric: { steepness: { B: 0.95, C: 1.05, D: 1.15 }, decay: 4, upwind: 1.5, downwind: 1.5 },
};

/** Beyond this H / Lh the flow parts from the slope: it counts as this steep, its length as 2 H. */
const STEEPEST = 0.5;

/** K1, K2 and K3 of figure 26.8-1, whatever section 26.8.1 says of the site. @param z above the ground, m */
export function speedUp(
  { shape, height, halfLength, distance, side }: AsceHill,
  exposure: Exposure,
  z: number,
): readonly [k1: number, k2: number, k3: number] {
  const { steepness, decay, [side]: spread } = shapes[shape];
  const slope = height / halfLength;
  const length = slope > STEEPEST ? 2 * height : halfLength;
  return [
    steepness[exposure] * Math.min(slope, STEEPEST),
    Math.max(0, 1 - distance / (spread * length)),
    Math.exp((-decay * Math.max(z, 0)) / length),
  ];
}

/**
 * Kzt of ASCE 7-16 and 7-22 section 26.8, from memory. Conditions 1 to 3 of 26.8.1 (it stands alone, twice as high
 * as what is round it, the mast in its upper half) are the word of whoever states a hill; 4 and 5 are looked at here.
 */
export function topography(hill: AsceHill, exposure: Exposure): Topography {
  const slope = hill.height / hill.halfLength;
  const least = exposure === "B" ? 60 : 15;
  const none = (reason: string): Topography => ({ factor: () => 1, reason });
  if (!(slope >= 0.2 - 1e-12))
    return none(`H/Lh is ${slope.toFixed(2)}, below 0.2 (ASCE 7-16 26.8.1 condition 4)`);
  if (!(hill.height >= least * FOOT - 1e-9))
    return none(
      `it is ${(hill.height / FOOT).toFixed(0)} ft high, below ${least} ft in exposure ${exposure} (ASCE 7-16 26.8.1 condition 5)`,
    );
  const [, k2] = speedUp(hill, exposure, 0);
  if (k2 === 0) return none("the mast stands beyond the reach of its speed-up (ASCE 7-16 figure 26.8-1)");
  return {
    reason: null,
    factor: (z) => {
      const [a, b, c] = speedUp(hill, exposure, z);
      return (1 + a * b * c) ** 2;
    },
  };
}
