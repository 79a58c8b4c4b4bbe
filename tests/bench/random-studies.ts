import fc from "fast-check";
import upperPasture from "../../catalog/studies/upper-pasture.json" with { type: "json" };
import type { StudyFile } from "../../src/model/study.ts";
import type { BenchStudy } from "./studies.ts";

const base = upperPasture as typeof upperPasture & StudyFile;

const feet = (value: number) => `${value} ft`;

/** What a reader of the README might state: wind, ice, soil, height, antenna, rules and what may be bought. */
const stated = fc.record({
  speed: fc.constantFrom(90, 95, 100, 105, 110, 115, 120),
  exposure: fc.constantFrom("B" as const, "C" as const),
  ice: fc.constantFrom(undefined, undefined, "0.25 in", "0.5 in"),
  soil: fc.constantFrom("ibc-3", "ibc-4", "ibc-5"),
  frost: fc.constantFrom("1 ft", "2 ft 6 in"),
  height: fc.constantFrom(40, 50, 60, 70, 80),
  area: fc.constantFrom(3, 5, 8, 12),
  weight: fc.constantFrom(40, 80, 120),
  margin: fc.constantFrom(0, 0, 0.1),
  aim: fc.constantFrom("cost" as const, "cost" as const, "concrete" as const),
  rules: fc.constantFrom("practice", "asce7-asd", "asce7-lrfd"),
  mixed: fc.boolean(),
  counts: fc.constantFrom([1, 2], [2, 3], [1, 2, 3]),
  step: fc.constantFrom(5, 10),
  perLevel: fc.constantFrom([3 as const], [3 as const], [3 as const, 4 as const]),
});

/** Seeded studies on the demo's catalog and lot: from a small grid to one of 10^15 designs, safe and unsafe. */
export const randomStudies = (count: number, seed: number): BenchStudy[] =>
  fc.sample(stated, { seed, numRuns: count }).map((g, i) => ({
    name: `random ${i + 1}: ${g.height} ft, ${g.area} ft2, ${g.speed} mph${g.ice ? `, ice ${g.ice}` : ""}`,
    file: {
      ...base,
      aim: g.aim,
      rules: { set: g.rules },
      site: {
        ...base.site,
        wind: { ...base.site.wind, speed: `${g.speed} mph`, exposure: g.exposure },
        ...(g.ice ? { ice: { thickness: g.ice, speed: "40 mph" } } : {}),
        soil: g.soil,
        frostDepth: g.frost,
      },
      wishes: {
        height: feet(g.height),
        margin: g.margin,
        packages: [
          {
            id: "drawn",
            name: `A beam of ${g.area} ft2`,
            pipe: "pipe-17",
            items: [{ area: `${g.area} ft2`, areaKind: "round", weight: `${g.weight} lbf`, above: "2 ft" }],
            cableWidth: "1 1/4 in",
          },
        ],
      },
      parts: {
        ...base.parts,
        mixedStacks: g.mixed,
        levelCounts: g.counts,
        guysPerLevel: g.perLevel,
        levelHeights: { from: "15 ft", to: feet(g.height), step: feet(g.step) },
      },
    } as unknown as StudyFile,
  }));
