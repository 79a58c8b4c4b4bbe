import { expect, test } from "vitest";
import { concreteBearing } from "../../../src/physics/steel/bearing.ts";
import { columnStress, effectiveAreaShare } from "../../../src/physics/steel/column.ts";
import { pipeMoment } from "../../../src/physics/steel/pipe.ts";

test("columnStress falls with slenderness and stays below yield", () => {
  let before = 250e6;
  for (let slenderness = 1; slenderness < 300; slenderness++) {
    const stress = columnStress(250e6, 200e9, slenderness);
    expect(stress).toBeLessThan(before);
    before = stress;
  }
});

test("columnStress(slenderness 0) is refused", () => {
  expect(() => columnStress(250e6, 200e9, 0)).toThrow(/slenderness 0/);
});

test("effectiveAreaShare is 1 at its first limit and refuses beyond the last", () => {
  expect(effectiveAreaShare(0.11 * 800, 250e6, 200e9)).toBe(1);
  expect(effectiveAreaShare(0.11 * 800 + 0.01, 250e6, 200e9)).toBeGreaterThan(0.99);
  expect(effectiveAreaShare(0.11 * 800 + 0.01, 250e6, 200e9)).toBeLessThanOrEqual(1);
  expect(() => effectiveAreaShare(400, 250e6, 200e9)).toThrow(/E7.2/);
});

test("pipeMoment grows with the wall and refuses foil", () => {
  let before = 0;
  for (let wall = 0.0005; wall < 0.02; wall += 0.0005) {
    const moment = pipeMoment({ diameter: 0.06, wall }, 250e6);
    expect(moment).toBeGreaterThan(before);
    before = moment;
  }
  expect(() => pipeMoment({ diameter: 0.06, wall: 0.0001 }, 250e6)).toThrow(/F8/);
});

test("concreteBearing(plate as large as its support) does not spread", () => {
  expect(concreteBearing(20e6, 0.04, 0.04)).toBeCloseTo(0.85 * 20e6 * 0.04, 6);
});
