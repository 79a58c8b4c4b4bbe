import { columnStress, effectiveAreaShare } from "./column.ts";
import { type RoundMember, roundProperties, thinned } from "./round.ts";

/** 490 lb/ft3 in N/m3: common practice, no source. */
export const STEEL_UNIT_WEIGHT = 490 * 157.08746061538463;

/** What the lattice needs to know of a section; a catalog section is one. SI. */
export interface LatticeGeometry {
  readonly legs: 3 | 4;
  /** Leg centre to leg centre. */
  readonly face: number;
  readonly leg: RoundMember;
  readonly measuredWall?: number;
  readonly bracing: { readonly pattern: "single" | "x"; readonly member: RoundMember };
  /** Height of leg between bracing points on one face. */
  readonly panel: number;
  readonly yield: number;
  readonly modulus: number;
  /** Greatest pull of the joint between pieces, per leg, N. */
  readonly splice?: number;
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
  /** N/m, joints included. */
  readonly weightPerLength: number;
  /** N, one leg. */
  readonly legCompression: number;
  /** N, one leg or its splice. */
  readonly legTension: number;
  /** KL/r of a leg between bracing points. */
  readonly legSlenderness: number;
  /** KL/r of a diagonal. */
  readonly bracingSlenderness: number;
  /** N, the shear on the whole section, at its worst direction, that the bracing bears. */
  readonly shearStrength: number;
  /** Share of the axial force in one leg: 1/3 or 1/4. */
  readonly axialShare: number;
  /** m: greatest leg force of a moment M is M / momentArm. */
  readonly momentArm: number;
  /** Solid over gross area of one face. */
  readonly solidity: number;
  /** m2/m: solid area of one face per height. */
  readonly faceArea: number;
  /** m, out to out of the legs on one face. */
  readonly outerWidth: number;
  /** Length of diagonals per height, all faces, m/m. */
  readonly bracingPerLength: number;
}

/** Length and rise of one diagonal, centre to centre of the legs, m. Each pattern has two to a panel. */
function diagonal(section: LatticeGeometry): { length: number; rise: number } {
  const rise = section.bracing.pattern === "x" ? section.panel : section.panel / 2;
  return { length: Math.hypot(section.face, rise), rise };
}

/** The bracing of one face: nominal shear strength, N, and shear stiffness, N. docs/theory/steel.md. */
function braceFace(section: LatticeGeometry): { strength: number; stiffness: number; slenderness: number } {
  const { length, rise } = diagonal(section);
  const { area, radiusOfGyration, slimness } = roundProperties(section.bracing.member);
  const slenderness = length / radiusOfGyration;
  const share = effectiveAreaShare(slimness, section.yield, section.modulus);
  const cosine = section.face / length;
  const squeezed = columnStress(section.yield, section.modulus, slenderness) * area * share * cosine;
  const pulled = section.yield * area * cosine;
  const oneDiagonal = (section.modulus * area * section.face ** 2 * rise) / length ** 3;
  if (section.bracing.pattern === "single")
    return { strength: squeezed, stiffness: oneDiagonal, slenderness };
  return 2 * squeezed >= pulled
    ? { strength: 2 * squeezed, stiffness: 2 * oneDiagonal, slenderness }
    : { strength: pulled, stiffness: oneDiagonal, slenderness };
}

/**
 * Properties of a lattice section from its members. docs/theory/steel.md.
 * @throws RangeError where legs overlap, a wall does not fit, or a tube is too thin for the clauses used
 */
export function latticeProperties(section: LatticeGeometry): LatticeProperties {
  const { legs, face, leg, panel, modulus } = section;
  if (!(face > leg.diameter && panel > 0))
    throw new RangeError(
      `lattice: found face ${face} m, leg ${leg.diameter} m, panel ${panel} m, expected the face above the leg and a panel above 0`,
    );
  const asNew = roundProperties(leg);
  const worn = roundProperties(thinned(leg, section.measuredWall));
  const brace = roundProperties(section.bracing.member);
  const braced = braceFace(section);
  const { length } = diagonal(section);

  const legSlenderness = panel / worn.radiusOfGyration;
  const working = worn.area * effectiveAreaShare(worn.slimness, section.yield, modulus);
  const legTension = Math.min(section.yield * worn.area, section.splice ?? Number.POSITIVE_INFINITY);
  const facesInLine = legs / 2; // sum of cos2 over the faces, any direction

  // two diagonals to a panel in both patterns; between the legs they show their clear length only
  const steelPerLength = legs * (asNew.area + (2 * length * brace.area) / panel);
  const clear = (length * (face - leg.diameter)) / face;
  const outerWidth = face + leg.diameter;
  const faceArea = Math.min(
    outerWidth,
    2 * leg.diameter + (2 * clear * section.bracing.member.diameter) / panel,
  );
  return {
    bendingStiffness: modulus * worn.area * face ** 2 * (legs === 3 ? 0.5 : 1),
    axialStiffness: modulus * worn.area * legs,
    shearStiffness: braced.stiffness * facesInLine,
    weightPerLength: steelPerLength * STEEL_UNIT_WEIGHT * (1 + section.extraWeight),
    legCompression: columnStress(section.yield, modulus, legSlenderness) * working,
    legTension,
    legSlenderness,
    bracingSlenderness: braced.slenderness,
    // worst direction: one face takes 2/3 (three legs) or 1/2 (four legs) of the shear
    shearStrength: braced.strength * facesInLine,
    axialShare: 1 / legs,
    momentArm: face * (legs === 3 ? Math.sqrt(3) / 2 : Math.SQRT2),
    solidity: faceArea / outerWidth,
    faceArea,
    outerWidth,
    bracingPerLength: (legs * 2 * length) / panel,
  };
}
