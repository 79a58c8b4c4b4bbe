import fc from "fast-check";
import { expect, test } from "vitest";
import { meshHeights } from "../../../src/physics/mast/mesh.ts";
import { roller, segment } from "./support/masts.ts";

test("meshHeights(a free-standing mast) takes the elements of two spans", () => {
  const heights = meshHeights({ segments: [segment(0, 12)], base: "fixed", pointWeights: [], levels: [] });
  expect(heights).toHaveLength(7);
});

test("meshHeights(a guyed mast) has a node at every station and three elements a span, no longer", () => {
  const tried = new Set<string>();
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: 1, max: 29 }), { minLength: 1, maxLength: 4 }),
      fc.integer({ min: 1, max: 29 }),
      fc.integer({ min: 1, max: 30 }),
      (unsorted, joint, load) => {
        const levels = [...unsorted].sort((a, b) => a - b);
        tried.add(JSON.stringify([levels, joint, load]));
        const heights = meshHeights({
          segments: [segment(0, joint), segment(joint, 30)],
          base: "pinned",
          pointWeights: [{ z: load, weight: 1, arm: 0 }],
          levels: levels.map(roller),
          kinks: [joint / 2, -1, 40],
        });
        for (const station of [0, joint, joint / 2, load, 30, ...levels])
          expect(heights.some((z) => Math.abs(z - station) < 1e-9)).toBe(true);
        const supports = [0, ...levels, 30];
        for (let i = 1; i < heights.length; i++) {
          const length = heights[i] - heights[i - 1];
          expect(length).toBeGreaterThan(0);
          const above = supports.findIndex((z) => z >= heights[i] - 1e-9);
          const span = supports[above] - supports[above - 1];
          if (span > 0) expect(length).toBeLessThanOrEqual(span / 3 + 1e-6);
        }
      },
    ),
    { numRuns: 300, seed: 4 },
  );
  expect(tried.size).toBeGreaterThan(280);
});
