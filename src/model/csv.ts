import Papa from "papaparse";
import type { UnitSystem } from "../quantity/dimensions.ts";
import { type Catalog, type CatalogFile, rowSchemas, type Table } from "./catalog.ts";
import { readCell, writeCell } from "./csv-cell.ts";
import { type Column, tableColumns } from "./csv-columns.ts";
import { valueAt } from "./input-error.ts";
import { describeIssues } from "./issues.ts";
import { nearest } from "./nearest.ts";
import { parseCatalog } from "./parse.ts";

export type WrittenRow = Readonly<Record<string, unknown>>;

/** A cell or a row of the file that can't be taken. Rows are numbered as a spreadsheet does: the header is 1. */
export interface RefusedCell {
  readonly row: number;
  readonly column: string;
  readonly found: string;
  readonly expected: string;
  readonly message: string;
}

/** What a file would do to a table. Nothing is done until `applyImport`. */
export interface ImportPreview {
  readonly table: Table | "prices";
  readonly added: readonly { readonly row: number; readonly id: string }[];
  readonly changed: readonly {
    readonly row: number;
    readonly id: string;
    readonly field: string;
    readonly found: string;
    readonly was: string;
  }[];
  readonly refused: readonly RefusedCell[];
  /** Rows of the file that say what the catalog says already. */
  readonly unchanged: number;
  /** Rows to take, as a catalog file has them. Refused rows are not among them. */
  readonly rows: readonly WrittenRow[];
}

export const MOST_CHARACTERS = 5_000_000;

/** A table of the catalog as CSV text, in US or SI units; reads back without loss. */
export const exportCsv = (table: Table, catalog: Catalog, system: UnitSystem): string => {
  const columns = tableColumns(table);
  const fields = columns.map((column) => column.name);
  const data = catalog[table].map((row) =>
    columns.map((column) => writeCell(column, valueAt(row, column.path), system, catalog.prices.currency)),
  );
  return Papa.unparse({ fields, data }, { newline: "\n" });
};

/** A copy of the row with a value put in at a path, or taken away where it is undefined. */
export const withField = (row: WrittenRow, [key, ...rest]: readonly string[], value: unknown): WrittenRow => {
  const inner = row[key];
  const next =
    rest.length === 0
      ? value
      : withField(typeof inner === "object" && inner !== null ? (inner as WrittenRow) : {}, rest, value);
  const { [key]: _, ...others } = row;
  const empty = next === undefined || (rest.length > 0 && Object.keys(next as object).length === 0);
  return empty ? others : { ...others, [key]: next };
};

// the header holds no delimiter of its own, so it tells which one the file uses
const delimiterOf = (text: string): string => {
  const header = text.slice(0, text.search(/\r|\n|$/));
  return ["\t", ",", ";"].find((delimiter) => header.includes(delimiter)) ?? ",";
};

export const columnOfPath = (columns: readonly Column[], path: string): string =>
  columns
    .map((column) => column.name)
    .filter((name) => path === name || path.startsWith(`${name}.`) || path.startsWith(`${name}[`))
    .at(0) ?? path;

export const refusal = (row: number, column: string, found: string, expected: string): RefusedCell => ({
  row,
  column,
  found,
  expected,
  message: `found ${found}, expected ${expected}`,
});

const headerRefusals = (names: readonly string[], columns: readonly Column[]): RefusedCell[] => {
  const known = columns.map((column) => column.name);
  const refused = names
    .filter((name) => !known.includes(name))
    .map((name) =>
      refusal(
        1,
        name,
        `column "${name}"`,
        `a column of this table; the nearest is "${nearest(name, known)}"`,
      ),
    );
  return names.includes("id")
    ? refused
    : [...refused, refusal(1, "id", "no column of keys", 'a column "id"')];
};

/** A CSV file taken apart; lines that are blank are left out. */
export const linesOf = (text: string) => {
  const plain = text.startsWith("\ufeff") ? text.slice(1) : text;
  const [names = [], ...lines] = Papa.parse<string[]>(plain, { delimiter: delimiterOf(plain) }).data;
  return {
    header: names.map((name) => name.trim()),
    lines: lines
      .map((cells, index) => ({ row: index + 2, cells: cells.map((cell) => cell.trim()) }))
      .filter(({ cells }) => cells.some((cell) => cell !== "")),
  };
};

