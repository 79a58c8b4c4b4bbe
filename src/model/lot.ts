import type { z } from "zod";
import { refuse } from "./refuse.ts";

export type Point = readonly [number, number];

/**
 * What guys keep from power lines where a study states nothing, m: 10 ft, what OSHA 29 CFR 1926.1408 table A asks of
 * equipment beside lines of up to 50 kV, from memory.
 */
export const LINE_CLEARANCE = 3.048;

/** Level distance that guys and mast keep from power lines, m. */
export const keptFromLines = ({
  lineClearance = LINE_CLEARANCE,
}: {
  readonly lineClearance?: number;
}): number => lineClearance;

/** Twice the signed area of a, b, c: positive where they turn left. */
export const turn = (a: Point, b: Point, c: Point): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

const between = (a: number, b: number, c: number): boolean => Math.min(a, b) <= c && c <= Math.max(a, b);

/** `point` lies on the segment; `slack` is an area. */
const onSegment = (a: Point, b: Point, point: Point, slack: number): boolean =>
  Math.abs(turn(a, b, point)) <= slack && between(a[0], b[0], point[0]) && between(a[1], b[1], point[1]);

/** Two edges meet, touching included. */
const meet = (a: Point, b: Point, c: Point, d: Point, slack: number): boolean => {
  const crossed =
    turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0 && Math.abs(turn(a, b, c)) > slack;
  return (
    crossed ||
    onSegment(a, b, c, slack) ||
    onSegment(a, b, d, slack) ||
    onSegment(c, d, a, slack) ||
    onSegment(c, d, b, slack)
  );
};

export const distanceToSegment = ([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number => {
  const dx = bx - ax;
  const dy = by - ay;
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / length2));
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
};

const signedArea = (corners: readonly Point[]): number =>
  corners.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = corners[(index + 1) % corners.length];
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);

/** A square millimetre for every metre of extent: what rounding can do to an area, with room. */
const slackOf = (corners: readonly Point[]): number =>
  1e-6 * Math.max(1, ...corners.flatMap(([x, y]) => [Math.abs(x), Math.abs(y)]));

/** Edge 1 runs from corner 1 to corner 2, the last one back to corner 1. */
const edgeName = (index: number, count: number): string =>
  `edge ${index + 1} (corner ${index + 1} to ${((index + 1) % count) + 1})`;

/** The first two edges that meet elsewhere than in a shared corner, by index. */
export const crossingEdges = (corners: readonly Point[]): readonly [number, number] | undefined => {
  const count = corners.length;
  const slack = slackOf(corners);
  const end = (index: number): Point => corners[(index + 1) % count];
  for (let i = 0; i < count; i++)
    for (let j = i + 1; j < count; j++) {
      const [a, b, c, d] = [corners[i], end(i), corners[j], end(j)];
      const follows = j === i + 1;
      const precedes = i === 0 && j === count - 1;
      // neighbours share a corner; they meet elsewhere only where one doubles back over the other
      const doubled =
        (follows && (onSegment(a, b, d, slack) || onSegment(c, d, a, slack))) ||
        (precedes && (onSegment(a, b, c, slack) || onSegment(c, d, b, slack)));
      if (follows || precedes ? doubled : meet(a, b, c, d, slack)) return [i, j];
    }
  return undefined;
};

/** Strictly inside; a point on the line is not. */
export const insideLot = (corners: readonly Point[], point: Point): boolean => {
  const slack = slackOf(corners);
  let inside = false;
  for (let i = 0; i < corners.length; i++) {
    const a = corners[i];
    const b = corners[(i + 1) % corners.length];
    if (onSegment(a, b, point, slack)) return false;
    const straddles = a[1] > point[1] !== b[1] > point[1];
    if (straddles && turn(a, b, point) > 0 === b[1] > a[1]) inside = !inside;
  }
  return inside;
};

/** Adds an issue for corners that enclose nothing, or that edges cross between; true where it did. */
export const refuseOddCorners = (
  { corners }: { corners: readonly Point[] },
  context: z.core.$RefinementCtx<unknown>,
): boolean => {
  const flat = corners.every((corner) => Math.abs(turn(corners[0], corners[1], corner)) <= slackOf(corners));
  const crossing = flat ? undefined : crossingEdges(corners);
  if (crossing) {
    const [first, second] = crossing.map((index) => edgeName(index, corners.length));
    refuse(
      context,
      ["corners"],
      "corners in order around the lot, so that no edge meets another",
      `${first} meets ${second}`,
    );
    return true;
  }
  if (!flat && Math.abs(signedArea(corners)) > slackOf(corners)) return false;
  refuse(context, ["corners"], "a lot with an area above 0", "a lot of no area");
  return true;
};

interface StatedLot {
  readonly corners: readonly Point[];
  readonly mast: Point;
  readonly powerLines: readonly { readonly name: string; readonly points: readonly Point[] }[];
  readonly lineClearance?: number;
}

/**
 * Adds an issue for a lot that is none: no area, edges that cross, the mast elsewhere; and for a mast that no design
 * keeps off a power line.
 */
export const refuseOddLot = (lot: StatedLot, context: z.core.$RefinementCtx<unknown>): void => {
  if (refuseOddCorners(lot, context)) return;
  const { corners, mast, powerLines } = lot;
  const off = (points: readonly Point[]) =>
    Math.min(...points.slice(1).map((end, i) => distanceToSegment(mast, points[i], end)));
  const near = powerLines.find(({ points }) => off(points) < keptFromLines(lot));
  if (!insideLot(corners, mast)) refuse(context, ["mast"], "a place inside the lot");
  else if (near)
    refuse(
      context,
      ["mast"],
      `${keptFromLines(lot).toFixed(1)} m or more: the clearance that is kept from power lines`,
      `a mast ${off(near.points).toFixed(1)} m from ${near.name}`,
    );
};
