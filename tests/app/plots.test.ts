import fc from "fast-check";
import { expect, test } from "vitest";
import { contour, contourLevels, safeEdge } from "../../src/app/plots/contour.ts";
import { costBetween, roadCells, roadSteps } from "../../src/app/plots/map-axes.ts";
import {
  behindStairs,
  FLOORS,
  marginOf,
  markedDesigns,
  roundScale,
  stair,
  thinned,
} from "../../src/app/plots/stairs.ts";
import { MARGIN_COUNTED } from "../../src/search/front-points.ts";
import type { FrontPoint } from "../../src/search/types.ts";
import { fixture } from "./support/fixture.ts";

const point = (cost: number, concrete: number, margin: number): FrontPoint => ({
  cost,
  concrete,
  margin,
  design: fixture.design,
});
const points = fc.array(
  fc
    .record({
      cost: fc.integer({ min: 1, max: 99 }),
      concrete: fc.integer({ min: 1, max: 20 }),
      margin: fc.integer({ min: 0, max: 9 }),
    })
    .map((p) => point(p.cost, p.concrete, p.margin / 10)),
  { maxLength: 30 },
);

test('marginOf() says "or more" where the front counts no further, and rounds down elsewhere', () => {
  // as the front hands it over: from the least use that counts
  expect(marginOf(point(1, 1, 1 / (1 / (1 + MARGIN_COUNTED)) - 1), " %")).toBe("50 % or more");
  expect(marginOf(point(1, 1, 0.4999), " %")).toBe("49 %");
  expect(marginOf(point(1, 1, 0.5))).toBe("50 or more");
});

test("stair() falls in cost as concrete grows, and no point at its margin lies under it", () => {
  fc.assert(
    fc.property(points, fc.constantFrom(0, 0.1, 0.5), (all, margin) => {
      const corners = stair(all, margin);
      corners.forEach((corner, i) => {
        expect(corner.margin).toBeGreaterThanOrEqual(margin);
        if (i > 0) {
          expect(corner.cost).toBeLessThan(corners[i - 1].cost);
          expect(corner.concrete).toBeGreaterThan(corners[i - 1].concrete);
        }
      });
      for (const p of all.filter((one) => one.margin >= margin))
        expect(corners.some((c) => c.cost <= p.cost && c.concrete <= p.concrete)).toBe(true);
    }),
    { seed: 20261127 },
  );
});

test("behindStairs() holds what no stair does, and nothing of either is lost", () => {
  fc.assert(
    fc.property(points, (all) => {
      const behind = behindStairs(all);
      const corners = new Set(FLOORS.flatMap((floor) => stair(all, floor)));
      expect(behind.filter((one) => corners.has(one))).toEqual([]);
      expect(behind.length + corners.size).toBe(all.length);
    }),
    { seed: 20261127 },
  );
});

test("thinned() keeps all of a short list and spreads over a long one", () => {
  const long = Array.from({ length: 1000 }, (_, i) => i);
  expect(thinned(long.slice(0, 10), 10)).toHaveLength(10);
  const few = thinned(long, 100);
  expect(new Set(few).size).toBe(100);
  expect(few[0]).toBe(0);
  expect(few.at(-1)).toBeGreaterThanOrEqual(980);
});

test("markedDesigns() gives one letter to a design that is best twice", () => {
  const marked = markedDesigns([point(10, 1, 0.3), point(12, 2, 0.5)], 0);
  expect(marked.map((one) => one.letter)).toEqual(["A"]);
});

test("contour() of a plane is straight, and runs only between the values it parts", () => {
  const lines = contour(6, 6, (i, j) => i + j, 4.5);
  expect(lines).toHaveLength(1);
  for (const [x, y] of lines[0]) expect(x + y).toBeCloseTo(4.5);
});

test("contour() stays among known values", () => {
  const known = (i: number, j: number) => (i + j > 5 ? null : i * 2 + j);
  for (const level of [1.5, 3.5, 6.5])
    for (const run of contour(7, 7, known, level))
      for (const [x, y] of run) expect(x + y).toBeLessThanOrEqual(5 + 1e-9);
});

test("safeEdge() parts safe cells from unsafe ones and from nothing else", () => {
  const edges = safeEdge(2, 1, (i) => (i === 0 ? "safe" : "unsafe"));
  expect(edges).toEqual([{ from: [1, 0], to: [1, 1], away: [1, 0] }]);
  expect(safeEdge(2, 1, (i) => (i === 0 ? "safe" : "unknown"))).toEqual([]);
});

test("roundScale() covers what it is given in round steps", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 1e4, noNaN: true }),
      fc.double({ min: 0.1, max: 1e4, noNaN: true }),
      (a, b) => {
        const ticks = roundScale(Math.min(a, b), Math.max(a, b));
        expect(ticks[0]).toBeLessThanOrEqual(Math.min(a, b) + 1e-9);
        expect(ticks.at(-1)).toBeGreaterThanOrEqual(Math.max(a, b) - 1e-9);
        expect(ticks.length).toBeLessThan(12);
      },
    ),
    { seed: 20261127 },
  );
});

test("contourLevels() draws some twenty lines at most", () => {
  expect(contourLevels(2500, 5200).every).toBe(250);
  expect(contourLevels(100, 90_000).levels.length).toBeLessThan(40);
});

test("roadCells() are enough to price the wish and both roads from it, on the map's lines and between them", () => {
  const heights = Array.from({ length: 12 }, (_, i) => (9 + i) * 1.524);
  const areas = Array.from({ length: 12 }, (_, i) => (i + 1) * 0.46);
  // a plane: what lies between its cells is known
  const cost = (height: number, area: number) => 1000 + 50 * height + 300 * area;
  fc.assert(
    fc.property(
      fc.double({ min: heights[0], max: heights[8], noNaN: true }),
      fc.double({ min: areas[0], max: areas[9], noNaN: true }),
      fc.constantFrom(...heights.slice(0, 8)),
      fc.boolean(),
      (between, area, line, onLine) => {
        const height = onLine ? line : between;
        const { taller, bigger } = roadSteps("us");
        const part = roadCells({ heights, areas }, { height, area }, "us");
        expect(part.heights.length * part.areas.length).toBeLessThanOrEqual(16);
        const cells = part.heights.flatMap((h) =>
          part.areas.map((a) => ({
            height: h,
            area: a,
            cost: cost(h, a),
            concrete: 1,
            margin: 0,
            design: fixture.design,
            stoppedBy: null,
          })),
        );
        const map = { heights, areas, cells, done: false };
        for (const [h, a] of [
          [height, area],
          [height + taller, area],
          [height, area + bigger],
        ])
          expect(costBetween(map, h, a)).toBeCloseTo(cost(h, a), 6);
      },
    ),
    { seed: 20261127 },
  );
});
