import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { blockResistance } from "../../../src/physics/ground/block.ts";
import { deadmanCapacity } from "../../../src/physics/ground/deadman.ts";
import { padResistance } from "../../../src/physics/ground/pad.ts";
import { pierAsPost, pierInSand } from "../../../src/physics/ground/pier.ts";
import { rockRodCapacity } from "../../../src/physics/ground/rock-rod.ts";
import {
  bearingUnder,
  lateralForce,
  lateralMoment,
  lateralPressure,
  meanUnitWeight,
  type SoilGivens,
  type SoilLayer,
  soilAt,
  stretches,
  weakestTo,
} from "../../../src/physics/ground/soil.ts";

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const layer: fc.Arbitrary<SoilLayer> = fc.record({
  bearing: size(20e3, 600e3),
  lateralPerDepth: size(0, 70e3),
  lateralCap: fc.option(size(5e3, 200e3), { nil: undefined }),
  friction: fc.option(size(0.1, 0.7), { nil: undefined }),
  cohesion: fc.option(size(0, 50e3), { nil: undefined }),
  unitWeight: size(12e3, 25e3),
  frictionAngle: fc.option(size(20, 42), { nil: undefined }),
  groutBond: fc.option(size(1e5, 2e6), { nil: undefined }),
});
const profile: fc.Arbitrary<SoilGivens> = fc
  .record({ top: layer, beneath: fc.array(fc.tuple(size(0.2, 1.5), layer), { maxLength: 3 }) })
  .map(({ top, beneath }) => {
    let from = 0;
    return { ...top, layers: beneath.map(([thick, here]) => ({ ...here, from: (from += thick) })) };
  });
const rules = { concreteUnitWeight: 23_500, upliftAngle: 30, waterTable: 1.1 };