/** What is wrong with the shape of a line: its number of cells, or a key that stood before. */
const lineRefusal = (
  row: number,
  cells: readonly string[],
  header: readonly string[],
  seen: Map<string, number>,
): RefusedCell | undefined => {
  if (cells.length !== header.length)
    return refusal(row, "", `${cells.length} cells`, `${header.length} cells, as the header has`);
  const id = cells[header.indexOf("id")];
  const earlier = seen.get(id);
  if (earlier !== undefined)
    return refusal(row, "id", `"${id}" a second time (row ${earlier} has it)`, "a key of its own");
  seen.set(id, row);
  return undefined;
};

/** Reads a CSV file against a catalog and says what it would change; changes nothing. */
export const previewImport = (
  table: Table,
  text: string,
  catalog: CatalogFile | Catalog,
  system: UnitSystem = "us",
): ImportPreview => {
  const known = parseCatalog(catalog);
  if (!known.ok)
    throw new Error(`previewImport: expected a catalog that can be read; ${known.errors[0].message}`);
  const columns = tableColumns(table);
  const added: ImportPreview["added"][number][] = [];
  const changed: ImportPreview["changed"][number][] = [];
  const refused: RefusedCell[] = [];
  const rows: WrittenRow[] = [];
  let unchanged = 0;
  const preview = () => ({ table, added, changed, refused, unchanged, rows });

  if (text.length > MOST_CHARACTERS) {
    refused.push(refusal(1, "", `a file of ${(text.length / 1e6).toFixed(1)} MB`, "a file of 5 MB or less"));
    return preview();
  }
  const { header, lines } = linesOf(text);
  refused.push(...headerRefusals(header, columns));
  if (refused.length) return preview();

  const written = new Map((catalog[table] as unknown as readonly WrittenRow[]).map((row) => [row.id, row]));
  const current = new Map<unknown, object>(known.catalog[table].map((row) => [row.id, row]));
  const asText = (row: object): string[] =>
    columns.map((column) =>
      writeCell(column, valueAt(row, column.path), system, known.catalog.prices.currency),
    );
  // a column that the file leaves out keeps what the catalog has; an empty cell takes the value away
  const merged = (cells: readonly string[]): WrittenRow =>
    columns.reduce<WrittenRow>(
      (whole, column) => {
        const cell = cells[header.indexOf(column.name)];
        if (cell === undefined) return whole;
        return withField(whole, column.path, cell === "" ? undefined : readCell(column, cell));
      },
      written.get(cells[header.indexOf("id")]) ?? {},
    );

  const seen = new Map<string, number>();
  for (const { row, cells } of lines) {
    const misshapen = lineRefusal(row, cells, header, seen);
    if (misshapen) {
      refused.push(misshapen);
      continue;
    }
    const next = merged(cells);
    const read = rowSchemas[table].safeParse(next);
    if (!read.success) {
      for (const { path, found, expected, message } of describeIssues(
        read.error.issues,
        next,
        rowSchemas[table],
      ))
        refused.push({ row, column: columnOfPath(columns, path), found, expected, message });
      continue;
    }
    const { id } = read.data;
    const before = current.get(id);
    if (!before) {
      added.push({ row, id });
      rows.push(next);
      continue;
    }
    const was = asText(before);
    const differing = asText(read.data).flatMap((found, at) =>
      found === was[at] ? [] : [{ row, id, field: columns[at].name, found, was: was[at] }],
    );
    changed.push(...differing);
    if (differing.length) rows.push(next);
    else unchanged++;
  }
  return preview();
};

/** The catalog with the rows of a preview in it, known ids in their place and new ones at the end. */
export const applyImport = (preview: ImportPreview, catalog: CatalogFile | Catalog): CatalogFile => {
  if (preview.table === "prices")
    return { ...catalog, prices: preview.rows[0] ?? catalog.prices } as CatalogFile;
  const taken = new Map(preview.rows.map((row) => [row.id, row]));
  const table = catalog[preview.table] as unknown as readonly WrittenRow[];
  const ids = new Set(table.map((row) => row.id));
  const merged = [
    ...table.map((row) => taken.get(row.id) ?? row),
    ...preview.rows.filter((row) => !ids.has(row.id)),
  ];
  return { ...catalog, [preview.table]: merged } as CatalogFile;
};
