import type { Dimension } from "../quantity/dimensions.ts";
import type { Per } from "../quantity/price.ts";
import type { Table } from "./catalog.ts";
import { type JsonSchema, pricesJsonSchema, rowJsonSchema } from "./json-schema.ts";

/** How the text of a cell is read. */
type CellKind =
  | { readonly kind: "text" | "number" | "numbers" | "boolean" | "pieces" }
  | { readonly kind: "quantity" | "sizes"; readonly dimension: Dimension }
  | { readonly kind: "price"; readonly per: Per }
  /** Things of several fields in one cell, each field by its name. */
  | { readonly kind: "fields"; readonly of: readonly Column[] };

/** A column of a table: where its value stands in a row, `leg.diameter` for a field of a field. */
export type Column = CellKind & { readonly name: string; readonly path: readonly string[] };

const branchesOf = (schema: JsonSchema): readonly JsonSchema[] => schema.anyOf ?? schema.oneOf ?? [schema];

const isNumeric = (schema: JsonSchema): boolean =>
  schema.type === "number" || schema.type === "integer" || typeof schema.const === "number";

const cellKind = (schema: JsonSchema): CellKind | undefined => {
  const branches = branchesOf(schema);
  const dimension = branches.find((branch) => branch["x-dimension"])?.["x-dimension"] as
    | Dimension
    | undefined;
  if (dimension) return { kind: branches.length > 1 ? "sizes" : "quantity", dimension };
  if (schema["x-per"]) return { kind: "price", per: schema["x-per"] as Per };
  if (schema.type === "boolean") return { kind: "boolean" };
  if (schema.type === "array") {
    const items = schema.items as JsonSchema;
    if (isNumeric(items)) return { kind: "numbers" };
    const of = columnsIn(items, []);
    return of.some(({ name }) => name === "have") ? { kind: "pieces" } : { kind: "fields", of };
  }
  if (branches.every(isNumeric)) return { kind: "number" };
  return schema.type === "string" ? { kind: "text" } : undefined;
};

const columnsIn = (schema: JsonSchema, path: readonly string[]): Column[] => {
  const cell = cellKind(schema);
  if (cell) return [{ ...cell, name: path.join("."), path }];
  const keyed = (schema.propertyNames?.enum ?? []).map(String);
  const values = schema.additionalProperties;
  return [
    ...branchesOf(schema).flatMap((branch) =>
      Object.entries(branch.properties ?? {}).flatMap(([key, inner]) => columnsIn(inner, [...path, key])),
    ),
    ...keyed.flatMap((key) => (typeof values === "object" ? columnsIn(values, [...path, key]) : [])),
  ];
};

const made = new Map<Table, readonly Column[]>();

/** Every column of a table, in the order of the schema; kinds of one table share theirs. */
export const tableColumns = (table: Table): readonly Column[] => {
  const known = made.get(table);
  if (known) return known;
  const byName = new Map<string, Column>();
  for (const column of columnsIn(rowJsonSchema(table), []))
    if (!byName.has(column.name)) byName.set(column.name, column);
  const columns = [...byName.values()];
  made.set(table, columns);
  return columns;
};

/** Every price and rate, in the order of the schema. */
export const priceColumns = (): readonly Column[] => columnsIn(pricesJsonSchema(), []);
