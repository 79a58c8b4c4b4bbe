const RADIANS = Math.PI / 180;

function spread(depth: number, angle: number): number {
  if (!(depth >= 0 && angle >= 0 && angle < 90))
    throw new RangeError(
      `uplift soil: found depth ${depth} m, angle ${angle} degrees, expected a depth of 0 or more, an angle from 0 to below 90`,
    );
  return depth * Math.tan(angle * RADIANS);
}

/**
 * Volume above a buried rectangle whose sides open at `angle` degrees from the vertical, m3: the exact prismatoid.
 * @throws RangeError where depth is negative or the angle is not from 0 to below 90
 */
export function upliftPrism(length: number, width: number, depth: number, angle: number): number {
  const out = spread(depth, angle);
  const bottom = length * width;
  const middle = (length + out) * (width + out);
  const top = (length + 2 * out) * (width + 2 * out);
  return (depth / 6) * (bottom + 4 * middle + top);
}

/**
 * Volume above a buried rectangle when every point of its edges lifts a cone: its corners are rounded, m3. Length and
 * width 0 is the cone of `upliftCone`.
 * @throws RangeError as `upliftPrism`
 */
export function upliftRounded(length: number, width: number, depth: number, angle: number): number {
  const out = spread(depth, angle);
  return depth * (length * width + (length + width) * out + (Math.PI / 3) * out ** 2);
}

/** Volume above a buried disc, sides at `angle` degrees from the vertical, m3. Radius 0 is a cone. */
export function upliftCone(radius: number, depth: number, angle: number): number {
  const top = radius + spread(depth, angle);
  return ((Math.PI * depth) / 3) * (radius ** 2 + radius * top + top ** 2);
}
