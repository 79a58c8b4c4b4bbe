import fc from "fast-check";
import { expect, test } from "vitest";
import { anchorPostCapacity } from "../../../src/physics/ground/anchor-post.ts";
import { blockResistance } from "../../../src/physics/ground/block.ts";
import { deadmanCapacity } from "../../../src/physics/ground/deadman.ts";
import { padResistance } from "../../../src/physics/ground/pad.ts";
import { pierAsPost, pierBearing, pierInClay, pierInSand } from "../../../src/physics/ground/pier.ts";
import { dowelStrength } from "../../../src/physics/ground/rock-pad.ts";
import { rockRodCapacity } from "../../../src/physics/ground/rock-rod.ts";
import { type GroundRules, type SoilGivens, submergedUnitWeight } from "../../../src/physics/ground/soil.ts";

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = (min: number, max: number) => fc.option(size(min, max), { nil: undefined });
const layer = {
  bearing: size(5e4, 3e5),
  lateralPerDepth: size(5e3, 60e3),
  lateralCap: maybe(10e3, 200e3),
  friction: maybe(0.2, 0.4),
  cohesion: maybe(0, 20e3),
  // peat that floats, to dense gravel
  unitWeight: size(9e3, 21e3),
  frictionAngle: maybe(20, 40),
  undrainedStrength: maybe(10e3, 100e3),
  groutBond: maybe(1e5, 1e6),
};
const soil: fc.Arbitrary<SoilGivens> = fc
  .record({ ...layer, deeper: fc.array(fc.record({ ...layer, thick: size(0.3, 2) }), { maxLength: 2 }) })
  .map(({ deeper, ...top }) => {
    let from = 0;
    return { ...top, layers: deeper.map(({ thick, ...one }) => ({ ...one, from: (from += thick) })) };
  });

/** What every kind in the ground holds, each number the more the better. */
function holds(ground: SoilGivens, rules: GroundRules, width: number, depth: number): Record<string, number> {
  const pier = { diameter: width / 2, depth };
  const loads = { compression: 60e3, shear: 4e3, moment: 9e3 };
  const post = anchorPostCapacity({ width, depth, height: 0.6 }, ground, rules);
  const deadman = deadmanCapacity({ length: 2 * width, width, height: depth / 3, depth }, ground, rules);
  const rod = rockRodCapacity({ bar: 0.02, yield: 4e8, hole: 0.05, socket: depth }, ground, rules);
  const dowel = dowelStrength(
    { width, depth: depth / 4, dowels: 4, socket: depth, bar: 0.02, yield: 4e8, hole: 0.05, edge: 0.1 },
    ground,
    rules,
  );
  const share = ({ demand, capacity }: { demand: number; capacity: number }) => capacity / demand;
  const sideways = [
    ["pier as post", pierAsPost(pier, ground, rules)],
    ["pier in sand", pierInSand(pier, ground, rules)],
    ["pier in clay", pierInClay(pier, ground)],
  ] as const;
  const block = blockResistance({ width, depth }, loads, ground, rules);
  const pad = padResistance(
    { width, depth, thickness: depth / 3, pedestal: width / 2 },
    loads,
    ground,
    rules,
  );
  return {
    "post uplift": post.uplift,
    "post lateral": post.lateral,
    "post overturning": post.overturning,
    "deadman uplift": deadman.uplift,
    "deadman lateral": deadman.lateral,
    "rod cone": rod.cone,
    rod: rod.axial,
    "dowel cone": dowel.cone,
    "pier bearing": share(pierBearing(pier, 60e3, ground, rules)),
    "block overturning": share(block.overturning),
    "block sliding": share(block.sliding),
    "pad overturning": share(pad.overturning),
    "pad sliding": share(pad.sliding),
    ...Object.fromEntries(sideways.map(([name, hold]) => [name, hold ? share(hold.of(loads)) : 0])),
  };
}

