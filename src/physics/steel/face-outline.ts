import { facePattern } from "./bracing.ts";
import type { LatticeGeometry } from "./lattice.ts";
import { isAngle, type Member, memberShape } from "./member.ts";

/** What one face shows to the wind. */
export interface FaceOutline {
  /** Solid area per height, m2/m. */
  readonly faceArea: number;
  /** m, out to out of the legs. */
  readonly outerWidth: number;
  /** Solid over gross area. */
  readonly solidity: number;
  /** Share of the solid area that rods and tubes make: angles are flats to the wind. */
  readonly roundShare: number;
}

/**
 * Solid area of one face, members grown by `ice` all round. Where diagonals cross, the overlap counts twice.
 * @param ice radial thickness, m
 * @throws RangeError where the legs touch
 */
export function faceOutline(section: LatticeGeometry, ice = 0): FaceOutline {
  const { face, leg, panel, bracing } = section;
  const { length, diagonals, horizontal } = facePattern(section);
  const wide = (member: Member) => memberShape(member).width + 2 * ice;
  const { outreach, width } = memberShape(leg);
  const outerWidth = face + 2 * (outreach + ice);
  const between = outerWidth - 2 * (width + 2 * ice);
  if (!(between > 0 && panel > 0))
    throw new RangeError(
      `lattice: found face ${face} m, leg ${width + 2 * ice} m, panel ${panel} m, expected the face above the leg and a panel above 0`,
    );
  // between the legs, bracing shows its clear length only
  const parts: readonly [Member, number][] = [
    [leg, 2 * wide(leg)],
    [bracing.member, (diagonals * length * (between / face) * wide(bracing.member)) / panel],
    ...(horizontal ? [[horizontal, (between * wide(horizontal)) / panel] as [Member, number]] : []),
  ];
  const solid = parts.reduce((sum, [, area]) => sum + area, 0);
  const round = parts.reduce((sum, [member, area]) => sum + (isAngle(member) ? 0 : area), 0);
  const faceArea = Math.min(outerWidth, solid);
  return { faceArea, outerWidth, solidity: faceArea / outerWidth, roundShare: round / solid };
}
