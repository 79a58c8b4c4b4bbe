import type { FootingLoads } from "./loads.ts";
import { type SoilGivens, soilAt, weakestTo } from "./soil.ts";

/** How a footing turns under a moment at grade: Winkler's springs, one modulus each. docs/theory/ground.md. */
export interface Rocking {
  /** A small moment's own turn, N m/rad: all of the base in contact, no shear. */
  readonly stiffness: number;
  /**
   * The moment at grade over the turn that it and its shear make, N m/rad; a base that lifts turns easier.
   * @param normal on the base, N
   */
  under(loads: FootingLoads, normal: number): number;
}

/** Share of a square base's stiffness that is left where the load lifts a side off: its moment over its turn. */
export function contactShare(width: number, eccentricity: number): number {
  if (eccentricity <= width / 6) return 1;
  if (!(eccentricity < width / 2)) return 0;
  const contact = 3 * (width / 2 - eccentricity);
  return (6 * eccentricity * contact ** 2) / width ** 3;
}

/** Share of a turn that the moment makes by itself, the shear's arm being the depth of the point of turning. */
const ownShare = ({ moment, shear }: FootingLoads, arm: number): number => {
  const own = Math.abs(moment);
  return own > 0 ? own / (own + Math.abs(shear) * arm) : 1;
};

/** A pad on its underside, k B4/12; undefined where the soil states no subgrade modulus. */
export function padRocking(soil: SoilGivens, width: number, depth: number): Rocking | undefined {
  const { subgradeModulus } = soilAt(soil, depth);
  if (subgradeModulus === undefined) return undefined;
  const stiffness = (subgradeModulus * width ** 4) / 12;
  return {
    stiffness,
    under(loads, normal) {
      const moment = Math.abs(loads.moment) + Math.abs(loads.shear) * depth;
      const eccentricity = normal > 0 ? moment / normal : Number.POSITIVE_INFINITY;
      return stiffness * contactShare(width, eccentricity) * ownShare(loads, depth);
    },
  };
}

/**
 * A block on its underside and between the soil of two sides, k (B4 + B D3)/12 about its middle depth, one modulus
 * for both, the least of all layers; undefined where one of them states none.
 */
export function blockRocking(soil: SoilGivens, width: number, depth: number): Rocking | undefined {
  const below = soilAt(soil, depth).subgradeModulus;
  const beside = weakestTo(soil, depth).subgradeModulus;
  if (below === undefined || beside === undefined) return undefined;
  const modulus = Math.min(below, beside);
  const base = (modulus * width ** 4) / 12;
  const sides = (modulus * width * depth ** 3) / 12;
  return {
    stiffness: base + sides,
    under(loads, normal) {
      const moment = Math.abs(loads.moment) + (Math.abs(loads.shear) * depth) / 2;
      // the base's part of the moment while it is whole: what lifts hands its part to the sides
      const eccentricity = normal > 0 ? (moment * base) / (base + sides) / normal : Number.POSITIVE_INFINITY;
      return (base * contactShare(width, eccentricity) + sides) * ownShare(loads, depth / 2);
    },
  };
}

/** A rigid pier between the soil of its sides, free to shift, k d L3/12 about its middle depth; its tip is left out. */
export function pierRocking(soil: SoilGivens, diameter: number, depth: number): Rocking | undefined {
  const { subgradeModulus } = weakestTo(soil, depth);
  if (subgradeModulus === undefined) return undefined;
  const stiffness = (subgradeModulus * diameter * depth ** 3) / 12;
  return { stiffness, under: (loads) => stiffness * ownShare(loads, depth / 2) };
}
