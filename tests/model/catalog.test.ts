import { describe, expect, test } from "vitest";
import { axisValues } from "../../src/model/axis.ts";
import { latticeProperties } from "../../src/physics/steel/lattice.ts";
import { memberShape, wallOf, widthOf } from "../../src/physics/steel/member.ts";
import { readCatalog } from "./support.ts";

const catalog = readCatalog();
const IN = 0.0254;
const LBF = 4.4482216152605;

describe("sections of the catalog", () => {
  test("are at least twelve lines with three and four legs, and four used rows", () => {
    expect(catalog.sections.filter(({ used }) => !used).length).toBeGreaterThanOrEqual(12);
    expect(catalog.sections.filter(({ used }) => used).length).toBeGreaterThanOrEqual(4);
    expect(new Set(catalog.sections.map(({ legs }) => legs))).toEqual(new Set([3, 4]));
  });

  test.each(catalog.sections)(
    "$id can be made: walls fit, legs clear each other, panels are braced",
    (section) => {
      const { face, leg, bracing, panel, measuredWall } = section;
      expect(wallOf(leg)! < widthOf(leg) / 2).toBe(true);
      expect((wallOf(bracing.member) ?? 0) < widthOf(bracing.member) / 2).toBe(true);
      expect(widthOf(bracing.member) < widthOf(leg)).toBe(true);
      expect(face > 4 * widthOf(leg)).toBe(true);
      expect(panel > 0.8 * face && panel < 1.6 * face).toBe(true);
      expect(measuredWall === undefined || measuredWall < wallOf(leg)!).toBe(true);
    },
  );

  test.each(catalog.sections.filter(({ used }) => used))(
    "$id differs from its new row in wall and price alone, is cheaper and limited in number",
    (used) => {
      const fresh = catalog.sections.find((row) => row.family === used.family && !row.used)!;
      const geometry = ({ face, legs, leg, bracing, panel }: typeof used) => ({
        face,
        legs,
        leg,
        bracing,
        panel,
      });
      expect(geometry(used)).toEqual(geometry(fresh));
      expect(used.measuredWall).toBeLessThan(wallOf(fresh.leg)!);
      expect(used.pieces[0].price).toBeLessThan(fresh.pieces[0].price);
      expect(used.pieces.every(({ have }) => have !== undefined && have > 0)).toBe(true);
    },
  );

  test("cost more where they hold more steel, with as many legs", () => {
    for (const legs of [3, 4]) {
      const lines = catalog.sections
        .filter((row) => row.legs === legs && !row.used)
        .map(({ leg, pieces }) => ({ steel: memberShape(leg).area, price: pieces[0].price }))
        .sort((a, b) => a.steel - b.steel);
      for (const [index, line] of lines.slice(1).entries())
        expect(line.price).toBeGreaterThan(lines[index].price);
    }
  });

  test("have a bracing no slenderer than 200, which AISC 360 E2 advises", () => {
    for (const { face, panel, bracing } of catalog.sections) {
      const rise = bracing.pattern === "single" ? panel / 2 : panel;
      const { radiusOfGyration } = memberShape(bracing.member);
      expect(Math.hypot(face, rise) / radiusOfGyration).toBeLessThanOrEqual(200);
    }
  });

  test.each(["aisc360", "en1993"] as const)("are all inside what %s covers", (steel) => {
    for (const section of catalog.sections) latticeProperties(section, steel);
  });
});

// ASTM A475 table 1, from memory: size in inches, wire, lb per 1000 ft, Common, SM, HS, EHS in lbf
const A475 = [
  [1 / 8, 0.041, 32, 540, 910, 1330, 1830],
  [3 / 16, 0.062, 73, 1150, 1900, 2850, 3990],
  [1 / 4, 0.08, 121, 1900, 3150, 4750, 6650],
  [5 / 16, 0.104, 205, 3200, 5350, 8000, 11200],
  [3 / 8, 0.12, 273, 4250, 6950, 10800, 15400],
  [7 / 16, 0.145, 399, 5700, 9350, 14500, 20800],
  [1 / 2, 0.165, 517, 7400, 12100, 18800, 26900],
];
const GRADES = ["Common", "Siemens-Martin", "High-Strength", "Extra-High-Strength"];

describe("strand of the catalog", () => {
  test("is ASTM A475, every size and grade", () => {
    expect(catalog.strand.length).toBe(28);
    for (const [size, wire, weight, ...strengths] of A475)
      strengths.forEach((strength, index) => {
        const row = catalog.strand.find(
          (strand) => strand.grade === GRADES[index] && Math.abs(strand.diameter - size * IN) < 1e-9,
        )!;
        expect(row.wire / IN).toBeCloseTo(wire, 9);
        expect(row.breakingStrength / LBF).toBeCloseTo(strength, 6);
        expect((row.weight / LBF) * 304.8).toBeCloseTo(weight, 6);
        expect(row.source).toMatch(/ASTM A475.*from memory.*prices invented/);
        // what is sold whole is nobody's stock, and says so where it stands
        if (row.reels) expect(row.source).toMatch(/reels too$/);
      });
  });

  test("weighs what its seven wires weigh, lay and zinc within 4 %", () => {
    for (const { wire, weight } of catalog.strand) {
      const wires = ((7 * Math.PI) / 4) * wire ** 2 * 490 * (LBF / 0.3048 ** 3);
      expect(weight / wires).toBeGreaterThan(1);
      expect(weight / wires).toBeLessThan(1.04);
    }
  });

  test("costs more where it is stronger, in one size and in one grade", () => {
    for (const a of catalog.strand)
      for (const b of catalog.strand)
        if ((a.diameter === b.diameter || a.grade === b.grade) && a.breakingStrength > b.breakingStrength)
          expect(a.price, `${a.id} and ${b.id}`).toBeGreaterThanOrEqual(b.price);
  });
});

