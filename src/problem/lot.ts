import type { Study } from "../model/study.ts";
import type { StarFit } from "./types.ts";

type Point = readonly [number, number];
type Lot = Study["lot"];

const distanceToSegment = ([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number => {
  const dx = bx - ax;
  const dy = by - ay;
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / length2));
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
};

/** Distance inside the lot line, m; negative outside. */
export function insideBy(corners: readonly Point[], point: Point): number {
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

/** Anchor heads of a star: east and north of the lot's origin. Bearings in degrees clockwise from north. */
export const starPoints = (mast: Point, perLevel: number, radius: number, rotation: number): Point[] =>
  Array.from({ length: perLevel }, (_, i) => {
    const bearing = ((rotation + (360 * i) / perLevel) * Math.PI) / 180;
    return [mast[0] + radius * Math.sin(bearing), mast[1] + radius * Math.cos(bearing)];
  });

/** How far inside its setback the worst anchor stands, m. */
export const starSpare = (lot: Lot, perLevel: number, radius: number, rotation: number): number =>
  Math.min(...starPoints(lot.mast, perLevel, radius, rotation).map((p) => insideBy(lot.corners, p))) -
  lot.setback;

/** A micrometre: an anchor on the line is on the right side of it. */
export const ON_THE_LINE = 1e-6;

/** The rotation of the grid that leaves the worst anchor the most room; the first of equals. */
export function fitStar(lot: Lot, perLevel: 3 | 4, radius: number, rotations: readonly number[]): StarFit {
  let best: number | null = null;
  let spare = Number.NEGATIVE_INFINITY;
  for (const rotation of rotations) {
    const here = starSpare(lot, perLevel, radius, rotation);
    if (here > spare + ON_THE_LINE) {
      spare = here;
      best = rotation;
    }
  }
  return { perLevel, radius, rotation: spare >= -ON_THE_LINE ? best : null, spare };
}

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
