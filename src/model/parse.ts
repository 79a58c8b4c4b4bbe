import type { z } from "zod";
import { type Catalog, type CatalogFile, catalogSchema, mergedCatalog } from "./catalog.ts";
import { type Design, designSchema } from "./design.ts";
import type { Refused } from "./input-error.ts";
import { describeIssues } from "./issues.ts";
import { migrated } from "./migrate.ts";
import { notForSale, unknownInDesign, unknownInStudy } from "./references.ts";
import { type Study, studySchema } from "./study.ts";
import { windOutOfReach } from "./wind-range.ts";

const checked = <Output>(
  schema: z.ZodType<Output>,
  value: unknown,
): { readonly ok: true; readonly value: Output } | Refused => {
  const result = schema.safeParse(value);
  if (result.success) return { ok: true, value: result.data };
  return { ok: false, errors: describeIssues(result.error.issues, value, schema) };
};

// a catalog object is read once however often a study is edited, and so is a table of it that an edit of another
// left as it was; nothing here changes one in place
const readCatalogs = new WeakMap<object, Catalog>();
const readTables = new Map<string, WeakMap<object, unknown>>();

/** What has been read of a catalog file, here or by the same parser in another thread. */
export const knowCatalog = (file: object, read: Catalog): void => {
  readCatalogs.set(file, read);
  readCatalogs.set(read, read);
};

/** Reads a catalog file; what is already read passes through. */
export const parseCatalog = (input: unknown): { readonly ok: true; readonly catalog: Catalog } | Refused => {
  const known = typeof input === "object" && input !== null ? readCatalogs.get(input) : undefined;
  if (known) return { ok: true, catalog: known };
  const read = byTable(input) ?? checked(catalogSchema, input);
  if (!read.ok) return read;
  // what parses is an object
  knowCatalog(input as object, read.value);
  return { ok: true, catalog: read.value };
};

/** Table by table, those known already passed over; null where the whole is to be asked what is wrong with it. */
const byTable = (input: unknown): { readonly ok: true; readonly value: Catalog } | null => {
  const { shape } = catalogSchema;
  if (
    typeof input !== "object" ||
    input === null ||
    Object.keys(input).some((key) => !Object.hasOwn(shape, key))
  )
    return null;
  const read: Record<string, unknown> = {};
  for (const [name, schema] of Object.entries(shape)) {
    const table: unknown = (input as Record<string, unknown>)[name];
    const known = readTables.get(name) ?? new WeakMap<object, unknown>();
    readTables.set(name, known);
    const isObject = typeof table === "object" && table !== null;
    const before = isObject ? known.get(table) : undefined;
    const result = before === undefined ? schema.safeParse(table) : { success: true, data: before };
    if (!result.success) return null;
    if (isObject) known.set(table, result.data);
    read[name] = result.data;
  }
  // each was read by its own schema of the catalog's
  return { ok: true, value: read as Catalog };
};

/**
 * Reads a study, given the catalog it chooses from. The catalog that comes back has the study's own rows in it.
 * Errors of the given catalog keep their paths in it (`sections[3].face`); the study's own rows are under
 * `catalog`.
 */
export const parseStudy = (
  input: unknown,
  options: { readonly catalog: CatalogFile | Catalog },
): { readonly ok: true; readonly study: Study; readonly catalog: Catalog } | Refused => {
  const base = parseCatalog(options.catalog);
  if (!base.ok) return base;
  const current = migrated(input);
  if (!current.ok) return current;
  const read = checked(studySchema, current.value);
  if (!read.ok) return read;
  const study = read.value;
  const catalog = mergedCatalog(base.catalog, study.catalog);
  const errors = [...unknownInStudy(study, catalog), ...notForSale(study, catalog), ...windOutOfReach(study)];
  return errors.length ? { ok: false, errors } : { ok: true, study, catalog };
};

/** Reads a design; its ids are looked up where a catalog and a study are given. */
export const parseDesign = (
  input: unknown,
  known: { readonly catalog?: Catalog; readonly study?: Study } = {},
): { readonly ok: true; readonly design: Design } | Refused => {
  const read = checked(designSchema, input);
  if (!read.ok) return read;
  const design = read.value;
  const errors = known.catalog ? unknownInDesign(design, known.catalog, known.study?.wishes.packages) : [];
  return errors.length ? { ok: false, errors } : { ok: true, design };
};
