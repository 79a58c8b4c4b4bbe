import { passiveCoefficient } from "./rankine.ts";

/** Ultimate load of a short rigid free-head pile, N, and the moment it must bear, N m. */
export interface ShortPile {
  readonly ultimateLateral: number;
  readonly maxMoment: number;
  /** Depth of the greatest moment: below 1.5 diameters in clay, below grade in sand. m. */
  readonly momentDepth: number;
}

/**
 * Clay. Broms 1964, J. Soil Mech. Found. Div. ASCE 90 SM2.
 * @param undrainedStrength Pa @param eccentricity of the load above grade, m
 * @throws RangeError where the pile is not deeper than the 1.5 diameters that clay does not hold
 */
export function shortPileClay(
  undrainedStrength: number,
  diameter: number,
  embedment: number,
  eccentricity: number,
): ShortPile {
  const held = embedment - 1.5 * diameter;
  if (!(held > 0 && undrainedStrength > 0 && diameter > 0 && eccentricity >= 0))
    throw new RangeError(
      `short pile in clay: found embedment ${embedment} m, diameter ${diameter} m, strength ${undrainedStrength} Pa, eccentricity ${eccentricity} m, expected embedment above 1.5 diameters, strength above 0, eccentricity 0 or more`,
    );
  // H = 9 cu d f; moments: 9 f (e + 1.5 d + 0.5 f) = 2.25 (held - f)^2, a quadratic in f
  const a = 2.25;
  const b = 9 * (eccentricity + 1.5 * diameter) + 4.5 * held;
  const c = -2.25 * held ** 2;
  const f = (-b + Math.sqrt(b ** 2 - 4 * a * c)) / (2 * a);
  const ultimateLateral = 9 * undrainedStrength * diameter * f;
  return {
    ultimateLateral,
    maxMoment: ultimateLateral * (eccentricity + 1.5 * diameter + 0.5 * f),
    momentDepth: f,
  };
}

/**
 * Sand. Broms 1964, J. Soil Mech. Found. Div. ASCE 90 SM3; the toe force is taken at the tip.
 * @param frictionAngle degrees @param unitWeight N/m3 @param eccentricity of the load above grade, m
 * @throws RangeError where a given is out of range
 */
export function shortPileSand(
  frictionAngle: number,
  unitWeight: number,
  diameter: number,
  embedment: number,
  eccentricity: number,
): ShortPile {
  if (!(unitWeight > 0 && diameter > 0 && embedment > 0 && eccentricity >= 0))
    throw new RangeError(
      `short pile in sand: found unit weight ${unitWeight} N/m3, diameter ${diameter} m, embedment ${embedment} m, eccentricity ${eccentricity} m, expected all above 0, eccentricity 0 or more`,
    );
  const passive = passiveCoefficient(frictionAngle);
  const ultimateLateral =
    (0.5 * unitWeight * diameter * embedment ** 3 * passive) / (eccentricity + embedment);
  const momentDepth = Math.sqrt((2 * ultimateLateral) / (3 * unitWeight * diameter * passive));
  return {
    ultimateLateral,
    maxMoment: ultimateLateral * (eccentricity + (2 / 3) * momentDepth),
    momentDepth,
  };
}
