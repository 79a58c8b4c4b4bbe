import { type CatalogFile, rowSchemas, type Table } from "../../model/catalog.ts";
import type { ImportPreview } from "../../model/csv.ts";

type Row = Readonly<Record<string, unknown>>;

/** A JSON list of rows, judged row by row like a CSV file, and told in the same shape. */
export const jsonPreview = (table: Table, text: string, catalog: CatalogFile): ImportPreview => {
  const data: unknown = JSON.parse(text);
  const list = Array.isArray(data) ? data : (data as Record<string, unknown> | null)?.[table];
  if (!Array.isArray(list)) throw new Error(`expected a list of rows, or an object with “${table}”`);
  const known = new Map((catalog[table] as readonly unknown[]).map((row) => [(row as Row).id, row as Row]));
  const added: ImportPreview["added"][number][] = [];
  const changed: ImportPreview["changed"][number][] = [];
  const refused: ImportPreview["refused"][number][] = [];
  const rows: Row[] = [];
  let unchanged = 0;
  list.forEach((candidate: unknown, index) => {
    const row = index + 1;
    const read = rowSchemas[table].safeParse(candidate);
    if (!read.success) {
      for (const issue of read.error.issues.slice(0, 3))
        refused.push({
          row,
          column: issue.path.join("."),
          found: JSON.stringify(at(candidate, issue.path)) ?? "nothing",
          expected: issue.message,
          message: issue.message,
        });
      return;
    }
    const next = candidate as Row;
    const before = known.get(read.data.id);
    if (!before) {
      added.push({ row, id: read.data.id });
      rows.push(next);
      return;
    }
    const fields = Object.keys({ ...before, ...next }).filter(
      (field) => JSON.stringify(before[field]) !== JSON.stringify(next[field]),
    );
    for (const field of fields)
      changed.push({
        row,
        id: read.data.id,
        field,
        found: JSON.stringify(next[field]) ?? "nothing",
        was: JSON.stringify(before[field]) ?? "nothing",
      });
    if (fields.length) rows.push(next);
    else unchanged++;
  });
  return { table, added, changed, refused, unchanged, rows };
};

const at = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((part, key) => (part as Record<PropertyKey, unknown> | undefined)?.[key], value);
