import { describe, expect, it } from "vitest";
import hardGround from "../../../catalog/studies/hard-ground.json" with { type: "json" };
import upperPasture from "../../../catalog/studies/upper-pasture.json" with { type: "json" };
import { verify } from "../../../src/checks/verify.ts";
import { defaultCatalog } from "../../../src/model/default-catalog.ts";
import type { Design } from "../../../src/model/design.ts";
import type { StudyFile } from "../../../src/model/study.ts";
import { secondsForSwings } from "../../../src/physics/guy/swings.ts";
import { givenOf } from "../../../src/report/sheets/given.ts";
import { renderSheet, renderSheets } from "../../../src/report/sheets/render.ts";
import { sheets, UnsafeDesign } from "../../../src/report/sheets/sheets.ts";
import { swung, tensionAt } from "../../../src/report/sheets/tension.ts";
import type { Cell, Sheet, Table } from "../../../src/report/sheets/types.ts";
import { tape } from "../../../src/report/sheets/words.ts";
import { problemOf } from "../../support/small-study.ts";

const LBF = 4.4482216152605;
const FOOT = 0.3048;

const pasture: Design = {
  package: "beam-and-6m",
  height: 70 * FOOT,
  stack: [{ section: "3leg-9-used", length: 70 * FOOT }],
  guys: {
    perLevel: 3,
    radius: 36 * FOOT,
    rotation: 0,
    tension: 0.08,
    levels: [
      { height: 20 * FOOT, strand: "hs-3-16" },
      { height: 70 * FOOT, strand: "ehs-3-16" },
    ],
    anchor: {
      kind: "deadman",
      row: "deadman",
      length: 3 * FOOT,
      height: FOOT,
      width: 2 * FOOT,
      depth: 6 * FOOT,
    },
  },
  footing: { kind: "block", row: "block", width: 2 * FOOT, depth: 2.5 * FOOT },
};
const onPosts: Design = {
  ...pasture,
  guys: {
    ...pasture.guys,
    anchor: { kind: "post", row: "post-pipe", width: 3 * FOOT, depth: 6 * FOOT },
  } as Design["guys"],
};
const rock: Design = {
  ...pasture,
  package: "repeater",
  height: 50 * FOOT,
  stack: [{ section: "3leg-9", length: 50 * FOOT }],
  guys: {
    perLevel: 3,
    radius: 30 * FOOT,
    rotation: 0,
    tension: 0.1,
    levels: [{ height: 40 * FOOT, strand: "ehs-3-16" }],
    anchor: { kind: "rock-rod", row: "rock-rod", socket: 1.0668 },
  },
  footing: { kind: "block", row: "block", width: 2 * FOOT, depth: 2.5 * FOOT },
};

const free: Design = {
  package: "beam-and-6m",
  height: 30 * FOOT,
  stack: [{ section: "3leg-13-used", length: 30 * FOOT }],
  guys: null,
  footing: {
    kind: "pad",
    row: "pad",
    width: 3.5 * FOOT,
    thickness: FOOT,
    depth: 2.5 * FOOT,
    steel: 0.0018,
    mats: 2,
  },
};
const lowAndLight = {
  ...upperPasture,
  site: { ...upperPasture.site, wind: { ...upperPasture.site.wind, speed: "85 mph" } },
  wishes: {
    ...upperPasture.wishes,
    height: "30 ft",
    packages: upperPasture.wishes.packages.map((pack) => ({ ...pack, items: pack.items.slice(1) })),
  },
};

