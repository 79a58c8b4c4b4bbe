import { percent } from "../../report/names.ts";
import { hasAllMargin } from "../../search/front-points.ts";
import type { FrontPoint } from "../../search/types.ts";

/** Percent of a point of the front, whose margin is counted no further than the front counts. */
export const marginOf = ({ margin }: FrontPoint, unit = ""): string =>
  `${percent(margin)}${unit}${hasAllMargin(margin) ? " or more" : ""}`;

/** The cheapest at each amount of concrete with at least this margin, as corners of a stair: less concrete, dearer. */
export const stair = (points: readonly FrontPoint[], margin: number): readonly FrontPoint[] => {
  const byConcrete = points
    .filter((point) => point.margin >= margin - 1e-12)
    .sort((a, b) => a.concrete - b.concrete || a.cost - b.cost);
  const corners: FrontPoint[] = [];
  for (const point of byConcrete)
    if (!corners.length || point.cost < corners.at(-1)!.cost) corners.push(point);
  return corners;
};

export const FLOORS = [0, 0.1, 0.25, 0.5] as const;

/** Designs on the front that stand on no stair: at their concrete another is cheaper, with less in hand. */
export const behindStairs = (points: readonly FrontPoint[]): readonly FrontPoint[] => {
  const corners = new Set(FLOORS.flatMap((floor) => stair(points, floor)));
  return points.filter((point) => !corners.has(point));
};

/** At most this many, evenly through the list. */
export const thinned = <T>(all: readonly T[], most: number): readonly T[] =>
  all.length <= most ? all : Array.from({ length: most }, (_, i) => all[Math.floor((i * all.length) / most)]);

/** Names what the plot would draw: while it stays the same there is nothing to draw anew. */
export const stairsKey = (points: readonly FrontPoint[]): string =>
  FLOORS.map((floor) =>
    stair(points, floor).map(({ cost, concrete, margin }) => [cost, concrete, margin].join("/")),
  ).join("|");

/** A round scale from below the least to above the greatest. */
export const roundScale = (least: number, greatest: number, wanted = 6): readonly number[] => {
  const span = Math.max(greatest - least, Math.abs(greatest) * 1e-6, 1e-9);
  const rough = span / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 2.5, 5, 10].map((factor) => factor * power).find((value) => value >= rough * 0.999)!;
  const ticks: number[] = [];
  for (let value = Math.floor(least / step + 1e-9) * step; value < greatest + step; value += step)
    ticks.push(Math.round(value / step) * step);
  return ticks;
};

export interface Marked {
  readonly letter: string;
  readonly name: string;
  readonly point: FrontPoint;
}

/** A cheapest, B least concrete, C and D the cheapest with more in hand; a design found twice keeps its first letter. */
export const markedDesigns = (points: readonly FrontPoint[], floor: number): readonly Marked[] => {
  const cheapest = (among: readonly FrontPoint[]) =>
    [...among].sort((a, b) => a.cost - b.cost || b.margin - a.margin)[0];
  const allowed = points.filter((point) => point.margin >= floor - 1e-12);
  const wanted: [string, FrontPoint | undefined][] = [
    ["cheapest", cheapest(allowed)],
    ["least concrete", [...allowed].sort((a, b) => a.concrete - b.concrete || a.cost - b.cost)[0]],
    ["10 % margin", cheapest(points.filter((point) => point.margin >= Math.max(0.1, floor)))],
    ["25 % margin", cheapest(points.filter((point) => point.margin >= Math.max(0.25, floor)))],
  ];
  const marked: Marked[] = [];
  for (const [name, point] of wanted)
    if (point && !marked.some((one) => one.point === point))
      marked.push({ letter: "ABCD"[marked.length], name, point });
  return marked;
};
