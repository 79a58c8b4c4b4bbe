import { expect, test } from "vitest";
import { COUPLE, POINT } from "../../src/search/span-floors.ts";

/**
 * A span of length 1 under the thrust k2 EI, its ends held: what a load at a does at x, against what a load of one
 * spread over the span does there. docs/theory/search.md.
 */
const spread = (k: number, x: number) => (Math.cos(k * (0.5 - x)) / Math.cos(k / 2) - 1) / (k * k);
const point = (k: number, x: number, a: number) =>
  (Math.sin(k * Math.min(a, x)) * Math.sin(k * (1 - Math.max(a, x)))) / (k * Math.sin(k));
const couple = (k: number, x: number, a: number) =>
  (a < x ? -Math.cos(k * a) * Math.sin(k * (1 - x)) : Math.cos(k * (1 - a)) * Math.sin(k * x)) / Math.sin(k);

/** Where the floor of a span over the pin has its inner peak: moments of both signs reached equally. */
function innerPeak(k: number): number {
  const c = Math.cos(k);
  const m = (1 - c) / (2 + c + 2 * Math.sqrt(1 + c)) / (k * k);
  let best = 0;
  let most = 0;
  for (let x = 0.01; x < 0.99; x += 0.001) {
    const here = (-m * Math.sin(k * x)) / Math.sin(k) + spread(k, x);
    if (here > most) {
      most = here;
      best = x;
    }
  }
  return best;
}

test("a load or a moment anywhere in a span does no more at the floor's place than POINT or COUPLE of a spread one", () => {
  let points = 0;
  let couples = 0;
  let tried = 0;
  for (let k = 0.05; k < Math.PI - 0.01; k += 0.05)
    for (const x of [0.5, innerPeak(k)])
      for (let a = 0.001; a < 1; a += 0.001) {
        tried++;
        points = Math.max(points, point(k, x, a) / spread(k, x));
        couples = Math.max(couples, Math.abs(couple(k, x, a)) / spread(k, x));
      }
  console.log(`${tried} places: at most ${points.toFixed(3)} and ${couples.toFixed(3)}`);
  expect(points).toBeLessThanOrEqual(POINT * (1 + 1e-12));
  expect(points).toBeGreaterThan(0.99 * POINT);
  expect(couples).toBeLessThanOrEqual(COUPLE);
  expect(couples).toBeGreaterThan(0.8 * COUPLE);
});
