import fc from "fast-check";
import { expect, test } from "vitest";
import { shortPileClay, shortPileSand } from "../../../src/physics/ground/broms.ts";
import { unrestrainedDepth } from "../../../src/physics/ground/embedded-post.ts";
import {
  pierAsPost,
  pierBearing,
  pierInClay,
  pierInSand,
  pierTakeOff,
  type SideHold,
} from "../../../src/physics/ground/pier.ts";
import { FOOT } from "../../support/us-units.ts";

const POUND = 4.4482216152605;
const soil = {
  bearing: 1e5,
  lateralPerDepth: (266 * POUND) / FOOT ** 3,
  unitWeight: 17000,
  frictionAngle: 35,
  undrainedStrength: 47_900,
};
const rules = { concreteUnitWeight: 23563, upliftAngle: 30 };
const at = (shear: number, height: number) => ({ compression: 0, shear, moment: shear * height });
const use = (hold: SideHold | null, load: ReturnType<typeof at>) => {
  const { demand, capacity } = hold?.of(load) ?? { demand: Number.NaN, capacity: 1 };
  return demand / capacity;
};

// Christy, Engineering with the Spreadsheet, ASCE 2006, Fig. 16-1: 266 psf/ft, 510 lb at 4.0 ft, b 1.00 ft: 5.02 ft
test("pierAsPost(pier) is just held at Christy's 5.02 ft", () => {
  const hold = pierAsPost({ diameter: FOOT, depth: 5.0159 * FOOT }, soil, rules);
  expect(use(hold, at(510 * POUND, 4 * FOOT))).toBeCloseTo(1, 4);
});

test("pierAsPost(pier) is just held at the depth that unrestrainedDepth asks for, 12 ft counting at most", () => {
  for (const [force, height] of [
    [500, 0],
    [4000, 3],
    [20000, 12],
    [90000, 20],
  ]) {
    const depth = unrestrainedDepth(
      {
        lateralForce: force,
        forceHeight: height,
        width: 0.6,
        lateralBearingPerDepth: soil.lateralPerDepth,
        multiplier: 1,
      },
      "conservative",
    );
    expect(use(pierAsPost({ diameter: 0.6, depth }, soil, rules), at(force, height))).toBeCloseTo(1, 9);
  }
});

// Broms 1964, closed form: phi 35, 17 kN/m3, 0.4 m, 4.8 m, e 0: 289.07 kN, hand computation
test("pierInSand(pier) is Broms's short pile", () => {
  expect(use(pierInSand({ diameter: 0.4, depth: 4.8 }, soil, rules), at(289070, 0))).toBeCloseTo(1, 4);
  const { ultimateLateral, maxMoment } = shortPileSand(35, 17000, 0.6, 2.4, 5);
  const hold = pierInSand({ diameter: 0.6, depth: 2.4 }, soil, rules);
  expect(use(hold, at(ultimateLateral, 5))).toBeCloseTo(1, 9);
  expect(hold?.bending(ultimateLateral, 5 * ultimateLateral)).toBeCloseTo(maxMoment, 3);
  expect(pierInSand({ diameter: 0.4, depth: 4.8 }, { ...soil, frictionAngle: undefined }, rules)).toBeNull();
});

// Reese and Van Impe 2001, appendix A: b 0.305 m, e 0.61 m, L 2.44 m, cu 47.9 kPa: 59.4 kN, 76.9 kN m
test("pierInClay(pier) is Broms's short pile, and the published one", () => {
  const published = pierInClay({ diameter: 0.305, depth: 2.44 }, soil);
  expect(use(published, at(59_400, 0.61))).toBeCloseTo(1, 2);
  expect((published?.bending(59_400, 59_400 * 0.61) ?? 0) / 76_900).toBeCloseTo(1, 2);
  fc.assert(
    fc.property(
      fc.double({ min: 0.3, max: 1, noNaN: true }),
      fc.double({ min: 0.1, max: 4, noNaN: true }),
      fc.double({ min: 0, max: 20, noNaN: true }),
      (diameter, held, height) => {
        const depth = 1.5 * diameter + held;
        const { ultimateLateral, maxMoment } = shortPileClay(47_900, diameter, depth, height);
        const hold = pierInClay({ diameter, depth }, soil);
        expect(use(hold, at(ultimateLateral, height))).toBeCloseTo(1, 8);
        expect((hold?.bending(ultimateLateral, height * ultimateLateral) ?? 0) / maxMoment).toBeCloseTo(1, 8);
      },
    ),
    { seed: 100 },
  );
  expect(pierInClay({ diameter: 1, depth: 1.5 }, soil)?.of(at(1, 0)).capacity).toBe(0);
});

