export type Terrain = "0" | "I" | "II" | "III" | "IV";

/** EN 1991-1-4 table 4.1: roughness length and least height, m. */
const terrains: Record<Terrain, readonly [roughness: number, least: number]> = {
  "0": [0.003, 1],
  I: [0.01, 1],
  II: [0.05, 2],
  III: [0.3, 5],
  IV: [1, 10],
};

/** z0 and zmin, m. */
export const roughnessOf = (terrain: Terrain): readonly [roughness: number, least: number] =>
  terrains[terrain];

export interface En1991Wind {
  /** Ten-minute mean vb, m/s. */
  readonly basicSpeed: number;
  readonly terrain: Terrain;
  /** co. */
  readonly orographyFactor: number;
  /** kg/m3; 1.25 unless the National Annex says otherwise. */
  readonly airDensity: number;
  /** kI; 1 unless the National Annex says otherwise. */
  readonly turbulenceFactor?: number;
}

export interface En1991Pressure {
  readonly turbulenceIntensity: number;
  /** m/s. */
  readonly meanSpeed: number;
  /** Pa. */
  readonly peakVelocityPressure: number;
}

/**
 * Turbulence, mean speed and peak velocity pressure at a height. EN 1991-1-4 sections 4.3 to 4.5.
 * @param height above ground, m
 * @throws RangeError above 200 m, where the profile ends
 */
export function peakVelocityPressure(wind: En1991Wind, height: number): En1991Pressure {
  if (!(height <= 200))
    throw new RangeError(`EN 1991-1-4 profile: found height ${height} m, expected at most 200 m`);
  const [roughness, least] = terrains[wind.terrain];
  const factor = 0.19 * (roughness / 0.05) ** 0.07;
  const logarithm = Math.log(Math.max(height, least) / roughness);
  const meanSpeed = factor * logarithm * wind.orographyFactor * wind.basicSpeed;
  const turbulenceIntensity = (wind.turbulenceFactor ?? 1) / (wind.orographyFactor * logarithm);
  return {
    turbulenceIntensity,
    meanSpeed,
    peakVelocityPressure: (1 + 7 * turbulenceIntensity) * 0.5 * wind.airDensity * meanSpeed ** 2,
  };
}
