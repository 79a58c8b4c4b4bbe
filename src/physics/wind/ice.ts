import { facePattern } from "../steel/bracing.ts";
import { faceOutline } from "../steel/face-outline.ts";
import type { LatticeGeometry } from "../steel/lattice.ts";
import { type Member, memberShape } from "../steel/member.ts";

/** 56 lb/ft3 in N/m3: ASCE 7-16 section 10.4.1, from memory. */
export const ICE_UNIT_WEIGHT = 56 * 157.08746061538463;

/** 33 ft: the height at which maps state the thickness. */
const MAP_HEIGHT = 10.0584;

/**
 * Radial ice at a height, m: (z / 33 ft)^0.10, at most 1.4 times the map's. ASCE 7-16 section 10.4.3, from memory.
 * @param thickness at 33 ft, m @param height m
 */
export const iceAt = (thickness: number, height: number): number =>
  thickness * Math.min(1.4, (Math.max(height, 0) / MAP_HEIGHT) ** 0.1);

/** Weight of radial ice on a round member, N/m. ASCE 7-16 section 10.4.1, from memory. */
export const iceWeight = (diameter: number, thickness: number): number =>
  ICE_UNIT_WEIGHT * Math.PI * (diameter + thickness) * thickness;

/** A lattice with every member grown by the ice: its solid face and what the ice weighs. */
export interface IcedLattice {
  readonly solidity: number;
  /** m2/m. */
  readonly faceArea: number;
  /** Share of that area which is round. */
  readonly roundShare: number;
  /** N/m of height. */
  readonly weight: number;
}

/**
 * A rod or tube grows by the ice all round; so does an angle, whose ice is counted about the circle around it.
 * @throws RangeError where the ice bridges the legs: the lattice is then a solid face, which no clause here covers
 */
export function icedLattice(section: LatticeGeometry, thickness: number): IcedLattice {
  const { face, panel, leg, bracing, legs } = section;
  const { length, diagonals, horizontal } = facePattern(section);
  const ice = (member: Member) => iceWeight(memberShape(member).circle, thickness);
  const { solidity, faceArea, roundShare } = faceOutline(section, thickness);
  return {
    solidity,
    faceArea,
    roundShare,
    weight:
      legs *
      (ice(leg) +
        (diagonals * length * ice(bracing.member) + (horizontal ? face * ice(horizontal) : 0)) / panel),
  };
}
