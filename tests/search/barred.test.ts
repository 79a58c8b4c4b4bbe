import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { onSide } from "../../src/problem/barred.ts";
import { anchorPoints } from "../../src/problem/star.ts";
import { enumerate } from "../../src/search/exhaustive.ts";
import { whyNotCheaper } from "../../src/search/explain.ts";
import { FrontSearch } from "../../src/search/front.ts";
import { MARGIN_COUNTED } from "../../src/search/front-points.ts";
import { Grid } from "../../src/search/grid.ts";
import { Search } from "../../src/search/search.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

type Entry = NonNullable<NonNullable<StudyFile["parts"]>["barred"]>[number];
const STUDIES = 24;

const side = fc.record({
  name: fc.constant("a side"),
  anchorKinds: fc.option(fc.subarray(["deadman", "screw", "rock-rod", "post"] as const, { minLength: 1 }), {
    nil: undefined,
  }),
  side: fc.record({
    from: fc.integer({ min: 0, max: 360 }),
    to: fc.constantFrom(20, 75, 110, 190, 300, 360),
  }),
});

/** Combinations of what the study may choose from. */
const combination = ({ parts }: StudyFile): fc.Arbitrary<Entry> => {
  const some = (ids: unknown) => {
    const all = ids as string[];
    const list = fc.subarray(all, { minLength: 1, maxLength: Math.min(2, all.length) });
    return fc.option(list, { nil: undefined });
  };
  return fc
    .record({
      name: fc.constant("a combination"),
      anchors: some(parts?.anchors),
      footings: some(parts?.footings),
      sections: some(parts?.sections),
      strands: some(parts?.strands),
      footingKinds: fc.constantFrom<("block" | "pad")[] | undefined>(undefined, undefined, ["block"]),
    })
    .filter((entry) => Object.values(entry).filter((value) => value !== undefined).length > 2);
};

const barredStudy = smallStudy.chain((study) =>
  fc
    .array(fc.oneof<fc.Arbitrary<Entry>[]>(side, combination(study)), { minLength: 1, maxLength: 3 })
    .map((barred): StudyFile => ({ ...study, parts: { ...study.parts, barred } })),
);

