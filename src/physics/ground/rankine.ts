const RADIANS = Math.PI / 180;

function halfAngle(frictionAngle: number): number {
  if (!(frictionAngle >= 0 && frictionAngle <= 50))
    throw new RangeError(`friction angle: found ${frictionAngle} degrees, expected 0 to 50`);
  return (frictionAngle * RADIANS) / 2;
}

/** Rankine's passive coefficient, level ground, no wall friction. Friction angle in degrees, 0 to 50. */
export function passiveCoefficient(frictionAngle: number): number {
  return Math.tan(Math.PI / 4 + halfAngle(frictionAngle)) ** 2;
}

/** Rankine's active coefficient. Friction angle in degrees, 0 to 50. */
export function activeCoefficient(frictionAngle: number): number {
  return Math.tan(Math.PI / 4 - halfAngle(frictionAngle)) ** 2;
}
