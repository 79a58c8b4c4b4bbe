import { describe, expect, it } from "vitest";
import { DesignError } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { designKey } from "../../src/model/design-key.ts";
import { parseStudy } from "../../src/model/parse.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { givenOf } from "../../src/report/sheets/given.ts";
import { raiseSheet } from "../../src/report/sheets/raise.ts";
import { tensionSheet } from "../../src/report/sheets/tension.ts";
import { Search } from "../../src/search/search.ts";
import { FOOT, POUND } from "../support/us-units.ts";
import { check, design, pasture, withGuys } from "./support/pasture.ts";

/** An antenna beside the mast near its top, that turns it. */
const beside =
  (offset: string, area = "3 ft2") =>
  (study: StudyFile) => {
    study.wishes.packages[0].items.push({
      area,
      areaKind: "flat",
      weight: "30 lbf",
      below: "6 ft",
      offset,
    });
    study.parts = { ...study.parts, torqueArms: ["arm-16", "arm-28"] };
  };
const levels = design().guys?.levels ?? [];
const armed = (arm: string, tension = 0.1) =>
  withGuys({ tension, levels: [levels[0], { ...levels[1], strand: "ehs-3-16", arm }] });
const bare = withGuys({ levels: [levels[0], { ...levels[1], strand: "ehs-3-16" }] });

