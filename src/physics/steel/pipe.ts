import { type RoundMember, roundProperties } from "./round.ts";

/**
 * Nominal bending strength of a round pipe, N m. AISC 360-16 section F8.
 * @throws RangeError where the wall is thinner than the section covers
 */
export function pipeMoment(pipe: RoundMember, yieldStress: number, modulus = 200e9): number {
  const { slimness, plasticModulus, elasticModulus } = roundProperties(pipe);
  const stiffness = modulus / yieldStress;
  if (slimness > 0.45 * stiffness)
    throw new RangeError(
      `pipe in bending: found D/t ${slimness}, expected at most ${0.45 * stiffness} (AISC 360 F8); use a thicker wall`,
    );
  if (slimness <= 0.07 * stiffness) return yieldStress * plasticModulus;
  if (slimness <= 0.31 * stiffness) return ((0.021 * modulus) / slimness + yieldStress) * elasticModulus;
  return ((0.33 * modulus) / slimness) * elasticModulus;
}
