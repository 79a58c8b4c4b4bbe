/** An axis of the grid as it is computed with. */
export type Axis = number | readonly number[] | { from: number; to: number; step: number };

/** An axis of more values is a slip of the unit, not a wish. */
export const MOST_AXIS_VALUES = 10_000;

// a step that misses the end by a millionth of itself reaches it: 15 ft + 11 x 5 ft is 70 ft, whatever the rounding
const SLACK = 1e-6;

export const axisCount = (axis: { from: number; to: number; step: number }): number =>
  Math.floor((axis.to - axis.from) / axis.step + SLACK) + 1;

/** Nanometres: the same length reached in other ways is the same number. */
const rounded = (value: number): number => Math.round(value * 1e9) / 1e9;

/**
 * The values of an axis, rising, each once. A range starts at `from` and takes whole steps; `to` is included
 * where a step lands on it, and never passed.
 */
export const axisValues = (axis: Axis): number[] => {
  if (typeof axis === "number") return [rounded(axis)];
  if ("from" in axis)
    return Array.from({ length: axisCount(axis) }, (_, index) => rounded(axis.from + index * axis.step));
  return [...new Set(axis.map(rounded))].sort((a, b) => a - b);
};
