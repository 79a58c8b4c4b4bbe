import type { Pen, Shape, Spot } from "./types.ts";

/** Half a dimension tick, mm. */
const TICK = 1;

/** A dimension between two spots of the paper: line, 45 degree ticks, lettering along it. */
export function dimension(from: Spot, to: Spot, text: string, gap = 1.4): Shape[] {
  const level = Math.abs(to[1] - from[1]) < Math.abs(to[0] - from[0]);
  const middle: Spot = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const tick = ([x, y]: Spot): Shape => ({
    kind: "path",
    points: [
      [x - TICK, y + TICK],
      [x + TICK, y - TICK],
    ],
    pen: "edge",
  });
  return [
    stroke([from, to], "fine"),
    tick(from),
    tick(to),
    {
      kind: "text",
      at: level ? [middle[0], middle[1] - gap] : [middle[0] - gap, middle[1]],
      text,
      anchor: "middle",
      turn: level ? undefined : -90,
    },
  ];
}

export const stroke = (points: readonly Spot[], pen: Pen): Shape => ({ kind: "path", points, pen });

export const box = (
  left: number,
  top: number,
  width: number,
  height: number,
  more: Pick<Extract<Shape, { kind: "path" }>, "pen" | "fill" | "dash">,
): Shape => ({
  kind: "path",
  closed: true,
  points: [
    [left, top],
    [left + width, top],
    [left + width, top + height],
    [left, top + height],
  ],
  ...more,
});

export const lettering = (
  at: Spot,
  text: string,
  anchor: "start" | "middle" | "end" = "start",
  bold = false,
): Shape => ({ kind: "text", at, text, anchor, bold });

/** Scales of a rule, 1 : n; the first at which `size` metres fit in `room` millimetres, each way. */
export function scaleFor(
  scales: readonly number[],
  [wide, high]: readonly [number, number],
  [width, height]: readonly [number, number],
): { readonly n: number; readonly mm: (metres: number) => number } {
  const fits = (n: number) => (wide * 1000) / n <= width && (high * 1000) / n <= height;
  const n =
    scales.find(fits) ?? 1000 * Math.ceil(Math.max((wide * 1000) / width, (high * 1000) / height) / 1000);
  return { n, mm: (metres) => (metres * 1000) / n };
}
