import { footingAcross, footingReach } from "../../model/footing-size.ts";
import { EARTH_COVER } from "../../physics/concrete/bars.ts";
import type { Given } from "./given.ts";
import { ABOVE, type Detail, ground, layerTops, ROOM, SCALES } from "./ground-cut.ts";
import { insulatorShapes } from "./insulator.ts";
import { postDetail } from "./post-detail.ts";
import { box, dimension, lettering, scaleFor, stroke } from "./strokes.ts";
import type { Shape, Spot } from "./types.ts";
import { inchesOf, tape } from "./words.ts";

/** The base in section: one piece from grade, or a slab and its pedestal. */
export function baseDetail(given: Given): Detail {
  const { footing } = given.design;
  const frost = given.problem.ground.frostDepth;
  const deep = footingReach(footing) * 1.1;
  const wide = footingAcross(footing);
  const { n, mm } = scaleFor(SCALES, [wide, deep], ROOM);
  const insulator = given.problem.catalog.insulators.find(({ id }) => id === footing.insulator);
  const stand = insulator ? mm(given.problem.ground.stand) : 0;
  const grade = ABOVE + stand;
  const width = Math.max(mm(wide) + 30, 62);
  const middle = width / 2 - 4;
  const left = middle - mm(wide) / 2;
  const right = middle + mm(wide) / 2;
  const bottom = grade + mm(footing.depth);
  const shapes = ground(width - 12, mm(deep), frost > 0 ? mm(frost) : null, layerTops(given).map(mm), grade);
  if ("thickness" in footing) {
    const row = given.problem.catalog.footings.find((one) => one.id === footing.row);
    const pedestal = row?.kind === "pad" ? row.pedestal : wide;
    const top = bottom - mm(footing.thickness);
    const half = mm(pedestal) / 2;
    const edge = right + 5;
    shapes.push({
      kind: "path",
      closed: true,
      pen: "heavy",
      fill: "concrete",
      points: [
        [left, bottom],
        [left, top],
        [middle - half, top],
        [middle - half, grade],
        [middle + half, grade],
        [middle + half, top],
        [right, top],
        [right, bottom],
      ],
    });
    shapes.push(
      ...dimension([edge, top], [edge, bottom], tape(footing.thickness)),
      // beside an insulator there is no room over the pedestal
      ...(insulator
        ? [lettering([middle + half + 1.5, grade + 4], `${tape(pedestal)} sq.`)]
        : dimension([middle - half, grade - 4], [middle + half, grade - 4], `${tape(pedestal)} sq.`)),
    );
  } else {
    shapes.push(box(left, grade, mm(wide), mm(footing.depth), { pen: "heavy", fill: "concrete" }));
    if (!insulator) shapes.push(...mastFoot(middle, given));
  }
  if (insulator)
    shapes.push(
      ...insulatorShapes(insulator, given.problem.ground.stand, [middle, ABOVE], mm),
      ...mastFoot(middle, given, "on its hinge"),
    );
  if ("dowels" in footing) {
    const foot = grade + mm(footingReach(footing));
    const row = given.problem.catalog.footings.find((one) => one.id === footing.row);
    const edge = row?.kind === "rock-pad" ? row.edge : 0;
    for (const x of [left + mm(edge), right - mm(edge)])
      shapes.push(
        stroke(
          [
            [x, bottom - mm(footing.depth) * 0.75],
            [x, foot],
          ],
          "heavy",
        ),
      );
    shapes.push(
      ...dimension([right + 5, bottom], [right + 5, foot], tape(footing.socket)),
      lettering([middle, foot + 3], `${footing.dowels} dowels`, "middle"),
    );
  }
  shapes.push(
    ...dimension(
      [left, bottom + 7.5],
      [right, bottom + 7.5],
      `${tape(wide)} ${"diameter" in footing ? "round" : "square"}`,
    ),
    ...dimension([width - 8, grade], [width - 8, bottom], tape(footing.depth)),
    stroke(
      [
        [right, bottom],
        [width - 6, bottom],
      ],
      "fine",
    ),
  );
  if (frost > 0 && frost < deep) shapes.push(lettering([0.8, grade + mm(frost) - 1], `frost ${tape(frost)}`));
  return {
    drawing: {
      kind: "drawing",
      label: `Base in section, 1 to ${n}`,
      width,
      height: Math.max(bottom + 9, grade + mm(deep) + 4),
      shapes,
    },
    scale: n,
  };
}

/** The foot of the mast over its footing, or over the insulator on it. */
function mastFoot(middle: number, given: Given, words = "pinned base"): Shape[] {
  if (given.levels.length === 0)
    return [-2.4, 2.4].map((x) =>
      stroke(
        [
          [middle + x, ABOVE],
          [middle + x, 2],
        ],
        "cut",
      ),
    );
  return [
    {
      kind: "path",
      points: [
        [middle, ABOVE],
        [middle - 2, ABOVE - 3],
        [middle + 2, ABOVE - 3],
      ],
      closed: true,
      pen: "edge",
      fill: "ink",
    },
    stroke(
      [
        [middle - 2, ABOVE - 3],
        [middle - 2, 2],
      ],
      "cut",
    ),
    stroke(
      [
        [middle + 2, ABOVE - 3],
        [middle + 2, 2],
      ],
      "cut",
    ),
    lettering([middle + 4, 6], words),
  ];
}