describe("what a study bars", () => {
  it(`Search(study) and enumeration agree on ${STUDIES} random studies that bar sides and combinations`, () => {
    const seen = new Set<string>();
    let changed = 0;
    let explained = 0;
    for (const file of fc.sample(barredStudy, { numRuns: 6000, seed: 41 })) {
      if (seen.size >= STUDIES) break;
      const name = JSON.stringify(file);
      const free = problemOf({ ...file, parts: { ...file.parts, barred: undefined } });
      const size = new Grid(free).total().designs;
      if (size < 20 || size > 100 || seen.has(name)) continue;
      const before = enumerate(free).best;
      if (!before) continue;
      seen.add(name);
      const problem = problemOf(file);
      const search = new Search(problem);
      while (!search.step(1000)) {}
      const { best, designs } = enumerate(problem);
      expect(designs).toBe(size);
      expect(search.best?.objective ?? null, name).toBe(best?.objective ?? null);
      expect(search.best?.key ?? null, name).toBe(best?.key ?? null);
      expect(
        Object.values(search.tree.pruned).reduce((sum, n) => sum + n, 0),
        name,
      ).toBeCloseTo(size, 6);
      if (best?.key === before.key) continue;
      changed++;
      // the judge names the entry that the former answer breaks
      const verdict = verify(problem, before.design);
      const failed = verdict.checks.filter(({ limitState, passes }) => limitState === "barred" && !passes);
      expect(failed.length, name).toBeGreaterThan(0);
      expect(failed[0].note, name).toBeTruthy();
      if (!best) continue;
      const { design } = best;
      for (const { failsIn } of whyNotCheaper(problem, { design, verdict: verify(problem, design) }))
        if (failsIn === "Barred by the study") explained++;
    }
    console.log(
      `${seen.size} distinct studies, ${changed} answers changed, ${explained} cheaper neighbours barred`,
    );
    expect(seen.size).toBe(STUDIES);
    expect(changed).toBeGreaterThan(6);
  }, 400_000);

  it("FrontSearch(study) holds no barred design and every other that none beats", () => {
    const seen = new Set<string>();
    for (const file of fc.sample(barredStudy, { numRuns: 3000, seed: 7 })) {
      if (seen.size >= 6) break;
      const problem = problemOf(file);
      const size = new Grid(problem).total().designs;
      const name = JSON.stringify(file);
      if (size < 20 || size > 80 || seen.has(name)) continue;
      const safe: { cents: number; concrete: number; use: number }[] = [];
      enumerate(problem, ({ cents, concrete, use }) =>
        safe.push({ cents, concrete, use: Math.max(use, 1 / (1 + MARGIN_COUNTED)) }),
      );
      if (safe.length === 0) continue;
      seen.add(name);
      const front = new FrontSearch(problem);
      while (!front.step(1000)) {}
      for (const one of safe)
        expect(
          front.points.some(
            (p) => p.cents <= one.cents && p.concrete <= one.concrete && p.use <= one.use + 1e-9,
          ),
          name,
        ).toBe(true);
      for (const { design } of front.points) expect(verify(problem, design).passes, name).toBe(true);
    }
    expect(seen.size).toBe(6);
  }, 200_000);

  it("no concrete anchors toward the north turns the star until none stands there", () => {
    let met = 0;
    let turned = 0;
    for (const drawn of fc.sample(smallStudy, { numRuns: 1500, seed: 5 })) {
      if (met >= 8) break;
      const anchors = ["deadman"];
      const parts = { ...drawn.parts, supports: ["guyed" as const], anchors, rotation: [0, 30, 60, 90] };
      const plain = { ...drawn, parts };
      if (new Grid(problemOf(plain)).total().designs > 2000) continue;
      const found = (barred: Entry[] | undefined) => {
        const problem = problemOf({ ...plain, parts: { ...parts, barred } });
        const search = new Search(problem);
        while (!search.step(1000)) {}
        return { problem, best: search.best };
      };
      const free = found(undefined).best;
      const { problem, best } = found([
        { name: "no concrete to the north", anchorKinds: ["deadman", "post"], side: { from: 330, to: 30 } },
      ]);
      const guys = best?.design.guys;
      if (!guys) continue;
      met++;
      if (guys.rotation !== free?.design.guys?.rotation) turned++;
      const [east, north] = problem.study.lot.mast;
      for (const [e, n] of anchorPoints([east, north], guys))
        expect(n - north).toBeLessThan(Math.abs(e - east) * Math.sqrt(3));
    }
    console.log(`${met} answers, ${turned} of them turned away`);
    expect(met).toBe(8);
    expect(turned).toBeGreaterThan(2);
  }, 200_000);

  it("onSide({ from, to }, bearing) goes clockwise, both ends in, through north too", () => {
    for (const [from, to, bearing, is] of [
      [315, 45, 0, true],
      [315, 45, 315, true],
      [315, 45, 405, true],
      [315, 45, 46, false],
      [45, 315, 0, false],
      [45, 315, 180, true],
      [0, 360, 123, true],
      [90, 90, 90, true],
      [90, 90, 450.1, false],
    ] as const)
      expect(onSide({ from, to }, bearing), `${from} to ${to}: ${bearing}`).toBe(is);
  });

  it("parseStudy(study) refuses an entry by its path: a name alone, a side with a strand, an unknown row", () => {
    const [plain] = fc.sample(smallStudy, { numRuns: 1, seed: 1 });
    const errors = (entry: object) => {
      const barred = [entry as Entry];
      const read = parseStudy({ ...plain, parts: { ...plain.parts, barred } }, { catalog: defaultCatalog });
      return read.ok ? [] : read.errors;
    };
    expect(errors({ name: "x" })[0]).toMatchObject({ path: "parts.barred[0]", found: "a name alone" });
    expect(errors({ name: "x", side: { from: 0, to: 9 }, strands: ["ehs-1-4"] })[0]).toMatchObject({
      path: "parts.barred[0].strands",
      expected: "anchors alone beside a side",
    });
    expect(errors({ name: "x", strands: ["ehs-1-5"] })[0]).toMatchObject({
      path: "parts.barred[0].strands[0]",
      found: '"ehs-1-5"',
    });
    expect(errors({ name: "x", anchorKinds: ["anvil"] })[0].path).toBe("parts.barred[0].anchorKinds[0]");
    expect(errors({ name: "x", side: { from: 0, to: 400 } })[0].path).toBe("parts.barred[0].side.to");
  });
});
