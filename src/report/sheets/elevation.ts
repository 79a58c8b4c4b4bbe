import type { Antenna } from "../../model/catalog.ts";
import { footingAcross } from "../../model/footing-size.ts";
import { type ArmModel, insetOf } from "../../problem/torque-arm.ts";
import { sideHeight } from "../../problem/types.ts";
import type { Given } from "./given.ts";
import { box, dimension, lettering, scaleFor, stroke } from "./strokes.ts";
import type { Drawing, Shape, Spot } from "./types.ts";
import { tape } from "./words.ts";

const ROOM = [94, 165] as const;
const SCALES = [200, 250, 300, 400, 500, 1000];
/** Ground shown, m. */
const BELOW = 2;

/** Heights of the joints between pieces, bottom up, the mast top last. */
export function joints(
  given: Given,
): readonly { readonly top: number; readonly length: number; readonly section: string }[] {
  let z = 0;
  return given.model.stack.parts.flatMap((part) => {
    const pieces = piecesOf(given, part.section.row.id, part.length);
    return pieces.map((length) => {
      z += length;
      return { top: z, length, section: part.section.row.id };
    });
  });
}

/** The longest pieces stand lowest: as many as the bill buys for this part. */
function piecesOf(given: Given, section: string, length: number): number[] {
  const bought = given.model.stack.lines
    .filter(({ row }) => row === section)
    .flatMap(({ quantity, length = 0 }) => Array.from({ length: quantity }, () => length))
    .sort((a, b) => b - a);
  const sum = bought.reduce((total, one) => total + one, 0);
  return Math.abs(sum - length) < 1e-3 ? bought : [length];
}

export function elevation(given: Given): { drawing: Drawing; scale: number } {
  const { height } = given.design;
  const radius = given.design.guys?.radius ?? 0;
  const back = radius * (given.perLevel === 4 ? 1 : 0.5);
  const { n, mm } = scaleFor(SCALES, [radius + back + 2, given.reach + BELOW + 0.5], ROOM);
  const mastX = Math.max(mm(radius) + 9, 24);
  const right = mastX + Math.max(mm(back) + 9, 14);
  const width = right + 16;
  const top = 3;
  const grade = top + mm(given.reach);
  const y = (z: number) => grade - mm(z);
  const half = Math.max(0.9, mm(given.model.stack.parts[0].section.row.face) / 2);
  const shapes: Shape[] = [
    box(0, grade, right, mm(BELOW), { pen: "fine", fill: "ground" }),
    stroke(
      [
        [0, grade],
        [right, grade],
      ],
      "cut",
    ),
  ];
  const { footing } = given.design;
  const across = footingAcross(footing);
  shapes.push(
    box(mastX - mm(across) / 2, grade, Math.max(mm(across), 1.5), mm(footing.depth), {
      pen: "cut",
      fill: "concrete",
    }),
  );
  const choice = given.design.guys?.anchor;
  for (const side of given.levels.length > 0 ? [-radius, back] : []) {
    const x = mastX + mm(side);
    const hold = y(given.anchor?.head ?? 0);
    if (choice?.kind === "post")
      shapes.push(
        box(x - mm(choice.width) / 2, grade, Math.max(mm(choice.width), 1.5), mm(choice.depth), {
          pen: "edge",
          fill: "concrete",
        }),
        stroke(
          [
            [x, grade],
            [x, hold],
          ],
          "cut",
        ),
      );
    else if (choice?.kind === "deadman" && given.pull !== null) {
      const down = choice.depth - choice.height / 2;
      const out = (Math.sign(side) * down) / Math.tan(given.pull);
      shapes.push(
        stroke(
          [
            [x, grade],
            [x + mm(out), grade + mm(down)],
          ],
          "edge",
        ),
        box(x + mm(out) - 0.9, grade + mm(down) - 0.9, 1.8, 1.8, { pen: "edge", fill: "concrete" }),
      );
    } else
      shapes.push(
        stroke(
          [
            [x, grade],
            [x + Math.sign(side) * 1.2, grade + 4],
          ],
          "cut",
        ),
      );
    shapes.push({ kind: "circle", at: [x, hold], radius: 0.7, pen: "edge", fill: "paper" });
    for (const level of given.levels)
      for (const head of headsSeen(level.arm, side))
        shapes.push(
          stroke(
            [
              [mastX + mm(head), y(level.height)],
              [x, hold],
            ],
            "edge",
          ),
        );
  }
  for (const { arm, height: at } of given.levels)
    if (arm)
      shapes.push(
        stroke(
          [
            [mastX - mm(insetOf(arm)), y(at)],
            [mastX + mm(arm.row.length), y(at)],
          ],
          "cut",
        ),
      );
  for (const level of given.levels)
    shapes.push(
      lettering([mastX - mm(radius) * 0.42 - 2.5, y(level.height * 0.58)], level.letter, "middle", true),
    );
  shapes.push(
    ...mastBody(given, mastX, half, y),
    ...antennas(given, mastX, mm, y),
    ...heights(given, mastX, right, width, y),
  );
  const foot = grade + mm(BELOW) + 6;
  if (radius > 0) shapes.push(...dimension([mastX - mm(radius), foot], [mastX, foot], tape(radius)));
  shapes.push(lettering([mastX + 4, foot], `${tape(height)} mast`));
  return {
    drawing: { kind: "drawing", label: `Elevation, 1 to ${n}`, width, height: foot + 3, shapes },
    scale: n,
  };
}

