import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import type { Aim } from "../../src/model/aim.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { choicesOf, pursue } from "../../src/search/aims.ts";
import type { Candidate } from "../../src/search/candidate.ts";
import { enumerate } from "../../src/search/exhaustive.ts";
import { Grid } from "../../src/search/grid.ts";
import { outcome } from "../../src/search/outcome.ts";
import { Search } from "../../src/search/search.ts";
import type { Outcome } from "../../src/search/types.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

const STUDIES = 24;

const ask = async (file: StudyFile): Promise<Outcome> => {
  const problem = problemOf(file);
  const search = new Search(problem);
  while (!search.step(1000)) {}
  return outcome(problem, [search.report()], 0);
};

async function pursued(file: StudyFile): Promise<Outcome> {
  const read = parseStudy(file, { catalog: defaultCatalog });
  if (!read.ok) throw new Error(read.errors.map((error) => error.message).join("; "));
  return (await pursue(read.study, file, choicesOf(read.study, read.catalog), ask)).outcome;
}

/** What an aim makes of a safe design, the less the better. */
const value: Partial<Record<Aim, (candidate: Candidate) => number>> = {
  cost: (c) => c.cents,
  concrete: (c) => c.concrete,
  margin: (c) => c.use,
  height: (c) => -c.design.height,
};
const pairs: readonly (readonly [Aim, Aim | undefined])[] = [
  ["margin", undefined],
  ["height", undefined],
  ["height", "concrete"],
  ["concrete", "margin"],
  ["margin", "cost"],
  ["cost", "concrete"],
];

describe("pursue(study): the most that a budget buys, and one aim after the other", () => {
  it(`finds what enumeration finds on ${STUDIES} random studies`, async () => {
    let tried = 0;
    let safe = 0;
    const seen = new Set<string>();
    for (const plain of fc.sample(smallStudy, { numRuns: 1500, seed: 7 })) {
      if (tried >= STUDIES) break;
      const key = JSON.stringify(plain);
      const size = new Grid(problemOf(plain)).total().designs;
      if (size < 20 || size > 200 || seen.has(key)) continue;
      seen.add(key);
      const every: Candidate[] = [];
      const cheapest = enumerate(problemOf({ ...plain, aim: "cost" }), (one) => every.push(one)).best;
      if (!cheapest && tried % 10 !== 0) continue;
      const budget = cheapest ? (1.15 * cheapest.cents) / 100 : 3000;
      const [aim, nextAim] = pairs[tried % pairs.length];
      tried++;
      const file: StudyFile = { ...plain, aim, nextAim, wishes: { ...plain.wishes, budget } };
      const all = every.filter(({ cents }) => cents <= 100 * budget + 1e-6);
      const found = await pursued(file);
      if (all.length === 0) {
        expect(found.status, key).toBe("none-safe");
        continue;
      }
      if (found.status !== "proven") throw new Error(`${found.status}: ${key}`);
      safe++;
      const { design, verdict } = found.best;
      const got: Candidate = {
        design,
        cents: Math.round(verdict.bill.total * 100),
        concrete: Math.round(verdict.concreteVolume * 1e4),
        objective: 0,
        use: 1 / (1 + verdict.smallestMargin),
        spare: 0,
        key: "",
      };
      let left = all;
      for (const one of [aim, nextAim ?? "cost"] as const) {
        const of = value[one] as (candidate: Candidate) => number;
        const least = Math.min(...left.map(of));
        // a margin that differs by less than a ten millionth is the same, and volumes are rounded part by part
        const same = one === "margin" ? 2e-7 : one === "concrete" ? 2 : 1e-6;
        expect(Math.abs(of(got) - least), `${one} in ${aim}, ${nextAim}: ${key}`).toBeLessThanOrEqual(same);
        left = left.filter((candidate) => of(candidate) <= least + same);
      }
    }
    console.log(`${tried} distinct studies, ${safe} with something safe within the budget`);
    expect(tried).toBe(STUDIES);
    expect(safe).toBeGreaterThan(STUDIES / 2);
  }, 300_000);

  it("least digging is the least that enumeration digs", async () => {
    let safe = 0;
    for (const plain of fc.sample(smallStudy, { numRuns: 400, seed: 12 })) {
      if (safe >= 6) break;
      const size = new Grid(problemOf(plain)).total().designs;
      if (size < 20 || size > 120) continue;
      const all: Candidate[] = [];
      const problem = problemOf({ ...plain, aim: "cost" });
      enumerate(problem, (candidate) => all.push(candidate));
      if (all.length < 3) continue;
      safe++;
      const found = await pursued({ ...plain, aim: "digging" });
      if (found.status !== "proven") throw new Error(found.status);
      expect(found.best.verdict.dugVolume).toBeCloseTo(
        Math.min(...all.map(({ design }) => verify(problem, design).dugVolume)),
        3,
      );
    }
    expect(safe).toBe(6);
  }, 120_000);

  it("the most of anything without a budget is refused by name", () => {
    const [plain] = fc.sample(smallStudy, { numRuns: 1, seed: 1 });
    const read = parseStudy({ ...plain, aim: "margin" }, { catalog: defaultCatalog });
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.errors[0].path).toBe("wishes.budget");
  });
});
