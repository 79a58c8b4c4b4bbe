import fc from "fast-check";
import { expect, test } from "vitest";
import { type BlockGeometry, blockResistance, blockTakeOff } from "../../../src/physics/ground/block.ts";
import { eccentricPressure } from "../../../src/physics/ground/eccentric.ts";
import type { FootingLoads, Resistance } from "../../../src/physics/ground/loads.ts";
import { type PadGeometry, padResistance, padTakeOff, padWeight } from "../../../src/physics/ground/pad.ts";
import type { GroundRules, SoilGivens } from "../../../src/physics/ground/soil.ts";

type Footing = ({ readonly kind: "block" } & BlockGeometry) | ({ readonly kind: "pad" } & PadGeometry);
/** Either kind asked alike: what holds for one holds for the other. */
const footingResistance = (footing: Footing, load: FootingLoads, ground: SoilGivens, givens: GroundRules) =>
  footing.kind === "block"
    ? blockResistance(footing, load, ground, givens)
    : padResistance(footing, load, ground, givens);
const footingTakeOff = (footing: Footing) =>
  footing.kind === "block" ? blockTakeOff(footing) : padTakeOff(footing);

const rules: GroundRules = { concreteUnitWeight: 23_500, upliftAngle: 30 };
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const soil: fc.Arbitrary<SoilGivens> = fc.record({
  bearing: size(50e3, 600e3),
  lateralPerDepth: size(0, 70e3),
  lateralCap: fc.option(size(10e3, 200e3), { nil: undefined }),
  friction: fc.option(size(0.1, 0.7), { nil: undefined }),
  cohesion: fc.option(size(0, 50e3), { nil: undefined }),
  unitWeight: size(14e3, 22e3),
});
const footing: fc.Arbitrary<Footing> = fc.oneof(
  fc.record({ kind: fc.constant("block" as const), width: size(0.4, 3), depth: size(0.5, 3) }),
  fc
    .record({ width: size(0.8, 4), thickness: size(0.2, 0.8), cover: size(0, 1.5), pedestal: size(0.3, 0.8) })
    .map(({ cover, ...pad }) => ({ kind: "pad" as const, ...pad, depth: pad.thickness + cover })),
);
const loads: fc.Arbitrary<FootingLoads> = fc.record({
  compression: size(-20e3, 200e3),
  shear: size(0, 20e3),
  moment: size(0, 150e3),
});
const utilisation = ({ demand, capacity }: Resistance) =>
  demand === 0 ? 0 : capacity > 0 ? demand / capacity : Number.POSITIVE_INFINITY;
const states = ["bearing", "overturning", "sliding"] as const;

test("footingResistance is never NaN, and a footing that lifts fails everything", () => {
  fc.assert(
    fc.property(footing, loads, soil, (kind, load, ground) => {
      const result = footingResistance(kind, load, ground, rules);
      for (const state of states) {
        expect(result[state].demand).not.toBeNaN();
        expect(result[state].capacity).toBeGreaterThanOrEqual(0);
        expect(result[state].capacity).toBeLessThan(1e12);
      }
      expect(result.eccentricity).not.toBeNaN();
    }),
    { seed: 93 },
  );
  const lifts = footingResistance(
    { kind: "block", width: 1, depth: 1 },
    { compression: -30_000, shear: 0, moment: 0 },
    { bearing: 1e5, lateralPerDepth: 1e4, unitWeight: 18e3 },
    rules,
  );
  for (const state of states) expect(lifts[state].demand).toBe(Number.POSITIVE_INFINITY);
});

test("footingResistance(twice the moment) lowers no utilisation", () => {
  fc.assert(
    fc.property(footing, loads, soil, (kind, load, ground) => {
      const once = footingResistance(kind, load, ground, rules);
      const twice = footingResistance(kind, { ...load, moment: 2 * load.moment }, ground, rules);
      for (const state of states)
        expect(utilisation(twice[state])).toBeGreaterThanOrEqual(utilisation(once[state]) * (1 - 1e-12));
    }),
    { seed: 94 },
  );
});

test("footingResistance of a wider base overturns no easier", () => {
  fc.assert(
    fc.property(footing, loads, soil, size(1, 1.5), (kind, load, ground, growth) => {
      fc.pre(load.compression >= 0);
      const wider = { ...kind, width: kind.width * growth };
      const before = footingResistance(kind, load, ground, rules).overturning;
      const after = footingResistance(wider, load, ground, rules).overturning;
      expect(utilisation(after)).toBeLessThanOrEqual(utilisation(before) * (1 + 1e-9));
    }),
    { seed: 95 },
  );
});

