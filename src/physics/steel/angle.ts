/** An equal-leg angle: outside width of a leg, and its thickness. Metres. */
export interface AngleMember {
  readonly angle: number;
  readonly thickness: number;
}

/** Rolled toes are round: radii of gyration of the tables against sharp ones, the least (AISC Manual table 1-7). */
const ROUNDED = { along: 0.99, weak: 0.98 } as const;

/** What an equal-leg angle can do. m, m2. */
export interface AngleProperties {
  readonly area: number;
  /** From the outside of a leg to the centroid. */
  readonly centroid: number;
  /** Radius of gyration about the axis through the centroid along a leg. */
  readonly legRadius: number;
  /** About the weak principal axis, across the axis of symmetry. */
  readonly weakRadius: number;
  /** About the weak principal axis, m3. */
  readonly weakModulus: number;
  /** b/t. */
  readonly slimness: number;
}

/**
 * Properties of an equal-leg angle as two rectangles. docs/theory/steel.md.
 * @throws RangeError where the thickness does not fit in the leg
 */
export function angleProperties({ angle: b, thickness: t }: AngleMember): AngleProperties {
  if (!(b > 0 && t > 0 && t <= b / 2))
    throw new RangeError(
      `angle: found a leg of ${b} m and a thickness of ${t} m, expected a thickness above 0 and at most half the leg`,
    );
  const area = t * (2 * b - t);
  const centroid = (b * b + b * t - t * t) / (2 * (2 * b - t));
  const along = (t * (b - centroid) ** 3 + b * centroid ** 3 - (b - t) * (centroid - t) ** 3) / 3;
  // the leg along x, then what is left of the leg along y
  const product =
    b * t * (b / 2 - centroid) * (t / 2 - centroid) +
    (b - t) * t * (t / 2 - centroid) * ((b + t) / 2 - centroid);
  const weakRadius = ROUNDED.weak * Math.sqrt((along - Math.abs(product)) / area);
  return {
    area,
    centroid,
    legRadius: ROUNDED.along * Math.sqrt(along / area),
    weakRadius,
    // to the heel, and to the toes
    weakModulus:
      (area * weakRadius ** 2) /
      Math.max(Math.SQRT2 * centroid, (b + t) / Math.SQRT2 - Math.SQRT2 * centroid),
    slimness: b / t,
  };
}