// IBC table 1806.2: class, vertical psf, lateral psf/ft, friction or cohesion psf
const IBC: [string, number, number, number | undefined, number | undefined][] = [
  ["ibc-1", 12000, 1200, 0.7, undefined],
  ["ibc-2", 4000, 400, 0.35, undefined],
  ["ibc-3", 3000, 200, 0.35, undefined],
  ["ibc-4", 2000, 150, 0.25, undefined],
  ["ibc-5", 1500, 100, undefined, 130],
];

test.each(IBC)("soil %s is its class of IBC table 1806.2", (id, bearing, lateral, friction, cohesion) => {
  const soil = catalog.soils.find((row) => row.id === id)!;
  const psf = LBF / 0.3048 ** 2;
  expect(soil.bearing / psf).toBeCloseTo(bearing, 6);
  expect((soil.lateralPerDepth / psf) * 0.3048).toBeCloseTo(lateral, 6);
  expect(soil.lateralCap! / psf).toBeCloseTo(15 * lateral, 6);
  expect(soil.friction).toBe(friction);
  expect(soil.cohesion === undefined ? undefined : Math.round(soil.cohesion / psf)).toBe(cohesion);
  expect(soil.source).toContain("IBC table 1806.2");
});

test("'normal soil' has the bearing, lateral and cap of the TIA-222 family", () => {
  const soil = catalog.soils.find((row) => row.id === "normal-soil")!;
  const psf = LBF / 0.3048 ** 2;
  expect(
    [soil.bearing, soil.lateralPerDepth * 0.3048, soil.lateralCap!].map((value) => Math.round(value / psf)),
  ).toEqual([4000, 400, 4000]);
});

test("rock rods hold only where the soil is rock", () => {
  for (const soil of catalog.soils) expect(soil.groutBond !== undefined).toBe(soil.digging === "rock");
});

test("every row that no published table holds is marked invented", () => {
  const { sections, anchors, footings, antennas, pipes, prices } = catalog;
  for (const row of [...sections, ...anchors, ...footings, ...antennas, ...pipes])
    expect(row.invented, row.id).toBe(true);
  expect(prices.invented).toBe(true);
  for (const row of [...catalog.strand, ...catalog.soils]) expect(row.source, row.id).not.toBe("");
});

test("every factor of every rule set names its source", () => {
  const sources = (value: unknown): string[] =>
    typeof value === "object" && value !== null
      ? Object.entries(value).flatMap(([key, inner]) => (key === "source" ? [String(inner)] : sources(inner)))
      : [];
  for (const rules of catalog.rules) {
    const stated = sources(rules);
    expect(stated.length).toBe(rules.icedWind ? 27 : 26);
    for (const source of stated) expect(source.length).toBeGreaterThan(5);
  }
});

test("the rule sets hold the agreed factors", () => {
  const practice = catalog.rules.find(({ id }) => id === "practice")!;
  expect(practice.windFactor).toMatchObject({ service: 1, strength: 0.6 });
  expect(practice).toMatchObject({
    leg: { required: 1.67 },
    guy: { required: 2 },
    uplift: { required: 2 },
    overturning: { required: 1.5 },
    baseCompression: { required: 2.31 },
    tension: { least: 0.08, most: 0.15 },
    tilt: { most: 3 },
    upliftAngle: { degrees: 30 },
  });
});

test("the Eurocode rule set names the clause of every factor, and says where it is from memory", () => {
  const { id: _, name, steel, concrete, ...factors } = catalog.rules.find(({ id }) => id === "en")!;
  expect([name, steel]).toEqual(["Eurocodes, reliability class 2", "en1993"]);
  expect(concrete.source).toContain("from memory");
  for (const [key, value] of Object.entries(factors)) {
    if (typeof value !== "object" || key === "tilt" || key === "upliftAngle") continue;
    expect(value.source, key).toMatch(/EN 199\d|EN 1990/);
    expect(value.source, key).toContain("from memory");
  }
});

test("antennas state all three kinds of area", () => {
  expect(catalog.antennas.length).toBeGreaterThanOrEqual(10);
  expect(new Set(catalog.antennas.map(({ areaKind }) => areaKind)).size).toBe(3);
});

test("every size that may be chosen makes at least one block that fits the ground", () => {
  for (const row of catalog.anchors)
    if (row.kind === "deadman")
      expect(Math.max(...axisValues(row.depth))).toBeGreaterThan(Math.min(...axisValues(row.height)));
});
