import { expect, test } from "vitest";
import { around, distanceTo, overlap, placed, RADIUS, turnedBox } from "../../src/app/drawings/clear.ts";
import { faceLines, joinedAt, legShape } from "../../src/app/drawings/face-lines.ts";
import { exaggeration, frameOf } from "../../src/app/drawings/frame.ts";
import { joints, momentLine, sceneOf } from "../../src/app/drawings/scene.ts";
import { nearestSpot } from "../../src/app/wording/lot-figures.ts";
import { asNew, sectionFigures, wallLost } from "../../src/app/wording/section-figures.ts";
import { fixture } from "./support/fixture.ts";

const ft = 0.3048;
const scene = sceneOf(fixture.judged(), fixture.study, fixture.catalog);

test("sceneOf() sees the wind of the check that governs, anchor 1 to windward", () => {
  expect(scene.load?.id).toBe("wind-180");
  expect(scene.anchors[0].along).toBeCloseTo(-28 * ft);
  expect(scene.anchors[1].along).toBeCloseTo(14 * ft);
  expect(scene.windBearing).toBeCloseTo(197);
});

test("sceneOf() hangs an antenna beside the mast at its height, clear of the legs, and the pipe ends at the others", () => {
  const [pack] = fixture.study.wishes.packages;
  const panel = { area: 1, areaKind: "flat", weight: 100 } as const;
  const items = [
    ...pack.items,
    { ...panel, at: 40 * ft, offset: 0 },
    { ...panel, below: 10 * ft, offset: 1.5 },
  ];
  const study = { ...fixture.study, wishes: { ...fixture.study.wishes, packages: [{ ...pack, items }] } };
  const beside = sceneOf(fixture.judged(), study, fixture.catalog);
  expect(beside.items.map(({ height }) => Math.round(height / ft))).toEqual([72, 76, 40, 60]);
  expect(beside.items.map((item) => item.beside)).toEqual([0, 0, 0.4, 1.5]);
  expect(beside.pipeTop).toBe(scene.pipeTop);
});

test("frameOf() draws heights and widths to one scale, on desk and phone, inside the paper", () => {
  for (const width of [752, 348]) {
    const frame = frameOf(scene, width, "us");
    expect(frame.x(1) - frame.x(0)).toBeCloseTo(frame.y(0) - frame.y(1));
    expect(frame.y(scene.pipeTop)).toBeGreaterThan(0);
    for (const anchor of scene.anchors) {
      expect(frame.x(anchor.along)).toBeGreaterThan(0);
      expect(frame.x(anchor.along)).toBeLessThan(frame.moment.zero);
    }
  }
});

test("joints() cuts a stack into its pieces on sale", () => {
  expect(joints(scene.parts).map((z) => Math.round(z / ft))).toEqual([10, 20, 30, 40, 50, 60, 70]);
});

test("momentLine() takes one moment a node, or one below and one above each", () => {
  const load = { ...scene.load!, z: [0, 1], moment: [0, 5] };
  expect(momentLine(load)).toEqual([
    [0, 0],
    [1, 5],
  ]);
  expect(momentLine({ ...load, moment: [0, 1, 5, 4] })).toHaveLength(4);
});

test("exaggeration() is a round factor and never makes less of the sway", () => {
  expect(exaggeration(0.1, 30)).toBe(10);
  expect(exaggeration(10, 30)).toBe(1);
});

test("sectionFigures() of a worn section bears less than as new", () => {
  const worn = fixture.catalog.sections.find((row) => row.measuredWall !== undefined)!;
  for (const steel of ["aisc360", "en1993"] as const)
    expect(sectionFigures(worn, steel)!.moment).toBeLessThan(sectionFigures(asNew(worn), steel)!.moment);
  expect(wallLost(worn)).toBeCloseTo(1 - 0.066 / 0.083);
});

test("nearestSpot() finds the foot of the perpendicular, or an end", () => {
  expect(
    nearestSpot(
      [0, 0],
      [
        [3, -5],
        [3, 5],
      ],
      false,
    ),
  ).toMatchObject({ spot: [3, 0], distance: 3 });
  expect(
    nearestSpot(
      [0, 0],
      [
        [3, 4],
        [9, 4],
      ],
      false,
    ).distance,
  ).toBe(5);
});

test("faceLines() draws a zigzag, a crossing, and diagonals all one way with horizontals between", () => {
  const face = { left: 0, right: 40, top: 10, panel: 20, bays: 3 };
  const member = { diameter: 0.01 };
  const of = (pattern: "single" | "x" | "z", horizontal?: typeof member) =>
    faceLines({ pattern, horizontal }, face);
  const steep = (points: readonly (readonly [number, number])[]) =>
    points.slice(1).map(([x, y], i) => Math.sign((x - points[i][0]) * (y - points[i][1])));
  expect(of("single")).toHaveLength(1);
  expect(of("single")[0]).toHaveLength(7);
  expect(of("single", member)).toHaveLength(5);
  expect(of("x")).toHaveLength(2);
  expect(of("x")[0].map(([x]) => x)).toEqual([0, 40, 0, 40]);
  expect(of("x")[1].map(([x]) => x)).toEqual([40, 0, 40, 0]);
  // three diagonals that fall the same way, four rungs
  const [a, b, c, ...rungs] = of("z");
  expect([a, b, c].map((points) => steep(points)[0])).toEqual([-1, -1, -1]);
  expect(rungs.map(([[, y]]) => y)).toEqual([10, 30, 50, 70]);
  expect(joinedAt({ pattern: "x", member, joined: true }, face)).toEqual([
    [20, 20],
    [20, 40],
    [20, 60],
  ]);
  expect(joinedAt({ pattern: "x", member }, face)).toEqual([]);
});

test("legShape() turns an angle's heel away from the middle of the mast", () => {
  // lower left corner of a square about 50, 50: heel below and left of the centroid
  expect(legShape([10, 90], [50, 50], 12, 2, 3)).toBe("M7 93h12v-2h-10v-10h-2Z");
});

test("placed() keeps circles off words, off each other and on the paper, in the order of the list", () => {
  const word = turnedBox(100, 100, 60, 14, -60);
  const places = placed(
    ["a", "b", "c"].map((id) => ({ id, first: [100, 100], spots: () => around(100, 100, (dx) => dx, 0) })),
    { width: 200, height: 200, words: [word], taken: [[60, 100]] },
  );
  const spots = [...places.values()];
  for (const [x, y] of spots) {
    expect(distanceTo(word, x, y)).toBeGreaterThanOrEqual(RADIUS);
    expect(Math.hypot(x - 60, y - 100)).toBeGreaterThanOrEqual(2 * RADIUS);
  }
  const [a, b, c] = spots;
  for (const [one, other] of [
    [a, b],
    [b, c],
    [a, c],
  ])
    expect(Math.hypot(one[0] - other[0], one[1] - other[1])).toBeGreaterThanOrEqual(2 * RADIUS);
});

test("overlap() knows turned boxes apart where their upright boxes meet", () => {
  const [one, other] = [turnedBox(0, 0, 100, 10, 45), turnedBox(30, -30, 100, 10, 45)];
  expect(overlap(one, other)).toBe(false);
  expect(overlap(one, turnedBox(3, -3, 100, 10, 45))).toBe(true);
  expect(distanceTo(one, 0, 0)).toBe(0);
  expect(distanceTo(turnedBox(0, 0, 10, 10, 0), 8, 0)).toBeCloseTo(3);
});
