import type { Section } from "../../model/catalog.ts";

type Point = [number, number];

interface Face {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** Height of one panel on paper. */
  readonly panel: number;
  readonly bays: number;
}

/** Diagonals and horizontals of one face between two legs, as polylines on paper. */
export const faceLines = (
  { pattern, horizontal }: Pick<Section["bracing"], "pattern" | "horizontal">,
  { left, right, top, panel, bays }: Face,
): Point[][] => {
  const zigzag = (step: number, count: number, first: number, second: number): Point[] =>
    Array.from({ length: count + 1 }, (_, i) => [i % 2 ? second : first, top + i * step]);
  const levels = Array.from({ length: bays + 1 }, (_, i) => top + i * panel);
  const rungs =
    horizontal || pattern === "z"
      ? levels.map((y): Point[] => [
          [left, y],
          [right, y],
        ])
      : [];
  switch (pattern) {
    case "single":
      return [zigzag(panel / 2, bays * 2, left, right), ...rungs];
    case "x":
      return [zigzag(panel, bays, left, right), zigzag(panel, bays, right, left), ...rungs];
    case "z":
      return [
        ...levels.slice(1).map((y): Point[] => [
          [left, y],
          [right, y - panel],
        ]),
        ...rungs,
      ];
  }
};

/** Where the diagonals of a face are joined to each other, on paper. */
export const joinedAt = (
  { pattern, joined }: Section["bracing"],
  { left, right, top, panel, bays }: Face,
): Point[] =>
  pattern === "x" && joined
    ? Array.from({ length: bays }, (_, i) => [(left + right) / 2, top + (i + 0.5) * panel])
    : [];

/**
 * Outline of an angle whose centroid stands at a corner, its heel away from the middle of the mast.
 * @param outreach from centroid to heel, along either leg
 */
export const legShape = (
  [x, y]: Point,
  [midX, midY]: Point,
  width: number,
  thickness: number,
  outreach: number,
): string => {
  const [inX, inY] = [Math.sign(midX - x), Math.sign(midY - y)];
  const [heelX, heelY] = [x - inX * outreach, y - inY * outreach];
  return `M${heelX} ${heelY}h${inX * width}v${inY * thickness}h${-inX * (width - thickness)}v${inY * (width - thickness)}h${-inX * thickness}Z`;
};
