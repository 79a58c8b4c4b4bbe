const RADIANS = Math.PI / 180;

function checked(frictionAngle: number): number {
  if (!(frictionAngle >= 0 && frictionAngle <= 50))
    throw new RangeError(`friction angle: found ${frictionAngle} degrees, expected 0 to 50`);
  return frictionAngle * RADIANS;
}

/** What ground that falls or rises from an upright face leaves of Coulomb's wedge, no wall friction; null beyond its own angle. */
function wedge(angle: number, fall: number): number | null {
  const slope = Math.atan(fall);
  return slope > angle ? null : Math.sqrt((Math.sin(angle) * Math.sin(angle - slope)) / Math.cos(slope));
}

/**
 * Passive coefficient before an upright face without wall friction, the ground before it falling away: Coulomb's, on
 * level ground Rankine's. 0 where the ground falls more steeply than its own angle. Friction angle in degrees, 0 to 50.
 * @param fall per distance
 */
export function passiveCoefficient(frictionAngle: number, fall = 0): number {
  const angle = checked(frictionAngle);
  const left = wedge(angle, fall);
  return left === null ? 0 : (Math.cos(angle) / (1 - left)) ** 2;
}

/** Active coefficient, the ground behind rising away from the face by `fall`. */
export function activeCoefficient(frictionAngle: number, fall = 0): number {
  const angle = checked(frictionAngle);
  return (Math.cos(angle) / (1 + (wedge(angle, fall) ?? 0))) ** 2;
}

/** Denser than any soil of IBC table 1806.2, degrees: the steeper the angle, the more of it a slope takes. */
const DENSE = 45;

/** What a slope leaves of a lateral bearing that is stated for level ground, as a share. */
export const fallShare = (fall: number): number =>
  fall > 0 ? passiveCoefficient(DENSE, fall) / passiveCoefficient(DENSE) : 1;
