import type { AngleProperties } from "./angle.ts";
import { columnStress } from "./column.ts";
import { within } from "./range.ts";

/** b/t beyond which the leg of an angle buckles before the member. AISC 360-16 table B4.1a case 3, from memory. */
const slenderLeg = (yieldStress: number, modulus: number): number => 0.45 * Math.sqrt(modulus / yieldStress);

/**
 * Nominal strength of an equal-leg angle in concentric compression, N: flexure about the weak axis, the legs at their
 * effective width. AISC 360-16 E3, E5 and E7.1 (c1 0.22, c2 1.49), from memory.
 * @param slenderness Lc/r
 * @throws RangeError where the legs are so thin that torsion governs (b/t above 0.71 sqrt(E/Fy), E5)
 */
export function angleCompression(
  angle: { readonly angle: number; readonly thickness: number },
  { area, slimness }: AngleProperties,
  slenderness: number,
  yieldStress: number,
  modulus: number,
): number {
  within(
    "angle in compression, b/t",
    slimness,
    0.71 * Math.sqrt(modulus / yieldStress),
    "AISC 360-16 E5: beyond it torsion counts",
    "use a thicker angle",
  );
  const stress = columnStress(yieldStress, modulus, slenderness);
  const limit = slenderLeg(yieldStress, modulus);
  if (slimness <= limit * Math.sqrt(yieldStress / stress)) return stress * area;
  const elastic = ((1.49 * limit) / slimness) ** 2 * yieldStress;
  const share = Math.sqrt(elastic / stress);
  const effective = angle.angle * Math.min(1, (1 - 0.22 * share) * share);
  return stress * (area - 2 * (angle.angle - effective) * angle.thickness);
}

/**
 * Effective slenderness of an equal-leg angle that is a web member of a box or space truss and held by one leg, its
 * ends welded or with two bolts at least. AISC 360-16 E5(b), from memory: the eccentricity is inside.
 * @param ratio L over the radius of gyration about the axis along the connected leg
 */
export const webAngleSlenderness = (ratio: number): number => (ratio <= 75 ? 60 + 0.8 * ratio : 45 + ratio);
