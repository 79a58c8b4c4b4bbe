import fc from "fast-check";
import { expect, test } from "vitest";
import { LINE_CLEARANCE } from "../../src/model/lot.ts";
import type { Study } from "../../src/model/study.ts";
import { guyRoom, nearestGuy } from "../../src/problem/lines.ts";
import { anchorPoints } from "../../src/problem/star.ts";

type Point = readonly [number, number];

const lot = (given: Partial<Study["lot"]>): Study["lot"] => ({
  corners: [
    [-50, -50],
    [50, -50],
    [50, 50],
    [-50, 50],
  ],
  mast: [0, 0],
  setback: 0,
  powerLines: [],
  ...given,
});
const powerLine = (...points: Point[]) => ({
  name: "Line",
  points: points.map(([e, n]): [number, number] => [e, n]),
});

test("guyRoom(lot, anchor) is what is left between the guy's line on the ground and a line beside it", () => {
  // 10 m east of a guy that runs north, and past its end: the corner of a triangle of 3, 4, 5
  const beside = lot({ powerLines: [powerLine([10, -100], [10, 100])], lineClearance: 4 });
  expect(guyRoom(beside, [0, 20])).toBeCloseTo(6, 12);
  const past = lot({ powerLines: [powerLine([3, 24], [3, 100])], lineClearance: 1 });
  expect(guyRoom(past, [0, 20])).toBeCloseTo(4, 12);
  expect(guyRoom(lot({}), [0, 20])).toBe(Number.POSITIVE_INFINITY);
});

test("guyRoom() of a guy that crosses a line has none: both its ends may be far from it", () => {
  const across = lot({ powerLines: [powerLine([-100, 10], [100, 10])], lineClearance: 2 });
  expect(guyRoom(across, [0, 20])).toBe(-2);
});

test("guyRoom() keeps 10 ft where the study states no clearance", () => {
  expect(LINE_CLEARANCE).toBeCloseTo(10 * 0.3048, 12);
  expect(guyRoom(lot({ powerLines: [powerLine([10, -9], [10, 9])] }), [0, 20])).toBeCloseTo(10 - 3.048, 12);
});

test("nearestGuy(lot, anchors) names the line and the guy that come nearest", () => {
  const two = lot({
    powerLines: [powerLine([-40, -100], [-40, 100]), { ...powerLine([25, -100], [25, 100]), name: "Lane" }],
  });
  const anchors = anchorPoints([0, 0], { perLevel: 4, radius: 20, rotation: 0 });
  expect(nearestGuy(two, anchors)).toEqual({
    name: "Lane",
    anchor: 1,
    distance: expect.closeTo(5, 9),
  });
  expect(nearestGuy(lot({}), anchors)).toBeNull();
});

test("guyRoom() is the least of the distances between 400 points of either, on 300 random guys and lines", () => {
  const spot = fc.tuple(
    fc.double({ min: -30, max: 30, noNaN: true }),
    fc.double({ min: -30, max: 30, noNaN: true }),
  );
  let crossed = 0;
  fc.assert(
    fc.property(spot, spot, spot, (anchor, from, to) => {
      const room = guyRoom(lot({ powerLines: [powerLine(from, to)], lineClearance: 0 }), anchor);
      const steps = Array.from({ length: 401 }, (_, i) => i / 400);
      const least = Math.min(
        ...steps.flatMap((s) =>
          steps.map((t) =>
            Math.hypot(
              s * anchor[0] - (from[0] + t * (to[0] - from[0])),
              s * anchor[1] - (from[1] + t * (to[1] - from[1])),
            ),
          ),
        ),
      );
      if (room === 0) crossed++;
      // points of a 400th of 85 m apart miss the least by no more than half of that, on each
      expect(least).toBeGreaterThanOrEqual(room - 1e-9);
      expect(least).toBeLessThanOrEqual(room + 0.25);
    }),
    { numRuns: 300, seed: 12 },
  );
  console.log(`${crossed} of 300 cross`);
  expect(crossed).toBeGreaterThan(30);
});
