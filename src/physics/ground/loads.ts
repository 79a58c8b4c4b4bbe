/** What a mast brings to the top of its footing, at grade. N, N m. */
export interface FootingLoads {
  /** Positive down. */
  readonly compression: number;
  /** Resultant, any direction. */
  readonly shear: number;
  /** Resultant, in the direction of the shear. */
  readonly moment: number;
  /** Of the mast's foot on a pin, from plumb, rad. */
  readonly turn?: number;
}

/** One limit state: it holds while demand x required factor <= capacity. An infinite demand always fails. */
export interface Resistance {
  readonly demand: number;
  readonly capacity: number;
}

export interface FootingResistance {
  /** Pa: Meyerhof's pressure against the soil's bearing. */
  readonly bearing: Resistance;
  /** N m about the toe. */
  readonly overturning: Resistance;
  /** N. */
  readonly sliding: Resistance;
  /** What the base carries, N, and how far off its middle, m: for the concrete. Infinite where it lifts. */
  readonly normal: number;
  readonly eccentricity: number;
}

/** What is poured, dug and formed. m3, m3, m2. */
export interface TakeOff {
  readonly concrete: number;
  readonly dug: number;
  /** Depth of the hole, m: it has one plan all the way down. 0 where nothing is dug. */
  readonly hole: number;
  readonly formed: number;
  /** Steel in the concrete, kg; absent where it is bought by the volume of concrete. */
  readonly bars?: number;
}

/** A footing that lifts off: nothing here resists, so every check fails whatever its factor. */
export function lifted(bearing: number): FootingResistance {
  const fails = { demand: Number.POSITIVE_INFINITY, capacity: 0 };
  return {
    bearing: { demand: Number.POSITIVE_INFINITY, capacity: bearing },
    overturning: fails,
    sliding: fails,
    normal: 0,
    eccentricity: Number.POSITIVE_INFINITY,
  };
}
