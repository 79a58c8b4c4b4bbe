import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DesignError } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import type { Design } from "../../src/model/design.ts";
import { designKey } from "../../src/model/design-key.ts";
import type { StudyFile } from "../../src/model/study.ts";
import type { Problem } from "../../src/problem/types.ts";
import { enumerate, everyDesign } from "../../src/search/exhaustive.ts";
import { Grid } from "../../src/search/grid.ts";
import { outcome } from "../../src/search/outcome.ts";
import { Search } from "../../src/search/search.ts";
import { armedStudy, problemOf, smallStudy } from "../support/small-study.ts";

/** Designs that one study may hold here: each is verified whole. */
const MOST = 250;
/** Fewer than this teach nothing. */
const LEAST = 20;
const STUDIES = 210;
/** Of the designs enumerated every so manieth is verified by itself as well. */
const ALONE = 31;

function passes(problem: Problem, design: Design): boolean {
  try {
    return verify(problem, design).passes;
  } catch (error) {
    if (error instanceof DesignError) return false;
    throw error;
  }
}

const run = (search: Search): Search => {
  while (!search.step(1000)) {}
  return search;
};

/** Searches random studies and enumerates them: the same answer and counts that add up. Returns how many are safe. */
function compare(studies: fc.Arbitrary<StudyFile>, count: number, seed: number): number {
  const tried = new Set<string>();
  let safe = 0;
  let designs = 0;
  let armed = 0;
  let alone = 0;
  for (const file of fc.sample(studies, { numRuns: 40 * count, seed })) {
    if (tried.size >= count) break;
    const problem = problemOf(file);
    const size = new Grid(problem).total().designs;
    const key = JSON.stringify(file);
    if (size < LEAST || size > MOST || tried.has(key)) continue;
    tried.add(key);
    const passing = new Set<string>();
    const all = enumerate(problem, ({ key: one }) => passing.add(one));
    expect(all.designs).toBe(size);
    // enumeration judges a mast once for all that it may stand on: so does the judge of one design alone
    let place = 0;
    for (const design of everyDesign(problem))
      if (place++ % ALONE === 0) {
        alone++;
        expect(passes(problem, design), key).toBe(passing.has(designKey(design)));
      }
    designs += all.designs;
    const search = run(new Search(problem));
    expect(search.best?.objective ?? null, key).toBe(all.best?.objective ?? null);
    expect(search.best?.key ?? null, key).toBe(all.best?.key ?? null);
    if (all.best) safe++;
    if (all.best?.design.guys?.levels.some(({ arm }) => arm)) armed++;
    const told = outcome(problem, [search.report()], 0);
    expect(told.status).toBe(all.best ? "proven" : "none-safe");
    const counted = Object.values(told.proof.pruned).reduce((sum, n) => sum + n, 0);
    expect(counted + (all.best ? 1 : 0), key).toBeCloseTo(size, 6);
  }
  console.log(
    `${tried.size} distinct studies, ${safe} with a safe design, ${armed} of them on torque arms, ${designs} designs enumerated, ${alone} of them verified alone`,
  );
  expect(tried.size).toBe(count);
  return safe;
}

describe("the search against exhaustive enumeration", () => {
  it(`Search(study) finds what enumeration finds, cost for cost and design for design, on ${STUDIES} random studies`, () => {
    const safe = compare(smallStudy, STUDIES, 20_261_125);
    expect(safe).toBeGreaterThan(STUDIES / 5);
    expect(safe).toBeLessThan(STUDIES);
  }, 600_000);

  it("and where the top guys may meet torque arms", () => {
    const safe = compare(armedStudy, 40, 3);
    expect(safe).toBeGreaterThan(5);
    expect(safe).toBeLessThan(40);
  }, 300_000);
});
