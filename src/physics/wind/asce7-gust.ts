import type { Exposure } from "./asce7.ts";

const FOOT = 0.3048;
/** Table 26.11-1: c, l (ft), eps, zmin (ft); from memory. */
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
