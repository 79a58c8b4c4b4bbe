import { describe, expect, it } from "vitest";
import { reliability, uncertainDesign } from "../../src/checks/reliability.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import type { Design } from "../../src/model/design.ts";
import { parseStudy } from "../../src/model/parse.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { compile } from "../../src/problem/compile.ts";
import { Search } from "../../src/search/search.ts";

const demo = startingStudies[0].file;

const uncertain: StudyFile["uncertain"] = {
  windSpeed: { mean: "66 mph", deviation: "10 mph" },
  soilStrength: { mean: 1.2, deviation: 0.3 },
  tension: { mean: 1, deviation: 0.1 },
  wallLoss: { mean: "0.15 mm", deviation: "0.08 mm" },
  years: 50,
};

const read = (file: StudyFile) => {
  const parsed = parseStudy(file, { catalog: defaultCatalog });
  if (!parsed.ok) throw new Error(parsed.errors[0].message);
  return parsed;
};

const answerOf = (file: StudyFile): Design => {
  const { study, catalog } = read(file);
  const search = new Search(compile(study, catalog));
  while (!search.step(1000)) {}
  if (!search.best) throw new Error("the study has a safe design");
  return search.best.design;
};

/** A long period, and two normals a pair of draws (Box and Muller 1958). */
function normals(seed: number): () => number {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** Shares of draws in which each check, and any of them, is used beyond 1. */
function drawn(file: StudyFile, design: Design, draws: number) {
  const { study, catalog } = read(file);
  const state = uncertainDesign(study, catalog, design);
  const normal = normals(20_261_127);
  const missed = new Map<string, number>();
  let any = 0;
  for (let i = 0; i < draws; i++) {
    let one = false;
    for (const [id, use] of state.uses(state.names.map(normal)))
      if (use > 1) {
        missed.set(id, (missed.get(id) ?? 0) + 1);
        one = true;
      }
    if (one) any++;
  }
  return { any: any / draws, share: (id: string) => (missed.get(id) ?? 0) / draws };
}

const cases: { name: string; file: StudyFile; draws: number }[] = [
  { name: "the guyed answer of the demo", file: { ...demo, uncertain }, draws: 3000 },
  {
    name: "its free-standing answer",
    file: {
      ...demo,
      wishes: { ...demo.wishes, height: "40 ft" },
      parts: { ...demo.parts, supports: ["freestanding"] },
      uncertain: {
        windSpeed: { mean: "72 mph", deviation: "11 mph" },
        soilStrength: { mean: 1.1, deviation: 0.25 },
        wallLoss: { mean: "0.15 mm", deviation: "0.08 mm" },
        years: 50,
      },
    },
    draws: 6000,
  },
];

describe("the probability that the smallest margin is below zero", () => {
  it.each(cases)(
    "reliability($name) agrees with plain Monte Carlo on the same limit states",
    ({ file, draws }) => {
      const design = answerOf(file);
      const { study, catalog } = read(file);
      const found = reliability(study, catalog, design);
      const tried = drawn(file, design, draws);
      const error = (p: number) => Math.sqrt((p * (1 - p)) / draws);
      const rows = found.checks.map(({ id, outcome, probability }) => ({
        id,
        outcome,
        probability,
        share: tried.share(id),
      }));
      console.log(
        `${draws} draws: ${tried.any.toFixed(4)}, first order ${found.smallestMargin.least.toFixed(4)} to ${found.smallestMargin.most.toFixed(4)}, ${found.asked} verdicts; ${rows
          .filter((row) => row.share > 0)
          .map((row) => `${row.id} ${row.share.toFixed(4)} for ${row.probability.toFixed(4)}`)
          .join(", ")}`,
      );
      // enough happens to be compared
      expect(tried.any).toBeGreaterThan(0.02);
      // three standard errors of the draws, and a fifth for what bends away from its tangent plane
      for (const { id, probability, share, outcome } of rows) {
        expect(outcome, id).not.toBe("not-found");
        if (outcome === "falls-first") continue;
        expect(Math.abs(share - probability), id).toBeLessThanOrEqual(
          3 * error(probability) + 0.2 * probability + 1 / draws,
        );
      }
      const { least, most } = found.smallestMargin;
      expect(tried.any).toBeGreaterThan(0.8 * least - 3 * error(least));
      expect(tried.any).toBeLessThan(1.2 * most + 3 * error(most));
    },
    200_000,
  );

  it("reliability(design) gives each variable its importance, and more years of wind less safety", () => {
    const design = answerOf(demo);
    const { study, catalog } = read({ ...demo, uncertain });
    const many = reliability(study, catalog, design);
    const one = reliability({ ...study, uncertain: { ...study.uncertain!, years: 1 } }, catalog, design);
    expect(one.smallestMargin.most).toBeLessThan(many.smallestMargin.least);
    for (const { importance, outcome, id } of many.checks)
      if (outcome === "found")
        expect(
          Object.values(importance).reduce((sum, share) => sum + share, 0),
          id,
        ).toBeCloseTo(1, 6);
    const of = (id: string) => many.checks.find((check) => check.id === id)!;
    // legs feel no soil, and what holds an anchor back feels little but wind and soil
    expect(of("leg-compression").importance.soilStrength).toBeCloseTo(0, 6);
    expect(of("leg-compression").importance.windSpeed).toBeGreaterThan(0.9);
    expect(of("anchor-lateral").importance.soilStrength).toBeGreaterThan(0.3);
    // at its design point each check is used exactly as much as it may be
    const state = uncertainDesign(study, catalog, design);
    for (const { id, outcome, u } of many.checks)
      if (outcome === "found") expect(state.uses(u).get(id), id).toBeCloseTo(1, 5);
  }, 100_000);

  it("reliability(design) of a study that states nothing uncertain is refused", () => {
    const { study, catalog } = read(demo);
    expect(() => reliability(study, catalog, answerOf(demo))).toThrow(/uncertain: found nothing/);
    const bad = parseStudy(
      { ...demo, uncertain: { windSpeed: { mean: "9 ft", deviation: "1 mph" } } },
      { catalog: defaultCatalog },
    );
    expect(bad.ok).toBe(false);
  });
});
