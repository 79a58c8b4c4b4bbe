/** How a base presses on the soil under an eccentric load. m, Pa. */
export interface EccentricPressure {
  readonly eccentricity: number;
  /** Linear pressure, no tension. Infinity where the load is off the base. */
  readonly peakPressure: number;
  /** Meyerhof's uniform pressure. Infinity where the load is off the base. */
  readonly effectivePressure: number;
}

/**
 * A rectangular base loaded off its centre, square to one side. Linear: statics; effective width: Meyerhof 1953.
 * @param width along the eccentricity, m @param length across it, m
 */
export function eccentricPressure(
  load: number,
  moment: number,
  width: number,
  length: number,
): EccentricPressure {
  const eccentricity = load > 0 ? Math.abs(moment) / load : Number.POSITIVE_INFINITY;
  const reach = width - 2 * eccentricity;
  if (!(reach > 0))
    return {
      eccentricity,
      peakPressure: Number.POSITIVE_INFINITY,
      effectivePressure: Number.POSITIVE_INFINITY,
    };
  return {
    eccentricity,
    peakPressure:
      eccentricity <= width / 6
        ? (load / (width * length)) * (1 + (6 * eccentricity) / width)
        : (4 * load) / (3 * length * reach),
    effectivePressure: load / (reach * length),
  };
}

/** Meyerhof's area of a square base, m2, for the worse of wind square to a face and on the diagonal. */
export function effectiveSquare(width: number, eccentricity: number): number {
  if (!(eccentricity < width / 2)) return 0;
  return Math.min(width * (width - 2 * eccentricity), (width - Math.SQRT2 * eccentricity) ** 2);
}

/**
 * Greatest linear pressure without tension under a square base whose load stands on its diagonal, Pa;
 * Infinity where it is off the base. docs/theory/ground.md.
 */
export function diagonalPeakPressure(load: number, eccentricity: number, width: number): number {
  if (!(load > 0 && eccentricity < width / Math.SQRT2)) return Number.POSITIVE_INFINITY;
  if (eccentricity <= (Math.SQRT2 / 12) * width)
    return (load / width ** 2) * (1 + (6 * Math.SQRT2 * eccentricity) / width);
  const centre = width / 2 - eccentricity / Math.SQRT2;
  if (4 * centre <= width) return (6 * load) / (4 * centre) ** 2;

  // pressure k(a - x - y) from the loaded corner; the two tips beyond the base are taken off
  const volume = (a: number) => a ** 3 / 6 - (a - width) ** 3 / 3;
  const moment = (a: number) => a ** 4 / 24 - ((a - width) ** 3 * width) / 6 - (a - width) ** 4 / 12;
  let low = width;
  let high = 2 * width;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (moment(middle) / volume(middle) < centre) low = middle;
    else high = middle;
  }
  return (load * low) / volume(low);
}