/** The bars along the edges of a block in section, and the tie about them. */
function edgeBars({ anchor }: Given, middle: Spot, [w, h]: Spot, mm: (m: number) => number): Shape[] {
  const bar = anchor?.cage?.[0]?.bar;
  if (!bar) return [];
  const [x, y] = [w / 2 - mm(EARTH_COVER), h / 2 - mm(EARTH_COVER)];
  const radius = Math.max(0.35, mm(bar.diameter) / 2);
  return [
    box(middle[0] - x, middle[1] - y, 2 * x, 2 * y, { pen: "fine" }),
    ...[-1, 1].flatMap((a) =>
      [-1, 1].map(
        (b): Shape => ({
          kind: "circle",
          at: [middle[0] + a * (x - radius), middle[1] + b * (y - radius)],
          radius,
          pen: "edge",
          fill: "ink",
        }),
      ),
    ),
  ];
}

/** Where the anchor of a guy lies in the ground, the mast to the left. Null where there are no guys. */
export function anchorDetail(given: Given): Detail | null {
  const choice = given.design.guys?.anchor;
  if (!choice || given.pull === null) return null;
  if (choice.kind === "post") return postDetail(given, choice, given.pull);
  const slope = given.pull;
  const row = given.problem.catalog.anchors.find((one) => one.id === choice.row);
  const degrees = Math.round((slope * 180) / Math.PI);
  const frost = given.problem.ground.frostDepth;
  const shaft =
    choice.kind === "deadman"
      ? (choice.depth - choice.height / 2) / Math.sin(slope)
      : choice.kind === "rock-rod"
        ? choice.socket
        : row?.kind === "screw"
          ? row.length
          : 1;
  const down = choice.kind === "deadman" ? choice.depth : shaft * Math.sin(slope);
  const out = shaft * Math.cos(slope);
  const deep = down * 1.06;
  const { n, mm } = scaleFor(SCALES, [out + 1, deep], ROOM);
  const head: Spot = [16, ABOVE];
  const end: Spot = [head[0] + mm(out), ABOVE + mm(shaft * Math.sin(slope))];
  const width = Math.max(end[0] + 22, 72);
  const shapes = ground(width - 10, mm(deep), frost > 0 ? mm(frost) : null, layerTops(given).map(mm));
  const above: Spot = [head[0] - 8 * Math.cos(slope), head[1] - 8 * Math.sin(slope)];
  if (choice.kind === "deadman") {
    const [w, h] = [mm(choice.width), mm(choice.height)];
    shapes.push(
      box(end[0] - w / 2, end[1] - h / 2, w, h, { pen: "heavy", fill: "concrete" }),
      ...edgeBars(given, end, [w, h], mm),
      ...dimension([width - 6, ABOVE], [width - 6, ABOVE + mm(choice.depth)], tape(choice.depth)),
      stroke(
        [
          [end[0] + w / 2, ABOVE + mm(choice.depth)],
          [width - 4, ABOVE + mm(choice.depth)],
        ],
        "fine",
      ),
      lettering([end[0] - w / 2 - 1.5, end[1] + 1], `${tape(choice.width)} × ${tape(choice.height)}`, "end"),
      lettering([end[0] - w / 2 - 1.5, end[1] + 5], `${tape(choice.length)} long across the pull`, "end"),
      ...dimension(
        head.map((v, i) => (i === 1 ? v - 5 : v)) as unknown as Spot,
        [end[0], ABOVE - 5],
        tape(out),
      ),
      stroke(
        [
          [end[0], ABOVE - 6],
          [end[0], end[1] - h / 2],
        ],
        "fine",
      ),
    );
  } else {
    const name =
      choice.kind === "screw"
        ? (row?.name ?? "screw")
        : `hole ${row?.kind === "rock-rod" ? inchesOf(row.hole) : ""} in, grouted`;
    shapes.push(
      lettering([end[0] + 4.5, end[1] - 4], name.split(",").slice(0, 2).join(",")),
      lettering([end[0] + 4.5, end[1]], `${tape(shaft)} along the pull`),
    );
    if (choice.kind === "rock-rod") {
      const [nx, ny] = [1.3 * Math.sin(slope), 1.3 * Math.cos(slope)];
      shapes.push({
        kind: "path",
        closed: true,
        pen: "edge",
        fill: "concrete",
        points: [
          [head[0] + nx, head[1] - ny],
          [end[0] + nx, end[1] - ny],
          [end[0] - nx, end[1] + ny],
          [head[0] - nx, head[1] + ny],
        ],
      });
    } else
      shapes.push(
        stroke(
          [
            [end[0] - 3 * Math.sin(slope), end[1] + 3 * Math.cos(slope)],
            [end[0] + 3 * Math.sin(slope), end[1] - 3 * Math.cos(slope)],
          ],
          "heavy",
        ),
      );
  }
  shapes.push(
    stroke([above, end], "heavy"),
    { kind: "circle", at: above, radius: 1.3, pen: "cut", fill: "paper" },
    lettering([2, ABOVE - 1.5], `${degrees}°`),
    lettering([0.5, 4], "← mast"),
  );
  if (frost > 0 && frost < deep) shapes.push(lettering([0.8, ABOVE + mm(frost) - 1], `frost ${tape(frost)}`));
  return {
    drawing: {
      kind: "drawing",
      label: `Anchor in section, 1 to ${n}`,
      width,
      height: ABOVE + mm(deep) + 2,
      shapes,
    },
    scale: n,
  };
}
