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
 * Meyerhof's pressure under a square base, Pa: the worse of the weight that holds and of that with `more`, for weight
 * presses the soil as well as it holds the load near the middle. Infinity where the load is off the base.
 * @param moment at the base, N m @param more N
 */
export function meyerhofPressure(width: number, normal: number, moment: number, more: number): number {
  const under = (load: number): number => {
    const area = effectiveSquare(width, moment / load);
    return area > 0 ? load / area : Number.POSITIVE_INFINITY;
  };
  return more > 0 ? Math.max(under(normal), under(normal + more)) : under(normal);
}
