import fc from "fast-check";
import { expect, test } from "vitest";
import { anchorPostCapacity, postOverturning, sideShear } from "../../../src/physics/ground/anchor-post.ts";
import type { SoilGivens } from "../../../src/physics/ground/soil.ts";
import { postRefusal, postStrength } from "../../../src/physics/steel/post.ts";

const rules = { concreteUnitWeight: 23_500, upliftAngle: 30 };
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const block = fc.record({ width: size(0.4, 1.5), depth: size(0.6, 3), height: size(0.2, 1.5) });
const soil: fc.Arbitrary<SoilGivens> = fc.record({
  bearing: fc.constant(1e5),
  lateralPerDepth: size(5e3, 60e3),
  lateralCap: fc.option(size(10e3, 200e3), { nil: undefined }),
  cohesion: fc.option(size(0, 20e3), { nil: undefined }),
  unitWeight: size(14e3, 21e3),
  frictionAngle: fc.option(size(20, 40), { nil: undefined }),
});

test("anchorPostCapacity of a wider, deeper block is no less, of a higher hold no more", () => {
  fc.assert(
    fc.property(
      block,
      soil,
      size(0.01, 0.5),
      fc.option(size(0, 3), { nil: undefined }),
      (post, ground, more, waterTable) => {
        const givens = { ...rules, waterTable };
        const at = anchorPostCapacity(post, ground, givens);
        for (const key of ["width", "depth"] as const) {
          const grown = anchorPostCapacity({ ...post, [key]: post[key] + more }, ground, givens);
          for (const what of ["uplift", "lateral", "overturning"] as const)
            expect(grown[what]).toBeGreaterThanOrEqual(at[what] * (1 - 1e-9));
        }
        const higher = anchorPostCapacity({ ...post, height: post.height + more }, ground, givens);
        expect(higher.lateral).toBeLessThan(at.lateral);
        expect(higher.uplift).toBe(at.uplift);
        expect(postOverturning({ ...post, height: post.height + more }, 0, 1)).toBeGreaterThan(
          postOverturning(post, 0, 1),
        );
      },
    ),
    { seed: 61 },
  );
});

test("anchorPostCapacity in weaker soil is no more, under water less", () => {
  fc.assert(
    fc.property(block, soil, size(0.3, 1), (post, ground, share) => {
      const at = anchorPostCapacity(post, ground, rules);
      const weaker = anchorPostCapacity(
        post,
        {
          ...ground,
          lateralPerDepth: ground.lateralPerDepth * share,
          unitWeight: ground.unitWeight * share,
          cohesion: ground.cohesion && ground.cohesion * share,
        },
        rules,
      );
      const wet = anchorPostCapacity(post, ground, { ...rules, waterTable: 0 });
      for (const what of ["uplift", "lateral", "overturning"] as const)
        expect(weaker[what]).toBeLessThanOrEqual(at[what] * (1 + 1e-12));
      expect(wet.uplift).toBeLessThan(at.uplift);
      expect(wet.overturning).toBeLessThan(at.overturning);
    }),
    { seed: 62 },
  );
});

test("sideShear is nothing where the soil states neither angle, cohesion nor strength", () => {
  const bare = { bearing: 1, lateralPerDepth: 1, unitWeight: 18e3 };
  expect(sideShear(bare, 4, 2, 9)).toBe(0);
  expect(sideShear({ ...bare, cohesion: 6e3 }, 4, 2, 9)).toBeCloseTo(48e3, 9);
  expect(sideShear({ ...bare, undrainedStrength: 40e3 }, 4, 2, 9)).toBeCloseTo(160e3, 9);
});

test("postStrength refuses a shape that would turn sideways and a wall that would buckle, and says why", () => {
  const slender = { plasticModulus: 1.77e-4, area: 2.86e-3, shearArea: 8.9e-4, leastRadius: 0.0368 };
  expect(postRefusal(slender, 345e6, 1.5)).toBeNull();
  expect(postRefusal(slender, 345e6, 1.6)).toMatch(/1.60 m free .* beyond 1.56 m/);
  expect(() => postStrength(slender, 345e6, 1.6)).toThrow(/turns sideways/);
  expect(postRefusal({ diameter: 0.3, wall: 0.001 }, 345e6, 1)).toMatch(/1\/300 of the diameter/);
  expect(() =>
    anchorPostCapacity(
      { width: 1, depth: 0, height: 1 },
      { bearing: 1, lateralPerDepth: 1, unitWeight: 1 },
      rules,
    ),
  ).toThrow(/depth 0/);
});
