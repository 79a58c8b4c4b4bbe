import fc from "fast-check";
import { expect, test } from "vitest";
import { type EnHill, orography } from "../../../src/physics/wind/orography-en.ts";
import { type AsceHill, topography } from "../../../src/physics/wind/topography.ts";
import { windAction } from "../../../src/physics/wind/wind-action.ts";
import { asce7 } from "./support/asce7.ts";

const FOOT = 0.3048;
const ridge: AsceHill = {
  shape: "ridge",
  height: 80 * FOOT,
  halfLength: 200 * FOOT,
  distance: 0,
  side: "downwind",
};
const shape = fc.constantFrom("ridge" as const, "escarpment" as const, "axisymmetric" as const);
const exposure = fc.constantFrom("B" as const, "C" as const, "D" as const);
const side = fc.constantFrom("upwind" as const, "downwind" as const);
const metres = (most: number) => fc.double({ min: 0.1, max: most, noNaN: true });

test.each([
  [{ height: 30 * FOOT }, "C", /H\/Lh is 0.15, below 0.2/],
  [{ height: 14 * FOOT, halfLength: 30 * FOOT }, "C", /14 ft high, below 15 ft in exposure C/],
  [{ height: 50 * FOOT }, "B", /50 ft high, below 60 ft in exposure B/],
  [{ distance: 301 * FOOT }, "C", /beyond the reach/],
] as const)("topography(ridge with %j, exposure %s) is 1 and says why", (change, at, why) => {
  const found = topography({ ...ridge, ...change }, at);
  expect(found.reason).toMatch(why);
  expect(found.factor(0)).toBe(1);
});

test("topography is never below 1, falls with height, and is no less at the crest than beside it", () => {
  let counted = 0;
  fc.assert(
    fc.property(
      shape,
      exposure,
      side,
      metres(60),
      metres(200),
      metres(300),
      metres(60),
      (s, e, at, h, l, x, z) => {
        const given: AsceHill = { shape: s, height: h, halfLength: l, distance: x, side: at };
        const here = topography(given, e);
        const crest = topography({ ...given, distance: 0 }, e);
        if (here.reason === null) counted++;
        expect(here.factor(z)).toBeGreaterThanOrEqual(1);
        expect(here.factor(z)).toBeLessThanOrEqual(here.factor(0));
        expect(here.factor(z)).toBeLessThanOrEqual(crest.factor(z) + 1e-12);
        // the greatest of all shapes is a ridge's in exposure D, half as steep as it is long
        expect(here.factor(0)).toBeLessThanOrEqual((1 + 0.775) ** 2 + 1e-12);
      },
    ),
    { numRuns: 2000, seed: 268 },
  );
  expect(counted).toBeGreaterThan(300);
});

test("orography stays between 1 and 1.6 and a hair, and an escarpment's lee meets its crest", () => {
  fc.assert(
    fc.property(side, metres(60), metres(200), metres(200), metres(300), metres(100), (at, h, u, d, x, z) => {
      for (const kind of ["hill", "escarpment"] as const) {
        const given: EnHill = {
          shape: kind,
          height: h,
          upwindLength: u,
          downwindLength: d,
          distance: x,
          side: at,
        };
        const factor = orography(given).factor(z);
        expect(factor).toBeGreaterThanOrEqual(1);
        expect(factor).toBeLessThanOrEqual(1 + 0.6 * 1.0124);
        const near = (place: EnHill["side"]) =>
          orography({ ...given, distance: 1e-9, side: place }).factor(z);
        expect(near("downwind")).toBeCloseTo(near("upwind"), 6);
      }
    }),
    { numRuns: 1000, seed: 433 },
  );
});

test.each([
  [{ height: 4, upwindLength: 100 }, /0.040, below 0.05/],
  [{ distance: 400, side: "upwind" }, /beyond the reach/],
] as const)("orography(hill with %j) is 1 and says why", (change, why) => {
  const hill: EnHill = {
    shape: "hill",
    height: 20,
    upwindLength: 100,
    downwindLength: 100,
    distance: 0,
    side: "downwind",
    ...change,
  };
  expect(orography(hill).reason).toMatch(why);
  expect(orography(hill).factor(0)).toBe(1);
});

test("windAction(with a hill) multiplies the pressure by Kzt, and the speed by co, at each height", () => {
  const given = { basis: "asce7-16", ...asce7 } as const;
  const flat = windAction(given);
  const hilly = windAction({ ...given, hill: ridge });
  for (const z of [0, 5, 20, 60])
    expect(hilly.pressure(z) / flat.pressure(z)).toBeCloseTo(topography(ridge, "C").factor(z), 12);
  // a ridge may make the wind strongest at the ground
  expect(hilly.pressure(0)).toBeGreaterThan(hilly.pressure(10));

  const en = {
    basis: "en1991",
    basicSpeed: 25,
    terrain: "II",
    orographyFactor: 1,
    airDensity: 1.25,
    structuralFactor: 1,
  } as const;
  const hill: EnHill = {
    shape: "hill",
    height: 20,
    upwindLength: 100,
    downwindLength: 80,
    distance: 10,
    side: "downwind",
  };
  const stated = windAction({ ...en, orographyFactor: orography(hill).factor(12) });
  expect(windAction({ ...en, hill }).pressure(12)).toBeCloseTo(stated.pressure(12), 9);
});
