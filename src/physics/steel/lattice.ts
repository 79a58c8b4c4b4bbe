import { type Bracing, braceFace, facePattern } from "./bracing.ts";
import { type SteelCodeName, steelCodes } from "./codes.ts";
import type { Tubing } from "./en1993.ts";
import { faceOutline } from "./face-outline.ts";
import { isAngle, type Member, memberShape, thinned } from "./member.ts";

/** 490 lb/ft3 in N/m3: common practice, no source. */
export const STEEL_UNIT_WEIGHT = 490 * 157.08746061538463;

/** What the seller says that the section as new bears, no factor inside. SI. */
export interface Rating {
  /** Bending of the whole section, N m, at its worst direction. */
  readonly moment?: number;
  /** Thrust on the whole section, N. */
  readonly axial?: number;
  /** Shear on the whole section, N, at its worst direction. */
  readonly shear?: number;
  readonly source: string;
}

/** What the lattice needs to know of a section; a catalog section is one. SI. */
export interface LatticeGeometry {
  readonly legs: 3 | 4;
  /** Leg centre to leg centre. */
  readonly face: number;
  readonly leg: Member;
  readonly measuredWall?: number;
  readonly bracing: Bracing;
  /** Height of leg between bracing points on one face. */
  readonly panel: number;
  readonly yield: number;
  readonly modulus: number;
  /** How its tubes were made; only EN 1993 asks. Default: cold-formed, the weaker. */
  readonly tubing?: Tubing;
  /** Greatest pull of the joint between pieces, per leg, N. */
  readonly splice?: number;
  readonly rated?: Rating;
  readonly extraWeight: number;
}

/** A lattice section as one beam. SI; strengths are nominal (no factor inside). */
export interface LatticeProperties {
  /** N m2, the same in every direction. */
  readonly bendingStiffness: number;
  /** N. */
  readonly axialStiffness: number;
  /** N per unit shear strain. */
  readonly shearStiffness: number;
  /** N m2: torque per twist per length, of the tube that its faces make. */
  readonly torsionStiffness: number;
  /** N/m, joints included. */
  readonly weightPerLength: number;
  /** N, one leg. */
  readonly legCompression: number;
  /** N, one leg or its splice. */
  readonly legTension: number;
  /** m: the thrust that uses as much of a leg as 1 N/m does that bends it between its panel points; 0 where rated. */
  readonly legBent: number;
  /** KL/r of a leg between bracing points. */
  readonly legSlenderness: number;
  /** KL/r of a diagonal. */
  readonly bracingSlenderness: number;
  /** N, the shear on the whole section, at its worst direction, that the bracing bears. */
  readonly shearStrength: number;
  /** N m, the torque alone that the bracing bears; a face takes shear and torque together, so shares add. */
  readonly torsionStrength: number;
  /** Share of the axial force in one leg: 1/3 or 1/4. */
  readonly axialShare: number;
  /** m: greatest leg force of a moment M is M / momentArm. */
  readonly momentArm: number;
  /** Solid over gross area of one face. */
  readonly solidity: number;
  /** m2/m: solid area of one face per height. */
  readonly faceArea: number;
  /** Share of that area which is round: the rest are flats, which no reduction for round members covers. */
  readonly roundShare: number;
  /** m, out to out of the legs on one face. */
  readonly outerWidth: number;
  /** Length of diagonals per height, all faces, m/m. */
  readonly bracingPerLength: number;
  /** The same of horizontals. */
  readonly horizontalPerLength: number;
  /** Who rated the legs, or the bracing, where a rating took the place of what was computed. */
  readonly legsRatedBy?: string;
  readonly bracingRatedBy?: string;
}

/**
 * Properties of a lattice section from its members. docs/theory/steel.md.
 * @param code the standard that its strengths come from
 * @throws RangeError outside the range of a clause used, with what was found and what was expected
 */
