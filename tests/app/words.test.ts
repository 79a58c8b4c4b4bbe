import { expect, test } from "vitest";
import { changeWords } from "../../src/app/wording/change.ts";
import { demandOfCapacity, mergedLimits, numberedChecks, placeWords } from "../../src/app/wording/check.ts";
import { designSentence } from "../../src/app/wording/design-sentence.ts";
import {
  stepped,
  stepSize,
  typedAir,
  typedAxis,
  typedNumber,
  typedPercent,
  typedQuantity,
  typedStiffness,
} from "../../src/app/wording/given.ts";
import { hillWords, iceWords, rareWords } from "../../src/app/wording/givens.ts";
import { billItem, bracingWords, sectionName } from "../../src/app/wording/parts.ts";
import { proofClaim, proofScale } from "../../src/app/wording/proof.ts";
import type { AnchorChoice } from "../../src/model/design.ts";
import type { BillItem, Check } from "../../src/model/verdict.ts";
import { anchorName, footingName } from "../../src/report/part-names.ts";
import { fixture } from "./support/fixture.ts";

const ft = 0.3048;
const { catalog, design, proof, study } = fixture;

test("designSentence() says the whole answer without the drawing", () => {
  expect(designSentence(design, catalog, "us")).toBe(
    "70 ft of 9 in three-leg, 7/8 × .083 section; guys of 3/16 in EHS strand at 33 and 64 ft; three buried concrete anchors 3 × 1.5 × 1.5 ft, 28 ft out; on a block 2.5 ft square, 4 ft deep.",
  );
});

test("designSentence() of a mast without guys says so", () => {
  expect(designSentence({ ...design, guys: null }, catalog, "us")).toContain("; no guys; on a block");
});

test("sectionName() and bracingWords() tell rods, tubes and angles, and every pattern, apart", () => {
  const [base] = catalog.sections;
  const inch = ft / 12;
  const leg = { angle: 2 * inch, thickness: 0.1875 * inch };
  expect(sectionName({ ...base, leg, legs: 4 }, "us")).toBe("9 in four-leg, 2 × .188 angle");
  expect(sectionName({ ...base, leg: { diameter: inch } }, "us")).toBe("9 in three-leg, 1 solid");
  const member = { diameter: inch };
  const braced = (bracing: typeof base.bracing) => bracingWords({ ...base, bracing });
  expect(braced({ pattern: "single", member })).toBe("zigzag");
  expect(braced({ pattern: "x", member, horizontal: member })).toBe("crossed, horizontals");
  expect(braced({ pattern: "x", member, joined: true })).toBe("crossed and joined");
  expect(braced({ pattern: "z", member })).toBe("one way, horizontals");
});

test("billItem() names rows as a shop does and lengths in the units shown, and leaves other words alone", () => {
  const words = (line: BillItem, system: "us" | "si" = "us") => billItem(line, catalog, system, 2);
  expect(words({ item: "strand", level: 1, row: "ehs-3-16" })).toBe("lower guys: strand 3/16 in EHS");
  expect(words({ item: "strand", level: 2, anchor: 3, row: "ehs-3-16" })).toBe(
    "upper guys, anchor 3: strand 3/16 in EHS",
  );
  expect(words({ item: "reel of strand", row: "ehs-3-16", length: 76.2 })).toBe(
    "reel of strand 3/16 in EHS, 250 ft",
  );
  const [section] = catalog.sections;
  expect(words({ item: "section", row: section.id, length: 10 * ft })).toBe(
    `section ${sectionName(section, "us")}, 10 ft`,
  );
  expect(words({ item: "base: #5 bar", length: 20 * ft })).toBe("base: #5 bar, 20 ft");
  expect(words({ item: "reel of strand", row: "unheard-of", length: 76.2 }, "si")).toBe(
    "reel of strand unheard-of, 76.2 m",
  );
  expect(words({ item: "raising" })).toBe("raising");
});

