import { distanceToSegment, type Point } from "../model/lot.ts";
import type { Study } from "../model/study.ts";

type Lot = Study["lot"];

/** Distance inside the lot line, m; negative outside. */
function insideBy(corners: readonly Point[], point: Point): number {
  let inside = false;
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    const [xi, yi] = corners[i];
    const [xj, yj] = corners[j];
    if (yi > point[1] !== yj > point[1] && point[0] < ((xj - xi) * (point[1] - yi)) / (yj - yi) + xi)
      inside = !inside;
    nearest = Math.min(nearest, distanceToSegment(point, corners[j], corners[i]));
  }
  return inside ? nearest : -nearest;
}

/** Room of an anchor at a place, m: inside the setback, and out of every plot kept free of anchors. */
export function roomAt({ corners, setback, keepOut }: Lot, point: Point): number {
  let room = insideBy(corners, point) - setback;
  for (const plot of keepOut ?? []) room = Math.min(room, -insideBy(plot.corners, point));
  return room;
}

/** A micrometre: an anchor on the line is on the right side of it. */
export const ON_THE_LINE = 1e-6;

/** Distance from the mast to the nearest power line, m, and which; null where none is stated. */
export function nearestLine(lot: Lot): { name: string; distance: number } | null {
  let nearest: { name: string; distance: number } | null = null;
  for (const line of lot.powerLines)
    for (let i = 1; i < line.points.length; i++) {
      const distance = distanceToSegment(lot.mast, line.points[i - 1], line.points[i]);
      if (!nearest || distance < nearest.distance) nearest = { name: line.name, distance };
    }
  return nearest;
}
