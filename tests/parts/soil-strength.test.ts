import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { AS_STATED } from "../../src/model/place.ts";
import { anchorParts, footingParts } from "../../src/parts/index.ts";
import { catalogAt } from "../../src/problem/place.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

/** Uses that both fail may be infinite; rounding of a root is given away. */
const noLess = (weaker: number, stronger: number): boolean => !(weaker < stronger * (1 - 1e-9));

describe("soil strength", () => {
  it("worst(reactions) of every anchor and footing is no less in weaker soil, so that the weakest stands for a range", () => {
    const sample = fc.sample(
      fc.record({
        file: smallStudy,
        weak: fc.double({ min: 0.3, max: 1, noNaN: true }),
        strong: fc.double({ min: 1, max: 2, noNaN: true }),
        reactions: fc.array(
          fc.record({
            uplift: fc.double({ min: -2e3, max: 4e4, noNaN: true }),
            lateral: fc.double({ min: 0, max: 4e4, noNaN: true }),
          }),
          { minLength: 1, maxLength: 4 },
        ),
        loads: fc.array(
          fc.record({
            compression: fc.double({ min: 1e3, max: 2e5, noNaN: true }),
            shear: fc.double({ min: 0, max: 2e4, noNaN: true }),
            moment: fc.constantFrom(0, 0, 5e3, 3e4, 1e5),
          }),
          { minLength: 1, maxLength: 4 },
        ),
      }),
      { numRuns: 400, seed: 31_415 },
    );
    let asked = 0;
    let weaker = 0;
    const kinds = new Set<string>();
    const wrong: string[] = [];
    for (const { file, weak, strong, reactions, loads } of sample) {
      const problem = problemOf(file);
      const at = (factor: number) => {
        const catalog = catalogAt(problem.catalog, { ...AS_STATED, soilStrength: factor });
        const soil = catalog.soils.find((row) => row.id === problem.soil.id);
        if (!soil) throw new Error("the soil is gone");
        const ground = { ...problem.ground, soil };
        return {
          anchors: catalog.anchors.flatMap((row) => anchorParts(row, ground)).slice(0, 400),
          footings: catalog.footings.flatMap((row) => footingParts(row, ground)).slice(0, 400),
        };
      };
      const [low, as, high] = [weak, 1, strong].map(at);
      const compare = (kind: string, uses: readonly number[]) => {
        asked++;
        kinds.add(kind);
        if (uses[0] > uses[1] || uses[1] > uses[2]) weaker++;
        if (!noLess(uses[0], uses[1]) || !noLess(uses[1], uses[2]))
          wrong.push(`${kind} in ${problem.soil.id}: ${uses.join(", ")} at ${weak}, 1, ${strong}`);
      };
      as.anchors.forEach((part, i) => {
        const trio = [low.anchors[i], part, high.anchors[i]];
        expect(trio.map((one) => one.cents)).toEqual([part.cents, part.cents, part.cents]);
        compare(
          part.choice.kind,
          trio.map((one) => one.worst(reactions)),
        );
      });
      as.footings.forEach((part, i) => {
        const trio = [low.footings[i], part, high.footings[i]];
        compare(
          part.choice.kind,
          trio.map((one) => one.worst(loads, 0.3)),
        );
      });
    }
    console.log(`${asked} parts asked, ${weaker} of them more used in weaker soil`);
    expect([...kinds].sort()).toEqual(
      ["block", "deadman", "pad", "pier", "post", "rock-pad", "rock-rod", "screw"].sort(),
    );
    expect(weaker).toBeGreaterThan(asked / 20);
    expect(wrong.slice(0, 5)).toEqual([]);
  }, 120_000);
});
