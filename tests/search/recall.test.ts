import { describe, expect, it } from "vitest";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { Recall } from "../../src/search/recall.ts";
import { Search } from "../../src/search/search.ts";
import { problemOf } from "../support/small-study.ts";

const demo = startingStudies[0].file;

const answer = (file: StudyFile, recall?: Recall) => {
  const search = new Search(problemOf(file), undefined, recall);
  while (!search.step(1000)) {}
  return { key: search.best?.key, cents: search.best?.cents };
};

const edits: [string, StudyFile][] = [
  ["a dearer concrete", { ...demo, catalog: { prices: { ...defaultCatalog.prices, concrete: "$310/yd3" } } }],
  ["a better soil", { ...demo, site: { ...demo.site, soil: "ibc-3" } }],
  ["a wider setback", { ...demo, lot: { ...demo.lot, setback: "14 ft" } }],
  ["a wider margin", { ...demo, wishes: { ...demo.wishes, margin: 0.08 } }],
  ["a deeper frost", { ...demo, site: { ...demo.site, frostDepth: "3 ft" } }],
];

describe("what is remembered from search to search", () => {
  it.each(edits)(
    "Search(study with %s, recall) answers as a fresh search does, and solves few masts again",
    (_, edited) => {
      const recall = new Recall();
      answer(demo, recall);
      const before = recall.solved;
      const fresh = new Recall();
      expect(answer(edited, recall)).toEqual(answer(edited, fresh));
      expect(recall.solved - before).toBeLessThan(0.9 * fresh.solved);
      expect(recall.remembered).toBeGreaterThan(0);
    },
  );

  it("Search(study, recall of a wider margin) takes a mast given up then for what it may be now", () => {
    const recall = new Recall();
    answer({ ...demo, wishes: { ...demo.wishes, margin: 0.25 } }, recall);
    expect(answer(demo, recall)).toEqual(answer(demo));
  });

  it("Search(study of a day before, recall) solves nothing that was solved before the wind was turned up and back", () => {
    const recall = new Recall();
    const first = answer(demo, recall);
    const wind = { ...demo.site.wind, speed: "100 mph" } as StudyFile["site"]["wind"];
    answer({ ...demo, site: { ...demo.site, wind } }, recall);
    const before = recall.solved;
    expect(answer(demo, recall)).toEqual(first);
    expect(recall.solved).toBe(before);
  });

  it("Recall.analysis(key, allowed) solves again only what it gave up below that", () => {
    const recall = new Recall();
    const givenUp = { status: "failed", worst: 0.9, limitState: "leg-compression" } as const;
    let solved = 0;
    const ask = (allowed: number) =>
      recall.analysis("mast", allowed, () => {
        solved++;
        return givenUp;
      });
    expect(ask(0.8)).toBe(givenUp);
    expect([ask(0.7).status, solved]).toEqual(["failed", 1]);
    ask(0.95);
    expect(solved).toBe(2);
  });

  it("Search(study with more wind, recall) remembers nothing of calmer days", () => {
    const recall = new Recall();
    answer(demo, recall);
    const remembered = recall.remembered;
    const wind = { ...demo.site.wind, speed: "100 mph" } as StudyFile["site"]["wind"];
    const edited = { ...demo, site: { ...demo.site, wind } };
    expect(answer(edited, recall)).toEqual(answer(edited));
    // inside one search a mast may be asked for twice, never from another
    const alone = new Recall();
    answer(edited, alone);
    expect(recall.remembered - remembered).toBe(alone.remembered);
  });
});