const made = (file: unknown, design: Design) => {
  const problem = problemOf(file as StudyFile);
  const verdict = verify(problem, design);
  return {
    problem,
    design,
    verdict,
    given: givenOf(problem, design, verdict),
    all: sheets(problem, design, verdict),
  };
};
const cases = [
  ["deadmen in clay", made(upperPasture, pasture)],
  ["rods in rock", made(hardGround, rock)],
  ["posts in concrete", made(upperPasture, onPosts)],
  ["a mast that stands free", made(lowAndLight, free)],
  [
    "a mast on a doweled pad",
    made(hardGround, {
      ...rock,
      footing: {
        kind: "rock-pad",
        row: "rock-pad",
        width: 2 * FOOT,
        depth: FOOT,
        dowels: 4,
        socket: 2 * FOOT,
      },
    }),
  ],
  [
    "a mast on a drilled pier",
    made(lowAndLight, {
      ...free,
      footing: { kind: "pier", row: "pier", diameter: 3 * FOOT, depth: 6 * FOOT },
    }),
  ],
] as const;

it("shows the code's post beside a block's overturning in the calculation", () => {
  const { all } = made(lowAndLight, {
    ...free,
    footing: { kind: "block", row: "block", width: 3.5 * FOOT, depth: 5 * FOOT },
  });
  expect(JSON.stringify(all)).toMatch(/as an IBC 1807.3.2.1 post it would need \d+\.\d ft/);
});

const tables = (sheet: Sheet): Table[] =>
  sheet.bands
    .flatMap((band) => (band.kind === "whole" ? band.sections : [...band.left, ...band.right]))
    .flatMap((section) => section.parts)
    .filter((part): part is Table => part.kind === "table");
const money = (cells: readonly Cell[]) =>
  cells.reduce((sum, cell) => sum + (typeof cell !== "string" && cell.as === "money" ? cell.si : 0), 0);

