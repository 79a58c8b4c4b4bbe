const LIGHT_SPEED = 299_792_458;
const VACUUM_PERMITTIVITY = 8.8541878128e-12;

export interface GroundConstants {
  readonly relativePermittivity: number;
  /** S/m. */
  readonly conductivity: number;
}

export type Polarisation = "horizontal" | "vertical";

interface Complex {
  readonly re: number;
  readonly im: number;
}

/** Root in the right half-plane: a wave that dies away downward. */
function root(re: number, im: number): Complex {
  const size = Math.hypot(re, im);
  const real = Math.sqrt((size + re) / 2);
  return { re: real, im: Math.sign(im) * Math.sqrt((size - re) / 2) };
}

/** Fresnel reflection coefficient of the ground. Frequency Hz, elevation above the ground plane in rad. */
export function reflectionCoefficient(
  ground: GroundConstants,
  frequency: number,
  elevation: number,
  polarisation: Polarisation,
): Complex {
  const sine = Math.sin(elevation);
  const loss = ground.conductivity / (2 * Math.PI * frequency * VACUUM_PERMITTIVITY);
  const into = root(ground.relativePermittivity - Math.cos(elevation) ** 2, -loss);
  const direct =
    polarisation === "horizontal"
      ? { re: sine, im: 0 }
      : { re: ground.relativePermittivity * sine, im: -loss * sine };
  const above = { re: direct.re - into.re, im: direct.im - into.im };
  const below = { re: direct.re + into.re, im: direct.im + into.im };
  const size = below.re ** 2 + below.im ** 2;
  return {
    re: (above.re * below.re + above.im * below.im) / size,
    im: (above.im * below.re - above.re * below.im) / size,
  };
}

export interface RaisedAntenna {
  /** Above the ground, m. */
  readonly height: number;
  /** Hz. */
  readonly frequency: number;
  readonly ground: GroundConstants;
  readonly polarisation: Polarisation;
  /** Fall of the ground in front, rad; 0 is flat. */
  readonly slope?: number;
}

/**
 * Field at an elevation angle relative to free space. Elevation in rad above the horizon.
 * @throws RangeError where the angle is not above the ground and at most upright
 */
export function fieldFactor(antenna: RaisedAntenna, elevation: number): number {
  const angle = elevation + (antenna.slope ?? 0);
  if (!(angle >= 0 && angle <= Math.PI / 2))
    throw new RangeError(
      `field factor: found ${angle} rad above the ground, expected 0 to ${Math.PI / 2}; no direct wave goes there`,
    );
  const { re, im } = reflectionCoefficient(antenna.ground, antenna.frequency, angle, antenna.polarisation);
  const phase = ((4 * Math.PI * antenna.frequency) / LIGHT_SPEED) * antenna.height * Math.sin(angle);
  const cosine = Math.cos(phase);
  const sine = Math.sin(phase);
  return Math.hypot(1 + re * cosine + im * sine, im * cosine - re * sine);
}

/**
 * Elevation of the first lobe over perfect ground, horizontal polarisation, rad: asin(wavelength/4h).
 * @throws RangeError where the antenna is lower than a quarter wavelength
 */
export function firstLobeAngle(height: number, frequency: number): number {
  const sine = LIGHT_SPEED / frequency / (4 * height);
  if (!(sine <= 1))
    throw new RangeError(
      `first lobe: found height ${height} m, expected at least a quarter wavelength, ${LIGHT_SPEED / frequency / 4} m`,
    );
  return Math.asin(sine);
}