/** Where the guys of an anchor meet a level, as seen from the side, m from the axis: one tip hides another. */
const headsSeen = (arm: ArmModel | null, side: number): readonly number[] => {
  if (!arm) return [0];
  return side < 0 ? [-insetOf(arm)] : [-insetOf(arm), arm.row.length];
};

function mastBody(given: Given, x: number, half: number, y: (z: number) => number): Shape[] {
  const shapes: Shape[] = [
    box(x - half, y(given.design.height), 2 * half, y(0) - y(given.design.height), {
      pen: "edge",
      fill: "paper",
    }),
  ];
  const zig: Spot[] = [];
  const bay = 2.6 * half;
  for (let i = 0, at = y(0); at > y(given.design.height); i++, at -= bay)
    zig.push([x + (i % 2 ? half : -half), at]);
  shapes.push(stroke(zig, "fine"));
  let low = 0;
  joints(given).forEach(({ top }, i) => {
    shapes.push(
      stroke(
        [
          [x - half - 1.2, y(top)],
          [x + half + 1.2, y(top)],
        ],
        "cut",
      ),
      lettering([x + half + 1.6, y((low + top) / 2) + 1], `${i + 1}`),
    );
    low = top;
  });
  return shapes;
}

function antennas(given: Given, x: number, mm: (m: number) => number, y: (z: number) => number): Shape[] {
  const { height } = given.design;
  const { package: pack } = given.model;
  const shapes: Shape[] = [];
  if (pack.exposed > 0)
    shapes.push(
      stroke(
        [
          [x, y(height) + 2],
          [x, y(height + pack.exposed)],
        ],
        "cut",
      ),
    );
  const row = (name: string) => given.problem.catalog.antennas.find((one) => one.name === name);
  for (const antenna of pack.antennas)
    shapes.push(...boom(row(antenna.name), mm, x, y(height + antenna.above)));
  for (const side of pack.sides) {
    const at = y(sideHeight(side, height));
    // clear of the legs where its arm is not stated
    const beside = x + Math.max(mm(side.offset), 4);
    shapes.push(
      stroke(
        [
          [x, at],
          [beside, at],
        ],
        "fine",
      ),
      ...boom(row(side.name), mm, beside, at),
    );
  }
  return shapes;
}

/** A boom to scale with its elements end on, its middle at a spot. */
function boom(row: Antenna | undefined, mm: (m: number) => number, x: number, at: number): Shape[] {
  const reach = Math.max(mm(row?.boom ?? 0) / 2, 3);
  const count = row?.elements ?? 1;
  const shapes: Shape[] = [
    stroke(
      [
        [x - reach, at],
        [x + reach, at],
      ],
      "cut",
    ),
  ];
  for (let i = 0; count > 1 && i < count; i++)
    shapes.push({
      kind: "circle",
      at: [x - reach + (2 * reach * i) / (count - 1), at],
      radius: 0.6,
      pen: "edge",
      fill: "paper",
    });
  return shapes;
}

/** One chain of heights from grade through the levels to the mast top, and the whole beside it. */
function heights(
  given: Given,
  mastX: number,
  right: number,
  width: number,
  y: (z: number) => number,
): Shape[] {
  const stops = [0, ...given.levels.map((level) => level.height)];
  if (given.design.height - stops[stops.length - 1] > 0.01) stops.push(given.design.height);
  const [first, second] = [right + 6, width - 2];
  return [
    ...stops.slice(1).flatMap((z, i) => [
      ...dimension([first, y(stops[i])], [first, y(z)], y(stops[i]) - y(z) > 11 ? tape(z - stops[i]) : ""),
      ...(y(stops[i]) - y(z) > 11
        ? []
        : [lettering([first + 1.5, (y(z) + y(stops[i])) / 2 + 1], tape(z - stops[i]))]),
      stroke(
        [
          [mastX + 6, y(z)],
          [first + 2, y(z)],
        ],
        "fine",
      ),
    ]),
    ...dimension([second, y(0)], [second, y(given.reach)], `${tape(given.reach)} to the tip`),
    stroke(
      [
        [mastX + 3, y(given.reach)],
        [second + 2, y(given.reach)],
      ],
      "fine",
    ),
    stroke(
      [
        [right, y(0)],
        [second + 2, y(0)],
      ],
      "fine",
    ),
  ];
}
