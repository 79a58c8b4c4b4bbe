import { expect, test } from "vitest";
import { exportCsv, previewImport } from "../../src/model/csv.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseCatalog } from "../../src/model/parse.ts";
import { barStockSchema, concreteSupplySchema } from "../../src/model/supply.ts";
import { FOOT } from "../support/us-units.ts";

const refusals = (read: { success: boolean; error?: { issues: { message: string }[] } }): string =>
  (read.error?.issues ?? []).map(({ message }) => message).join("; ");

test("barStock takes a price by mass for every size, or a price a bar for one", () => {
  const POUND = 0.45359237;
  expect(
    barStockSchema.parse([
      { length: "20 ft", perMass: "$1.05/lb" },
      { length: "20 ft", bar: "#5", price: "$22" },
    ]),
  ).toEqual([
    { length: expect.closeTo(20 * FOOT, 9), perMass: expect.closeTo(1.05 / POUND, 9) },
    { length: expect.closeTo(20 * FOOT, 9), bar: "#5", price: 22 },
  ]);
  const refused = (row: object) => refusals(barStockSchema.safeParse([{ length: "20 ft", ...row }]));
  expect(refused({})).toMatch(/found no price, expected either "perMass", or "bar" and its "price"/);
  expect(refused({ perMass: "$1/lb", bar: "#4", price: "$9" })).toMatch(/found two prices/);
  expect(refused({ price: "$9" })).toMatch(/expected the size that a "price" a bar is for/);
});

test("concreteSupply takes bags, a truck or both, and a short load no larger than the largest", () => {
  const truck = { price: "$178/yd3", shortLoadBelow: "4 yd3", shortLoadCharge: "$140", largest: "10 yd3" };
  const refused = (supply: object) => refusals(concreteSupplySchema.safeParse(supply));
  expect(refused({ truck })).toBe("");
  expect(refused({ bag: { yield: "0.60 ft3", price: "$6.40" } })).toBe("");
  expect(refused({})).toMatch(/found neither, expected a "bag", a "truck" or both/);
  expect(refused({ truck: { ...truck, shortLoadBelow: "11 yd3" } })).toMatch(/no larger than the largest/);
});

test("reels go out to a CSV file as one cell and come back as they were", () => {
  const read = parseCatalog(defaultCatalog);
  if (!read.ok) throw new Error(read.errors[0].message);
  const strand = read.catalog.strand.map((row) =>
    row.id === "ehs-1-8" ? { ...row, reels: [{ length: 250 * FOOT, price: 60, have: 2 }] } : row,
  );
  const text = exportCsv("strand", { ...read.catalog, strand }, "us");
  expect(text).toContain("250 ft: $60: 2");
  const preview = previewImport("strand", text, defaultCatalog);
  expect(preview.refused).toEqual([]);
  expect(preview.changed).toEqual([
    { row: expect.any(Number), id: "ehs-1-8", field: "reels", found: "250 ft: $60: 2", was: "" },
  ]);
});