test("a bigger pier never holds less, and a moment without a shear is a number", () => {
  for (const way of [pierAsPost, pierInSand, pierInClay])
    for (const load of [at(3000, 6), { compression: 0, shear: 0, moment: 9000 }]) {
      const held = (diameter: number, depth: number) => use(way({ diameter, depth }, soil, rules), load);
      for (let depth = 1.5; depth < 4; depth += 0.25) {
        expect(held(0.6, depth + 0.25)).toBeLessThan(held(0.6, depth));
        // in clay a wider pier loses 1.5 diameters at the top
        if (way !== pierInClay) expect(held(0.7, depth)).toBeLessThan(held(0.6, depth));
      }
    }
  expect(pierTakeOff({ diameter: 1, depth: 2 }).concrete).toBeCloseTo(Math.PI / 2, 12);
});

test("water above the tip lifts the sand beside a pier, and a pier that it lifts out fails", () => {
  const size = { diameter: 0.6, depth: 2.4 };
  const wet = { ...rules, waterTable: 1 };
  const load = at(3000, 6);
  expect(use(pierInSand(size, soil, wet), load) / use(pierInSand(size, soil, rules), load)).toBeCloseTo(
    17_000 / (17_000 - 9806.65),
    9,
  );
  const own = 0.25 * Math.PI * 0.36 * 2.4 * 23_563;
  expect(pierBearing(size, -0.9 * own, soil, rules).demand).toBeLessThan(0.2 * 2.4 * 23_563);
  expect(pierBearing(size, -0.9 * own, soil, wet).demand).toBe(Number.POSITIVE_INFINITY);
});

/** Greatest shear in a rigid pier on springs that stiffen evenly with depth, by slices. */
function shearBySlices(depth: number, shear: number, moment: number): number {
  const slices = 4000;
  const dz = depth / slices;
  const z = (i: number) => (i + 0.5) * dz;
  // pressure z (a - b z): sums of it, and of it times depth, answer V and -M
  let [s1, s2, s3] = [0, 0, 0];
  for (let i = 0; i < slices; i++) {
    s1 += z(i) * dz;
    s2 += z(i) ** 2 * dz;
    s3 += z(i) ** 3 * dz;
  }
  const b = (shear * s2 + moment * s1) / (s1 * s3 - s2 * s2);
  const a = (shear + b * s2) / s1;
  let inside = shear;
  let most = Math.abs(shear);
  for (let i = 0; i < slices; i++) {
    inside -= z(i) * (a - b * z(i)) * dz;
    most = Math.max(most, Math.abs(inside));
  }
  return most;
}

test("shearing(V, M) of a pier is never less than that of a rigid one on springs, and is its own where M or V stands alone", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.9, max: 4, noNaN: true }),
      fc.double({ min: 0, max: 1e4, noNaN: true }),
      fc.double({ min: 0, max: 1e5, noNaN: true }),
      (depth, shear, moment) => {
        for (const hold of [
          pierAsPost({ diameter: 0.6, depth }, soil, rules),
          pierInSand({ diameter: 0.6, depth }, soil, rules),
        ]) {
          const slices = shearBySlices(depth, shear, moment);
          expect(hold?.shearing(shear, moment)).toBeGreaterThanOrEqual(slices * (1 - 1e-4));
          expect((hold?.shearing(0, 1e4) ?? 0) / shearBySlices(depth, 0, 1e4)).toBeCloseTo(1, 3);
          expect(hold?.shearing(shear, moment)).toBeLessThanOrEqual(1.15 * slices + 1e-9);
        }
      },
    ),
    { numRuns: 40, seed: 81 },
  );
});

test("shearing(V, M) in clay is that of two equal halves below the point without shear", () => {
  const hold = pierInClay({ diameter: 0.4, depth: 3 }, soil);
  const line = 9 * soil.undrainedStrength * 0.4;
  const [shear, moment] = [20_000, 60_000];
  const point = 0.6 + shear / line;
  // M + V x less what the clay takes down to there; halves of (3 - point) push p each way: M = p g2/4, V = p g/2
  const most = moment + shear * point - (line * (shear / line) ** 2) / 2;
  expect(hold?.shearing(shear, moment)).toBeCloseTo((2 * most) / (3 - point), 6);
  expect(hold?.shearing(line * 3, 0)).toBe(Number.POSITIVE_INFINITY);
});
