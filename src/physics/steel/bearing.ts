/**
 * Nominal bearing strength of concrete under a plate, N. AISC 360-16 J8 (as ACI 318-19 22.8.3), from memory.
 * @param concreteStrength f'c, Pa
 * @param loadedArea under the plate, m2
 * @param supportArea the largest part of the support that is alike and concentric with the plate, m2
 */
export function concreteBearing(concreteStrength: number, loadedArea: number, supportArea: number): number {
  const spread = Math.sqrt(Math.max(1, supportArea / loadedArea));
  return 0.85 * concreteStrength * loadedArea * Math.min(2, spread);
}
