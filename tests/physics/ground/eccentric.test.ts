import { expect, test } from "vitest";
import { eccentricPressure, effectiveSquare } from "../../../src/physics/ground/eccentric.ts";

test("effectiveSquare takes the diagonal for a small eccentricity and the face for a large one", () => {
  expect(effectiveSquare(2, 0)).toBe(4);
  expect(effectiveSquare(2, 0.2)).toBeCloseTo((2 - Math.SQRT2 * 0.2) ** 2, 12);
  expect(effectiveSquare(2, 0.9)).toBeCloseTo(2 * 0.2, 12);
  expect(effectiveSquare(2, 1)).toBe(0);
});

test("eccentricPressure(a load off the base) is infinite, never negative or NaN", () => {
  for (const [load, moment] of [
    [1000, 1000],
    [0, 0],
    [-5, 1],
  ]) {
    const { peakPressure, effectivePressure } = eccentricPressure(load, moment, 1, 1);
    expect(peakPressure).toBe(Number.POSITIVE_INFINITY);
    expect(effectivePressure).toBe(Number.POSITIVE_INFINITY);
  }
});
