import type { CatalogFile, Table } from "../../model/catalog.ts";
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

export const takeImport = (preview: ImportPreview): readonly Fault[] => {
  const paper = present();
  return change(
    { ...paper, catalog: applyImport(preview, paper.catalog) },
    `took ${preview.rows.length} rows into ${preview.table}`,
  );
};
