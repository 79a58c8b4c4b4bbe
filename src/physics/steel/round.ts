/** A round bar (no wall) or tube. Metres. */
export interface RoundMember {
  readonly diameter: number;
  readonly wall?: number;
}

/** What a round cross-section can do. m, m2, m3, m4. */
export interface RoundProperties {
  readonly area: number;
  readonly secondMoment: number;
  readonly radiusOfGyration: number;
  readonly elasticModulus: number;
  readonly plasticModulus: number;
  /** D/t; 0 for a solid bar. */
  readonly slimness: number;
}

/**
 * Properties of a round bar or tube.
 * @throws RangeError where the wall does not fit in the diameter
 */
export function roundProperties(member: RoundMember): RoundProperties {
  const { diameter: outer, wall } = member;
  if (!(outer > 0) || (wall !== undefined && !(wall > 0 && wall <= outer / 2)))
    throw new RangeError(
      `round member: found diameter ${outer} m and wall ${wall} m, expected a wall above 0 and at most half the diameter`,
    );
  const bore = wall === undefined ? 0 : outer - 2 * wall;
  const area = (Math.PI / 4) * (outer ** 2 - bore ** 2);
  const secondMoment = (Math.PI / 64) * (outer ** 4 - bore ** 4);
  return {
    area,
    secondMoment,
    radiusOfGyration: Math.sqrt(secondMoment / area),
    elasticModulus: (2 * secondMoment) / outer,
    plasticModulus: (outer ** 3 - bore ** 3) / 6,
    slimness: wall === undefined ? 0 : outer / wall,
  };
}
