import type { Insulator } from "../../model/catalog.ts";
import { box, dimension, lettering, stroke } from "./strokes.ts";
import type { Shape, Spot } from "./types.ts";
import { tape } from "./words.ts";

/**
 * A base insulator between footing and mast: plate, and a body whose ribs shed the rain, narrowing to its hinge. One
 * shorter than the tallest of the study's list stands on packing.
 * @param stand of the mast's foot above the footing, m
 * @param foot where the mast stands on it, mm of the paper
 */
export function insulatorShapes(
  row: Insulator,
  stand: number,
  [middle, foot]: Spot,
  mm: (metres: number) => number,
): Shape[] {
  const side = mm(row.plate) / 2;
  const high = mm(row.height);
  const seat = foot + high;
  const grade = foot + mm(stand);
  const ribs = Math.max(3, Math.round(high / 2.5));
  // out at each rib, in between two of them
  const edge = Array.from({ length: 2 * ribs + 1 }, (_, i): Spot => {
    const half = side * (0.8 - (0.4 * i) / (2 * ribs)) * (i % 2 === 0 ? 0.7 : 1);
    return [half, seat - (high * i) / (2 * ribs)];
  });
  const packed = grade - seat;
  return [
    ...(packed > 0.1 ? [box(middle - side, seat, 2 * side, packed, { pen: "edge", fill: "concrete" })] : []),
    {
      kind: "path",
      closed: true,
      pen: "edge",
      fill: "paper",
      points: [
        ...edge.map(([half, y]): Spot => [middle - half, y]),
        ...edge.toReversed().map(([half, y]): Spot => [middle + half, y]),
      ],
    },
    stroke(
      [
        [middle - side, seat],
        [middle + side, seat],
      ],
      "heavy",
    ),
    ...dimension([middle - side - 4, foot], [middle - side - 4, grade], tape(stand)),
    lettering([middle + side + 1.5, foot + high * 0.6], "insulator"),
    ...(packed > 0.1 ? [lettering([middle + side + 1.5, grade - 1.4], "packing")] : []),
  ];
}
