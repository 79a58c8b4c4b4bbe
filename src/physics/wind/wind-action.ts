import { type Asce7Edition, directedPressure, type Exposure, LATTICE_DIRECTIONALITY } from "./asce7.ts";
import { peakVelocityPressure, type Terrain } from "./en1991.ts";
import { type LatticeFace, latticeDrag } from "./lattice-drag.ts";
import { latticeDragEn } from "./lattice-drag-en.ts";
import { type EnHill, orography } from "./orography-en.ts";
import { type AsceHill, type Topography, topography } from "./topography.ts";
import { CYLINDER_SHARE, uniformLatticeFactor } from "./uniform.ts";

/** What a study states of its wind. SI. */
export type WindGivens =
  | { readonly basis: "uniform"; readonly pressure: number }
  | {
      readonly basis: `asce${Asce7Edition}`;
      readonly speed: number;
      readonly exposure: Exposure;
      readonly topographicFactor: number;
      /** In place of a stated factor. */
      readonly hill?: AsceHill | undefined;
      readonly groundElevation: number;
      /** Stated, or worked out for each structure: the pressure then has the least that is ever asked. */
      readonly gustFactor: number | "computed";
    }
  | {
      readonly basis: "en1991";
      readonly basicSpeed: number;
      readonly terrain: Terrain;
      readonly orographyFactor: number;
      /** In place of a stated factor. */
      readonly hill?: EnHill | undefined;
      readonly airDensity: number;
      /** cs cd, as `gustFactor`. */
      readonly structuralFactor: number | "computed";
    };

/** How an antenna's area is stated: projected flats, projected round members, or with the drag inside. */
export type AreaKind = "flat" | "round" | "effective";

/** Wind of any basis, ready to be multiplied by a factor and an area. docs/theory/wind.md. */
export interface WindAction {
  /** A load combination takes 0.6 of a strength-level pressure in allowable stress. */
  readonly level: "service" | "strength";
  /** Pa at a height above ground, m; gust and directionality inside. */
  readonly pressure: (height: number) => number;
  /** Factor on the solid area of one face. */
  readonly latticeFactor: (face: LatticeFace) => number;
  /** Factor on an area as stated. */
  readonly areaFactor: Readonly<Record<AreaKind, number>>;
  /** Factor on the diameter of a guy or pipe, for the wind normal to it. */
  readonly roundFactor: number;
}

/** Shape factors of long members on a velocity pressure: appurtenances of the 222 family, from memory. */
const velocityFactors = { flat: 2, round: 1.2, effective: 1 } as const;
const onVelocityPressure = {
  level: "strength",
  latticeFactor: latticeDrag,
  areaFactor: velocityFactors,
  roundFactor: velocityFactors.round,
} as const;

/** Kzt (ASCE 7) or co (EN 1991-1-4) by height; 1 under a uniform pressure, which knows no hills. */
export function risingGround(givens: WindGivens): Topography {
  switch (givens.basis) {
    case "uniform":
      return { factor: () => 1, reason: null };
    case "asce7-16":
    case "asce7-22":
      return givens.hill
        ? topography(givens.hill, givens.exposure)
        : { factor: () => givens.topographicFactor, reason: null };
    case "en1991":
      return givens.hill ? orography(givens.hill) : { factor: () => givens.orographyFactor, reason: null };
  }
}

export const editionOf = (basis: `asce${Asce7Edition}`): Asce7Edition =>
  basis === "asce7-16" ? "7-16" : "7-22";

/** Gust factor of a rigid structure, ASCE 7-16 section 26.11.1: the least that is ever asked. */
export const RIGID_GUST_FACTOR = 0.85;

/** The gust or structural factor in the pressure of these givens: as stated, or the least that is ever asked. */
export function gustInside(givens: WindGivens): number {
  switch (givens.basis) {
    case "uniform":
      return 1;
    case "asce7-16":
    case "asce7-22":
      return givens.gustFactor === "computed" ? RIGID_GUST_FACTOR : givens.gustFactor;
    case "en1991":
      return givens.structuralFactor === "computed" ? 1 : givens.structuralFactor;
  }
}

/** The wind of a study as one record, whatever its basis. */
export function windAction(givens: WindGivens): WindAction {
  const rise = risingGround(givens).factor;
  switch (givens.basis) {
    case "uniform":
      return {
        level: "service",
        pressure: () => givens.pressure,
        latticeFactor: uniformLatticeFactor,
        areaFactor: { flat: 1, round: CYLINDER_SHARE, effective: 1 },
        roundFactor: CYLINDER_SHARE,
      };
    case "asce7-16":
    case "asce7-22": {
      const wind = {
        ...givens,
        edition: editionOf(givens.basis),
        directionalityFactor: LATTICE_DIRECTIONALITY,
      };
      return {
        ...onVelocityPressure,
        pressure: (z) => directedPressure({ ...wind, topographicFactor: rise(z) }, z) * gustInside(givens),
      };
    }
    case "en1991":
      return {
        ...onVelocityPressure,
        // characteristic values: EN 1990 puts the factor on the action, not into the speed
        level: "service",
        pressure: (z) =>
          peakVelocityPressure({ ...givens, orographyFactor: rise(z) }, z).peakVelocityPressure *
          gustInside(givens),
        latticeFactor: latticeDragEn,
      };
  }
}
