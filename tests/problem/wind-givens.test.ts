import { expect, test } from "vitest";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { guyPressure } from "../../src/problem/guy-pressure.ts";
import { pasture } from "../checks/support/pasture.ts";

const FOOT = 0.3048;
const hill = { shape: "ridge", height: "80 ft", halfLength: "200 ft" } as const;
const onHill =
  (change: object = {}) =>
  (study: StudyFile) => {
    study.site.wind = { ...study.site.wind, hill: { ...hill, ...change } } as StudyFile["site"]["wind"];
  };

test("compile(study on a ridge) blows harder the lower, and says so with the factors", () => {
  const flat = pasture();
  const risen = pasture(onHill());
  const ratio = (z: number) => risen.pressure(z) / flat.pressure(z);
  expect(ratio(0)).toBeCloseTo((1 + 1.45 * 0.4) ** 2, 6);
  expect(ratio(70 * FOOT)).toBeCloseTo((1 + 1.45 * 0.4 * Math.exp((-3 * 70) / 200)) ** 2, 4);
  expect(risen.assumptions.join(" ")).toMatch(/ridge speeds the wind up.*Kzt 2.50 at the ground/);
  expect(flat.assumptions.join(" ")).not.toMatch(/ridge/);
});

test("compile(study on a slope too gentle) is that on flat ground, and says why", () => {
  const gentle = pasture(onHill({ height: "30 ft" }));
  expect(gentle.pressure(10)).toBe(pasture().pressure(10));
  expect(gentle.assumptions.join(" ")).toMatch(/does not count: H\/Lh is 0.15/);
});

test("ice on a hill grows by Kzt to the 0.35 and by its importance", () => {
  const weight = (change: (study: StudyFile) => void) => {
    const problem = pasture((study) => {
      study.site.ice = { thickness: "0.5 in", speed: "40 mph" };
      change(study);
    });
    return problem.iced?.(70 * FOOT).strand(problem.strands[0]).weight ?? 0;
  };
  const thick = (inches: number) =>
    weight((study) => (study.site.ice = { thickness: `${inches} in`, speed: "40 mph" }));
  const kzt = (1 + 1.45 * 0.4) ** 2;
  expect(weight(onHill())).toBeCloseTo(thick(0.5 * kzt ** 0.35), 6);
  expect(
    weight((study) => (study.site.ice = { thickness: "0.5 in", speed: "40 mph", importance: 1.25 })),
  ).toBeCloseTo(thick(0.625), 9);
});

test("guyPressure pulls neither end of a guy less than the true pressure", () => {
  expect(guyPressure(() => 700, 3, 12)).toBeCloseTo(700, 9);
  // growing with height: the head feels 2 x 2/3 of p/2; falling: so does the foot
  expect(guyPressure((z) => 100 * z, 0, 12)).toBeCloseTo((1200 * 2) / 3, 6);
  expect(guyPressure((z) => 1200 - 100 * z, 0, 12)).toBeCloseTo((1200 * 2) / 3, 6);
});

test.each([
  [{ hill, topographicFactor: 1.2 }, "site.wind.topographicFactor", /found 1.2, expected 1, or no "hill"/],
  [{ hill: { ...hill, shape: "cliff" } }, "site.wind.hill.shape", /"ridge" or "escarpment"/],
] as const)("parseStudy(wind with %j) is refused at %s", (change, path, message) => {
  let file: StudyFile | undefined;
  pasture((study) => (file = study));
  const study = { ...(file as StudyFile) };
  const wind = { ...study.site.wind, ...change };
  const read = parseStudy({ ...study, site: { ...study.site, wind } }, { catalog: defaultCatalog });
  if (read.ok) throw new Error("it should be refused");
  expect(read.errors.map((error) => error.path)).toEqual([path]);
  expect(read.errors[0].message).toMatch(message);
});
