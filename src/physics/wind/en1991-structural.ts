import { type En1991Wind, peakVelocityPressure, roughnessOf } from "./en1991.ts";

/** Logarithmic decrement of a lattice mast: the least of EN 1991-1-4 table F.2, welded; the air's own is left out. */
const DECREMENT = 0.02;
/** s: the mean speed is one of ten minutes. */
const AVERAGED = 600;

/**
 * Structural factor cs cd: EN 1991-1-4 section 6.3 by annex B, procedure 1, from memory. Not below 1 here.
 * @param height m @param breadth across the wind, m @param frequency first of sway, Hz, above 0
 * @throws RangeError where the reference height, 0.6 of the height, is above 200 m
 */
export function structuralFactor(
  wind: En1991Wind,
  height: number,
  breadth: number,
  frequency: number,
): number {
  const [roughness, least] = roughnessOf(wind.terrain);
  const reference = Math.max(least, 0.6 * height);
  const { meanSpeed, turbulenceIntensity } = peakVelocityPressure(wind, reference);
  if (!(meanSpeed > 0)) return 1;
  const scale = 300 * (reference / 200) ** (0.67 + 0.05 * Math.log(roughness));
  const background2 = 1 / (1 + 0.9 * ((breadth + height) / scale) ** 0.63);
  const reduced = (frequency * scale) / meanSpeed;
  const spectrum = (6.8 * reduced) / (1 + 10.2 * reduced) ** (5 / 3);
  const admittance = (length: number) => {
    const eta = ((4.6 * length) / scale) * reduced;
    return eta > 0 ? 1 / eta - (1 - Math.exp(-2 * eta)) / (2 * eta * eta) : 1;
  };
  const resonant2 = (Math.PI ** 2 / (2 * DECREMENT)) * spectrum * admittance(height) * admittance(breadth);
  const crossings = Math.max(0.08, frequency * Math.sqrt(resonant2 / (background2 + resonant2)));
  const root = Math.sqrt(2 * Math.log(crossings * AVERAGED));
  const peak = Math.max(3, root + 0.6 / root);
  const gusty = 1 + 2 * peak * turbulenceIntensity * Math.sqrt(background2 + resonant2);
  return Math.max(1, gusty / (1 + 7 * turbulenceIntensity));
}
