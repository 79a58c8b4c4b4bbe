import fc from "fast-check";
import { expect, test } from "vitest";
import { balancedTensions } from "../../../src/physics/guy/balance.ts";
import { catenaryState, riggedLength, solveCatenary } from "../../../src/physics/guy/catenary.ts";

const EA = 3.2e6;
const WEIGHT = 1.8;

const pullOf = (span: number, rise: number, tension: number) => {
  const state = catenaryState();
  solveCatenary(span, 0, rise, riggedLength(span, rise, tension, EA, WEIGHT), EA, 0, 0, -WEIGHT, state);
  return Math.hypot(state.ax, state.ay);
};

test("balancedTensions(places): every guy pulls level alike, the steepest at the stated tension, none tauter", () => {
  const tried = new Set<string>();
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          span: fc.double({ min: 5, max: 40, noNaN: true }),
          rise: fc.double({ min: 4, max: 50, noNaN: true }),
        }),
        { minLength: 3, maxLength: 4 },
      ),
      fc.double({ min: 1500, max: 9000, noNaN: true }),
      (places, stated) => {
        tried.add(JSON.stringify([places, stated]));
        const tensions = balancedTensions(
          places.map((place) => ({ ...place, ea: EA, weight: WEIGHT })),
          stated,
        );
        const pulls = places.map(({ span, rise }, i) => pullOf(span, rise, tensions[i]));
        for (const pull of pulls) expect(Math.abs(pull / pulls[0] - 1)).toBeLessThan(1e-9);
        expect(Math.max(...tensions)).toBeLessThanOrEqual(stated * 1.02);
        const steepest = places.reduce((a, b) => (b.rise / b.span > a.rise / a.span ? b : a));
        expect(tensions[places.indexOf(steepest)]).toBe(stated);
      },
    ),
    { numRuns: 300, seed: 4 },
  );
  console.log(`${tried.size} distinct sets of guys`);
  expect(tried.size).toBeGreaterThan(290);
});

test("balancedTensions refuses a guy whose weight can't be drawn to the pull, saying which", () => {
  expect(() =>
    balancedTensions(
      [
        { span: 2, rise: 30, ea: EA, weight: WEIGHT },
        { span: 60, rise: 10, ea: EA, weight: WEIGHT },
      ],
      60,
    ),
  ).toThrow(RangeError);
});
