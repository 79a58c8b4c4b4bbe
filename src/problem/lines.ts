import { distanceToSegment, keptFromLines, type Point, turn } from "../model/lot.ts";
import type { Study } from "../model/study.ts";

type Lot = Study["lot"];

/** Level distance of two straight stretches, m; 0 where they cross. */
const apart = (a: Point, b: Point, c: Point, d: Point): number =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0
    ? 0
    : Math.min(
        distanceToSegment(a, c, d),
        distanceToSegment(b, c, d),
        distanceToSegment(c, a, b),
        distanceToSegment(d, a, b),
      );

/**
 * Level distance of the power line that comes nearest to the guys toward one anchor, m, and which; null where none is
 * stated. Seen from above guys are straight from the mast's axis to their anchor; how high either hangs is not asked.
 */
function nearestTo({ mast, powerLines }: Lot, anchor: Point): { name: string; distance: number } | null {
  let nearest: { name: string; distance: number } | null = null;
  for (const { name, points } of powerLines)
    for (let i = 1; i < points.length; i++) {
      const distance = apart(mast, anchor, points[i - 1], points[i]);
      if (!nearest || distance < nearest.distance) nearest = { name, distance };
    }
  return nearest;
}

/** What the guys toward an anchor are farther from every power line than they must be, m; endless where none is stated. */
export const guyRoom = (lot: Lot, anchor: Point): number =>
  (nearestTo(lot, anchor)?.distance ?? Number.POSITIVE_INFINITY) - keptFromLines(lot);

/** The line and the guys that come nearest to each other; null where no line is stated. */
export function nearestGuy(
  lot: Lot,
  anchors: readonly Point[],
): { readonly name: string; readonly anchor: number; readonly distance: number } | null {
  let nearest: ReturnType<typeof nearestGuy> = null;
  anchors.forEach((at, anchor) => {
    const found = nearestTo(lot, at);
    if (found && (!nearest || found.distance < nearest.distance)) nearest = { ...found, anchor };
  });
  return nearest;
}
