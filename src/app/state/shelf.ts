import { type CatalogFile, type Table, tables } from "../../model/catalog.ts";
import { applyImport, type ImportPreview } from "../../model/csv.ts";
import type { StudyFile } from "../../model/study.ts";
import { book, change, type Fault, type Paper } from "./book.ts";
import { withValue } from "./path.ts";

type Row = { readonly id: string } & Readonly<Record<string, unknown>>;
type Rows = readonly Row[];

/** Rows of a table as written: the study's own take the place of the catalog's with the same key. */
const own = (study: StudyFile, table: Table): Rows =>
  ((study.catalog as Partial<Record<Table, Rows>> | undefined)?.[table] ?? []) as Rows;
const common = (catalog: CatalogFile, table: Table): Rows => catalog[table] as unknown as Rows;

/** Where a row is written, so that an edit lands in the file it came from. */
export const rowHome = (paper: Paper, table: Table, id: string): { inStudy: boolean; index: number } => {
  const index = own(paper.study, table).findIndex((row) => row.id === id);
  if (index >= 0) return { inStudy: true, index };
  return { inStudy: false, index: common(paper.catalog, table).findIndex((row) => row.id === id) };
};

export const writtenRow = (paper: Paper, table: Table, id: string): Row | undefined => {
  const { inStudy, index } = rowHome(paper, table, id);
  return inStudy ? own(paper.study, table)[index] : common(paper.catalog, table)[index];
};

const withRows = (paper: Paper, table: Table, inStudy: boolean, rows: Rows): Paper =>
  inStudy
    ? { ...paper, study: withValue(paper.study, ["catalog", table], rows) }
    : { ...paper, catalog: withValue(paper.catalog, [table], rows) };

const present = () => book.get().history.present;

export const editRow = (
  table: Table,
  id: string,
  path: readonly string[],
  value: unknown,
  did: string,
): readonly Fault[] => {
  const paper = present();
  const { inStudy, index } = rowHome(paper, table, id);
  const rows = inStudy ? own(paper.study, table) : common(paper.catalog, table);
  return change(withRows(paper, table, inStudy, withValue(rows, [index, ...path], value)), did);
};

/** A key that no row has yet: "3leg-9-2". */
export const freeId = (taken: readonly string[], wish: string): string => {
  for (let n = 2; ; n++) {
    const id = `${wish.replace(/-\d+$/, "")}-${n}`;
    if (!taken.includes(id)) return id;
  }
};

/** A copy goes below its original and is the user's own to edit. */
export const copyRow = (table: Table, id: string, did: string): { faults: readonly Fault[]; id: string } => {
  const paper = present();
  const row = writtenRow(paper, table, id);
  if (!row) return { faults: [], id };
  const ids = [...common(paper.catalog, table), ...own(paper.study, table)].map((one) => one.id);
  const copy = { ...row, id: freeId(ids, id) };
  const { inStudy, index } = rowHome(paper, table, id);
  const rows = [...(inStudy ? own(paper.study, table) : common(paper.catalog, table))];
  rows.splice(index + 1, 0, copy);
  return { faults: change(withRows(paper, table, inStudy, rows), did), id: copy.id };
};

export const deleteRow = (table: Table, id: string, did: string): readonly Fault[] => {
  const paper = present();
  const { inStudy } = rowHome(paper, table, id);
  const rows = (inStudy ? own(paper.study, table) : common(paper.catalog, table)).filter(
    (row) => row.id !== id,
  );
  return change(withRows(paper, table, inStudy, rows), did);
};

/** The catalog as it is written with the study's own rows in it: what a file is compared with, and written from. */
export const writtenCatalog = ({ study, catalog }: Paper): CatalogFile => {
  const whole: Record<string, unknown> = {
    ...catalog,
    ...(study.catalog?.prices && { prices: study.catalog.prices }),
  };
  for (const table of tables) {
    const rows = own(study, table);
    const base = common(catalog, table);
    whole[table] = [
      ...base.map((row) => rows.find((one) => one.id === row.id) ?? row),
      ...rows.filter((row) => !base.some((one) => one.id === row.id)),
    ];
  }
  return whole as CatalogFile;
};

const apart = (a: Readonly<Record<string, unknown>>, b: Readonly<Record<string, unknown>>): number =>
  Object.keys({ ...a, ...b }).filter((key) => JSON.stringify(a[key]) !== JSON.stringify(b[key])).length;
const byId = (rows: Rows) => Object.fromEntries(rows.map((row) => [row.id, row]));

/** In how many rows and prices two catalogs differ; a row that only one has counts. */
export const differences = (
  a: CatalogFile,
  b: CatalogFile,
): { readonly rows: number; readonly prices: number } => ({
  rows: tables.reduce((sum, table) => sum + apart(byId(common(a, table)), byId(common(b, table))), 0),
  prices: apart(a.prices, b.prices),
});

/** Rows that the study brought along are changed in the study, all others in the catalog. */
export const takeImport = (preview: ImportPreview): readonly Fault[] => {
  const paper = present();
  if (preview.table === "prices")
    return changePrices(
      [],
      preview.rows[0] ?? writtenPrices(paper),
      `took ${preview.changed.length} prices from a file`,
    );
  const { table } = preview;
  const brought = own(paper.study, table);
  const isOwn = (row: { readonly id?: unknown }) => brought.some((one) => one.id === row.id);
  const mine = preview.rows.filter(isOwn) as unknown as Rows;
  const study = mine.length
    ? withValue(
        paper.study,
        ["catalog", table],
        brought.map((row) => mine.find((one) => one.id === row.id) ?? row),
      )
    : paper.study;
  const rest = { ...preview, rows: preview.rows.filter((row) => !isOwn(row)) };
  return change(
    { study, catalog: applyImport(rest, paper.catalog) },
    `took ${preview.rows.length} rows into ${table}`,
  );
};

export const writtenPrices = ({ study, catalog }: Paper): CatalogFile["prices"] =>
  study.catalog?.prices ?? catalog.prices;
/** A study that brought a price book is priced by it, and an edit lands there. */
export const changePrices = (
  path: readonly (string | number)[],
  value: unknown,
  did: string,
): readonly Fault[] => {
  const paper = present();
  const next = withValue(writtenPrices(paper), path, value);
  return change(
    paper.study.catalog?.prices
      ? { ...paper, study: withValue(paper.study, ["catalog", "prices"], next) }
      : { ...paper, catalog: { ...paper.catalog, prices: next } },
    did,
  );
};