export function latticeProperties(
  section: LatticeGeometry,
  code: SteelCodeName = "aisc360",
): LatticeProperties {
  const { legs, face, panel, modulus } = section;
  if (legs === 3 && isAngle(section.leg))
    throw new RangeError(
      "lattice: found angles as legs of a triangular mast, expected rods or tubes: its faces meet at 60 degrees, an angle's legs at 90, and bent angles are not covered",
    );
  const outline = faceOutline(section);
  const braced = braceFace(section, steelCodes[code]);
  const asNew = legOf(section, section.leg, code);
  const worn = legOf(section, thinned(section.leg, section.measuredWall), code);
  const facesInLine = legs / 2; // sum of cos2 over the faces, any direction
  // worst direction: one face takes 2/3 (three legs) or 1/2 (four legs) of the shear
  const computedShear = braced.strength * facesInLine;
  const shearStrength = section.rated?.shear ?? computedShear;
  const momentArm = face * (legs === 3 ? Math.sqrt(3) / 2 : Math.SQRT2);
  // the shear flow around the tube loads every face alike: T = 2 Am q, with q = face shear / b
  const tubeArea = face ** 2 * (legs === 3 ? Math.sqrt(3) / 4 : 1);
  const faceStrength = shearStrength / facesInLine;

  const { length, diagonals, horizontal } = facePattern(section);
  const bracingPerLength = (legs * diagonals * length) / panel;
  const horizontalPerLength = horizontal ? (legs * face) / panel : 0;
  const steelPerLength =
    legs * asNew.area +
    bracingPerLength * memberShape(section.bracing.member).area +
    (horizontal ? horizontalPerLength * memberShape(horizontal).area : 0);
  return {
    ...outline,
    ...legStrength(section, asNew, worn, momentArm),
    bendingStiffness: modulus * worn.area * face ** 2 * (legs === 3 ? 0.5 : 1),
    axialStiffness: modulus * worn.area * legs,
    shearStiffness: braced.stiffness * facesInLine,
    torsionStiffness: (4 * tubeArea ** 2 * braced.stiffness) / (legs * face ** 2),
    weightPerLength: steelPerLength * STEEL_UNIT_WEIGHT * (1 + section.extraWeight),
    legSlenderness: worn.slenderness,
    bracingSlenderness: braced.slenderness,
    shearStrength,
    torsionStrength: (2 * tubeArea * faceStrength) / face,
    bracingRatedBy: section.rated?.shear === undefined ? undefined : section.rated.source,
    axialShare: 1 / legs,
    momentArm,
    bracingPerLength,
    horizontalPerLength,
  };
}

interface Leg {
  readonly area: number;
  /** N. */
  readonly tension: number;
  readonly slenderness: number;
  /** N. */
  readonly compression: number;
  /** At first yield, N m. */
  readonly bending: number;
  /** N. */
  readonly euler: number;
}

function legOf(section: LatticeGeometry, member: Member, code: SteelCodeName): Leg {
  const { area, radiusOfGyration, elasticModulus } = memberShape(member);
  const slenderness = section.panel / radiusOfGyration;
  const counted = steelCodes[code].countedYield(section.yield);
  return {
    area,
    tension: counted * area,
    bending: counted * elasticModulus,
    euler: (Math.PI ** 2 * section.modulus * area) / slenderness ** 2,
    slenderness,
    compression: steelCodes[code].compression({
      member,
      length: section.panel,
      yield: section.yield,
      modulus: section.modulus,
      tubing: section.tubing ?? "cold-formed",
      use: "leg",
    }),
  };
}

/** Strength of one leg: a rating takes the place of what was computed, less what the wall has lost of it. */
function legStrength(
  section: LatticeGeometry,
  asNew: Leg,
  worn: Leg,
  momentArm: number,
): Pick<LatticeProperties, "legCompression" | "legTension" | "legBent" | "legsRatedBy"> {
  const { rated, legs } = section;
  const splice = section.splice ?? Number.POSITIVE_INFINITY;
  const bent = rated?.moment === undefined ? undefined : rated.moment / momentArm;
  const pressed = rated?.axial === undefined ? undefined : rated.axial * (1 / legs);
  // AISC 360-16 H1-1 with x + y for its two lines, B1 of appendix 8 at the leg's whole strength; simply supported
  const legBent =
    (section.panel ** 2 / 8) * (worn.compression / (worn.bending * (1 - worn.compression / worn.euler)));
  const legTension = Math.min(
    splice,
    bent === undefined ? worn.tension : bent * Math.min(1, worn.area / asNew.area),
  );
  if (!rated || (bent === undefined && pressed === undefined))
    return { legCompression: worn.compression, legTension, legBent };
  const kept = Math.min(1, worn.compression / asNew.compression);
  return {
    legCompression: kept * Math.min(bent ?? Number.POSITIVE_INFINITY, pressed ?? Number.POSITIVE_INFINITY),
    legTension,
    legBent: 0,
    legsRatedBy: rated.source,
  };
}
