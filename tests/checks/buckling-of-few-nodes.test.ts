import fc from "fast-check";
import { expect, test } from "vitest";
import { analyse } from "../../src/checks/analysis.ts";
import { resolve } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import { Search } from "../../src/search/search.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

/** A mast of one level whose three elements leave so few modes that rounding once passed for one of them. */
const problem = problemOf(fc.sample(smallStudy, { numRuns: 80, seed: 23 })[79]);

test("a mast of four nodes buckles in still air where a finer mesh of it does", () => {
  const search = new Search(problem);
  while (!search.step(1000));
  if (!search.best) throw new Error("nothing safe was found");
  const { design } = search.best;
  expect(verify(problem, design).passes).toBe(true);
  const factorOn = (elementsPerSpan?: number): number => {
    let factor = Number.NaN;
    analyse(problem, resolve(problem, design).model, {
      elementsPerSpan,
      visit: ({ wind, mast }) => {
        if (wind.id === "still") factor = mast.bucklingFactor();
      },
    });
    return factor;
  };
  const fine = factorOn(8);
  expect(factorOn() / fine).toBeGreaterThan(0.999);
  expect(factorOn() / fine).toBeLessThan(1.005);
});
