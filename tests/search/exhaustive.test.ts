import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { enumerate } from "../../src/search/exhaustive.ts";
import { Grid } from "../../src/search/grid.ts";
import { outcome } from "../../src/search/outcome.ts";
import { Search } from "../../src/search/search.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

/** Designs that one study may hold here: each is verified whole. */
const MOST = 250;
/** Fewer than this teach nothing. */
const LEAST = 20;
const STUDIES = 210;

const run = (search: Search): Search => {
  while (!search.step(1000)) {}
  return search;
};

describe("the search against exhaustive enumeration", () => {
  it(`Search(study) finds what enumeration finds, cost for cost and design for design, on ${STUDIES} random studies`, () => {
    const tried = new Set<string>();
    let safe = 0;
    let designs = 0;
    const sample = fc.sample(smallStudy, { numRuns: 40 * STUDIES, seed: 20_261_125 });
    for (const file of sample) {
      if (tried.size >= STUDIES) break;
      const problem = problemOf(file);
      const size = new Grid(problem).total().designs;
      const key = JSON.stringify(file);
      if (size < LEAST || size > MOST || tried.has(key)) continue;
      tried.add(key);
      const all = enumerate(problem);
      expect(all.designs).toBe(size);
      designs += all.designs;
      const search = run(new Search(problem));
      expect(search.best?.objective ?? null, key).toBe(all.best?.objective ?? null);
      expect(search.best?.key ?? null, key).toBe(all.best?.key ?? null);
      if (all.best) safe++;
      const told = outcome(problem, [search.report()], 0);
      expect(told.status).toBe(all.best ? "proven" : "none-safe");
      const counted = Object.values(told.proof.pruned).reduce((sum, n) => sum + n, 0);
      expect(counted + (all.best ? 1 : 0), key).toBeCloseTo(size, 6);
    }
    console.log(`${tried.size} distinct studies, ${safe} with a safe design, ${designs} designs enumerated`);
    expect(tried.size).toBe(STUDIES);
    expect(safe).toBeGreaterThan(STUDIES / 5);
    expect(safe).toBeLessThan(STUDIES);
  }, 600_000);
});
