import fc from "fast-check";
import { expect, test } from "vitest";
import { crossingEdges, insideLot } from "../../src/model/lot.ts";

type Point = [number, number];
const square: Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];

test("crossingEdges finds none in a lot walked either way round", () => {
  expect(crossingEdges(square)).toBeUndefined();
  expect(crossingEdges([...square].reverse())).toBeUndefined();
});

test("crossingEdges names the two edges of a bow tie", () => {
  expect(crossingEdges([square[0], square[2], square[1], square[3]])).toEqual([0, 2]);
});

test("crossingEdges counts an edge that touches a far corner, and one that doubles back", () => {
  expect(
    crossingEdges([
      [0, 0],
      [10, 0],
      [10, 10],
      [5, 0],
      [0, 10],
    ]),
  ).toBeDefined();
  expect(
    crossingEdges([
      [0, 0],
      [10, 0],
      [4, 0],
      [0, 10],
    ]),
  ).toEqual([0, 1]);
});

test("crossingEdges counts a corner that is stated twice", () => {
  expect(
    crossingEdges([
      [0, 0],
      [10, 0],
      [10, 0],
      [0, 10],
    ]),
  ).toBeDefined();
});

test("insideLot is strict: a place on the line is not inside", () => {
  expect(insideLot(square, [5, 5])).toBe(true);
  expect(insideLot(square, [0, 5])).toBe(false);
  expect(insideLot(square, [10, 10])).toBe(false);
  expect(insideLot(square, [11, 5])).toBe(false);
});

test("a star around a point never crosses itself and has the point inside, wherever it lies", () => {
  const corner = fc.record({
    turn: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
    reach: fc.double({ min: 1, max: 80, noNaN: true }),
  });
  fc.assert(
    fc.property(
      fc.array(corner, { minLength: 5, maxLength: 12 }),
      fc.double({ min: -500, max: 500, noNaN: true }),
      (corners, shift) => {
        const points = corners.map(({ turn, reach }, index): Point => {
          const angle = (2 * Math.PI * (index + 0.5 * turn)) / corners.length;
          return [shift + reach * Math.cos(angle), reach * Math.sin(angle)];
        });
        expect(crossingEdges(points)).toBeUndefined();
        expect(insideLot(points, [shift, 0])).toBe(true);
        expect(insideLot(points, [shift + 1000, 0])).toBe(false);
      },
    ),
    { numRuns: 500, seed: 8 },
  );
});