test("footingName() and anchorName() call a part the same on page, sheets and terminal", () => {
  const lengths = { length: (si: number) => `${si}`, sizes: (si: readonly number[]) => si.join(" × ") };
  const block = { kind: "block", row: "b", width: 2, depth: 3 } as const;
  expect(footingName(block, lengths.length)).toBe("block 2 square, 3 deep");
  expect(footingName({ ...block, insulator: "i" }, lengths.length)).toMatch(/, a base insulator on it$/);
  const anchor = (kind: object) => anchorName(kind as AnchorChoice, 3, catalog.anchors, lengths);
  expect(anchor({ kind: "deadman", row: "d", length: 4, width: 1, height: 2, depth: 3 })).toBe(
    "buried concrete anchors 4 × 1 × 2, underside 3 down",
  );
  const screw = catalog.anchors.find(({ kind }) => kind === "screw");
  expect(anchor({ kind: "screw", row: screw?.id })).toBe(screw?.name);
});

test("changeWords() says each difference as on site", () => {
  const words = (change: Parameters<typeof changeWords>[0]) => changeWords(change, catalog, "us", 2);
  expect(words({ what: "radius", from: 28 * ft, to: 26 * ft })).toBe("anchors at 26 ft, not 28");
  expect(words({ what: "level", level: 1, from: 33 * ft, to: 30 * ft })).toBe("lower guys at 30 ft, not 33");
  expect(words({ what: "levels", from: 2, to: 0 })).toBe("no guys at all");
  const block = { kind: "block", row: "block", width: ft, depth: 4 * ft } as const;
  expect(
    words({ what: "footing", from: "block", to: "block", was: block, now: { ...block, depth: 3 * ft } }),
  ).toBe("base 3 ft deep, not 4");
});

test("placeWords() puts a height into words of the mast", () => {
  const check = { ...fixture.judged().verdict.checks[0], where: "mast", at: 64 * ft } satisfies Check;
  expect(placeWords(check, design, "us")).toBe("under the upper guys, 64 ft");
  expect(placeWords({ ...check, at: 50 * ft }, design, "us")).toBe("between guys, 50 ft");
  expect(placeWords({ ...check, where: "level 1", at: undefined }, design, "us")).toBe("lower guys");
});

test("demandOfCapacity() names the unit once", () => {
  const check = { ...fixture.judged().verdict.checks[0], demand: 4448.2216, capacity: 8896.4432 };
  expect(demandOfCapacity(check, "us")).toBe("1,000 of 2,000 lbf");
});

test("numberedChecks() numbers strength checks only; mergedLimits() joins limits that hold", () => {
  const limit = (where: string, passes: boolean): Check => ({
    ...fixture.judged().verdict.checks[0],
    id: where,
    kind: "limit",
    title: "Frost depth",
    where,
    passes,
  });
  const rows = numberedChecks([
    ...fixture.judged().verdict.checks.slice(0, 2),
    limit("a", true),
    limit("b", true),
    limit("c", false),
  ]);
  expect(rows.map((row) => row.number)).toEqual([1, 2, null, null, null]);
  expect(
    mergedLimits(rows, (check) => check.where)
      .map((row) => row.where)
      .slice(2),
  ).toEqual(["a; b", "c"]);
});

test("typedQuantity() takes a bare number in the unit that is shown, never in SI", () => {
  expect(typedQuantity("120", "speed", "us")).toMatchObject({ ok: true, text: "120 mph" });
  expect(typedQuantity("50", "speed", "si")).toMatchObject({ ok: true, si: 50 });
});

