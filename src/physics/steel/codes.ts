import { angleCompression, webAngleSlenderness } from "./aisc-angle.ts";
import { angleProperties } from "./angle.ts";
import { columnStress, effectiveAreaShare } from "./column.ts";
import { compressionEn, pipeMomentEn, STRONGEST_EN, type Tubing } from "./en1993.ts";
import { isAngle, type Member, memberShape } from "./member.ts";
import { pipeMoment } from "./pipe.ts";
import { MOST_SLENDER_STRUT, within } from "./range.ts";
import { type RoundMember, roundProperties } from "./round.ts";

/** A member in compression between two points that hold it. SI. */
export interface Strut {
  readonly member: Member;
  /** m; K = 1. */
  readonly length: number;
  readonly yield: number;
  readonly modulus: number;
  readonly tubing: Tubing;
  /** A leg is pressed in its axis; an angle that braces is held by one of its legs. */
  readonly use: "leg" | "bracing";
}

/** The standard that a rule set takes its steel from. Strengths are nominal: factors are the rule set's. */
export interface SteelCode {
  /** The yield that counts of a steel, Pa. @throws RangeError for a steel that the standard does not cover */
  countedYield(yieldStress: number): number;
  /** N. @throws RangeError outside the range of its clauses, with what was found and expected */
  compression(strut: Strut): number;
  /** Bending strength of a pipe, N m. @throws RangeError as above */
  bending(pipe: RoundMember, yieldStress: number, modulus: number): number;
}

export type SteelCodeName = "aisc360" | "en1993";

/** Strongest steel that AISC 360-16 A3.1 lists, Pa: 100 ksi, from memory. */
const STRONGEST_AISC = 690e6;

const aisc360: SteelCode = {
  countedYield(fy) {
    within("yield in N/mm2", fy / 1e6, STRONGEST_AISC / 1e6, "AISC 360-16 A3.1", "state a lower yield");
    return fy;
  },
  compression({ member, length, yield: stated, modulus, use }) {
    const fy = aisc360.countedYield(stated);
    if (isAngle(member)) {
      const angle = angleProperties(member);
      const slenderness =
        use === "leg" ? length / angle.weakRadius : webAngleSlenderness(length / angle.legRadius);
      notTooSlender(use, slenderness);
      return angleCompression(member, angle, slenderness, fy, modulus);
    }
    const { area, radiusOfGyration, slimness } = roundProperties(member);
    const slenderness = length / radiusOfGyration;
    notTooSlender(use, slenderness);
    return columnStress(fy, modulus, slenderness) * area * effectiveAreaShare(slimness, fy, modulus);
  },
  bending: (pipe, fy, modulus) => pipeMoment(pipe, aisc360.countedYield(fy), modulus),
};

const en1993: SteelCode = {
  countedYield: (fy) => Math.min(fy, STRONGEST_EN),
  compression({ member, length, yield: stated, modulus, tubing, use }) {
    const fy = en1993.countedYield(stated);
    notTooSlender(use, length / memberShape(member).radiusOfGyration);
    return compressionEn(member, length, fy, modulus, tubing, use === "leg" ? "ends" : "one-leg");
  },
  bending: (pipe, fy) => pipeMomentEn(pipe, en1993.countedYield(fy)),
};

const notTooSlender = (use: Strut["use"], slenderness: number): void =>
  within(
    `${use} in compression, KL/r`,
    slenderness,
    MOST_SLENDER_STRUT,
    "AISC 360-16 E2 user note, here a limit",
    use === "leg" ? "use a shorter panel or a thicker leg" : "use a thicker brace or a shorter panel",
  );

export const steelCodes: Readonly<Record<SteelCodeName, SteelCode>> = { aisc360, en1993 };
