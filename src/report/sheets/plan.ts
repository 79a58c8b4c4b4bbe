import type { Given } from "./given.ts";
import { cornerLetter } from "./setting-out.ts";
import { lettering, scaleFor, stroke } from "./strokes.ts";
import type { Drawing, Shape, Spot } from "./types.ts";
import { bearing, tape } from "./words.ts";

const ROOM = [100, 112] as const;
const PAD = 7;
/** North arrow and scale bar stand below the plan, mm. */
const STRIP = 9;

/** Star of anchors on the lot, north up, to a scale of the rule. */
export function plan(given: Given): { drawing: Drawing; scale: number } {
  const { lot } = given.problem.study;
  const spots = [...lot.corners, ...given.anchors];
  const [west, east] = [Math.min(...spots.map(([e]) => e)), Math.max(...spots.map(([e]) => e))];
  const [south, north] = [Math.min(...spots.map(([, n]) => n)), Math.max(...spots.map(([, n]) => n))];
  const { n, mm } = scaleFor(
    [100, 200, 250, 300, 400, 500, 1000],
    [east - west, north - south],
    [ROOM[0] - 2 * PAD, ROOM[1] - 2 * PAD - STRIP],
  );
  const width = Math.max(mm(east - west) + 2 * PAD, 60);
  const height = mm(north - south) + 2 * PAD + STRIP;
  const left = (width - mm(east - west)) / 2;
  const at = ([e, nn]: readonly [number, number]): Spot => [left + mm(e - west), PAD + mm(north - nn)];
  const mast = at(lot.mast);
  const needle = width / 4;
  const shapes: Shape[] = [
    { kind: "circle", at: mast, radius: mm(given.reach), pen: "thin", dash: "fall" },
    { kind: "path", points: lot.corners.map(at), closed: true, pen: "heavy" },
    ...(lot.keepOut ?? []).map(
      (plot): Shape => ({
        kind: "path",
        points: plot.corners.map(at),
        closed: true,
        pen: "thin",
        dash: "limit",
      }),
    ),
    ...lot.powerLines.map(
      (line): Shape => ({ kind: "path", points: line.points.map(at), pen: "cut", dash: "line" }),
    ),
  ];
  lot.corners.forEach((corner, i) => {
    const [x, y] = at(corner);
    const [dx, dy] = away(mast, [x, y]);
    shapes.push(lettering([x + 4 * dx, y + 4 * dy + 1.1], cornerLetter(i), "middle", true));
  });
  given.anchors.forEach((anchor, i) => {
    const spot = at(anchor);
    const [dx, dy] = away(mast, spot);
    const angle = bearing((given.design.guys?.rotation ?? 0) + (360 * i) / given.perLevel);
    shapes.push(
      stroke([mast, spot], "edge"),
      { kind: "path", points: square(spot, 1.4), closed: true, pen: "cut", fill: "paper" },
      lettering([spot[0] + 4.4 * dx, spot[1] + 4.4 * dy + 1.1], `${i + 1}`, "middle", true),
      lettering(
        [spot[0] + 4.4 * dx, spot[1] + 4.4 * dy + (dy < -0.5 ? -2.9 : 5.1)],
        `${angle}°, ${tape(given.model.guys?.star.anchors[i].radius ?? 0)}`,
        "middle",
      ),
    );
  });
  given.anchors.forEach((anchor, i) => {
    const next = given.anchors[(i + 1) % given.anchors.length];
    shapes.push({ kind: "path", points: [at(anchor), at(next)], pen: "fine", dash: "limit" });
  });
  shapes.push(
    { kind: "path", points: square(mast, 1.6), closed: true, pen: "cut", fill: "ink" },
    lettering(between(given, mast), "mast", "middle", true),
    lettering(
      [mast[0], Math.min(mast[1] + mm(given.reach) - 1.5, height - 9)],
      `fall zone ${tape(given.reach)}`,
      "middle",
    ),
    stroke(
      [
        [needle, height - 1],
        [needle, height - 9],
      ],
      "cut",
    ),
    {
      kind: "path",
      points: [
        [needle, height - 12],
        [needle - 1.4, height - 8],
        [needle + 1.4, height - 8],
      ],
      closed: true,
      pen: "fine",
      fill: "ink",
    },
    lettering([needle + 3, height - 6], "N", "start", true),
    ...scaleBar(width, height, mm),
  );
  return {
    drawing: { kind: "drawing", label: `Plan, north up, 1 to ${n}`, width, height, shapes },
    scale: n,
  };
}

/** Beside the mast, midway between two guys. */
const between = (given: Given, [x, y]: Spot): Spot => {
  const guys = given.design.guys;
  const angle = (((guys?.rotation ?? 0) + 180 / (guys?.perLevel ?? 2)) * Math.PI) / 180;
  return [x + 6.5 * Math.sin(angle), y - 5 * Math.cos(angle) + 1.1];
};

const away = ([x, y]: Spot, [px, py]: Spot): Spot => {
  const length = Math.hypot(px - x, py - y) || 1;
  return [(px - x) / length, (py - y) / length];
};

const square = ([x, y]: Spot, half: number): Spot[] => [
  [x - half, y - half],
  [x + half, y - half],
  [x + half, y + half],
  [x - half, y + half],
];

/** Twenty feet in tens, at the foot: a copy that was shrunk shows it. */
function scaleBar(width: number, height: number, mm: (metres: number) => number): Shape[] {
  const ten = mm(3.048);
  const [x, y] = [width - 2 * ten - 12, height - 2];
  return [
    stroke(
      [
        [x, y],
        [x + 2 * ten, y],
      ],
      "edge",
    ),
    ...[0, 1, 2].flatMap((i): Shape[] => [
      stroke(
        [
          [x + i * ten, y - 1.5],
          [x + i * ten, y],
        ],
        "edge",
      ),
      lettering([x + i * ten, y - 2.4], i === 2 ? "20 ft" : `${10 * i}`, "middle"),
    ]),
  ];
}