test("nothing in the ground holds more in water than dry, nor more the higher the water stands", () => {
  fc.assert(
    fc.property(
      soil,
      size(0.5, 1.5),
      size(0.6, 3),
      fc.tuple(size(0, 3), size(0, 3)),
      fc.constantFrom(undefined, 2),
      fc.constantFrom(1, 0.6),
      (ground, width, depth, tables, lateralMultiplier, deadShare) => {
        const rules = { concreteUnitWeight: 23_500, upliftAngle: 30, lateralMultiplier, deadShare };
        const dry = holds(ground, rules, width, depth);
        const low = holds(ground, { ...rules, waterTable: Math.max(...tables) }, width, depth);
        const high = holds(ground, { ...rules, waterTable: Math.min(...tables) }, width, depth);
        for (const [what, held] of Object.entries(dry)) {
          expect(low[what], what).toBeLessThanOrEqual(held * (1 + 1e-9) + 1e-9);
          expect(high[what], what).toBeLessThanOrEqual(low[what] * (1 + 1e-9) + 1e-9);
        }
      },
    ),
    { seed: 71, numRuns: 500 },
  );
});

test("a post's lateral bearing, both ways, and the rock over a rod keep in water the share of their weight", () => {
  const ground = { bearing: 1e5, lateralPerDepth: 3e4, unitWeight: 18e3, groutBond: 1e6 };
  const rules = { concreteUnitWeight: 23_500, upliftAngle: 30 };
  const share = submergedUnitWeight(ground) / ground.unitWeight;
  const [dry, wet] = [rules, { ...rules, waterTable: 1 }].map((givens) => ({
    post: anchorPostCapacity({ width: 1, depth: 1.5, height: 0.5 }, ground, givens),
    rod: rockRodCapacity({ bar: 0.02, yield: 4e8, hole: 0.05, socket: 1.5 }, ground, givens),
  }));
  expect(wet.post.lateral / dry.post.lateral).toBeCloseTo(share, 12);
  // b s D3 / 6, and half a metre of block that floats
  const soilMoment = (3e4 * 1.5 ** 3) / 6;
  expect(dry.post.overturning - wet.post.overturning).toBeCloseTo(
    (1 - share) * soilMoment + (0.5 * 9806.65) / 2,
    6,
  );
  expect(wet.rod.cone / dry.rod.cone).toBeCloseTo(share, 12);
});

test("water lifts in full where a load combination counts a share of what holds (EN 1997-1 2.4.7.4, from memory)", () => {
  const ground = { bearing: 1e5, lateralPerDepth: 0, unitWeight: 18e3, groutBond: 1e6 };
  const dry = { concreteUnitWeight: 23_500, upliftAngle: 0, deadShare: 0.9 };
  const wet = { ...dry, waterTable: 0 };
  const loads = { compression: 60e3, shear: 0, moment: 0 };
  const lost = (of: (rules: typeof dry) => number) => of(dry) - of(wet);
  const water = 9806.65;
  const block = { width: 1.5, depth: 1 };
  expect(lost((rules) => blockResistance(block, loads, ground, rules).normal)).toBeCloseTo(2.25 * water, 6);
  const pad = { width: 1.5, thickness: 0.4, depth: 1, pedestal: 0.5 };
  expect(lost((rules) => padResistance(pad, loads, ground, rules).normal)).toBeCloseTo(2.25 * water, 6);
  const buried = { length: 2, width: 1, height: 0.5, depth: 1 };
  expect(lost((rules) => deadmanCapacity(buried, ground, rules).uplift)).toBeCloseTo(2 * water, 6);
  const post = { width: 1, depth: 1, height: 0.5 };
  expect(lost((rules) => anchorPostCapacity(post, ground, rules).overturning)).toBeCloseTo(water / 2, 6);
  const rod = { bar: 0.02, yield: 4e8, hole: 0.05, socket: 1 };
  const cone = (upliftAngle: number) =>
    lost((rules) => rockRodCapacity(rod, ground, { ...rules, upliftAngle }).cone);
  expect(cone(45)).toBeCloseTo((Math.PI / 3) * water, 6);
});
