import type { z } from "zod";
import type { Dimension } from "../quantity/dimensions.ts";
import type { Per } from "../quantity/price.ts";
import { pricesSchema, rowSchemas, type Table } from "./catalog.ts";
import { type Form, formsOf, keysOf, saidOf, stepInto } from "./known-keys.ts";

/** How the text of a cell is read. */
type CellKind =
  | { readonly kind: "text" | "number" | "numbers" | "boolean" | "pieces" }
  | { readonly kind: "quantity" | "sizes"; readonly dimension: Dimension }
  | { readonly kind: "price"; readonly per: Per }
  /** Things of several fields in one cell, each field by its name. */
  | { readonly kind: "fields"; readonly of: readonly Column[] };

/** A column of a table: where its value stands in a row, `leg.diameter` for a field of a field. */
export type Column = CellKind & { readonly name: string; readonly path: readonly string[] };

const isNumeric = (form: Form): boolean => {
  const { def } = form._zod;
  if (def.type === "literal") return def.values.every((value) => typeof value === "number");
  return def.type === "number";
};

const cellKind = (forms: readonly Form[]): CellKind | undefined => {
  const measured = forms.map(saidOf).find((said) => "x-dimension" in said);
  if (measured)
    return {
      kind: forms.length > 1 ? "sizes" : "quantity",
      dimension: measured["x-dimension"] as Dimension,
    };
  if (forms.every(isNumeric)) return { kind: "number" };
  if (forms.length > 1) return undefined;
  const per = saidOf(forms[0])["x-per"] as Per | undefined;
  if (per) return { kind: "price", per };
  const { def } = forms[0]._zod;
  if (def.type === "boolean") return { kind: "boolean" };
  if (def.type === "array") {
    if (formsOf(def.element).every(isNumeric)) return { kind: "numbers" };
    const of = columnsIn(def.element, []);
    return of.some(({ name }) => name === "have") ? { kind: "pieces" } : { kind: "fields", of };
  }
  return def.type === "string" || def.type === "enum" || def.type === "literal"
    ? { kind: "text" }
    : undefined;
};

const columnsIn = (schema: z.core.$ZodType, path: readonly string[]): Column[] => {
  const forms = formsOf(schema);
  const cell = cellKind(forms);
  if (cell) return [{ ...cell, name: path.join("."), path }];
  return forms.flatMap((form) =>
    keysOf(form).flatMap((key) => stepInto(form, key).flatMap((inner) => columnsIn(inner, [...path, key]))),
  );
};

const made = new Map<Table, readonly Column[]>();

/** Every column of a table, in the order of the schema; kinds of one table share theirs. */
export const tableColumns = (table: Table): readonly Column[] => {
  const known = made.get(table);
  if (known) return known;
  const byName = new Map<string, Column>();
  for (const column of columnsIn(rowSchemas[table], []))
    if (!byName.has(column.name)) byName.set(column.name, column);
  const columns = [...byName.values()];
  made.set(table, columns);
  return columns;
};

/** Every price and rate, in the order of the schema. */
export const priceColumns = (): readonly Column[] => columnsIn(pricesSchema, []);
