import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { Grid } from "../../src/search/grid.ts";
import { Recall } from "../../src/search/recall.ts";
import { Search } from "../../src/search/search.ts";
import { SAFE } from "../../src/search/together.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

const demo = startingStudies[0].file;
const { prices } = defaultCatalog;

/** Edits that leave the masts as they are: what parts cost, what the ground is, what is capped and sought. */
const edit = fc.oneof(
  fc.record({
    concrete: fc.integer({ min: 40, max: 900 }).map((price) => `$${price}/yd3`),
    baseHardware: fc.integer({ min: 5, max: 900 }).map((price) => `$${price}`),
  }),
  fc.constantFrom("ibc-2", "ibc-3", "ibc-4", "ibc-5").map((soil) => ({ soil })),
  fc.constantFrom("0 ft", "1 ft", "3 ft", "5 ft").map((frostDepth) => ({ frostDepth })),
  fc.constantFrom("cost" as const, "concrete" as const, "digging" as const).map((aim) => ({ aim })),
  fc.integer({ min: 2000, max: 12000 }).map((dollars) => ({ budget: `$${dollars}` })),
  fc.constantFrom("0.3 m3", "1 m3", "3 m3").map((concreteCap) => ({ concreteCap })),
  fc.constant({ concreteAsSold: true }),
  fc.constant({ wholeReels: true }),
);
type Edit = {
  [K in "concrete" | "baseHardware" | "soil" | "frostDepth" | "budget" | "concreteCap"]?: string;
} & { aim?: "cost" | "concrete" | "digging"; concreteAsSold?: boolean; wholeReels?: boolean };

function edited(file: StudyFile, change: Edit): StudyFile {
  const { concrete, baseHardware, soil, frostDepth, aim, budget, concreteCap, concreteAsSold, wholeReels } =
    change;
  return {
    ...file,
    ...(aim ? { aim } : {}),
    site: { ...file.site, ...(soil ? { soil } : {}), ...(frostDepth ? { frostDepth } : {}) },
    wishes: { ...file.wishes, ...(budget ? { budget } : {}), ...(concreteCap ? { concreteCap } : {}) },
    parts: {
      ...file.parts,
      ...(concreteAsSold ? { concreteAsSold } : {}),
      ...(wholeReels ? { wholeReels } : {}),
    },
    catalog: {
      ...file.catalog,
      prices: {
        ...(file.catalog?.prices ?? prices),
        ...(concrete ? { concrete } : {}),
        ...(baseHardware ? { baseHardware } : {}),
      },
    },
  } as StudyFile;
}

const run = (search: Search): Search => {
  while (!search.step(1000)) {}
  return search;
};
const answerOf = ({ best }: Search) => best && { key: best.key, cents: best.cents, use: best.use.toFixed(9) };
const decided = (search: Search) => Object.values(search.report().pruned).reduce((sum, n) => sum + n, 0);

describe("Search(study, share, recall, before) goes on from a search of the same masts", () => {
  it("answers as a fresh search does, edit after edit, and counts every design of the grid", () => {
    let compared = 0;
    let moved = 0;
    let safe = 0;
    const changes = fc.array(edit, { minLength: 3, maxLength: 3 });
    for (const [file, edits] of fc.sample(fc.tuple(smallStudy, changes), { numRuns: 150, seed: 31 })) {
      const recall = new Recall();
      let now = file;
      let before = run(new Search(problemOf(now), undefined, recall));
      for (const change of edits) {
        now = edited(now, change as Edit);
        const problem = problemOf(now);
        const next = run(new Search(problem, undefined, recall, before));
        const fresh = run(new Search(problem));
        expect(answerOf(next), JSON.stringify(now)).toEqual(answerOf(fresh));
        expect(decided(next)).toBe(new Grid(problem).total().designs);
        compared++;
        if (fresh.best) safe++;
        if (fresh.best?.key !== before.best?.key) moved++;
        before = next;
      }
    }
    console.log(`${compared} edits, ${safe} with an answer, ${moved} with another one than before`);
    expect(safe).toBeGreaterThan(40);
    expect(moved).toBeGreaterThan(15);
  });

  it("and from one that was stopped at any step, or that another went on from already", () => {
    const few = {
      ...demo,
      parts: {
        ...demo.parts,
        sections: ["3leg-9-used", "3leg-9", "3leg-13"],
        levelCounts: [1, 2],
        levelHeights: { from: "30 ft", to: "70 ft", step: "10 ft" },
        strands: ["hs-3-16", "ehs-3-16", "ehs-1-4"],
        radius: ["30 ft", "36 ft", "42 ft"],
      },
    };
    const recall = new Recall();
    const steps = fc.sample(fc.tuple(fc.integer({ min: 0, max: 25 }), edit), { numRuns: 15, seed: 8 });
    let before: Search | undefined;
    let now: StudyFile = few;
    for (const [i, [milliseconds, change]] of steps.entries()) {
      // one edit at a time: caps of all of them together would leave nothing
      now = edited(i % 4 === 0 ? few : now, change as Edit);
      const problem = problemOf(now);
      const stopped: Search = new Search(problem, undefined, recall, before);
      stopped.step(milliseconds);
      before = stopped;
      if (i % 3 === 0) continue;
      const fresh = answerOf(run(new Search(problem)));
      before = run(new Search(problem, undefined, recall, stopped));
      expect(answerOf(before), JSON.stringify(now)).toEqual(fresh);
      // what was handed on is another's
      expect(answerOf(run(new Search(problem, undefined, recall, stopped)))).toEqual(fresh);
    }
  });

  it("without walking again what the masts themselves forbid", () => {
    const recall = new Recall();
    const before = run(new Search(problemOf(demo), undefined, recall));
    const dearer = problemOf(edited(demo, { concrete: "$310/yd3" }));
    const fresh = run(new Search(dearer));
    const next = new Search(dearer, undefined, recall, before);
    const taken = next.bounded;
    run(next);
    expect(answerOf(next)).toEqual(answerOf(fresh));
    expect(taken).toBeGreaterThan(0);
    expect(next.bounded).toBeLessThan(fresh.bounded);
    // back at the first price nothing is left to walk or to solve, and the masts looked at are no fewer
    const { solved } = recall;
    const back = new Search(problemOf(demo), undefined, recall, next);
    run(back);
    expect(answerOf(back)).toEqual(answerOf(before));
    expect(recall.solved).toBe(solved);
    expect(back.report().pruned[SAFE]).toBe(before.report().pruned[SAFE]);
    expect(back.analysed).toBeGreaterThanOrEqual(before.analysed);
  });

  it.each<[string, StudyFile]>([
    [
      "more wind",
      { ...demo, site: { ...demo.site, wind: { ...demo.site.wind, speed: "117 mph" } as never } },
    ],
    ["a margin", { ...demo, wishes: { ...demo.wishes, margin: 0.05 } }],
    ["another radius", { ...demo, parts: { ...demo.parts, radius: ["34 ft"] } }],
    ["a wider setback", { ...demo, lot: { ...demo.lot, setback: "14 ft" } }],
    ["fewer footings", { ...demo, parts: { ...demo.parts, footings: ["block"] } }],
  ])("but walks anew with %s", (_, file) => {
    const recall = new Recall();
    const before = run(new Search(problemOf(demo), undefined, recall));
    const roots = new Search(problemOf(file)).bounded;
    const next = new Search(problemOf(file), undefined, recall, before);
    expect(next.bounded).toBe(roots);
    expect(answerOf(run(next))).toEqual(answerOf(run(new Search(problemOf(file)))));
  });
});
