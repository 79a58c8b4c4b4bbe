import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { StudyFile } from "../../src/model/study.ts";
import { enumerate } from "../../src/search/exhaustive.ts";
import { Grid } from "../../src/search/grid.ts";
import { fewest, type Way, type Word } from "../../src/search/relax.ts";
import { Search } from "../../src/search/search.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

interface Give extends Way {
  readonly give: (file: StudyFile) => StudyFile;
}

const wishes = (change: Partial<StudyFile["wishes"]>) => (file: StudyFile) => ({
  ...file,
  wishes: { ...file.wishes, ...change },
});
const calmer = (share: number) => (file: StudyFile) => {
  const { wind } = file.site;
  return wind.basis === "uniform"
    ? { ...file, site: { ...file.site, wind: { ...wind, pressure: share * 400 } } }
    : file;
};
const ways: readonly Give[] = [
  { kind: "margin", give: wishes({ margin: 0 }) },
  { kind: "cap", give: wishes({ concreteCap: undefined }) },
  { kind: "wind", give: calmer(1) },
  { kind: "wind", give: calmer(0.4) },
  { kind: "lot", give: (file) => ({ ...file, lot: { ...file.lot, setback: 0 } }) },
];

const STUDIES = 15;

describe("fewest(ways): the smallest sets of wishes and givens to give in to", () => {
  it(`finds the sets that enumeration of every set finds, on ${STUDIES} studies where nothing is safe`, () => {
    const sizes = new Map<number, number>();
    const seen = new Set<string>();
    for (const plain of fc.sample(smallStudy, { numRuns: 4000, seed: 41 })) {
      if (seen.size >= STUDIES) break;
      const file: StudyFile = {
        ...plain,
        site: { ...plain.site, ice: undefined, wind: { basis: "uniform", pressure: "40 psf" } },
        wishes: { ...plain.wishes, margin: 0.3, concreteCap: "0.4 yd3" },
      };
      const size = new Grid(problemOf(file)).total().designs;
      if (size < 4 || size > 60 || seen.has(JSON.stringify(file))) continue;
      if (enumerate(problemOf(file)).best) continue;
      seen.add(JSON.stringify(file));
      // as the page does: ask what is open until nothing is
      const known = new Map<string, Word>();
      const name = (set: readonly Give[]) => set.map((way) => ways.indexOf(way)).join(" ");
      const taken = (set: readonly Give[]) => problemOf(set.reduce((study, { give }) => give(study), file));
      const asked = () => fewest(ways, 3, (set) => known.get(name(set)));
      for (let next = asked(); next.open.length > 0; next = asked()) {
        const search = new Search(taken(next.open[0]));
        while (!search.step(1000)) {}
        known.set(name(next.open[0]), search.best ? "safe" : "none-safe");
      }
      // all subsets of at most three, no two of a kind, every design verified
      const safe: Give[][] = [];
      for (let bits = 1; bits < 1 << ways.length; bits++) {
        const set = ways.filter((_, i) => bits & (1 << i));
        const kinds = new Set(set.map(({ kind }) => kind));
        if (set.length <= 3 && kinds.size === set.length && enumerate(taken(set)).best) safe.push(set);
      }
      const least = Math.min(...safe.map((set) => set.length));
      const { enough, size: together, silent } = asked();
      expect(silent).toBe(0);
      expect(enough.map(name).sort()).toEqual(
        safe
          .filter((set) => set.length === least)
          .map(name)
          .sort(),
      );
      if (safe.length > 0) expect(together).toBe(least);
      sizes.set(safe.length > 0 ? least : 0, (sizes.get(safe.length > 0 ? least : 0) ?? 0) + 1);
    }
    console.log(`studies by how many must give way: ${JSON.stringify([...sizes].sort())}`);
    expect(seen.size).toBe(STUDIES);
    expect(sizes.size).toBeGreaterThan(1);
  }, 240_000);

  it("goes on to larger sets past those without a word, and counts them", () => {
    const said = fewest(ways, 2, (set) => (set.length === 1 ? "no word" : "safe"));
    expect([said.size, said.silent, said.open.length]).toEqual([2, 5, 0]);
    // ten pairs, less the two steps of wind together
    expect(said.enough.length).toBe(9);
  });

  it("asks one at a time before it asks two", () => {
    const said = fewest(ways, 3, () => undefined);
    expect([said.size, said.open.length]).toEqual([1, ways.length]);
  });
});
