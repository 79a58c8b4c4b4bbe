import { expect, test } from "vitest";
import { applyImport } from "../../src/model/csv.ts";
import { exportPricesCsv, previewPrices } from "../../src/model/csv-prices.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseCatalog } from "../../src/model/parse.ts";
import { readCatalog } from "./support.ts";

const { prices } = readCatalog();

test.each(["us", "si"] as const)(
  "the price book written in %s units and read back changes nothing",
  (system) => {
    const preview = previewPrices(exportPricesCsv(prices, system), "csv", defaultCatalog.prices, system);
    expect(preview).toMatchObject({ changed: [], refused: [], rows: [] });
    expect(preview.unchanged).toBeGreaterThan(15);
  },
);

test("prices taken from a file are in the catalog, and those that it does not name stay", () => {
  const preview = previewPrices(
    'for,price\npermit,$120\nbarStock,"length=20 ft, perMass=$1.20/lb"\nconcreteSupply.bag.price,$7\n',
    "csv",
    defaultCatalog.prices,
  );
  expect(preview.refused).toEqual([]);
  expect(preview.changed.map(({ row, field, found }) => [row, field, found])).toEqual([
    [2, "permit", "$120"],
    [3, "barStock", "length=20 ft, perMass=$1.2/lb"],
    [4, "concreteSupply.bag.price", "$7"],
  ]);
  const read = parseCatalog(applyImport(preview, defaultCatalog));
  if (!read.ok) throw new Error(read.errors[0].message);
  expect(read.catalog.prices).toMatchObject({ permit: 120, barStock: [{}], concrete: prices.concrete });
  expect(read.catalog.prices.concreteSupply?.truck).toEqual(prices.concreteSupply?.truck);
});

test("previewPrices() refuses by row, with what was found and expected, and takes the rest", () => {
  const preview = previewPrices(
    "for,price\nconcrete,$190/yd3\npermitt,$1\nforms,cheap\npermit,$90\npermit,$95\nrebar\n",
    "csv",
    defaultCatalog.prices,
  );
  expect(preview.refused.map(({ row }) => row).sort()).toEqual([3, 4, 6, 7]);
  expect(preview.refused.find(({ row }) => row === 3)?.expected).toMatch(/nearest is "permit"/);
  expect(preview.refused.find(({ row }) => row === 4)).toMatchObject({ column: "forms", found: '"cheap"' });
  expect(preview.changed.map(({ field }) => field)).toEqual(["concrete", "permit"]);
  expect(previewPrices("a;b\n1;2", "csv", defaultCatalog.prices).refused[0].expected).toMatch(/"for, price"/);
});

test("an emptied price that must be there is refused; concrete by the bag alone can be", () => {
  const refused = (line: string) =>
    previewPrices(`for,price\n${line}\n`, "csv", defaultCatalog.prices).refused.map(({ column }) => column);
  expect(refused("concrete,")).toEqual(["concrete"]);
  const noTruck = ["price", "shortLoadBelow", "shortLoadCharge", "largest"]
    .map((name) => `concreteSupply.truck.${name},`)
    .join("\n");
  expect(refused(noTruck)).toEqual([]);
});

test("prices as JSON, alone or in a catalog, are looked at in the same way", () => {
  for (const file of [{ permit: "$77" }, { prices: { permit: "$77" } }]) {
    const preview = previewPrices(JSON.stringify(file), "json", defaultCatalog.prices);
    expect(preview.changed).toMatchObject([{ row: 1, field: "permit", found: "$77", was: "$85" }]);
  }
  const bad = previewPrices('{"permit": "lots", "beer": "$1"}', "json", defaultCatalog.prices);
  expect(bad.refused.map(({ row }) => row).sort()).toEqual([1, 2]);
});
