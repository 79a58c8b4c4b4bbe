import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import type { Candidate } from "../../src/search/candidate.ts";
import { enumerate } from "../../src/search/exhaustive.ts";
import { FrontSearch } from "../../src/search/front.ts";
import { MARGIN_COUNTED } from "../../src/search/front-points.ts";
import { Grid } from "../../src/search/grid.ts";
import { Search } from "../../src/search/search.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

const STUDIES = 50;
const LEAST_USE = 1 / (1 + MARGIN_COUNTED);

/** Triples that no other beats, by comparing all with all: nothing shared with the search. */
function bruteFront(all: readonly Candidate[]): string[] {
  const triples = all.map(
    (c) => [c.cents, c.concrete, Math.round(Math.max(c.use, LEAST_USE) * 1e8)] as const,
  );
  const kept = triples.filter(
    (a) =>
      !triples.some(
        (b) => b[0] <= a[0] && b[1] <= a[1] && b[2] <= a[2] && (b[0] < a[0] || b[1] < a[1] || b[2] < a[2]),
      ),
  );
  return [...new Set(kept.map((t) => t.join(" ")))].sort();
}

describe("the trade-off front", () => {
  it(`FrontSearch(study) holds exactly the designs that none beats, on ${STUDIES} random studies`, () => {
    let tried = 0;
    let points = 0;
    let begun = 0;
    const seen = new Set<string>();
    for (const file of fc.sample(smallStudy, { numRuns: 4000, seed: 99 })) {
      if (tried >= STUDIES) break;
      const free = problemOf(file);
      const size = new Grid(free).total().designs;
      const key = JSON.stringify(file);
      if (size < 40 || size > 300 || seen.has(key)) continue;
      seen.add(key);
      let all: Candidate[] = [];
      enumerate(free, (candidate) => all.push(candidate));
      if (all.length < 2) continue;
      tried++;
      let problem = free;
      // every fourth may dig no more than the median design does
      if (tried % 4 === 0) {
        const dug = all.map(({ design }) => verify(free, design).dugVolume);
        const digCap = [...dug].sort((a, b) => a - b)[Math.floor(dug.length / 2)];
        problem = problemOf({ ...file, wishes: { ...file.wishes, digCap } });
        all = all.filter((_, i) => dug[i] <= digCap + 1e-9);
      }
      const search = new FrontSearch(problem);
      // some begin with the answer that is known already, of this study or of one that is dearer
      if (tried % 3 === 0) {
        const least = new Search(problem);
        while (!least.step(1000)) {}
        if (least.best) {
          search.startFrom({ ...least.best, cents: least.best.cents + 1 });
          expect(search.points, key).toEqual([]);
          search.startFrom(least.best);
          expect(search.points, key).toHaveLength(1);
          begun++;
        }
      }
      while (!search.step(1000)) {}
      const found = search.points.map((p) => [p.cents, p.concrete, Math.round(p.use * 1e8)].join(" ")).sort();
      expect(found, key).toEqual(bruteFront(all));
      points += found.length;
    }
    console.log(`${tried} distinct studies with something to trade, ${points} points`);
    expect(tried).toBe(STUDIES);
    expect(begun).toBeGreaterThan(STUDIES / 4);
    expect(points).toBeGreaterThan(1.8 * STUDIES);
  }, 300_000);
});
