import { nearestLine } from "../../problem/lot.ts";
import type { Given } from "./given.ts";
import type { Cell, Section } from "./types.ts";
import { bearing, figure, tape } from "./words.ts";

export const cornerLetter = (i: number): string => (i < 26 ? String.fromCharCode(65 + i) : `${i + 1}`);

const apart = (a: readonly [number, number], b: readonly [number, number]) =>
  Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Pegs by two ties each, and the star's own ties: what a crew checks with a tape alone. */
export function settingOut(given: Given): Section {
  const { lot } = given.problem.study;
  const [a, b] = lot.corners;
  const line = nearestLine(lot);
  const power = line
    ? ` Nearest power line stated: ${line.name}, ${tape(line.distance)} from the mast, which reaches ${tape(given.reach)}.`
    : " No power line is stated: look up before the first peg.";
  const rotation = given.design.guys?.rotation ?? 0;
  const pegs = [
    { name: "Mast", at: lot.mast, toward: null as number | null },
    ...given.anchors.map((at, i) => ({
      name: `Anchor ${i + 1}`,
      at,
      toward: bearing(rotation + (360 * i) / given.perLevel),
    })),
  ];
  return {
    title: "Pegs",
    gloss: "taped level, heads at grade",
    parts: [
      {
        kind: "table",
        head: ["Peg", "Bearing", "From mast", "From A", "From B"],
        rows: pegs.map(({ name, at, toward }): Cell[] => [
          name,
          toward === null ? "" : figure(toward, "degrees", 0),
          toward === null ? "" : figure(apart(at, lot.mast), "feet"),
          figure(apart(at, a), "feet"),
          figure(apart(at, b), "feet"),
        ]),
      },
      ...(given.anchors.length > 0
        ? [
            {
              kind: "table" as const,
              head: ["Tie, anchor to anchor", "Distance"],
              rows: given.anchors.map((at, i): Cell[] => {
                const j = (i + 1) % given.anchors.length;
                return [`${i + 1} to ${j + 1}`, figure(apart(at, given.anchors[j]), "feet")];
              }),
            },
          ]
        : []),
      {
        kind: "words",
        text: `Bearings in degrees clockwise from true north; distances rounded to half an inch. Corners A and B are the first two of the lot as stated, ${tape(apart(a, b))} apart. Ties that close within 2 in are right; if they don’t, set out again from A and B.${power}`,
      },
    ],
  };
}
