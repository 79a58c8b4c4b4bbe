import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { variable } from "../../src/reliability/distributions.ts";
import { firstOrder, type LimitState, nearestOnAxes } from "../../src/reliability/form.ts";
import { bothBelow, normalAt, normalBelow } from "../../src/reliability/normal.ts";
import { seriesBounds } from "../../src/reliability/series.ts";

/** The nearest failure by looking in every direction of a plane: it shares nothing with the rule. */
function nearestInPlane(g: LimitState): number {
  // some directions never fail: nothing further out is looked for
  let best = 10;
  for (let k = 0; k < 3600; k++) {
    const angle = (k * Math.PI) / 1800;
    const at = (x: number) => g([x * Math.cos(angle), x * Math.sin(angle)]);
    let far = 0;
    while (far < best + 0.01 && at(far) >= 0) far += 0.01;
    if (at(far) >= 0) continue;
    let [safe, failed] = [far - 0.01, far];
    for (let i = 0; i < 40; i++) {
      const middle = 0.5 * (safe + failed);
      if (at(middle) < 0) failed = middle;
      else safe = middle;
    }
    best = Math.min(best, failed);
  }
  return best;
}

describe("first-order reliability", () => {
  it("normalAt(normalBelow(x)) is x from -8 to 8, as far as a probability near 1 can say", () => {
    fc.assert(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (x) => {
        const lost = x > 0 ? 1e-15 / (Math.exp(-0.5 * x * x) / 2.5066) : 0;
        expect(Math.abs(normalAt(Math.min(normalBelow(x), 1 - 1e-16)) - x)).toBeLessThanOrEqual(1e-11 + lost);
      }),
      { seed: 5, numRuns: 2000 },
    );
    for (const p of [0, 1, -0.1, Number.NaN]) expect(() => normalAt(p)).toThrow(RangeError);
  });

  it("bothBelow(a, b, r) rises with r from nothing more than their sum less 1 to the smaller of both", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.double({ min: -0.999, max: 0.99, noNaN: true }),
        (a, b, r) => {
          const both = bothBelow(a, b, r);
          expect(both).toBeGreaterThanOrEqual(Math.max(0, normalBelow(a) + normalBelow(b) - 1) - 1e-6);
          expect(both).toBeLessThanOrEqual(Math.min(normalBelow(a), normalBelow(b)) + 1e-6);
          expect(bothBelow(a, b, r + 0.009)).toBeGreaterThanOrEqual(both - 1e-9);
          expect(bothBelow(b, a, r)).toBeCloseTo(both, 12);
        },
      ),
      { seed: 6, numRuns: 500 },
    );
    expect(bothBelow(0.3, -1, 1)).toBe(normalBelow(-1));
    expect(bothBelow(0.3, -1, 0)).toBeCloseTo(normalBelow(0.3) * normalBelow(-1), 14);
  });

  it("variable(distribution).at has the mean and the deviation that were stated", () => {
    for (const distribution of ["normal", "lognormal", "gumbel"] as const) {
      const { at } = variable({ distribution, mean: 10, deviation: 3 });
      let mean = 0;
      let square = 0;
      const step = 0.001;
      for (let u = -8; u <= 8; u += step) {
        const weight = (step * Math.exp(-0.5 * u * u)) / Math.sqrt(2 * Math.PI);
        mean += weight * at(u);
        square += weight * at(u) ** 2;
      }
      expect(mean, distribution).toBeCloseTo(10, 6);
      expect(Math.sqrt(square - mean * mean), distribution).toBeCloseTo(3, 5);
    }
    expect(() => variable({ distribution: "lognormal", mean: -1, deviation: 1 })).toThrow(RangeError);
    expect(() => variable({ distribution: "normal", mean: 1, deviation: 0 })).toThrow(RangeError);
  });

  it("firstOrder(g) finds the nearest failure of bent limit states, as looking in every direction does", () => {
    const states: [string, LimitState][] = [
      ["a plane", ([x, y]) => 3 - 0.6 * x - 0.8 * y],
      ["bent towards the middle", ([x, y]) => 2.5 - x + 0.1 * y * y],
      ["bent away", ([x, y]) => 3 + 0.05 * (x - y) ** 2 - (x + y) / Math.SQRT2],
      // two cubes: the plain rule jumps to and fro here
      ["two cubes", ([x, y]) => (10 + 5 * x) ** 3 + (9.9 + 5 * y) ** 3 - 18],
      ["a logarithm", ([x, y]) => Math.log(5) - Math.log(Math.exp(0.4 * x) * Math.exp(0.25 * y))],
      ["steep", ([x, y]) => 20 - Math.exp(0.9 * x + 0.2 * y)],
      ["failing in the middle", ([x, y]) => -1 + 0.6 * x - 0.3 * y],
    ];
    for (const [name, g] of states) {
      const found = firstOrder(g, 2);
      expect(found.converged, name).toBe(true);
      const turned: LimitState = found.beta < 0 ? (u) => -g(u) : g;
      expect(Math.abs(found.beta), name).toBeCloseTo(nearestInPlane(turned), 4);
      expect(found.alpha[0] ** 2 + found.alpha[1] ** 2, name).toBeCloseTo(1, 9);
      expect(Math.abs(g(found.u)), name).toBeLessThan(1e-4 * Math.abs(g([0, 0])));
    }
  });

  it("firstOrder(g) says that it found nothing where nothing varies, and where failure is a step", () => {
    expect(firstOrder(() => 1, 3)).toMatchObject({ converged: false });
    const step: LimitState = ([x, y]) => (x < -1.25 ? -5 : 2 - 0.1 * y);
    expect(firstOrder(step, 2).beta).toBeGreaterThan(5);
    expect(nearestOnAxes(step, 2, 10)?.beta).toBeCloseTo(1.25, 5);
    expect(nearestOnAxes(step, 2, 10)?.alpha).toEqual([-1, 0]);
    expect(nearestOnAxes(step, 2, 1)).toBeNull();
  });

  it("seriesBounds(points) meet for two planes, and hold the exact probability of independent and of equal ones", () => {
    const point = (beta: number, alpha: number[]) => ({ beta, probability: normalBelow(-beta), alpha });
    const pair = [point(1.5, [1, 0]), point(2, [0.6, 0.8])];
    const exact = normalBelow(-1.5) + normalBelow(-2) - bothBelow(-1.5, -2, 0.6);
    expect(seriesBounds(pair).least).toBeCloseTo(exact, 12);
    expect(seriesBounds(pair).most).toBeCloseTo(exact, 12);
    const apart = [point(1, [1, 0, 0]), point(1.5, [0, 1, 0]), point(2, [0, 0, 1])];
    const independent = 1 - apart.reduce((safe, { probability }) => safe * (1 - probability), 1);
    expect(seriesBounds(apart).least).toBeLessThanOrEqual(independent);
    expect(seriesBounds(apart).most).toBeGreaterThanOrEqual(independent);
    const same = [point(1.2, [1]), point(1.2, [1]), point(3, [1])];
    expect(seriesBounds(same).least).toBeCloseTo(normalBelow(-1.2), 12);
    expect(seriesBounds(same).most).toBeCloseTo(normalBelow(-1.2), 12);
    expect(seriesBounds([])).toEqual({ least: 0, most: 0 });
  });
});
