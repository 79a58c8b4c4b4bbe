import { expect, test } from "vitest";
import { barredArcs, barredWords } from "../../src/app/wording/barred.ts";
import type { Study } from "../../src/model/study.ts";

const square = (half: number): [number, number][] => [
  [-half, -half],
  [half, -half],
  [half, half],
  [-half, half],
];
const lot = (given: Partial<Study["lot"]>): Study["lot"] => ({
  corners: square(50),
  setback: 10,
  mast: [0, 0],
  powerLines: [],
  ...given,
});
const degrees = (radians: number) => (radians * 180) / Math.PI;

test("barredArcs(lot, radius) is empty where the circle stays inside the setback, and whole far out", () => {
  expect(barredArcs(lot({}), 39.9)).toEqual([]);
  expect(barredArcs(lot({}), 80)).toEqual([{ from: 0, to: 360, why: "outside the lot" }]);
});

test("barredArcs() bar the side of a power line that guys must keep clear of, as wide as the cosine says", () => {
  const line = {
    name: "Lane",
    points: [
      [24, -90],
      [24, 90],
    ] as [number, number][],
  };
  const arcs = barredArcs(lot({ powerLines: [line], lineClearance: 4 }), 30);
  expect(arcs.map(({ why }) => why)).toEqual(["too near Lane"]);
  // guys of 30 m come within 4 m of a line 24 m to the east where their ends stand more than 20 m east
  const half = degrees(Math.asin(20 / 30));
  expect(Math.abs(arcs[0].from - half)).toBeLessThanOrEqual(0.5);
  expect(Math.abs(arcs[0].to - (180 - half))).toBeLessThanOrEqual(0.5);
});

test("barredArcs() of a square lot are as wide as the cosine says: setback over radius", () => {
  const arcs = barredArcs(lot({}), 45);
  expect(arcs.map(({ why }) => why)).toEqual(Array.from({ length: 4 }, () => "within the setback"));
  // the circle of 45 m is beyond the setback line, 40 m off, for acos(40/45) to either side of each axis
  const half = degrees(Math.acos(40 / 45));
  arcs.forEach(({ from, to }, i) => {
    const middle = 90 * (i + 1);
    expect(Math.abs(from - (middle - half)) % 360).toBeLessThan(0.51);
    expect(Math.abs(to - (middle + half)) % 360).toBeLessThan(0.51);
  });
});

test("barredArcs() names the plot that bars, from where a straight edge of it meets the circle to where it leaves", () => {
  const plot = {
    name: "Drive",
    corners: [
      [20, -60],
      [60, -60],
      [60, 60],
      [20, 60],
    ] as [number, number][],
  };
  const [arc, ...others] = barredArcs(lot({ keepOut: [plot] }), 30);
  expect(others).toEqual([]);
  expect(arc.why).toBe("Drive");
  const first = degrees(Math.asin(20 / 30));
  expect(Math.abs(arc.from - first)).toBeLessThan(0.51);
  expect(Math.abs(arc.to - (180 - first))).toBeLessThan(0.51);
  expect(barredWords([arc], 30, "si")).toMatch(
    /^No anchor 30 m out may stand toward 42° to 138° \(Drive\)\.$/,
  );
});
