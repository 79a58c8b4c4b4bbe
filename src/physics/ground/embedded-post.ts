/** A post set in the ground, pushed at a height above grade. SI. */
export interface EmbeddedPost {
  readonly lateralForce: number;
  /** Of the force above grade. */
  readonly forceHeight: number;
  /** Diameter, or the diagonal of a square. */
  readonly width: number;
  /** Pa/m. */
  readonly lateralBearingPerDepth: number;
  /** 2 where the doubling of IBC 1806.3.4 is chosen, else 1. */
  readonly multiplier: number;
  /** Lateral bearing that no depth exceeds, Pa. Default: none. */
  readonly cap?: number | undefined;
}

/**
 * How the code's "12 ft for computing lateral pressure" is read: as d/3 up to 12 ft, as d up to 12 ft, or not at all.
 */
export type DepthLimit = "literal" | "conservative" | "none";

const TWELVE_FEET = 12 * 0.3048;

/** Depth whose lateral bearing counts for a post of this depth, m. */
export function pressureDepth(depth: number, limit: DepthLimit): number {
  if (limit === "literal") return Math.min(depth / 3, TWELVE_FEET);
  if (limit === "conservative") return Math.min(depth, TWELVE_FEET) / 3;
  return depth / 3;
}

function checked(post: EmbeddedPost): number {
  const slope = post.lateralBearingPerDepth * post.multiplier;
  if (!(post.width > 0 && slope > 0 && post.lateralForce >= 0 && post.forceHeight >= 0))
    throw new RangeError(
      `embedded post: found width ${post.width} m, lateral bearing ${slope} Pa/m, force ${post.lateralForce} N at ${post.forceHeight} m, expected width and bearing above 0, force and height 0 or more`,
    );
  return slope;
}

/**
 * Depth of a post free at grade, m. IBC 1807.3.2.1, solved for the depth on which its own pressure depends.
 * @throws RangeError where a given is out of range
 */
export function unrestrainedDepth(post: EmbeddedPost, limit: DepthLimit = "literal"): number {
  const slope = checked(post);
  if (post.lateralForce === 0) return 0;
  const wanted = (depth: number) => {
    const pressure = Math.min(slope * pressureDepth(depth, limit), post.cap ?? Number.POSITIVE_INFINITY);
    const a = (2.34 * post.lateralForce) / (pressure * post.width);
    return 0.5 * a * (1 + Math.sqrt(1 + (4.36 * post.forceHeight) / a));
  };
  // the depth wanted falls as the depth given rises: one crossing
  let low = 0;
  let high = 1;
  while (wanted(high) > high) high *= 2;
  for (let step = 0; step < 80; step++) {
    const middle = (low + high) / 2;
    if (wanted(middle) > middle) low = middle;
    else high = middle;
  }
  return high;
}

/** Depth of a post held at grade by a rigid floor, m. IBC 1807.3.2.2. */
export function restrainedDepth(post: EmbeddedPost): number {
  const slope = checked(post);
  return Math.cbrt((4.25 * post.lateralForce * post.forceHeight) / (slope * post.width));
}
