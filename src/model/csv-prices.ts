import Papa from "papaparse";
import type { UnitSystem } from "../quantity/dimensions.ts";
import { type Catalog, type CatalogFile, pricesSchema } from "./catalog.ts";
import {
  columnOfPath,
  type ImportPreview,
  linesOf,
  MOST_CHARACTERS,
  type RefusedCell,
  refusal,
  type WrittenRow,
  withField,
} from "./csv.ts";
import { readCell, writeCell } from "./csv-cell.ts";
import { type Column, priceColumns } from "./csv-columns.ts";
import { valueAt } from "./input-error.ts";
import { describeIssues } from "./issues.ts";
import { nearest } from "./nearest.ts";

const HEADER = ["for", "price"];

/** The price book as CSV text, a price a line, in US or SI units; reads back without loss. */
export const exportPricesCsv = (prices: Catalog["prices"], system: UnitSystem): string =>
  Papa.unparse(
    {
      fields: HEADER,
      data: priceColumns().map((column) => [
        column.name,
        writeCell(column, valueAt(prices, column.path), system, prices.currency),
      ]),
    },
    { newline: "\n" },
  );

interface Line {
  readonly row: number;
  readonly column: Column;
  /** Undefined takes a price away. */
  readonly value: unknown;
}

/** Lines of a CSV file, a price each. */
const csvLines = (text: string, refused: RefusedCell[]): Line[] => {
  if (text.length > MOST_CHARACTERS) {
    refused.push(refusal(1, "", `a file of ${(text.length / 1e6).toFixed(1)} MB`, "a file of 5 MB or less"));
    return [];
  }
  const { header, lines } = linesOf(text);
  if (header.join() !== HEADER.join()) {
    refused.push(refusal(1, "", `columns "${header.join(", ")}"`, `the columns "${HEADER.join(", ")}"`));
    return [];
  }
  const columns = priceColumns();
  const names = columns.map(({ name }) => name);
  const seen = new Map<string, number>();
  return lines.flatMap(({ row, cells }) => {
    const [name, cell] = cells;
    const column = columns.find((one) => one.name === name);
    const earlier = seen.get(name);
    if (cells.length !== 2)
      refused.push(refusal(row, "", `${cells.length} cells`, "2 cells, as the header has"));
    else if (!column)
      refused.push(
        refusal(row, "for", `"${name}"`, `something priced; the nearest is "${nearest(name, names)}"`),
      );
    else if (earlier !== undefined)
      refused.push(refusal(row, "for", `"${name}" a second time (row ${earlier} has it)`, "each price once"));
    else {
      seen.set(name, row);
      return [{ row, column, value: cell === "" ? undefined : readCell(column, cell) }];
    }
    return [];
  });
};

/** Prices as a JSON object; what it doesn't name stays. Rows are numbered by its entries. */
const jsonLines = (text: string, refused: RefusedCell[]): Line[] => {
  const data: unknown = JSON.parse(text);
  const prices = (data as { prices?: unknown } | null)?.prices ?? data;
  if (typeof prices !== "object" || prices === null || Array.isArray(prices)) {
    refused.push(refusal(1, "", "no prices", 'an object of prices, or one with "prices"'));
    return [];
  }
  const columns = priceColumns();
  const names = columns.map(({ name }) => name);
  return Object.keys(prices).flatMap((key, at) => {
    const own = columns.filter(({ path }) => path[0] === key);
    if (own.length === 0)
      refused.push(
        refusal(at + 1, key, `"${key}"`, `something priced; the nearest is "${nearest(key, names)}"`),
      );
    return own.map((column) => ({ row: at + 1, column, value: valueAt(prices, column.path) }));
  });
};

/** Reads a file of prices against the book and says what it would change; changes nothing. */
export const previewPrices = (
  text: string,
  format: "csv" | "json",
  prices: CatalogFile["prices"],
  system: UnitSystem = "us",
): ImportPreview => {
  const refused: RefusedCell[] = [];
  const lines = format === "csv" ? csvLines(text, refused) : jsonLines(text, refused);
  const known = pricesSchema.parse(prices);
  const put = (book: WrittenRow, { column, value }: Line): WrittenRow => withField(book, column.path, value);
  const judge = (book: WrittenRow) => {
    const read = pricesSchema.safeParse(book);
    return read.success ? [] : describeIssues(read.error.issues, book, pricesSchema);
  };
  const written = prices as WrittenRow;
  const names = priceColumns();
  const faults = judge(lines.reduce(put, written)).map(({ path, found, expected, message }) => {
    const column = columnOfPath(names, path);
    const line = lines.find((one) => one.column.name === column || one.column.name.startsWith(`${path}.`));
    return { row: line?.row ?? 1, column: column || "price", found, expected, message };
  });
  refused.push(...faults);
  const bad = new Set(faults.map(({ row }) => row));
  const good = lines.filter(({ row }) => !bad.has(row));
  const next = good.reduce(put, written);
  const none = { table: "prices" as const, added: [], changed: [], refused, unchanged: 0, rows: [] };
  // what is left over may not stand without what was refused
  if (judge(next).length > 0) return none;
  const read = pricesSchema.parse(next);
  const asText = (book: Catalog["prices"], column: Column) =>
    writeCell(column, valueAt(book, column.path), system, book.currency);
  const changed = good.flatMap(({ row, column }) => {
    const [found, was] = [asText(read, column), asText(known, column)];
    return found === was ? [] : [{ row, id: column.name, field: column.name, found, was }];
  });
  return { ...none, changed, unchanged: good.length - changed.length, rows: changed.length ? [next] : [] };
};
