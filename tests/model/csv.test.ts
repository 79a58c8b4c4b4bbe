import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tables } from "../../src/model/catalog.ts";
import { applyImport, exportCsv, previewImport } from "../../src/model/csv.ts";
import { tableColumns } from "../../src/model/csv-columns.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseCatalog } from "../../src/model/parse.ts";
import { readCatalog } from "./support.ts";

const catalog = readCatalog();

describe.each(tables)("table %s", (table) => {
  test.each(["us", "si"] as const)("written in %s units and read back changes nothing", (system) => {
    const preview = previewImport(table, exportCsv(table, catalog, system), catalog);
    expect(preview).toMatchObject({ added: [], changed: [], refused: [], rows: [] });
    expect(preview.unchanged).toBe(catalog[table].length);
  });

  test("read into a catalog without it gives the same rows", () => {
    const emptied = { ...catalog, [table]: [] };
    const preview = previewImport(table, exportCsv(table, catalog, "us"), emptied);
    expect(preview.added.length).toBe(catalog[table].length);
    const read = parseCatalog(applyImport(preview, emptied));
    expect(read.ok && read.catalog[table]).toEqual(catalog[table]);
  });
});

test("tableColumns flattens fields of fields with dots", () => {
  expect(tableColumns("sections").map(({ name }) => name)).toEqual(
    expect.arrayContaining(["id", "leg.diameter", "bracing.member.wall", "pieces"]),
  );
  expect(tableColumns("anchors").map(({ name }) => name)).toEqual(
    expect.arrayContaining(["holds.firm", "depth", "rod"]),
  );
});

test("exportCsv writes the pieces of a section as length, price and number", () => {
  expect(exportCsv("sections", catalog, "us")).toContain("10 ft: $218; 5 ft: $134");
  expect(exportCsv("sections", catalog, "us")).toContain("10 ft: $96: 9");
});

const file = `id,leg.wall,pieces
3leg-9,0.083 in,10 ft: $225; 5 ft: $134
3leg-10.5,"0,101 in",10 ft: $261; 5 ft: $158
3leg-13,1 in,10 ft: $302; 5 ft: $182
3leg-9-used,0.083 in,10 ft: $96: 9
3leg-9,0.083 in,10 ft: $1
`;

test("previewImport lists rows added, changed and refused, with row, column, found and expected", () => {
  const preview = previewImport("sections", file, catalog);
  expect(preview.changed).toEqual([
    {
      row: 2,
      id: "3leg-9",
      field: "pieces",
      found: "10 ft: $225; 5 ft: $134",
      was: "10 ft: $218; 5 ft: $134",
    },
  ]);
  expect(preview.refused).toMatchObject([
    { row: 3, column: "leg.wall", found: '"0,101 in"', expected: 'a length (in, ft, mm or m), as "7/8 in"' },
    { row: 4, column: "leg.wall", found: '"1 in"', expected: "a wall of half the diameter at most" },
    { row: 6, column: "id", found: '"3leg-9" a second time (row 2 has it)', expected: "a key of its own" },
  ]);
  expect(preview.unchanged).toBe(1);
  expect(preview.rows.map(({ id }) => id)).toEqual(["3leg-9"]);
});

test("nothing is applied until applyImport, which leaves the catalog it was given as it was", () => {
  const before = structuredClone(defaultCatalog);
  const preview = previewImport("sections", file, defaultCatalog);
  const after = applyImport(preview, defaultCatalog);
  expect(defaultCatalog).toEqual(before);
  expect(after.sections.map(({ id }) => id)).toEqual(before.sections.map(({ id }) => id));
  // what the file doesn't name stays as it was written
  expect(after.sections[1]).toMatchObject({
    id: "3leg-9",
    leg: { diameter: "7/8 in" },
    pieces: [{ price: "$225" }, {}],
  });
});

test("an empty cell takes an optional value away, and is refused where the value is needed", () => {
  const preview = previewImport(
    "sections",
    "id,measuredWall,yield\n3leg-9-used,,46 ksi\n3leg-13,,\n",
    catalog,
  );
  expect(preview.changed).toMatchObject([{ field: "measuredWall", found: "", was: "0.071 in" }]);
  expect(preview.refused).toMatchObject([{ row: 3, column: "yield", found: "nothing" }]);
});

test("a tube becomes an angle, its bracing crosses, and a seller's rating comes with it", () => {
  const head =
    "id,leg.diameter,leg.wall,leg.angle,leg.thickness,bracing.pattern,bracing.horizontal.diameter,bracing.joined,tubing,rated.moment,rated.source";
  const preview = previewImport(
    "sections",
    `${head}\n4leg-16,,,2 in,3/16 in,x,3/8 in,yes,hot-finished,9000 lbf ft,a data sheet\n`,
    catalog,
  );
  expect(preview.refused).toEqual([]);
  const after = parseCatalog(applyImport(preview, defaultCatalog));
  if (!after.ok) throw new Error(after.errors[0].message);
  const row = after.catalog.sections.find(({ id }) => id === "4leg-16")!;
  expect(row.leg).toEqual({ angle: expect.closeTo(0.0508, 9), thickness: expect.closeTo(0.0047625, 9) });
  expect(row.bracing).toMatchObject({ pattern: "x", joined: true, horizontal: { diameter: 0.009525 } });
  expect([row.tubing, row.rated?.source]).toEqual(["hot-finished", "a data sheet"]);
  expect(row.rated?.moment).toBeCloseTo(9000 * 4.4482216152605 * 0.3048, 6);
  // and back to a table without loss
  const again = previewImport("sections", exportCsv("sections", after.catalog, "us"), after.catalog);
  expect([again.changed, again.refused, again.unchanged]).toEqual([[], [], after.catalog.sections.length]);
});

test("a column that the table doesn't have refuses the file by its header", () => {
  expect(previewImport("sections", "idd,leg.wal\n3leg-9,1\n", catalog).refused).toMatchObject([
    { row: 1, column: "idd", expected: 'a column of this table; the nearest is "id"' },
    { row: 1, column: "leg.wal", expected: 'a column of this table; the nearest is "leg.wall"' },
    { row: 1, column: "id", expected: 'a column "id"' },
  ]);
});

test("semicolons and tabs between cells are understood, and blank lines passed over", () => {
  for (const delimiter of [";", "\t"]) {
    const text = `id${delimiter}price\r\npipe-8${delimiter}$60\r\n\r\n`;
    expect(previewImport("pipes", text, catalog)).toMatchObject({
      changed: [{ row: 2, id: "pipe-8", field: "price", found: "$60", was: "$58" }],
      refused: [],
    });
  }
});

test("a line with more or fewer cells than the header is refused by its number", () => {
  expect(previewImport("pipes", "id,price\npipe-8\n", catalog).refused).toMatchObject([
    { row: 2, found: "1 cells", expected: "2 cells, as the header has" },
  ]);
});

test("previewImport never throws, whatever the file", () => {
  fc.assert(
    fc.property(fc.constantFrom(...tables), fc.string(), (table, text) => {
      const preview = previewImport(table, text, catalog);
      expect(preview.added.length + preview.changed.length).toBe(0);
      const headed = previewImport(table, `id,name\n${text}`, catalog);
      expect(headed.rows.length).toBe(0);
    }),
    { numRuns: 300, seed: 9 },
  );
});
