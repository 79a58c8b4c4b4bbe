import { z } from "zod";
import { catalogSchema } from "./catalog.ts";
import { designSchema } from "./design.ts";
import { studySchema } from "./study.ts";

/** What zod writes: a JSON Schema, of which nothing here reads a part. */
type JsonSchema = Readonly<Record<string, unknown>>;

const asWritten = (schema: z.ZodType, title: string): JsonSchema => ({
  title,
  ...z.toJSONSchema(schema, { io: "input" }),
});

/** JSON Schemas (draft 2020-12) of the files as they are written, for editors and for docs/schema. */
export const jsonSchemas = (): { study: JsonSchema; design: JsonSchema; catalog: JsonSchema } => ({
  study: asWritten(studySchema, "Mastwright study"),
  design: asWritten(designSchema, "Mastwright design"),
  catalog: asWritten(catalogSchema, "Mastwright catalog"),
});