describe("a level of six guys on torque arms", () => {
  const problem = pasture(beside("3 ft"));
  const verdict = verify(problem, armed("arm-28"));
  const without = verify(problem, bare);

  it("verify(design) turns far less with them", () => {
    const twist = (v: typeof verdict) => check(v, "twist-range").demand;
    expect(twist(verdict)).toBeLessThan(0.5 * twist(without));
    expect(check(verdict, "pair-range/2").passes).toBe(true);
  });

  it("verify(design) has six guys there, that share the pull", () => {
    for (const c of verdict.cases) expect(c.guys.filter(({ level }) => level === 2)).toHaveLength(6);
    expect(check(verdict, "guy-strength/2").demand).toBeLessThan(
      0.75 * check(without, "guy-strength/2").demand,
    );
    const arm = check(verdict, "arm-pull/2");
    expect(arm.capacity).toBeCloseTo(7000 * POUND, 6);
    expect(arm.required).toBe(problem.rules.pipe.required);
    expect(arm.demand).toBeLessThanOrEqual(check(verdict, "guy-strength/2").demand * (1 + 1e-9));
  });

  it("verify(design) buys the arm in place of the bracket, and twice as much strand", () => {
    const lines = (v: typeof verdict) => v.bill.lines.filter(({ level }) => level === 2);
    const armLine = lines(verdict).find(({ item }) => item.includes("Torque arm, 28 in"));
    expect(armLine).toMatchObject({ quantity: 1, amount: 21_400 });
    expect(lines(verdict).some(({ item }) => item.includes("bracket"))).toBe(false);
    const strand = (v: typeof verdict) => lines(v).find(({ unit }) => unit === "m")?.quantity ?? 0;
    const radius = 36 * FOOT;
    const a = (28 * FOOT) / 12;
    const chord = Math.hypot(65 * FOOT, radius - a / 2, (Math.sqrt(3) / 2) * a);
    expect(strand(verdict)).toBeCloseTo(6 * (chord + problem.prices.termination), 9);
    expect(lines(verdict).find(({ item }) => item.includes("turnbuckles"))?.quantity).toBe(6);
    expect(designKey(armed("arm-28"))).not.toBe(designKey(bare));
  });

  it("verify(twist that takes more than 0.3 of a guy's pull) is refused as outside the method", () => {
    const wild = pasture(beside("9 ft", "12 ft2"));
    const range = check(verify(wild, armed("arm-16", 0.08)), "pair-range/2");
    expect(range.passes).toBe(false);
    expect(range.note).toMatch(/takes \d+ % of a guy's pull, expected at most 30 %/);
  });

  it("verify(an arm rated for less than its guys pull) fails by its rating", () => {
    const weak = pasture((study) => {
      beside("3 ft")(study);
      study.catalog = {
        torqueArms: [{ ...(defaultCatalog.torqueArms ?? [])[0], id: "arm-16", pull: "900 lbf" }],
      };
    });
    expect(check(verify(weak, armed("arm-16")), "arm-pull/2").passes).toBe(false);
  });

  it("sheets(design) say where the tips stand and draw both guys of an anchor alike", () => {
    const given = givenOf(problem, armed("arm-28"), verdict);
    const [lower, upper] = given.rigs;
    expect([lower.count, upper.count]).toEqual([3, 6]);
    expect(upper.span).toBeLessThan(lower.span);
    const raise = JSON.stringify(raiseSheet(given));
    expect(raise).toContain("tips toward 60°, 180°, 300°");
    expect(raise).toContain("Torque arm, 28 in to a tip");
    expect(JSON.stringify(tensionSheet(given))).toContain("On torque arms every anchor has two guys");
  });

  it("Search(a twist limit that guys on the axis can't keep) puts the top guys on an arm", () => {
    const limited = (arms: boolean) =>
      pasture((study) => {
        beside("3 ft")(study);
        study.wishes.twistLimit = 0.6;
        study.wishes.serviceWind = 0.5;
        study.parts = {
          ...study.parts,
          torqueArms: arms ? ["arm-16", "arm-28"] : undefined,
          supports: ["guyed"],
          sections: ["3leg-13"],
          strands: ["ehs-3-16", "ehs-1-4"],
          levelCounts: [2],
          tensions: [0.1],
        };
      });
    const found = (arms: boolean) => {
      const search = new Search(limited(arms));
      while (!search.step(1000)) {}
      return search.best;
    };
    const best = found(true);
    expect(found(false)).toBeNull();
    expect(best?.design.guys?.levels.map(({ arm }) => arm !== undefined)).toEqual([false, true]);
    if (best) expect(verify(limited(true), best.design).passes).toBe(true);
  });
});

describe("what is refused beside torque arms", () => {
  const refusals = (change: (study: StudyFile) => void) => {
    let file: StudyFile | undefined;
    pasture((study) => {
      study.parts = { ...study.parts, torqueArms: ["arm-16"] };
      file = structuredClone(study);
    });
    if (!file) throw new Error("no study");
    change(file);
    const read = parseStudy(file, { catalog: defaultCatalog });
    return read.ok ? [] : read.errors.map(({ path, message }) => `${path}: ${message}`);
  };

  it.each<[string, (study: StudyFile) => void, RegExp]>([
    [
      "four anchors",
      (s) => Object.assign(s.parts ?? {}, { guysPerLevel: [3, 4] }),
      /guysPerLevel.*three tips/,
    ],
    [
      "a slope",
      (s) => Object.assign(s.lot, { slope: { toward: 0, fall: 0.1 } }),
      /torqueArms.*anchors differ/,
    ],
    [
      "anchors drawn in",
      (s) => Object.assign(s.parts ?? {}, { drawnIn: true }),
      /torqueArms.*anchors differ/,
    ],
    [
      "a guy that may be lost",
      (s) => Object.assign(s.wishes, { lossOfOneGuy: true }),
      /lossOfOneGuy.*one guy of a pair/,
    ],
    [
      "an unknown arm",
      (s) => Object.assign(s.parts ?? {}, { torqueArms: ["arm-1"] }),
      /torqueArms.0.*torque arm/,
    ],
  ])("parseStudy(%s) says why", (_name, change, words) => {
    expect(refusals(() => {})).toEqual([]);
    expect(refusals(change)).toEqual([expect.stringMatching(words)]);
  });

  it("verify(arms on four anchors) refuses the design", () => {
    const problem = pasture();
    const four = withGuys({ perLevel: 4, levels: [levels[0], { ...levels[1], arm: "arm-16" }] });
    expect(() => verify(problem, four)).toThrow(DesignError);
    expect(() => verify(problem, armed("other"))).toThrow(/"other", expected a torque arm of the catalog/);
  });
});
