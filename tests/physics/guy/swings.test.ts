import fc from "fast-check";
import { expect, test } from "vitest";
import {
  isTaut,
  secondsForSwings,
  swingsForTension,
  tensionFromSwings,
} from "../../../src/physics/guy/swings.ts";
import { thrustShare } from "../../../src/physics/guy/thrust-share.ts";

const guy = { guyWeight: 53.8, guyLength: 30.5 };

test("tensionFromSwings(swingsForTension) comes back, inside its band", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 500, max: 20_000, noNaN: true }),
      fc.double({ min: 4, max: 30, noNaN: true }),
      (tension, seconds) => {
        const counted = tensionFromSwings(guy, swingsForTension(guy, tension, seconds), seconds);
        expect(counted.tension).toBeCloseTo(tension, 6);
        expect(counted.least).toBeLessThan(counted.tension);
        expect(counted.most).toBeGreaterThan(counted.tension);
        expect(secondsForSwings(guy, tension, swingsForTension(guy, tension, seconds))).toBeCloseTo(
          seconds,
          9,
        );
      },
    ),
    { seed: 103 },
  );
});

test("tensionFromSwings: a longer count has a narrower band", () => {
  const band = (swings: number) => {
    const { least, tension, most } = tensionFromSwings(guy, swings, swings / 2);
    return (most - least) / tension;
  };
  expect(band(40)).toBeLessThan(band(20));
  expect(band(20)).toBeLessThan(band(5));
});

test("tensionFromSwings(a count within its own doubt) is refused", () => {
  expect(() => tensionFromSwings(guy, 0.5, 5)).toThrow(/count longer/);
  expect(() => tensionFromSwings(guy, 5, 0.1)).toThrow(/count longer/);
});

test("tensionFromSwings(a guy that hangs slack) is refused with its tension and its weight", () => {
  // W = T: 4 W L N2 / g t2 = W
  const seconds = Math.sqrt((4 * guy.guyLength) / 9.80665);
  expect(tensionFromSwings(guy, 10, 9.99 * seconds).tension).toBeGreaterThan(guy.guyWeight);
  expect(() => tensionFromSwings(guy, 10, 10.01 * seconds)).toThrow(
    /found a tension of 53\.69.* N in a guy of 53\.8 N/,
  );
  expect(() => swingsForTension(guy, 50, 10)).toThrow(/expected at least its weight/);
  expect(() => secondsForSwings(guy, 50, 10)).toThrow(/expected at least its weight/);
  expect(isTaut(guy, 53.8)).toBe(true);
  expect(isTaut(guy, 53.7)).toBe(false);
});

test("thrustShare balances the moment in the stated ratio, or is refused", () => {
  const thrusts = thrustShare(1000, [10, 20, 30], [1, 2, 2]);
  expect(thrusts[0] * 10 + thrusts[1] * 20 + thrusts[2] * 30).toBeCloseTo(1000, 9);
  expect(thrusts[1] / thrusts[0]).toBeCloseTo(2, 12);
  expect(() => thrustShare(1000, [10], [1, 1])).toThrow(/1 heights and 2 ratios/);
  expect(() => thrustShare(1000, [10], [0])).toThrow(/above 0/);
});
