import fc from "fast-check";
import { expect, test } from "vitest";
import { deadmanCapacity, deadmanTakeOff } from "../../../src/physics/ground/deadman.ts";
import { breakoutRatio } from "../../../src/physics/ground/lifted-soil.ts";
import { coneShare, rockRodCapacity } from "../../../src/physics/ground/rock-rod.ts";
import { screwCapacity } from "../../../src/physics/ground/screw.ts";

const rules = { concreteUnitWeight: 23_500, upliftAngle: 30 };
const loam = { bearing: 1e5, lateralPerDepth: 3e4, unitWeight: 17e3 };
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const deadman = fc
  .record({ length: size(0.5, 4), height: size(0.2, 1), width: size(0.2, 1.5), cover: size(0, 2) })
  .map(({ cover, ...block }) => ({ ...block, depth: block.height + cover }));
const frictionAngle = fc.option(size(20, 42), { nil: undefined });

test("deadmanCapacity grows with every size and with depth", () => {
  fc.assert(
    fc.property(
      deadman,
      frictionAngle,
      fc.constantFrom("length", "width", "depth"),
      size(0.01, 1),
      (block, angle, what, more) => {
        const soil = { ...loam, frictionAngle: angle };
        const before = deadmanCapacity(block, soil, rules);
        const after = deadmanCapacity({ ...block, [what]: block[what as "depth"] + more }, soil, rules);
        // longer and wider it stays within its method's range, deeper it may leave it
        if (before.ratio > before.mostRatio) expect(before.uplift).toBe(0);
        if (after.ratio > after.mostRatio) expect(after.uplift).toBe(0);
        else if (before.ratio <= before.mostRatio) expect(after.uplift).toBeGreaterThan(before.uplift);
        expect(after.lateral).toBeGreaterThanOrEqual(before.lateral);
        expect(Number.isFinite(after.uplift + after.lateral)).toBe(true);
      },
    ),
    { seed: 91 },
  );
});

test("deadmanCapacity(cone) lifts less than the prism of the same angle, and as it grows no less", () => {
  fc.assert(
    fc.property(deadman, size(0.01, 1), (block, more) => {
      const cone = { ...block, shape: "cone" as const };
      const held = deadmanCapacity(cone, loam, rules);
      expect(held.uplift).toBeLessThanOrEqual(deadmanCapacity(block, loam, rules).uplift);
      expect(
        deadmanCapacity({ ...cone, length: cone.length + more }, loam, rules).uplift,
      ).toBeGreaterThanOrEqual(held.uplift);
    }),
    { seed: 92 },
  );
});

test("deadmanCapacity(deeper than the soil breaks out) holds no uplift, and says why", () => {
  const narrow = { length: 0.6, height: 0.3, width: 0.3, depth: 1.8 };
  const { uplift, ratio, mostRatio } = deadmanCapacity(narrow, { ...loam, frictionAngle: 30 }, rules);
  expect([uplift, ratio]).toEqual([0, 6]);
  expect(mostRatio).toBeCloseTo(4.532, 9);
  expect(
    deadmanCapacity({ ...narrow, width: 0.45 }, { ...loam, frictionAngle: 30 }, rules).uplift,
  ).toBeGreaterThan(0);
});

test("breakoutRatio follows its table, between its rows and beyond them", () => {
  const sand = (frictionAngle: number) => breakoutRatio({ ...loam, frictionAngle }, 1, 1);
  expect([10, 20, 27.5, 30, 34, 48, 50].map(sand)).toEqual([2.5, 2.5, 3.5, 4, 4.8, 11, 11]);
  expect(breakoutRatio(loam, 1, 1)).toBe(2.5);
  expect(breakoutRatio({ ...loam, undrainedStrength: 20e3 }, 2, 2)).toBeCloseTo(4.64, 9);
  expect(breakoutRatio({ ...loam, undrainedStrength: 90e3 }, 2, 2)).toBe(7);
  // a rectangle reaches deeper, a strip of 4 : 1 and more by 1.4
  expect([1, 2, 4, 9].map((length) => breakoutRatio({ ...loam, frictionAngle: 30 }, length, 1))).toEqual([
    4, 4.532, 5.596, 5.6,
  ]);
});

test("deadmanCapacity says whether its lateral value is Rankine's or the soil table's", () => {
  const block = { length: 2, height: 0.5, width: 0.6, depth: 1.5 };
  expect(deadmanCapacity(block, loam, rules).lateralBasis).toBe("lateral-bearing");
  expect(deadmanCapacity(block, { ...loam, frictionAngle: 30 }, rules).lateralBasis).toBe("rankine");
});

test("deadmanCapacity(under water) is lighter and softer, and never below nothing", () => {
  const block = { length: 2, height: 0.5, width: 0.6, depth: 1.5 };
  const sand = { ...loam, frictionAngle: 30 };
  const dry = deadmanCapacity(block, sand, rules);
  const wet = deadmanCapacity(block, sand, { ...rules, waterTable: 0.5 });
  const flooded = deadmanCapacity(block, { ...sand, unitWeight: 5000 }, { ...rules, waterTable: 0 });
  expect(wet.uplift).toBeLessThan(dry.uplift);
  expect(wet.lateral).toBeLessThan(dry.lateral);
  expect(flooded.uplift).toBeGreaterThanOrEqual(0);
  expect(flooded.lateral).toBe(0);
});

test("deadmanCapacity(a block above grade) is refused", () => {
  expect(() => deadmanCapacity({ length: 1, height: 2, width: 1, depth: 1 }, loam, rules)).toThrow(
    /below grade/,
  );
});

const screw = { holds: { firm: 40_000 }, offAxis: 10, lateralShare: 0.2 };

test("screwCapacity holds its rating along the shaft and a share of it across", () => {
  expect(screwCapacity(screw, "firm")).toEqual({ axial: 40_000, across: 8000, offAxis: 10 });
});

test("screwCapacity(a class that its rating does not list) is nothing", () => {
  expect(screwCapacity(screw, "rock")).toEqual({ axial: 0, across: 0, offAxis: 10 });
});

test("rockRodCapacity(soil without a bond) holds nothing", () => {
  const rod = { bar: 0.025, yield: 420e6, hole: 0.05, socket: 1.5 };
  expect(rockRodCapacity(rod, loam, rules)).toMatchObject({ axial: 0, governs: "bond" });
});

test("coneShare is the least of all slants: a slanted cone and the part of its weight along the rod", () => {
  // cone of half-angle a, its axis b from the vertical: pi/3 H3 sin2a cos a / (cos2a - sin2b)^1.5, H = cos b; weight x cos b
  for (const angle of [10, 20, 25, 30, 40]) {
    const a = (angle * Math.PI) / 180;
    let least = Number.POSITIVE_INFINITY;
    for (let slant = 0; slant < 90 - angle; slant += 0.05) {
      const b = (slant * Math.PI) / 180;
      const open = Math.cos(a) ** 2 - Math.sin(b) ** 2;
      least = Math.min(least, (Math.cos(b) ** 4 * Math.cos(a) ** 3) / open ** 1.5);
    }
    expect(coneShare(angle)).toBeLessThanOrEqual(least * (1 + 1e-12));
    expect(coneShare(angle)).toBeGreaterThan(least * 0.9999);
  }
});

test("deadmanTakeOff digs its trench down to the bottom and forms nothing", () => {
  const { concrete, dug, formed } = deadmanTakeOff({ length: 2, height: 0.5, width: 0.6, depth: 1.5 });
  expect([concrete, dug, formed].map((value) => Number(value.toFixed(9)))).toEqual([0.6, 1.8, 0]);
});
