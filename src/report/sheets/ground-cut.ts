import type { Given } from "./given.ts";
import { box, stroke } from "./strokes.ts";
import type { Drawing, Shape, Spot } from "./types.ts";

export const ROOM = [48, 40] as const;
export const SCALES = [20, 25, 40, 50, 100];
/** Shown of the mast above grade, mm. */
export const ABOVE = 11;

export interface Detail {
  readonly drawing: Drawing;
  readonly scale: number;
}

/** Ground left and right of a cut, with the frost line and the tops of deeper layers. */
export function ground(
  width: number,
  depth: number,
  frost: number | null,
  tops: readonly number[],
  grade = ABOVE,
): Shape[] {
  return [
    box(0, grade, width, depth, { pen: "fine", fill: "ground" }),
    stroke(
      [
        [0, grade],
        [width, grade],
      ],
      "cut",
    ),
    ...tops
      .filter((top) => top < depth)
      .map((top) =>
        stroke(
          [
            [0, grade + top],
            [width, grade + top],
          ],
          "edge",
        ),
      ),
    ...(frost !== null && frost < depth
      ? [
          {
            kind: "path" as const,
            points: [
              [0, grade + frost],
              [width, grade + frost],
            ] as Spot[],
            pen: "thin" as const,
            dash: "frost" as const,
          },
        ]
      : []),
  ];
}

export const layerTops = (given: Given): number[] =>
  (given.problem.soil.layers ?? []).map(({ from }) => from);
