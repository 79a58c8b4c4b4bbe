/**
 * Nominal critical stress of a column, Pa. AISC 360-16 section E3.
 * @param yieldStress Pa @param modulus Pa @param slenderness KL/r
 * @throws RangeError where an argument is not above zero
 */
export function columnStress(yieldStress: number, modulus: number, slenderness: number): number {
  if (!(yieldStress > 0 && modulus > 0 && slenderness > 0))
    throw new RangeError(
      `column stress: found yield ${yieldStress}, modulus ${modulus}, slenderness ${slenderness}, expected all above 0`,
    );
  const elastic = (Math.PI ** 2 * modulus) / slenderness ** 2;
  const ratio = yieldStress / elastic;
  return ratio <= 2.25 ? 0.658 ** ratio * yieldStress : 0.877 * elastic;
}

/**
 * Share of a round tube's area that works in compression before its wall buckles. AISC 360-16 E7.2, from memory.
 * @param slimness D/t of the tube (0 for a solid bar)
 * @throws RangeError where the wall is thinner than the clause covers
 */
export function effectiveAreaShare(slimness: number, yieldStress: number, modulus: number): number {
  const stiffness = modulus / yieldStress;
  if (slimness > 0.45 * stiffness)
    throw new RangeError(
      `tube in compression: found D/t ${slimness}, expected at most ${0.45 * stiffness} (AISC 360 E7.2); use a thicker wall`,
    );
  return slimness <= 0.11 * stiffness ? 1 : Math.min(1, (0.038 * stiffness) / slimness + 2 / 3);
}
