import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import { AS_STATED, type Place } from "../../src/model/place.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { compile } from "../../src/problem/compile.ts";
import { catalogAt, placesOf, siteAt } from "../../src/problem/place.ts";
import { everyDesign } from "../../src/search/exhaustive.ts";
import { designOf } from "../support/random-design.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

const refusals = (file: unknown): string[] => {
  const read = parseStudy(file, { catalog: defaultCatalog });
  return read.ok ? [] : read.errors.map((error) => `${error.path}: ${error.message}`);
};

const demo = startingStudies[0].file;

describe("ranges of a study", () => {
  it("parseStudy(file) reads ranges with their units and refuses those that what is stated lies outside of", () => {
    const good: StudyFile = {
      ...demo,
      ranges: {
        soilStrength: { from: 0.75, to: 1.2 },
        windSpeed: { from: "80 mph", to: "120 mph" },
        wallLoss: { to: "0.5 mm" },
        tension: { from: 0.85, to: 1.15 },
        between: 1,
      },
    };
    expect(refusals(good)).toEqual([]);
    const bad = (ranges: unknown) => refusals({ ...demo, ranges }).join("\n");
    expect(bad({ windSpeed: { from: "20 mph", to: "30 mph" } })).toMatch(/windSpeed.*holds the stated/);
    expect(bad({ windSpeed: { from: "20 ft", to: "30 mph" } })).toMatch(/ranges\.windSpeed\.from/);
    expect(bad({ tension: { from: 1.1, to: 1.2 } })).toMatch(/tension.*1 or less/);
    expect(bad({ soilStrength: { from: 0.9, to: 0.95 } })).toMatch(/soilStrength.*1 or more/);
    expect(bad({ wallLoss: { from: "2 mm", to: "1 mm" } })).toMatch(/wallLoss.*at or above/);
    const still = { ...demo.site, wind: { basis: "uniform", pressure: "20 psf" } };
    expect(
      refusals({ ...demo, site: still, ranges: { windSpeed: { from: "1 mph", to: "2 mph" } } }).join("\n"),
    ).toMatch(/a wind basis that states a speed/);
  });

  it("placesOf(study) has every corner of the box and what is stated, each once, the weakest of all first", () => {
    const read = parseStudy(
      {
        ...demo,
        site: { ...demo.site, wind: { basis: "asce7-16", speed: "100 mph", exposure: "C" } },
        ranges: {
          soilStrength: { from: 0.5, to: 2 },
          windSpeed: { from: "80 mph", to: "110 mph" },
          wallLoss: { to: "1 mm" },
          tension: { from: 0.8, to: 1.2 },
        },
      },
      { catalog: defaultCatalog },
    );
    if (!read.ok) throw new Error(read.errors[0].message);
    const places = placesOf(read.study);
    const round = ({ windSpeed, wallLoss, tension }: Place) =>
      [windSpeed.toFixed(6), (1000 * wallLoss).toFixed(3), tension.toFixed(6)].join(" ");
    expect(round(places[0])).toBe("1.100000 1.000 1.000000");
    expect(new Set(places.map(round)).size).toBe(3 * 2 * 3);
    expect(places.length).toBe(18);
    for (const speed of ["0.800000", "1.000000", "1.100000"])
      for (const loss of ["0.000", "1.000"])
        for (const drawn of ["0.800000", "1.000000", "1.200000"])
          expect(places.map(round)).toContain(`${speed} ${loss} ${drawn}`);
    expect(places.every((place) => place.soilStrength === 0.5)).toBe(true);
  });

  it("verify(a mast without guys) is used most, check by check, in the fastest wind with the thinnest walls", () => {
    const sample = fc.sample(
      fc.record({
        file: smallStudy,
        pick: fc.nat(),
        slower: fc.double({ min: 0.5, max: 1, noNaN: true }),
        thicker: fc.double({ min: 0, max: 1, noNaN: true }),
        loss: fc.constantFrom(0, 0.3e-3, 0.8e-3),
      }),
      { numRuns: 900, seed: 27_182 },
    );
    let masts = 0;
    let lower = 0;
    const wrong: string[] = [];
    for (const { file, pick, slower, thicker, loss } of sample) {
      if (masts >= 120) break;
      const { wind } = file.site;
      // computed gusts are tried at every place instead
      const stated = {
        ...wind,
        ...("gustFactor" in wind ? { gustFactor: 1 } : {}),
        ...("structuralFactor" in wind ? { structuralFactor: 1.2 } : {}),
      } as typeof wind;
      const parts = { ...file.parts, supports: ["freestanding" as const] };
      const read = parseStudy(
        // and so is a base that turns
        { ...file, site: { ...file.site, wind: stated, baseStiffness: undefined }, parts },
        { catalog: defaultCatalog },
      );
      if (!read.ok) continue;
      const at = (place: Place) =>
        compile({ ...read.study, site: siteAt(read.study.site, place) }, catalogAt(read.catalog, place));
      const worst = at({ ...AS_STATED, wallLoss: loss });
      const designs = [...everyDesign(worst)];
      if (designs.length === 0) continue;
      const design = designs[pick % designs.length];
      const high = verify(worst, design);
      const low = verify(at({ ...AS_STATED, windSpeed: slower, wallLoss: loss * thicker }), design);
      // a mast that does not stand has no measures to compare
      if (high.checks.some(({ utilisation }) => utilisation === Number.POSITIVE_INFINITY)) continue;
      masts++;
      for (const check of low.checks) {
        const there = high.checks.find(({ id }) => id === check.id);
        if (!there) throw new Error(`${check.id} is not asked in more wind`);
        if (check.utilisation < there.utilisation) lower++;
        if (check.utilisation > there.utilisation * (1 + 1e-6))
          wrong.push(`${check.id}: ${check.utilisation} in ${slower} of ${there.utilisation}`);
      }
    }
    console.log(`${masts} masts without guys, ${lower} checks less used in less wind and thicker walls`);
    expect(masts).toBeGreaterThan(60);
    expect(lower).toBeGreaterThan(4 * masts);
    expect(wrong).toEqual([]);
  }, 120_000);

  it("verify(a guyed mast) names the place where a check is worst: a slacker guy lets the mast lean, a tauter one is pulled more", () => {
    const problem = problemOf({ ...demo, ranges: { tension: { from: 0.7, to: 1.3 } } });
    const design = designOf(
      problemOf({ ...demo, parts: { ...demo.parts, supports: ["guyed"] } }),
      [3, 1, 4, 1, 5],
    );
    if (!design?.guys) throw new Error("no guyed design was drawn");
    const checks = new Map(verify(problem, design).checks.map((check) => [check.id, check]));
    const asStated = new Map(verify(problemOf(demo), design).checks.map((check) => [check.id, check]));
    expect(checks.get("tilt")?.place?.tension).toBe(0.7);
    for (const [id, check] of asStated) {
      expect(checks.get(id)?.utilisation, id).toBeGreaterThanOrEqual(check.utilisation - 1e-12);
      expect(check.place, id).toBeUndefined();
    }
    const guys = [...checks].filter(([id]) => id.startsWith("guy-strength"));
    expect(guys.length).toBeGreaterThan(0);
  });
});