/** Simpson's rule, its ends a hair inside so that no joint is asked. */
const integral = (from: number, to: number, f: (z: number) => number) => {
  const n = 400;
  const h = (to - from) / n;
  let sum = 0;
  for (let i = 0; i <= n; i++) {
    const z = Math.min(Math.max(from + i * h, from + 1e-9), to - 1e-9);
    sum += (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * (h / 3) * f(z);
  }
  return sum;
};
/** Every depth at which something bends, so that the integral meets smooth pieces only. */
const pieces = (soil: SoilGivens, from: number, to: number, multiplier: number) => {
  const kinks = [soil, ...(soil.layers ?? [])].flatMap((one) =>
    one.lateralCap === undefined ? [] : [one.lateralCap / (multiplier * one.lateralPerDepth)],
  );
  const cuts = [from, to, ...(soil.layers ?? []).map((one) => one.from), ...kinks]
    .filter((z) => z >= from && z <= to)
    .sort((a, b) => a - b);
  return cuts.slice(1).map((z, i) => [cuts[i], z] as const);
};

describe("a soil profile", () => {
  test("lateralForce and lateralMoment are the integrals of lateralPressure, whatever the layers", () => {
    fc.assert(
      fc.property(profile, size(0, 2), size(0.1, 4), fc.constantFrom(1, 2), (soil, from, thick, m) => {
        const to = from + thick;
        const sum = (a: number, f: (z: number) => number) =>
          pieces(soil, a, to, m).reduce((all, [u, v]) => all + (v > u ? integral(u, v, f) : 0), 0);
        const force = sum(from, (z) => lateralPressure(soil, z, m));
        const moment = sum(0, (z) => lateralPressure(soil, z, m) * (to - z));
        expect(lateralForce(soil, from, to, m)).toBeGreaterThan(force - 1e-6 * (1 + force));
        expect(lateralForce(soil, from, to, m)).toBeLessThan(force + 1e-6 * (1 + force));
        expect(lateralMoment(soil, to, m)).toBeGreaterThan(moment - 1e-6 * (1 + moment));
        expect(lateralMoment(soil, to, m)).toBeLessThan(moment + 1e-6 * (1 + moment));
      }),
      { seed: 51 },
    );
  });

  test("split in two alike, a soil gives every method the same numbers", () => {
    fc.assert(
      fc.property(layer, size(0.1, 3), size(0.3, 3), size(0, 2), (plain, split, width, cover) => {
        const soil: SoilGivens = { ...plain, layers: [{ ...plain, from: split }] };
        const depth = 0.4 + cover;
        const load = { compression: 30e3, shear: 4e3, moment: 20e3 };
        const answers = (ground: SoilGivens) => [
          ...Object.values(blockResistance({ width, depth }, load, ground, rules)),
          ...Object.values(
            padResistance({ width, thickness: 0.3, depth, pedestal: 0.3 }, load, ground, rules),
          ),
          ...[deadmanCapacity({ length: width, height: 0.4, width: 0.5, depth }, ground, rules)].flatMap(
            ({ uplift, lateral }) => [uplift, lateral],
          ),
          pierAsPost({ diameter: width, depth }, ground, rules)?.of(load),
          pierInSand({ diameter: width, depth }, ground, rules)?.of(load),
          rockRodCapacity({ bar: 0.02, yield: 4e8, hole: 0.05, socket: depth }, ground, rules).axial,
        ];
        const numbers = (all: readonly unknown[]) =>
          all.flatMap((one) => (typeof one === "object" && one ? Object.values(one) : [one])) as number[];
        const [once, twice] = [numbers(answers(plain)), numbers(answers(soil))];
        expect(twice.length).toBe(once.length);
        once.forEach((value, i) => {
          if (Number.isFinite(value))
            expect(Math.abs(twice[i] - value)).toBeLessThanOrEqual(1e-9 * Math.abs(value));
          else expect(twice[i]).toBe(value);
        });
      }),
      { seed: 52 },
    );
  });

  test("layers that are never reached change nothing, to the last digit", () => {
    fc.assert(
      fc.property(layer, layer, size(0.3, 3), (plain, deep, width) => {
        const soil: SoilGivens = { ...plain, layers: [{ ...deep, bearing: 1e9, from: 4 }] };
        const load = { compression: 30e3, shear: 4e3, moment: 20e3 };
        const [block, man] = [
          { width, depth: 1.3 },
          { length: width, height: 0.4, width: 0.5, depth: 1.6 },
        ];
        expect(blockResistance(block, load, soil, rules)).toEqual(blockResistance(block, load, plain, rules));
        expect(deadmanCapacity(man, soil, rules)).toEqual(deadmanCapacity(man, plain, rules));
      }),
      { seed: 53 },
    );
  });

  test("a layer made weaker makes no part of the ground stronger", () => {
    fc.assert(
      fc.property(profile, fc.nat({ max: 3 }), size(0.3, 1), size(0.4, 3), (soil, which, less, width) => {
        const weak = <L extends SoilLayer>(one: L): L => ({
          ...one,
          bearing: one.bearing * less,
          lateralPerDepth: one.lateralPerDepth * less,
          lateralCap: one.lateralCap && one.lateralCap * less,
          friction: one.friction && one.friction * less,
          cohesion: one.cohesion && one.cohesion * less,
          unitWeight: one.unitWeight * less,
          groutBond: one.groutBond && one.groutBond * less,
        });
        const layers = soil.layers?.map((one, i) => (i + 1 === which ? weak(one) : one));
        const weaker: SoilGivens = { ...(which === 0 ? weak(soil) : soil), layers };
        const man = { length: width, height: 0.4, width: 0.5, depth: 1.8 };
        const [before, after] = [deadmanCapacity(man, soil, rules), deadmanCapacity(man, weaker, rules)];
        expect(after.uplift).toBeLessThanOrEqual(before.uplift * (1 + 1e-12));
        expect(after.lateral).toBeLessThanOrEqual(before.lateral * (1 + 1e-12));
        expect(bearingUnder(weaker, 1.2, width)).toBeLessThanOrEqual(bearingUnder(soil, 1.2, width));
        expect(lateralMoment(weaker, 2)).toBeLessThanOrEqual(lateralMoment(soil, 2) * (1 + 1e-12));
      }),
      { seed: 54 },
    );
  });

  test("soilAt(a boundary) is the layer beneath, and stretches cover the depth without a gap", () => {
    const soil: SoilGivens = {
      bearing: 1,
      lateralPerDepth: 1,
      unitWeight: 10,
      layers: [
        { from: 1, bearing: 2, lateralPerDepth: 1, unitWeight: 20 },
        { from: 2.5, bearing: 3, lateralPerDepth: 1, unitWeight: 30 },
      ],
    };
    expect([0.9, 1, 2.4, 2.5, 90].map((depth) => soilAt(soil, depth).bearing)).toEqual([1, 2, 2, 3, 3]);
    expect(stretches(soil, 0.5, 3).map(({ from, to }) => [from, to])).toEqual([
      [0.5, 1],
      [1, 2.5],
      [2.5, 3],
    ]);
    expect(meanUnitWeight(soil, 0, 3)).toBeCloseTo((10 + 30 + 15) / 3, 12);
  });

  test("weakestTo(depth) takes each value by itself, and what one layer lacks is lacking", () => {
    const soil: SoilGivens = {
      bearing: 5,
      lateralPerDepth: 9,
      unitWeight: 10,
      frictionAngle: 30,
      undrainedStrength: 7,
      layers: [
        { from: 1, bearing: 2, lateralPerDepth: 11, lateralCap: 40, unitWeight: 20, frictionAngle: 25 },
      ],
    };
    expect(weakestTo(soil, 0.9)).toMatchObject({ bearing: 5, undrainedStrength: 7, layers: undefined });
    expect(weakestTo(soil, 2)).toEqual({
      bearing: 2,
      lateralPerDepth: 9,
      lateralCap: 40,
      unitWeight: 10,
      friction: undefined,
      cohesion: undefined,
      frictionAngle: 25,
      undrainedStrength: undefined,
      groutBond: undefined,
    });
  });
});
