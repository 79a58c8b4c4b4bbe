export type Point = readonly [x: number, y: number];
type Value = (i: number, j: number) => number | null;

/**
 * Level lines of a grid of values by marching squares, in grid coordinates. A square with an unknown corner is
 * left out, or cut to the triangle of its three known ones, so that no line runs where nothing is safe. Saddles are cut by the mean of their corners.
 */
export const contour = (columns: number, rows: number, value: Value, level: number): readonly Point[][] => {
  const segments: [Point, Point][] = [];
  for (let j = 0; j + 1 < rows; j++)
    for (let i = 0; i + 1 < columns; i++) segments.push(...square(i, j, value, level));
  return joined(segments);
};

const square = (i: number, j: number, value: Value, level: number): [Point, Point][] => {
  const corners = [value(i, j), value(i + 1, j), value(i + 1, j + 1), value(i, j + 1)];
  const unknown = corners.filter((corner) => corner === null).length;
  if (unknown > 0) return unknown === 1 ? triangle(i, j, corners, level) : [];
  const [a, b, c, d] = corners as number[];
  const cut = (p: number, q: number) => (level - p) / (q - p);
  const edges: (Point | null)[] = [
    a < level !== b < level ? [i + cut(a, b), j] : null,
    b < level !== c < level ? [i + 1, j + cut(b, c)] : null,
    d < level !== c < level ? [i + cut(d, c), j + 1] : null,
    a < level !== d < level ? [i, j + cut(a, d)] : null,
  ];
  const hit = edges.filter((edge): edge is Point => edge !== null);
  if (hit.length === 2) return [[hit[0], hit[1]]];
  if (hit.length !== 4) return [];
  const [bottom, right, top, left] = edges as Point[];
  const middleLow = (a + b + c + d) / 4 < level;
  return middleLow === a < level
    ? [
        [bottom, right],
        [top, left],
      ]
    : [
        [bottom, left],
        [top, right],
      ];
};

/** The half of a square that is known where its edge runs through it. */
const triangle = (
  i: number,
  j: number,
  corners: readonly (number | null)[],
  level: number,
): [Point, Point][] => {
  const places: readonly Point[] = [
    [i, j],
    [i + 1, j],
    [i + 1, j + 1],
    [i, j + 1],
  ];
  const known = corners.flatMap((value, n) => (value === null ? [] : [{ value, at: places[n] }]));
  const hit = known.flatMap((p, n) => {
    const q = known[(n + 1) % 3];
    if (p.value < level === q.value < level) return [];
    const share = (level - p.value) / (q.value - p.value);
    return [[p.at[0] + (q.at[0] - p.at[0]) * share, p.at[1] + (q.at[1] - p.at[1]) * share] as Point];
  });
  return hit.length === 2 ? [[hit[0], hit[1]]] : [];
};

const key = ([x, y]: Point): string => `${x.toFixed(6)},${y.toFixed(6)}`;

/** Segments that share an end, made into lines. */
const joined = (segments: readonly [Point, Point][]): readonly Point[][] => {
  const at = new Map<string, number[]>();
  segments.forEach((segment, index) => {
    for (const end of segment) at.set(key(end), [...(at.get(key(end)) ?? []), index]);
  });
  const usedUp = new Set<number>();
  const follow = (from: Point): Point[] => {
    const run: Point[] = [];
    let end = from;
    for (;;) {
      const next = at.get(key(end))?.find((index) => !usedUp.has(index));
      if (next === undefined) return run;
      usedUp.add(next);
      const [p, q] = segments[next];
      end = key(p) === key(end) ? q : p;
      run.push(end);
    }
  };
  const lines: Point[][] = [];
  segments.forEach(([start, second], index) => {
    if (usedUp.has(index)) return;
    usedUp.add(index);
    lines.push([...follow(start).reverse(), start, second, ...follow(second)]);
  });
  return lines;
};

export interface Edge {
  readonly from: Point;
  readonly to: Point;
  /** Toward the unsafe side, one of the four axis directions. */
  readonly away: Point;
}

/** Borders between a safe cell and one known to be unsafe, cell by cell, in cell coordinates (cell i spans i to i+1). */
export const safeEdge = (
  columns: number,
  rows: number,
  state: (i: number, j: number) => "safe" | "unsafe" | "unknown",
): readonly Edge[] => {
  const edges: Edge[] = [];
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++) {
      if (state(i, j) !== "safe") continue;
      const unsafe = (p: number, q: number) =>
        p >= 0 && q >= 0 && p < columns && q < rows && state(p, q) === "unsafe";
      if (unsafe(i + 1, j)) edges.push({ from: [i + 1, j], to: [i + 1, j + 1], away: [1, 0] });
      if (unsafe(i - 1, j)) edges.push({ from: [i, j], to: [i, j + 1], away: [-1, 0] });
      if (unsafe(i, j + 1)) edges.push({ from: [i, j + 1], to: [i + 1, j + 1], away: [0, 1] });
      if (unsafe(i, j - 1)) edges.push({ from: [i, j], to: [i + 1, j], away: [0, -1] });
    }
  return edges;
};

/** Level lines every so much money, at most some twenty of them. */
export const contourLevels = (
  least: number,
  greatest: number,
): { every: number; levels: readonly number[] } => {
  const every = [100, 250, 500, 1000, 2500, 5000].find((step) => (greatest - least) / step <= 20) ?? 10_000;
  const levels: number[] = [];
  for (let level = Math.ceil(least / every) * every; level <= greatest; level += every) levels.push(level);
  return { every, levels };
};
