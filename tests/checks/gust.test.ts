import { expect, test } from "vitest";
import { loadCase } from "../../src/checks/loads.ts";
import { resolve } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import { windCases } from "../../src/checks/wind-cases.ts";
import type { StudyFile } from "../../src/model/study.ts";
import type { Check, Verdict } from "../../src/model/verdict.ts";
import { check, design, freeStanding, pasture } from "./support/pasture.ts";

const FOOT = 0.3048;
type Wind = StudyFile["site"]["wind"];

const tall = (change: object = {}, ice = false) =>
  pasture((study) => {
    study.wishes.height = "140 ft";
    study.site.wind = { ...study.site.wind, ...change } as Wind;
    if (ice) study.site.ice = { thickness: "0.5 in", speed: "40 mph" };
  });
const slow = freeStanding({ height: 140 * FOOT, stack: [{ section: "3leg-31", length: 140 * FOOT }] });
const factorOf = (verdict: Verdict): number => check(verdict, "gust-factor").demand;
const demands = (verdict: Verdict) =>
  verdict.checks.filter(({ kind }) => kind === "strength").map(({ id, demand }) => [id, demand] as const);

function expectSame(a: readonly Check[], b: readonly Check[]) {
  const byId = new Map(b.map((one) => [one.id, one.demand]));
  for (const { id, demand } of a) expect(demand / (byId.get(id) ?? 0) || 1, id).toBeCloseTo(1, 8);
}

test("verify(gust factor computed) loads a slow mast as the factor stated would, and says which it was", () => {
  const computed = verify(tall({ gustFactor: "computed" }), slow);
  const factor = factorOf(computed);
  expect(factor).toBeGreaterThan(0.9);
  expect(check(computed, "gust-factor").passes).toBe(true);
  expect(check(computed, "gust-factor").note).toMatch(
    new RegExp(`first sway frequency 0\\.\\d+ Hz: gust factor ${factor.toFixed(2)} is in the wind`),
  );
  const stated = verify(tall({ gustFactor: factor }), slow);
  expectSame(computed.checks, stated.checks);
  const least = verify(tall({ gustFactor: 0.85 }), slow);
  expect(check(computed, "pipe-bending").demand / check(least, "pipe-bending").demand).toBeCloseTo(
    factor / 0.85,
    8,
  );
});

test("verify(gust factor computed) leaves a stiff mast at 0.85", () => {
  const stated = verify(pasture(), freeStanding());
  const computed = verify(
    pasture((study) => (study.site.wind = { ...study.site.wind, gustFactor: "computed" } as Wind)),
    freeStanding(),
  );
  expect(factorOf(computed)).toBe(0.85);
  expect(demands(computed)).toEqual(demands(stated));
});

test("with ice the factor is that of the iced mast in its own wind", () => {
  const problem = tall({ gustFactor: "computed" }, true);
  const { model } = resolve(problem, slow);
  const pressures = verify(problem, slow).cases.map((c) => [c.id, c.pressure.at(-1)?.q ?? 0] as const);
  const iced = windCases(problem, null).find(({ id }) => id === "wind-iced");
  if (!iced) throw new Error("no case with ice");
  const least = loadCase(problem, model, iced).line(40) / 1;
  expect(least).toBeGreaterThan(0);
  const [, bare] = pressures.find(([id]) => id === "wind-1") ?? ["", 0];
  const [, cold] = pressures.find(([id]) => id === "wind-iced") ?? ["", 0];
  const asked = factorOf(verify(problem, slow));
  expect(bare).toBeCloseTo((problem.pressure(140 * FOOT) * asked) / 0.85, 6);
  const under = cold / (problem.iced?.(140 * FOOT).pressure(140 * FOOT) ?? 1);
  expect(under).toBeGreaterThanOrEqual(1);
  expect(under).not.toBeCloseTo(asked / 0.85, 6);
});

test("the gusts of an iced mast are those of all its ice, also where a combination counts 0.7 of it", () => {
  const gustsUnder = (set: string): number => {
    const problem = pasture((study) => {
      study.wishes.height = "140 ft";
      study.site.wind = { ...study.site.wind, gustFactor: "computed" } as Wind;
      study.site.ice = { thickness: "1 in", speed: "60 mph" };
      study.rules.set = set;
    });
    const { cases } = verify(problem, slow);
    const cold = cases.find(({ id }) => id === "wind-iced")?.pressure.at(-1)?.q ?? 0;
    return cold / (problem.iced?.(140 * FOOT).pressure(140 * FOOT) ?? 1);
  };
  expect(gustsUnder("practice")).toBeGreaterThan(1.05);
  expect(gustsUnder("asce7-asd")).toBeCloseTo(gustsUnder("practice"), 9);
});

test("verify(a stated gust factor) fails where the mast asks for more under its ice alone", () => {
  const studied = (gustFactor: number | "computed", ice: boolean) =>
    verify(
      pasture((study) => {
        study.wishes.height = "140 ft";
        study.site.wind = { ...study.site.wind, speed: "60 mph", gustFactor } as Wind;
        if (ice) study.site.ice = { thickness: "2 in", speed: "60 mph" };
      }),
      slow,
    );
  const enough = factorOf(studied("computed", false));
  const stated = (ice: boolean) => studied(enough, ice);
  const bare = check(stated(false), "gust-factor");
  expect(bare.passes).toBe(true);
  const iced = check(stated(true), "gust-factor");
  expect(iced.passes).toBe(false);
  expect(iced.loadCase).toBe("ice in still air");
  expect(iced.note).toMatch(
    /first sway frequency under ice 0\.\d\d Hz: state a gust factor of 1\.\d\d or more/,
  );
  expect(iced.demand).toBeGreaterThan(bare.demand);
});

test("verify(EN 1991-1-4) computes the structural factor, and refuses one that is stated too low", () => {
  const european = (structuralFactor?: number | "computed") =>
    pasture((study) => {
      study.site.wind = { basis: "en1991", basicSpeed: "25 m/s", terrain: "II", structuralFactor };
      study.rules.set = "practice";
    });
  const computed = verify(european(), design());
  const factor = factorOf(computed);
  expect(factor).toBeGreaterThan(1.05);
  expect(check(computed, "gust-factor").note).toMatch(/structural factor 1\.\d\d is in the wind/);
  const low = check(verify(european(1), design()), "gust-factor");
  expect(low.passes).toBe(false);
  expect(low.note).toMatch(/state a structural factor of 1\.\d\d or more, or have it computed/);
  expectSame(computed.checks, verify(european(factor), design()).checks);
});
