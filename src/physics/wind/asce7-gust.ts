import type { Asce7Edition, Exposure } from "./asce7.ts";

const FOOT = 0.3048;
/** Table 26.11-1: c, l (ft), eps, zmin (ft), alike in both editions; from memory. */
const turbulence: Record<Exposure, readonly [c: number, l: number, eps: number, zmin: number]> = {
  B: [0.3, 320, 1 / 3, 30],
  C: [0.2, 500, 1 / 5, 15],
  D: [0.15, 650, 1 / 8, 7],
};

/**
 * Gust factor of a rigid structure. ASCE 7-16 section 26.11.4, from memory.
 * Not for a structure whose first frequency is below 1 Hz: that one is flexible (26.11.5).
 * @param height m @param breadth across the wind, m
 */
export function rigidGustFactor(exposure: Exposure, height: number, breadth: number): number {
  const [c, l, eps, zmin] = turbulence[exposure];
  const z = Math.max(zmin, (0.6 * height) / FOOT);
  const intensity = c * (33 / z) ** (1 / 6);
  const scale = l * (z / 33) ** eps;
  const background = Math.sqrt(1 / (1 + 0.63 * ((breadth + height) / FOOT / scale) ** 0.63));
  return (0.925 * (1 + 1.7 * 3.4 * intensity * background)) / (1 + 1.7 * 3.4 * intensity);
}

/** Table 26.11-1: alpha-bar (as its inverse) and b-bar of the hourly mean speed; from memory. */
const hourly: Record<Asce7Edition, Record<Exposure, readonly [inverseAlpha: number, b: number]>> = {
  "7-16": { B: [4, 0.45], C: [6.5, 0.65], D: [9, 0.8] },
  "7-22": { B: [4.5, 0.47], C: [6.4, 0.66], D: [8, 0.78] },
};

/** Share of critical damping of a bolted steel lattice at service: ASCE 7-16 C26.11, 1 %, from memory. */
const DAMPING = 0.01;

/**
 * Gust factor of a flexible structure, first frequency below 1 Hz. ASCE 7-16 and 7-22 section 26.11.5, from memory.
 * @param speed basic gust speed, m/s @param height m @param breadth across the wind, m @param frequency Hz, above 0
 */
export function flexibleGustFactor(
  edition: Asce7Edition,
  exposure: Exposure,
  speed: number,
  height: number,
  breadth: number,
  frequency: number,
): number {
  const [c, l, eps, zmin] = turbulence[exposure];
  const [inverseAlpha, b] = hourly[edition][exposure];
  const feet = { height: height / FOOT, breadth: breadth / FOOT };
  const z = Math.max(zmin, 0.6 * feet.height);
  const intensity = c * (33 / z) ** (1 / 6);
  const scale = l * (z / 33) ** eps;
  const background2 = 1 / (1 + 0.63 * ((feet.breadth + feet.height) / scale) ** 0.63);
  const mean = b * (z / 33) ** (1 / inverseAlpha) * (speed / FOOT);
  const reduced = (frequency * scale) / mean;
  const rn = (7.47 * reduced) / (1 + 10.3 * reduced) ** (5 / 3);
  const size = (eta: number) => (eta > 0 ? 1 / eta - (1 - Math.exp(-2 * eta)) / (2 * eta * eta) : 1);
  const rh = size((4.6 * frequency * feet.height) / mean);
  const rb = size((4.6 * frequency * feet.breadth) / mean);
  const rl = size((15.4 * frequency * feet.breadth) / mean);
  const resonant2 = (rn * rh * rb * (0.53 + 0.47 * rl)) / DAMPING;
  const root = Math.sqrt(2 * Math.log(3600 * frequency));
  const peak = root + 0.577 / root;
  return (
    (0.925 * (1 + 1.7 * intensity * Math.sqrt(3.4 ** 2 * background2 + peak ** 2 * resonant2))) /
    (1 + 1.7 * 3.4 * intensity)
  );
}