test("typedQuantity(105 mhp) is refused with what would be read", () => {
  const typed = typedQuantity("105 mhp", "speed", "us");
  expect(typed.ok).toBe(false);
  if (!typed.ok) expect(typed.message).toMatch(/mhp.*isn't a unit of speed.*mph/);
});

test("typedPercent() and typedNumber() refuse what is no number or out of range", () => {
  expect(typedPercent("10 %", 100)).toMatchObject({ ok: true, si: 0.1 });
  expect(typedPercent("ten", 100).ok).toBe(false);
  expect(typedNumber("1.5°", { unit: "°", max: 10 })).toMatchObject({ ok: true, si: 1.5 });
  expect(typedNumber("12°", { unit: "°", max: 10, min: 0 })).toEqual({
    ok: false,
    message: "Found 12°, expected 0 to 10°.",
  });
});

test("typedAir() reads either scale, and a bare number in the one that is shown", () => {
  expect(typedAir("50 °F", "si")).toMatchObject({ ok: true, si: 10 });
  expect(typedAir("−40", "us")).toMatchObject({ ok: true, si: -40 });
  expect(typedAir("4 C", "us")).toMatchObject({ ok: true, si: 4 });
  expect(typedAir("cold", "us").ok).toBe(false);
});

test("typedStiffness() is a moment a radian", () => {
  const read = typedStiffness("2200000 N m/rad", "us");
  expect(read).toMatchObject({ ok: true, si: 2.2e6 });
});

test("typedAxis() takes one value, a list or a range, each with a unit of its own or the last one's", () => {
  const read = (text: string) => typedQuantity(text, "length", "us");
  expect(typedAxis("28 ft", read)).toEqual({ ok: true, value: "28 ft" });
  expect(typedAxis("20, 25, 30 ft", read)).toEqual({ ok: true, value: ["20 ft", "25 ft", "30 ft"] });
  expect(typedAxis("15 to 60 ft by 1.5 m", read)).toEqual({
    ok: true,
    value: { from: "15 m", to: "60 ft", step: "1.5 m" },
  });
  expect(typedAxis("15 ft to 60 ft by 5 ft", read)).toEqual({
    ok: true,
    value: { from: "15 ft", to: "60 ft", step: "5 ft" },
  });
  expect(typedAxis("some", read).ok).toBe(false);
});

test("stepSize() and stepped() move the first number of a text by a round share of it", () => {
  expect(["120 mph", "1,500 psf", "70 ft", "2.5 ft", "0 ft", "1/2 in"].map(stepSize)).toEqual([
    5, 50, 1, 0.1, 1, 0.01,
  ]);
  expect(stepped("1,500 psf", 50)).toBe("1550 psf");
  expect(stepped("1/2 in", 0.1)).toBe("0.6 in");
  expect(stepped("3 ft", -5)).toBe("0 ft");
});

test("proofClaim() claims the proof only where it is proven", () => {
  expect(proofClaim("proven", proof, "us")).toBe(
    "1.3 × 10¹¹ designs, 2,914 analysed, nothing cheaper is safe.",
  );
  expect(proofClaim("searching", proof, "us")).toContain("Not yet proven");
  expect(proofClaim("stopped", proof, "us")).toContain("a cheaper one may exist");
  expect(proofClaim("stopped", proof, "us", false)).not.toContain("passes");
});

test("proofScale() holds bound and best with round ticks", () => {
  const { from, to, ticks } = proofScale(3180, 3540);
  expect(from).toBeLessThan(3180);
  expect(to).toBeGreaterThan(3540);
  for (const tick of ticks) expect(tick % 50).toBe(0);
});

test("no forbidden word stands in any sentence of the page", async () => {
  const { readdirSync, readFileSync } = await import("node:fs");
  const root = new URL("../../src/app/", import.meta.url);
  const files = readdirSync(root, { recursive: true, encoding: "utf8" }).filter((file) =>
    /\.tsx?$/.test(file),
  );
  expect(files.length).toBeGreaterThan(40);
  const shown =
    /(["'`>])[^"'`<>]*\b(optimal|optimum|feasible|infeasible|solver|objective|pareto|constraint)\b/i;
  for (const file of files) expect(readFileSync(new URL(file, root), "utf8"), file).not.toMatch(shown);
});

test("rareWords() names what most studies leave out, and nothing of a study that leaves it out", () => {
  expect(rareWords(study, "us")).toEqual([]);
  const site = { ...study.site, temperature: { installed: 15, coldest: -30, hottest: 40, iced: 0 } };
  const wishes = { ...study.wishes, swayLimit: 1, lossOfOneGuy: true };
  expect(rareWords({ ...study, site, wishes }, "us")).toEqual([
    "temperature",
    "limits of sway and twist",
    "one guy may be lost",
  ]);
});

test("iceWords() and hillWords() say the whole of what is stated", () => {
  const ice = { thickness: 0.0127, importance: 1, speed: 17.88 };
  expect(iceWords({ ...study, site: { ...study.site, ice } }, "us")).toBe("ice 0.5 in with 40 mph");
  expect(iceWords(study, "us")).toBe("no ice");
  const hill = {
    shape: "ridge",
    height: 60 * ft,
    halfLength: 200 * ft,
    distance: 0,
    side: "upwind",
  } as const;
  const { wind } = study.site;
  if (wind.basis !== "asce7-16") throw new Error("the fixture's wind is of ASCE 7-16");
  expect(hillWords({ ...study, site: { ...study.site, wind: { ...wind, hill } } }, "us")).toBe(
    "ridge 60 ft high, the mast on its crest",
  );
});
