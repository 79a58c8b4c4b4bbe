import { expect, test } from "vitest";
import {
  diagonalPeakPressure,
  eccentricPressure,
  effectiveSquare,
} from "../../../src/physics/ground/eccentric.ts";

/** Peak of the plane k(a - x - y) that carries a unit load on a unit square, by summing small cells: no formula. */
function bySumming(eccentricity: number): number {
  const centre = 0.5 - eccentricity / Math.SQRT2;
  const cells = 400;
  const plane = (a: number) => {
    let volume = 0;
    let moment = 0;
    for (let i = 0; i < cells; i++)
      for (let j = 0; j < cells; j++) {
        const x = (i + 0.5) / cells;
        const y = (j + 0.5) / cells;
        const pressure = Math.max(0, a - x - y) / cells ** 2;
        volume += pressure;
        moment += pressure * x;
      }
    return { volume, centroid: moment / volume };
  };
  let low = 0.05;
  let high = 40;
  for (let step = 0; step < 30; step++) {
    const middle = (low + high) / 2;
    if (plane(middle).centroid < centre) low = middle;
    else high = middle;
  }
  return low / plane(low).volume;
}

test("diagonalPeakPressure agrees with a summed plane in all three ranges of contact", () => {
  for (const eccentricity of [0.05, 0.1, 0.15, 0.25, 0.33, 0.4, 0.5])
    expect(diagonalPeakPressure(1, eccentricity, 1) / bySumming(eccentricity)).toBeCloseTo(1, 2);
});

test("diagonalPeakPressure is continuous where the contact changes its shape", () => {
  for (const edge of [Math.SQRT2 / 12, 1 / (2 * Math.SQRT2)])
    expect(diagonalPeakPressure(1, edge - 1e-9, 1)).toBeCloseTo(diagonalPeakPressure(1, edge + 1e-9, 1), 5);
});

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
