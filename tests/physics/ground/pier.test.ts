import { expect, test } from "vitest";
import { shortPileSand } from "../../../src/physics/ground/broms.ts";
import { unrestrainedDepth } from "../../../src/physics/ground/embedded-post.ts";
import { pierAsPost, pierInSand, pierTakeOff } from "../../../src/physics/ground/pier.ts";
import { FOOT } from "../../support/us-units.ts";

const POUND = 4.4482216152605;
const soil = {
  bearing: 1e5,
  lateralPerDepth: (266 * POUND) / FOOT ** 3,
  unitWeight: 17000,
  frictionAngle: 35,
};
const rules = { concreteUnitWeight: 23563, upliftAngle: 30 };
const at = (shear: number, height: number) => ({ compression: 0, shear, moment: shear * height });

// Christy, Engineering with the Spreadsheet, ASCE 2006, Fig. 16-1: 266 psf/ft, 510 lb at 4.0 ft, b 1.00 ft: 5.02 ft
test("pierAsPost(pier) is just held at Christy's 5.02 ft", () => {
  const { demand, capacity } = pierAsPost(
    { diameter: FOOT, depth: 5.0159 * FOOT },
    at(510 * POUND, 4 * FOOT),
    soil,
    rules,
  );
  expect(demand / capacity).toBeCloseTo(1, 4);
});

test("pierAsPost(pier) is just held at the depth that unrestrainedDepth asks for", () => {
  for (const [force, height] of [
    [500, 0],
    [4000, 3],
    [20000, 12],
  ]) {
    const depth = unrestrainedDepth({
      lateralForce: force,
      forceHeight: height,
      width: 0.6,
      lateralBearingPerDepth: soil.lateralPerDepth,
      multiplier: 1,
    });
    const { demand, capacity } = pierAsPost({ diameter: 0.6, depth }, at(force, height), soil, rules);
    expect(demand / capacity).toBeCloseTo(1, 9);
  }
});

// Broms 1964, closed form: phi 35, 17 kN/m3, 0.4 m, 4.8 m, e 0: 289.07 kN, hand computation
test("pierInSand(pier) is Broms's short pile", () => {
  const held = pierInSand({ diameter: 0.4, depth: 4.8 }, at(289070, 0), soil, rules);
  expect((held?.demand ?? 0) / (held?.capacity ?? 1)).toBeCloseTo(1, 4);
  const { ultimateLateral } = shortPileSand(35, 17000, 0.6, 2.4, 5);
  const high = pierInSand({ diameter: 0.6, depth: 2.4 }, at(ultimateLateral, 5), soil, rules);
  expect((high?.demand ?? 0) / (high?.capacity ?? 1)).toBeCloseTo(1, 9);
  expect(
    pierInSand({ diameter: 0.4, depth: 4.8 }, at(1, 0), { ...soil, frictionAngle: undefined }, rules),
  ).toBeNull();
});

test("a bigger pier never holds less, and a moment without a shear is a number", () => {
  for (const way of [pierAsPost, pierInSand])
    for (const load of [at(3000, 6), { compression: 0, shear: 0, moment: 9000 }]) {
      const use = (diameter: number, depth: number) => {
        const held = way({ diameter, depth }, load, soil, rules);
        return (held?.demand ?? Number.NaN) / (held?.capacity ?? Number.NaN);
      };
      for (let depth = 1; depth < 4; depth += 0.25) {
        expect(use(0.6, depth + 0.25)).toBeLessThan(use(0.6, depth));
        expect(use(0.7, depth)).toBeLessThan(use(0.6, depth));
      }
    }
  expect(pierTakeOff({ diameter: 1, depth: 2 }).concrete).toBeCloseTo(Math.PI / 2, 12);
});
