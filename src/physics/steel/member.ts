import { type AngleMember, angleProperties } from "./angle.ts";
import { type RoundMember, roundProperties } from "./round.ts";

/** A leg or a brace: solid rod, tube or equal-leg angle. */
export type Member = RoundMember | AngleMember;

export const isAngle = (member: Member): member is AngleMember => "angle" in member;

/** Wall of a tube, thickness of an angle; a solid rod has none. m. */
export const wallOf = (member: Member): number | undefined =>
  isAngle(member) ? member.thickness : member.wall;

/** Diameter, or the leg of an angle, m. */
export const widthOf = (member: Member): number => (isAngle(member) ? member.angle : member.diameter);

/** What a lattice needs to know of a member, whatever its kind. m, m2. */
export interface MemberShape {
  readonly area: number;
  /** Least radius of gyration: an angle's about its weak axis. */
  readonly radiusOfGyration: number;
  /** Least elastic section modulus, m3. */
  readonly elasticModulus: number;
  /** What it shows to the wind: diameter, or the whole leg of an angle. */
  readonly width: number;
  /** From its centroid to the outside of the mast, where it is a leg: an angle stands with its heel outward. */
  readonly outreach: number;
  /** Diameter of the circle around it, which ice grows from. */
  readonly circle: number;
}

/** @throws RangeError where a wall or thickness does not fit */
export function memberShape(member: Member): MemberShape {
  if (isAngle(member)) {
    const { area, weakRadius, weakModulus, centroid } = angleProperties(member);
    return {
      area,
      radiusOfGyration: weakRadius,
      elasticModulus: weakModulus,
      width: widthOf(member),
      outreach: centroid,
      circle: member.angle * Math.SQRT2,
    };
  }
  const { area, radiusOfGyration, elasticModulus } = roundProperties(member);
  const { diameter } = member;
  return {
    area,
    radiusOfGyration,
    elasticModulus,
    width: diameter,
    outreach: diameter / 2,
    circle: diameter,
  };
}

/**
 * What is left of a tube or angle where its wall has thinned to `measuredWall`: all loss from the outside, the safe
 * choice (docs/theory/steel.md). A wall measured thicker than new counts as new.
 * @throws RangeError for a solid bar, whose loss can't be stated as a wall
 */
export function thinned(member: Member, measuredWall: number | undefined): Member {
  if (measuredWall === undefined) return member;
  if (isAngle(member)) {
    const loss = Math.max(0, member.thickness - measuredWall);
    return { angle: member.angle - loss, thickness: member.thickness - loss };
  }
  if (member.wall === undefined)
    throw new RangeError(
      `measured wall: found ${measuredWall} m on a solid bar, expected a tube or an angle; state the diameter as measured instead`,
    );
  const loss = Math.max(0, member.wall - measuredWall);
  return { diameter: member.diameter - 2 * loss, wall: member.wall - loss };
}
