import { z } from "zod";
import { catalogSchema, pricesSchema, rowSchemas, type Table } from "./catalog.ts";
import { designSchema } from "./design.ts";
import { studySchema } from "./study.ts";

/** As much of JSON Schema as zod writes here. */
export interface JsonSchema {
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly items?: JsonSchema | boolean;
  readonly prefixItems?: readonly JsonSchema[];
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly propertyNames?: JsonSchema;
  readonly additionalProperties?: JsonSchema | boolean;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly default?: unknown;
  readonly description?: string;
  /** What a quantity measures, a `Dimension`. */
  readonly "x-dimension"?: string;
  /** What a price is for, a `Per`. */
  readonly "x-per"?: string;
}

const asWritten = (schema: z.ZodType, title: string): JsonSchema =>
  ({ title, ...z.toJSONSchema(schema, { io: "input" }) }) as JsonSchema;

const cached = (make: () => JsonSchema): (() => JsonSchema) => {
  let made: JsonSchema | undefined;
  return () => (made ??= make());
};

export const studyJsonSchema = cached(() => asWritten(studySchema, "Mastwright study"));
export const designJsonSchema = cached(() => asWritten(designSchema, "Mastwright design"));
export const catalogJsonSchema = cached(() => asWritten(catalogSchema, "Mastwright catalog"));
export const rowJsonSchema = (table: Table): JsonSchema => asWritten(rowSchemas[table], table);

export const pricesJsonSchema = cached(() => asWritten(pricesSchema, "prices"));

/** JSON Schemas (draft 2020-12) of the files as they are written, for editors and for docs/schema. */
export const jsonSchemas = (): { study: JsonSchema; design: JsonSchema; catalog: JsonSchema } => ({
  study: studyJsonSchema(),
  design: designJsonSchema(),
  catalog: catalogJsonSchema(),
});

const branches = (schema: JsonSchema): readonly JsonSchema[] => {
  const inner = schema.anyOf ?? schema.oneOf;
  return inner ? inner.flatMap(branches) : [schema];
};

const step = (schema: JsonSchema, key: PropertyKey): readonly JsonSchema[] => {
  const next =
    typeof key === "number"
      ? (schema.prefixItems?.[key] ?? schema.items)
      : (schema.properties?.[String(key)] ?? schema.additionalProperties);
  return typeof next === "object" ? branches(next) : [];
};

/** Every key known at a path, over all forms that the value there may take. */
export const keysAt = (schema: JsonSchema, path: readonly PropertyKey[]): string[] => {
  const ends = path.reduce<readonly JsonSchema[]>(
    (reached, key) => reached.flatMap((one) => step(one, key)),
    branches(schema),
  );
  const keys = ends.flatMap((end) => [
    ...Object.keys(end.properties ?? {}),
    ...(end.propertyNames?.enum ?? []),
  ]);
  return [...new Set(keys.map(String))];
};
