import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import { levelFloor } from "../../src/cost/bill.ts";
import { reelCents } from "../../src/cost/reels.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { enumerate } from "../../src/search/exhaustive.ts";
import { FrontSearch } from "../../src/search/front.ts";
import { Grid } from "../../src/search/grid.ts";
import { Search } from "../../src/search/search.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

const STUDIES = 48;

/** Reels of odd lengths and prices, some of them few, some too short for the longest guys. */
const reel = fc.record({
  length: fc.constantFrom("40 ft", "75 ft", "110 ft", "250 ft", "500 ft"),
  price: fc.integer({ min: 10, max: 90 }).map((price) => `$${price}`),
  have: fc.constantFrom(undefined, undefined, undefined, 1, 4),
});

const reeled: fc.Arbitrary<StudyFile> = fc
  .record({
    study: smallStudy,
    reels: fc.array(fc.option(fc.array(reel, { minLength: 1, maxLength: 3 }), { nil: undefined, freq: 4 }), {
      minLength: 5,
      maxLength: 5,
    }),
  })
  .map(({ study, reels }) => ({
    ...study,
    parts: { ...study.parts, supports: ["guyed"], wholeReels: true },
    catalog: {
      ...study.catalog,
      strand: defaultCatalog.strand
        .filter(({ id }) => (study.parts?.strands ?? []).includes(id))
        .map((row, i) => ({ ...row, reels: reels[i] })),
    },
  }));

const found = (problem: ReturnType<typeof problemOf>): Search => {
  const search = new Search(problem);
  while (!search.step(1000)) {}
  return search;
};

describe("strand paid by whole reels", () => {
  it(`Search(study) and enumeration agree on ${STUDIES} random studies, to the cent`, () => {
    const seen = new Set<string>();
    let moved = 0;
    let refused = 0;
    let safe = 0;
    for (const file of fc.sample(reeled, { numRuns: 4000, seed: 12 })) {
      if (seen.size >= STUDIES) break;
      const problem = problemOf(file);
      const size = new Grid(problem).total().designs;
      const name = JSON.stringify(file);
      if (size < 20 || size > 100 || seen.has(name)) continue;
      const byLength = found(problemOf({ ...file, parts: { ...file.parts, wholeReels: false } })).best;
      if (!byLength) continue;
      seen.add(name);
      const search = found(problem);
      const { best } = enumerate(problem);
      expect(search.best?.objective ?? null, name).toBe(best?.objective ?? null);
      expect(search.best?.key ?? null, name).toBe(best?.key ?? null);
      const counted = Object.values(search.tree.pruned).reduce((sum, n) => sum + n, 0);
      expect(counted, name).toBeCloseTo(size, 6);
      if ((search.tree.pruned["no reels to cut the guys from"] ?? 0) > 0) refused++;
      if (!best) {
        const { checks } = verify(problem, byLength.design);
        expect(
          checks.some(({ limitState, passes, note }) => limitState === "reels" && !passes && note),
          name,
        ).toBe(true);
        continue;
      }
      safe++;
      if (best.key !== byLength.key) moved++;
      const front = new FrontSearch(problem);
      while (!front.step(1000)) {}
      if (problem.study.aim === "cost") expect(front.points[0].cents, name).toBe(best.cents);
    }
    console.log(
      `${seen.size} distinct studies, ${safe} with a safe design, ${moved} answers other than by length, ${refused} with guys that no reel yields`,
    );
    expect(seen.size).toBe(STUDIES);
    expect(moved).toBeGreaterThan(4);
    expect(refused).toBeGreaterThan(2);
  }, 400_000);

  it("reelCents(study, star, levels) is no less than the floors of the levels", () => {
    let tried = 0;
    let tight = 0;
    for (const file of fc.sample(reeled, { numRuns: 400, seed: 3 })) {
      const problem = problemOf(file);
      const star = [...problem.stars.values()][0]?.[0];
      if (!star) continue;
      const bare = problemOf({
        ...file,
        catalog: {
          ...file.catalog,
          strand: problem.strands.map((row) => ({
            ...row,
            reels: row.reels?.map((one) => ({ ...one, price: 0 })),
          })),
        },
      });
      const heights = problem.levelHeights.filter((z) => star.anchors.every((a) => z > a.elevation));
      const levels = heights.map((height, i) => ({
        height,
        strand: problem.strands[i % problem.strands.length],
      }));
      const cents = reelCents(problem, star, levels);
      if (cents === Number.POSITIVE_INFINITY || cents === 0) continue;
      tried++;
      const floor = levels.reduce(
        (sum, { height, strand }) =>
          sum +
          levelFloor(problem, height, star, strand) -
          levelFloor(bare, height, star, bare.strands.find(({ id }) => id === strand.id) ?? strand),
        0,
      );
      expect(cents).toBeGreaterThanOrEqual(floor);
      expect(floor).toBeGreaterThan(0);
      if (floor > 0.6 * cents) tight++;
    }
    console.log(`${tried} purchases, ${tight} of them with a floor above 60 %`);
    expect(tried).toBeGreaterThan(60);
    expect(tight).toBeGreaterThan(10);
  });
});