test("the linear peak is never below the uniform pressure of the same load", () => {
  fc.assert(
    fc.property(footing, loads, soil, (kind, load, ground) => {
      const { bearing, normal, eccentricity } = footingResistance(kind, load, ground, rules);
      fc.pre(Number.isFinite(bearing.demand));
      const { peakPressure, effectivePressure } = eccentricPressure(
        normal,
        normal * eccentricity,
        kind.width,
        kind.width,
      );
      expect(bearing.demand).toBeGreaterThanOrEqual(effectivePressure * (1 - 1e-9));
      expect(peakPressure).toBeGreaterThanOrEqual(effectivePressure * (1 - 1e-6));
    }),
    { seed: 96 },
  );
});

test("the lateral multiplier doubles the soil of a block without a cap and leaves its weight alone", () => {
  const block: Footing = { kind: "block", width: 1, depth: 1.5 };
  const ground = { bearing: 1e5, lateralPerDepth: 3e4, unitWeight: 18e3 };
  const still = { compression: 1e4, shear: 0, moment: 0 };
  const once = footingResistance(block, still, ground, rules).overturning.capacity;
  const twice = footingResistance(block, still, ground, { ...rules, lateralMultiplier: 2 }).overturning
    .capacity;
  expect(twice - once).toBeCloseTo((3e4 * 1 * 1.5 ** 3) / 6, 6);
});

test("padWeight(below the water table) loses the water that its whole plan displaces", () => {
  const pad = { width: 2, thickness: 0.5, depth: 1.5, pedestal: 0.6 };
  const ground = { bearing: 1e5, lateralPerDepth: 0, unitWeight: 18e3 };
  const dry = padWeight(pad, ground, rules).held;
  expect(dry).toBeCloseTo((2 + 0.36) * 23_500 + (4 - 0.36) * 18e3, 6);
  expect(dry - padWeight(pad, ground, { ...rules, waterTable: 1 }).held).toBeCloseTo(4 * 0.5 * 9806.65, 6);
});

test("footingResistance(a pad shallower than it is thick) is refused by name", () => {
  const pad: Footing = { kind: "pad", width: 2, thickness: 0.6, depth: 0.5, pedestal: 0.4 };
  const still = { compression: 1, shear: 0, moment: 0 };
  const ground = { bearing: 1, lateralPerDepth: 0, unitWeight: 1 };
  expect(() => footingResistance(pad, still, ground, rules)).toThrow(/depth at least the thickness/);
});

test("cohesion holds the base up to half the dead load", () => {
  const clay = { bearing: 1e5, lateralPerDepth: 0, unitWeight: 18e3, cohesion: 1e6 };
  const block: Footing = { kind: "block", width: 1, depth: 1 };
  const { sliding } = footingResistance(block, { compression: 6500, shear: 1, moment: 0 }, clay, rules);
  expect(sliding.capacity).toBeCloseTo((6500 + 23_500) / 2, 6);
});

test("footingTakeOff never digs less than it pours", () => {
  fc.assert(
    fc.property(footing, (kind) => {
      const { concrete, dug, formed } = footingTakeOff(
        kind.kind === "pad" ? { ...kind, pedestal: Math.min(kind.pedestal, kind.width) } : kind,
      );
      expect(dug).toBeGreaterThanOrEqual(concrete * (1 - 1e-12));
      expect(formed).toBeGreaterThanOrEqual(0);
    }),
    { seed: 97 },
  );
});

test("blockTakeOff pours and digs a block and forms its collar", () => {
  const { concrete, dug, hole, formed } = blockTakeOff({ width: 1, depth: 2 });
  expect([concrete, dug, hole, formed]).toEqual([2, 2, 2, 4 * 0.1524]);
});

test("footingResistance(a share of own weight) is asked for bearing with all of it too: weight presses as it holds", () => {
  const ground = { bearing: 1e5, lateralPerDepth: 0, unitWeight: 18e3 };
  const still = { compression: 20e3, shear: 0, moment: 0 };
  const share = { ...rules, deadShare: 0.9 };
  const block: Footing = { kind: "block", width: 2, depth: 1.5 };
  const pad: Footing = { kind: "pad", width: 2, thickness: 0.5, depth: 1.5, pedestal: 0.5 };
  for (const footing of [block, pad]) {
    const whole = footingResistance(footing, still, ground, rules).bearing.demand;
    expect(footingResistance(footing, still, ground, share).bearing.demand).toBeCloseTo(whole, 6);
    // beside a moment that takes it near the edge, less weight is the worse
    const turned = { ...still, moment: 90e3 };
    const [all, less] = [rules, share].map((given) => footingResistance(footing, turned, ground, given));
    expect(less.bearing.demand).toBeGreaterThan(all.bearing.demand);
  }
});
