import { angleProperties } from "./angle.ts";
import { isAngle, type Member } from "./member.ts";
import { within } from "./range.ts";
import { type RoundMember, roundProperties } from "./round.ts";

/** How a tube was made: hot-finished ones are straighter and hold less stress locked in. */
export type Tubing = "hot-finished" | "cold-formed";

export type BucklingCurve = "a0" | "a" | "b" | "c" | "d";

/** EN 1993-1-1 table 6.1. */
const IMPERFECTION: Readonly<Record<BucklingCurve, number>> = {
  a0: 0.13,
  a: 0.21,
  b: 0.34,
  c: 0.49,
  d: 0.76,
};

/**
 * Strongest steel that EN 1993-1-1 covers, Pa: S460, section 3.1 and table 6.2, from memory. A stronger one counts as
 * this one, which it is at least.
 */
export const STRONGEST_EN = 460e6;

/**
 * Reduction factor chi of flexural buckling. EN 1993-1-1 6.3.1.2 (6.49), from memory.
 * @param slenderness non-dimensional, lambda-bar
 */
export function bucklingReduction(curve: BucklingCurve, slenderness: number): number {
  if (!(slenderness >= 0))
    throw new RangeError(`buckling curve: found a slenderness of ${slenderness}, expected 0 or above`);
  const phi = 0.5 * (1 + IMPERFECTION[curve] * (slenderness - 0.2) + slenderness ** 2);
  return Math.min(1, 1 / (phi + Math.sqrt(phi ** 2 - slenderness ** 2)));
}

/** Curve of a member. EN 1993-1-1 table 6.2, S235 to S420 (S460 may take better ones, not taken). From memory. */
export const curveOf = (member: Member, tubing: Tubing): BucklingCurve => {
  if (isAngle(member)) return "b";
  return member.wall !== undefined && tubing === "hot-finished" ? "a" : "c";
};

const epsilonSquared = (yieldStress: number): number => 235e6 / yieldStress;

/** @throws RangeError where a part of the cross-section is of class 4: it buckles before it yields */
function refuseClassFour(member: Member, yieldStress: number): void {
  if (isAngle(member)) {
    const { slimness } = angleProperties(member);
    // h/t at most 15 eps and (b + h)/2t at most 11.5 eps: with equal legs the second decides
    within(
      "angle in compression, b/t",
      slimness,
      11.5 * Math.sqrt(epsilonSquared(yieldStress)),
      "EN 1993-1-1 table 5.2: beyond it class 4",
      "use a thicker angle",
    );
  } else
    within(
      "tube in compression, d/t",
      roundProperties(member).slimness,
      90 * epsilonSquared(yieldStress),
      "EN 1993-1-1 table 5.2: beyond it class 4, EN 1993-1-6",
      "use a thicker wall",
    );
}

/**
 * Slenderness that an angle held by one leg counts with, ends welded or with two bolts at least. EN 1993-1-1 BB.1.2,
 * from memory: about its weak axis and about the axis along the connected leg.
 */
export const webAngleSlendernessEn = (weak: number, along: number): number =>
  Math.max(0.35 + 0.7 * weak, 0.5 + 0.7 * along);

/**
 * Characteristic strength of a member in compression, N. EN 1993-1-1 6.3.1.1 (6.47), gamma_M1 left to the rule set.
 * @param held "ends" of a leg, concentric; "one-leg" of an angle that is a web member
 * @throws RangeError for a cross-section of class 4
 */
export function compressionEn(
  member: Member,
  length: number,
  yieldStress: number,
  modulus: number,
  tubing: Tubing,
  held: "ends" | "one-leg",
): number {
  refuseClassFour(member, yieldStress);
  const unit = Math.PI * Math.sqrt(modulus / yieldStress);
  const curve = curveOf(member, tubing);
  if (isAngle(member)) {
    const { area, weakRadius, legRadius } = angleProperties(member);
    const weak = length / weakRadius / unit;
    const bar = held === "ends" ? weak : webAngleSlendernessEn(weak, length / legRadius / unit);
    return bucklingReduction(curve, bar) * area * yieldStress;
  }
  const { area, radiusOfGyration } = roundProperties(member);
  return bucklingReduction(curve, length / radiusOfGyration / unit) * area * yieldStress;
}

/**
 * Characteristic bending strength of a tube, N m. EN 1993-1-1 6.2.5 with the classes of table 5.2: plastic in
 * classes 1 and 2, elastic in class 3. From memory.
 * @throws RangeError for class 4
 */
export function pipeMomentEn(pipe: RoundMember, yieldStress: number): number {
  const { slimness, plasticModulus, elasticModulus } = roundProperties(pipe);
  const epsilon2 = epsilonSquared(yieldStress);
  within(
    "pipe in bending, d/t",
    slimness,
    90 * epsilon2,
    "EN 1993-1-1 table 5.2: beyond it class 4, EN 1993-1-6",
    "use a thicker wall",
  );
  return yieldStress * (slimness <= 70 * epsilon2 ? plasticModulus : elasticModulus);
}