describe.each(cases)("sheets of %s", (_, { given, verdict, all }) => {
  it("buys for the bill's total, line by line", () => {
    const [everything] = tables(all[0]);
    const sum = everything.rows.reduce((total, row) => total + money(row), 0);
    expect(Math.round(sum * 100)).toBe(Math.round(verdict.bill.total * 100));
    expect(money(everything.sum ?? [])).toBe(verdict.bill.total);
    expect(everything.rows).toHaveLength(verdict.bill.lines.length);
  });

  it("cuts what the bill buys, within its termination", () => {
    const bought = verdict.bill.lines.filter((line) => line.unit === "m" && line.group === "guys");
    given.levels.forEach((level, i) => {
      const each = bought[i].quantity / given.perLevel;
      expect(level.cut).toBeLessThan(each);
      expect(level.cut).toBeGreaterThan(each * 0.99);
    });
  });

  it("has the initial tension at the reference temperature, more in the cold, less in the heat", () => {
    for (const level of given.levels)
      for (const mastWarms of [true, false]) {
        expect(tensionAt(level, level.rigged, mastWarms)).toBeCloseTo(level.tension, 3);
        expect(tensionAt(level, level.rigged - 20, mastWarms)).toBeGreaterThan(level.tension);
        expect(tensionAt(level, level.rigged + 20, mastWarms)).toBeLessThan(level.tension);
      }
  });

  it("counts seconds by T = W L N2/(8.05 t2) (common practice, no source), within a thousandth", () => {
    for (const level of given.levels)
      for (const count of [10, 20]) {
        const { guyWeight, guyLength } = swung(level);
        const seconds = secondsForSwings(swung(level), level.tension, count);
        const byHand = ((guyWeight / LBF) * (guyLength / FOOT) * count ** 2) / (8.05 * seconds ** 2);
        expect(Math.abs(byHand / (level.tension / LBF) - 1)).toBeLessThan(1e-3);
      }
  });

  it("stands under the caution, names what governs and asks for nothing from outside", () => {
    expect(all.map((sheet) => sheet.id)).toEqual(["buy", "dig", "raise", "tension", "calculation"]);
    for (const sheet of all) {
      const html = renderSheet(sheet);
      for (const words of [
        /estimating and learning tool/,
        /falling, by electrocution and by collapse/,
        /Local codes, the maker’s drawings and a licensed engineer decide/,
        /fall zone clear of power lines/,
        /Demo sections, antennas and prices are invented/,
        /Governs: /,
        new RegExp(`sheet ${sheet.number} of 5`),
      ])
        expect(html).toMatch(words);
      expect(html).not.toMatch(/https?:|<script|<link|@import|<img/);
      expect(html).not.toMatch(/NaN|undefined|Infinity|\[object/);
    }
    expect(renderSheets(all).match(/class="sheet"/g)).toHaveLength(5);
  });

  it("lists every check, governing first, and every case", () => {
    const [, , checks] = tables(all[4]);
    expect(checks.rows).toHaveLength(verdict.checks.length);
    expect(checks.rows[0][0]).toBe(verdict.checks[0].title);
    expect(renderSheet(all[4])).toContain("Mastwright 0.");
  });
});

it("a design that fails gets no sheets, and the words name the check", () => {
  const problem = problemOf(upperPasture as StudyFile);
  const near: Design = { ...pasture, guys: { ...pasture.guys!, radius: 3 } };
  const verdict = verify(problem, near);
  expect(verdict.passes).toBe(false);
  expect(() => sheets(problem, near, verdict)).toThrow(UnsafeDesign);
  expect(() => sheets(problem, near, verdict)).toThrow(/Not safe: don't build this\. .* fails/);
});

it("words of a study can't become markup", () => {
  const { problem, verdict } = made(upperPasture, pasture);
  const odd = { ...problem, study: { ...problem.study, name: '<b onload="x">&' } };
  const html = renderSheet(sheets(odd, pasture, verdict)[0]);
  expect(html).not.toContain("<b onload");
  expect(html).toContain("&lt;b onload=&quot;x&quot;&gt;&amp;");
});

it("reads a tape to the half inch and carries into the foot", () => {
  const plain = (si: number) => tape(si).replaceAll("\u00a0", " ");
  expect(plain(FOOT * 72 + 0.0254)).toBe("72′ 1″");
  expect(plain(0.0254 * 11.9)).toBe("1′ 0″");
  expect(plain(0.0254 * 6.5)).toBe("0′ 6 1/2″");
});

describe("sheets of a mast with an antenna beside it, on ground in layers", () => {
  const clay = defaultCatalog.soils.find(({ id }) => id === upperPasture.site.soil);
  const { bearing, lateralPerDepth, friction, cohesion, unitWeight } = clay ?? {};
  const firmer = { from: "8 ft", bearing, lateralPerDepth, friction, cohesion, unitWeight, digging: "hard" };
  const [pack] = lowAndLight.wishes.packages;
  const panel = { area: "1 ft2", areaKind: "flat", weight: "20 lbf", at: "20 ft", offset: "1 ft" };
  const { all } = made(
    {
      ...lowAndLight,
      site: { ...lowAndLight.site, wind: { ...lowAndLight.site.wind, speed: "75 mph" } },
      wishes: { ...lowAndLight.wishes, packages: [{ ...pack, items: [...pack.items, panel] }] },
      catalog: { soils: [{ ...clay, layers: [firmer] }] },
    },
    free,
  );
  const cellsOf = (cells: readonly Cell[]) =>
    cells.map((cell) => (typeof cell === "string" ? cell : Number(Number(cell.si).toFixed(3))));
  const rows = all.flatMap((sheet) => tables(sheet).flatMap((table) => table.rows.map(cellsOf)));

  it("raises it at its height over the base, off the axis", () => {
    expect(rows).toContainEqual(["antenna not chosen yet", 6.096, 0.305, 88.964]);
  });

  it("say of each layer how deep it begins and what it is worth", () => {
    const layer = rows.filter(([name]) => `${name}`.startsWith("From"));
    expect(layer.map(([name]) => `${name}`.replace(/^.*,\s/, ""))).toEqual(["digging", "bearing", "lateral"]);
    expect(layer[0][1]).toBe("hard");
    expect(layer[1][1]).toBe(71820.388); // 1500 psf
    expect(renderSheets(all)).not.toContain("[object");
  });
});
