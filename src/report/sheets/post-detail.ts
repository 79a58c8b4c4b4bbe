import type { AnchorChoice } from "../../model/design.ts";
import type { Given } from "./given.ts";
import { type Detail, ground, layerTops, ROOM, SCALES } from "./ground-cut.ts";
import { box, dimension, lettering, scaleFor, stroke } from "./strokes.ts";
import type { Spot } from "./types.ts";
import { tape } from "./words.ts";

type Choice = Extract<AnchorChoice, { kind: "post" }>;

/** A post in its block, in section, the mast to the left. */
export function postDetail(given: Given, choice: Choice, slope: number): Detail {
  const head = given.anchor?.head ?? 0;
  const row = given.problem.catalog.anchors.find((one) => one.id === choice.row);
  const frost = given.problem.ground.frostDepth;
  const deep = choice.depth * 1.08;
  const { n, mm } = scaleFor(SCALES, [choice.width, deep + head], ROOM);
  const grade = mm(head) + 8;
  const width = Math.max(mm(choice.width) + 34, 62);
  const middle = width / 2 - 2;
  const half = mm(choice.width) / 2;
  const bottom = grade + mm(choice.depth);
  const hold: Spot = [middle, grade - mm(head)];
  const shapes = [
    ...ground(width - 12, mm(deep), frost > 0 ? mm(frost) : null, layerTops(given).map(mm), grade),
    box(middle - half, grade, 2 * half, mm(choice.depth), { pen: "heavy", fill: "concrete" }),
    stroke([[middle, bottom - 1], hold], "heavy"),
    stroke(
      [
        [middle - 2, bottom - 1],
        [middle + 2, bottom - 1],
      ],
      "heavy",
    ),
    // the pull, toward the mast
    stroke([hold, [middle - 9 * Math.cos(slope), hold[1] - 9 * Math.sin(slope)]], "edge"),
    { kind: "circle" as const, at: hold, radius: 1.3, pen: "cut" as const, fill: "paper" as const },
    ...dimension([middle + half + 4, hold[1]], [middle + half + 4, grade], tape(head)),
    ...dimension([width - 6, grade], [width - 6, bottom], tape(choice.depth)),
    ...dimension([middle - half, bottom + 6], [middle + half, bottom + 6], `${tape(choice.width)} square`),
    lettering([0.5, 4], "← mast"),
    lettering([middle + 3, hold[1] + 1], `${Math.round((slope * 180) / Math.PI)}°`),
    lettering([middle - half - 1.5, bottom - 2], row?.name ?? choice.row, "end"),
  ];
  if (frost > 0 && frost < deep) shapes.push(lettering([0.8, grade + mm(frost) - 1], `frost ${tape(frost)}`));
  return {
    drawing: { kind: "drawing", label: `Anchor in section, 1 to ${n}`, width, height: bottom + 9, shapes },
    scale: n,
  };
}
