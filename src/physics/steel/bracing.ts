import type { SteelCode, Strut } from "./codes.ts";
import type { LatticeGeometry } from "./lattice.ts";
import { isAngle, type Member, memberShape } from "./member.ts";
import { MOST_SLENDER_STRUT, MOST_SLENDER_TIE, within } from "./range.ts";

/** The bracing of every face. SI. */
export interface Bracing {
  /** Zigzag; two diagonals that cross in every panel; diagonals all the same way with horizontals between. */
  readonly pattern: "single" | "x" | "z";
  /** The diagonals. */
  readonly member: Member;
  /** One to a panel, square to the legs; "z" has them always, of the diagonals' member where none is stated. */
  readonly horizontal?: Member;
  /** Are the two diagonals of an "x" joined where they cross? Default: no. */
  readonly joined?: boolean;
}

/** One face as it is drawn, centre to centre of the legs. m. */
export interface FacePattern {
  /** Of one diagonal. */
  readonly length: number;
  readonly rise: number;
  /** Diagonals to a panel. */
  readonly diagonals: 1 | 2;
  readonly horizontal: Member | undefined;
}

/** Slope of a diagonal from the horizontal that the formulas are used for, degrees: common practice, no source. */
const SLOPES = { least: 20, most: 70 } as const;

export function facePattern({
  face,
  panel,
  bracing,
}: Pick<LatticeGeometry, "face" | "panel" | "bracing">): FacePattern {
  const { pattern, member, horizontal } = bracing;
  const rise = pattern === "single" ? panel / 2 : panel;
  return {
    length: Math.hypot(face, rise),
    rise,
    diagonals: pattern === "z" ? 1 : 2,
    horizontal: horizontal ?? (pattern === "z" ? member : undefined),
  };
}

export interface BracedFace {
  /** Shear that the face bears from either side, N. */
  readonly strength: number;
  /** Shear per shear strain, N. */
  readonly stiffness: number;
  /** KL/r of a diagonal. */
  readonly slenderness: number;
}

/**
 * The bracing of one face: nominal shear strength and shear stiffness. docs/theory/steel.md.
 * @throws RangeError where a member is too slender or too thin, or the diagonals too flat or too steep
 */
export function braceFace(section: LatticeGeometry, code: SteelCode): BracedFace {
  const { face, bracing, modulus } = section;
  const { length, rise, horizontal } = facePattern(section);
  const slope = (Math.atan2(rise, face) * 180) / Math.PI;
  if (!(slope >= SLOPES.least && slope <= SLOPES.most))
    throw new RangeError(
      `bracing: found diagonals at ${slope.toFixed(1)} degrees, expected ${SLOPES.least} to ${SLOPES.most} (common practice, no source); use another panel`,
    );
  const { area, radiusOfGyration } = memberShape(bracing.member);
  const held = heldLength(bracing, length);
  const slenderness = held / radiusOfGyration;
  const cosine = face / length;
  const tie = tieStrength(bracing.member, code.countedYield(section.yield));
  const pressed = () => Math.min(tie, code.compression(strut(section, bracing.member, held))) * cosine;
  // the horizontal takes the whole shear of the face, in its axis
  const post = (member: Member) =>
    Math.min(
      tieStrength(member, code.countedYield(section.yield)),
      code.compression(strut(section, member, face)),
    );
  const zigzag = (modulus * area * face ** 2 * rise) / length ** 3;
  const posted = horizontal
    ? zigzag / (1 + (area * face ** 3) / (memberShape(horizontal).area * length ** 3))
    : 0;
  switch (bracing.pattern) {
    case "single":
      return { strength: pressed(), stiffness: zigzag, slenderness };
    case "z":
      return { strength: Math.min(pressed(), post(horizontal as Member)), stiffness: posted, slenderness };
    case "x": {
      const both = slenderness <= MOST_SLENDER_STRUT ? 2 * pressed() : 0;
      if (both === 0) onlyPulls(bracing.member, length / radiusOfGyration, horizontal);
      const pulled = horizontal ? Math.min(tie * cosine, post(horizontal)) : 0;
      return both >= pulled
        ? { strength: both, stiffness: 2 * zigzag, slenderness }
        : { strength: pulled, stiffness: posted, slenderness };
    }
  }
}

/**
 * Length of a diagonal between points that hold it. A joined crossing holds both ways where one pulls as the other is
 * pressed, as they do here: EN 1993-3-1 H.3.3, from memory. Rules for angles held by one leg do not know it.
 */
const heldLength = ({ pattern, member, joined }: Bracing, length: number): number =>
  pattern === "x" && joined && !isAngle(member) ? length / 2 : length;

const strut = (section: LatticeGeometry, member: Member, length: number): Strut => ({
  member,
  length,
  yield: section.yield,
  modulus: section.modulus,
  tubing: section.tubing ?? "cold-formed",
  use: "bracing",
});

/** Yield of the area that its ends can reach: of an angle the connected leg alone (AISC 360-16 D3, the least U). */
const tieStrength = (member: Member, yieldStress: number): number =>
  yieldStress * (isAngle(member) ? member.angle * member.thickness : memberShape(member).area);

/** Diagonals too slender to be pressed: statics asks for a horizontal, practice for a limit on all but rods. */
function onlyPulls(member: Member, slenderness: number, horizontal: Member | undefined): void {
  if (!horizontal)
    throw new RangeError(
      `x bracing: found diagonals of KL/r ${slenderness.toFixed(0)} without horizontals, expected at most ${MOST_SLENDER_STRUT} or horizontals: one diagonal alone is not in balance (statics)`,
    );
  if (isAngle(member) || member.wall !== undefined)
    within(
      "bracing that only pulls, L/r",
      slenderness,
      MOST_SLENDER_TIE,
      "AISC 360-16 D1 user note, here a limit",
      "use a thicker brace or a shorter panel",
    );
}
