import { pipeMoment } from "./pipe.ts";
import { type RoundMember, roundProperties } from "./round.ts";

/** A steel post by its section: a pipe, or a compact W shape bent about its strong axis by its numbers. SI. */
export type PostSection =
  | (RoundMember & { readonly wall: number })
  | {
      readonly plasticModulus: number;
      readonly area: number;
      /** Depth times web of a W shape, m2. */
      readonly shearArea: number;
      /** Radius of gyration about the weak axis, m. */
      readonly leastRadius: number;
    };

/** Nominal: bending, pull along the post and shear. N m, N, N. */
export interface PostStrength {
  readonly moment: number;
  readonly tension: number;
  readonly shear: number;
}

const MODULUS = 200e9;

/**
 * Why the formulas do not cover a post, in words; null where they do: a W shape must not turn sideways (AISC 360-16
 * F2, Lp), a pipe's wall must not buckle in the elastic range (F8).
 */
export function postRefusal(section: PostSection, yieldStress: number, height: number): string | null {
  if ("diameter" in section) {
    const { slimness } = roundProperties(section);
    const most = (0.31 * MODULUS) / yieldStress;
    return slimness > most
      ? `a wall of 1/${slimness.toFixed(0)} of the diameter; AISC 360 F8 is read here to 1/${most.toFixed(0)}`
      : null;
  }
  const most = 1.76 * section.leastRadius * Math.sqrt(MODULUS / yieldStress);
  return height > most
    ? `${height.toFixed(2)} m free above the concrete; a W shape of this weak radius turns sideways beyond ${most.toFixed(2)} m (AISC 360 F2)`
    : null;
}

/**
 * A post standing out of concrete. AISC 360-16 D2, F2 and G2 for a shape, F8 and G5 for a pipe, from memory.
 * @throws RangeError where `postRefusal` has a reason
 */
export function postStrength(section: PostSection, yieldStress: number, height: number): PostStrength {
  const refused = postRefusal(section, yieldStress, height);
  if (refused !== null) throw new RangeError(`anchor post: found ${refused}`);
  if ("diameter" in section) {
    const { area, slimness } = roundProperties(section);
    // G5: the formula of a long pipe, the lower of the two
    const critical = Math.min(0.6 * yieldStress, (0.78 * MODULUS) / slimness ** 1.5);
    return {
      moment: pipeMoment(section, yieldStress, MODULUS),
      tension: yieldStress * area,
      shear: (critical * area) / 2,
    };
  }
  return {
    moment: yieldStress * section.plasticModulus,
    tension: yieldStress * section.area,
    shear: 0.6 * yieldStress * section.shearArea,
  };
}
