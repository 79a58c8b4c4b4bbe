import { z } from "zod";
import en from "zod/v4/locales/en.js";
import type { CatalogFile, Table } from "../../model/catalog.ts";
import { tables } from "../../model/catalog.ts";
import { defaultCatalog } from "../../model/default-catalog.ts";
import { parseCatalog, parseDesign } from "../../model/parse.ts";
import type { StudyFile } from "../../model/study.ts";
import { type Paper, readPaper } from "./book.ts";
import { type KeptBook, type KeptDesign, type KeptStudy, type KeptVersion, newId } from "./cupboard.ts";
import { begin } from "./history.ts";

/** Version of the file that holds everything; a newer one is refused. */
const PARCEL = 1;

// the parser has words of its own; what is refused of a file as a whole is said in the library's
z.config(en());

const written = z.strictObject({
  name: z.string().max(200),
  at: z.number(),
  study: z.looseObject({ mastwright: z.number(), name: z.string() }),
  /** Which of the file's catalogs. */
  catalog: z.int().min(0),
});
const parcelSchema = z.strictObject({
  parcel: z.literal(PARCEL),
  catalogs: z.array(z.looseObject({})).max(2000),
  studies: z.array(z.strictObject({ ...written.shape, versions: z.array(written).max(2000) })).max(2000),
  books: z
    .array(z.strictObject({ name: z.string().max(200), at: z.number(), catalog: z.int().min(0) }))
    .max(2000),
  /** Kept to be compared; files of before have none. */
  designs: z
    .array(z.strictObject({ ...written.shape, design: z.looseObject({}) }))
    .max(2000)
    .default([]),
});
type Parcel = z.output<typeof parcelSchema>;

export interface Everything {
  readonly studies: readonly KeptStudy[];
  readonly versions: readonly KeptVersion[];
  readonly books: readonly KeptBook[];
  readonly designs: readonly KeptDesign[];
}

/**
 * Studies, their versions, the books of prices and the designs kept for comparison as one file; a catalog that several
 * share stands in it once.
 */
export const writeParcel = (all: Everything): string => {
  const catalogs: CatalogFile[] = [];
  const places = new Map<string, number>();
  const placeOf = (catalog: CatalogFile): number => {
    const key = JSON.stringify(catalog);
    const known = places.get(key);
    if (known !== undefined) return known;
    places.set(key, catalogs.length);
    return catalogs.push(catalog) - 1;
  };
  const state = (name: string, at: number, { study, catalog }: Paper) => ({
    name,
    at,
    study: study as Parcel["studies"][number]["study"],
    catalog: placeOf(catalog),
  });
  const studies = all.studies
    .filter((one) => one.deletedAt === null)
    .map(({ id, at, history: { present } }) => ({
      ...state(present.study.name, at, present),
      versions: all.versions
        .filter((version) => version.study === id)
        .map((version) => state(version.name, version.at, version.paper)),
    }));
  const books = all.books.map(({ name, at, catalog }) => ({ name, at, catalog: placeOf(catalog) }));
  const designs = all.designs.map(({ name, at, paper, design }) => ({
    ...state(name, at, paper),
    design: design as unknown as Parcel["designs"][number]["design"],
  }));
  return `${JSON.stringify({ parcel: PARCEL, catalogs, studies, books, designs } satisfies Parcel, null, 1)}\n`;
};

/** The study as a file that stands alone: rows that differ from the starting catalog go along in it. */
export const standalone = ({ study, catalog }: Paper): StudyFile | null => {
  const carried = (study.catalog ?? {}) as Partial<Record<Table, readonly Row[]>> & { prices?: unknown };
  const patch: Record<string, unknown> = { ...carried };
  for (const table of tables) {
    const rows = catalog[table] as unknown as readonly Row[];
    const base = new Map((defaultCatalog[table] as unknown as readonly Row[]).map((row) => [row.id, row]));
    // a row that was taken out can't be told by rows that are put in
    if ([...base.keys()].some((id) => !rows.some((row) => row.id === id))) return null;
    const own = new Set(carried[table]?.map((row) => row.id));
    const differing = rows.filter((row) => !own.has(row.id) && !same(base.get(row.id), row));
    if (differing.length) patch[table] = [...differing, ...(carried[table] ?? [])];
  }
  if (!("prices" in carried) && !same(catalog.prices, defaultCatalog.prices)) patch.prices = catalog.prices;
  return Object.keys(patch).length === 0 ? study : ({ ...study, catalog: patch } as StudyFile);
};
type Row = { readonly id: string };
const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** One study as a file: plain where it can stand alone, else with its whole catalog. */
export const writeStudy = (paper: Paper): string => {
  const alone = standalone(paper);
  if (alone) return `${JSON.stringify(alone, null, 2)}\n`;
  const study = { id: "", revision: 0, at: Date.now(), deletedAt: null, history: begin(paper) };
  return writeParcel({ studies: [study], versions: [], books: [], designs: [] });
};

/** What a file brings, looked at and not yet taken. */
export interface Brought {
  readonly studies: readonly {
    readonly name: string;
    readonly paper: Paper;
    readonly at: number;
    readonly versions: readonly { readonly name: string; readonly at: number; readonly paper: Paper }[];
  }[];
  readonly books: readonly { readonly name: string; readonly at: number; readonly catalog: CatalogFile }[];
  /** Kept to be compared. */
  readonly designs: readonly Omit<KeptDesign, "id">[];
  /** What can't be taken, each with the place in the file. */
  readonly refused: readonly { readonly where: string; readonly why: string }[];
}

const whyNot = (paper: Paper): string | null => {
  const read = readPaper(paper);
  return Array.isArray(read) ? `${read[0].path} ${read[0].message}`.trim() : null;
};

/** Reads a file of one study or of everything; each part of it is judged by itself. Throws where it is neither. */
export const readParcel = (text: string): Brought => {
  const data = jsonOf(text);
  if (typeof data !== "object" || data === null || Array.isArray(data)) throw new Error("it holds no study");
  if (!("parcel" in data)) return oneStudy(data as StudyFile);
  if (typeof data.parcel === "number" && data.parcel > PARCEL)
    throw new Error("a newer version of this program wrote it");
  const read = parcelSchema.safeParse(data);
  if (!read.success) {
    const [{ path, message }] = read.error.issues;
    throw new Error(`at ${path.join(".") || "its top"}: ${message}`);
  }
  return judged(read.data);
};
const jsonOf = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Error(`it isn’t JSON: ${(error as Error).message}`);
  }
};

const oneStudy = (study: StudyFile): Brought => {
  const paper: Paper = { study, catalog: defaultCatalog };
  const why = whyNot(paper);
  const nothing = { studies: [], books: [], designs: [], refused: [] };
  if (why) return { ...nothing, refused: [{ where: "study", why }] };
  return { ...nothing, studies: [{ name: study.name, paper, at: Date.now(), versions: [] }] };
};

const judged = ({ catalogs, studies, books, designs }: Parcel): Brought => {
  const refused: { where: string; why: string }[] = [];
  const files = catalogs.map((catalog) => catalog as unknown as CatalogFile);
  const paperAt = (one: { study: unknown; catalog: number }, where: string): Paper | null => {
    const catalog = files[one.catalog];
    const paper = catalog && { study: one.study as StudyFile, catalog };
    const why = paper ? whyNot(paper) : `it names catalog ${one.catalog}, of which there are ${files.length}`;
    if (why) refused.push({ where, why });
    return why ? null : paper;
  };
  const taken = studies.flatMap((one, at) => {
    const paper = paperAt(one, `study ${at + 1}, “${one.name}”`);
    const versions = one.versions.flatMap((version, n) => {
      const kept = paperAt(version, `study ${at + 1}, version ${n + 1}, “${version.name}”`);
      return kept ? [{ name: version.name, at: version.at, paper: kept }] : [];
    });
    return paper ? [{ name: one.name, at: one.at, paper, versions }] : [];
  });
  const takenBooks = books.flatMap((one, at) => {
    const catalog = files[one.catalog];
    const read = catalog && parseCatalog(catalog);
    if (read?.ok) return [{ name: one.name, at: one.at, catalog }];
    const why = read ? `${read.errors[0].path} ${read.errors[0].message}` : "its catalog is missing";
    refused.push({ where: `book ${at + 1}, “${one.name}”`, why });
    return [];
  });
  const takenDesigns = designs.flatMap((one, at) => {
    const where = `design ${at + 1}, “${one.name}”`;
    const paper = paperAt(one, where);
    const read = paper && parseDesign(one.design);
    if (paper && read?.ok) return [{ name: one.name, at: one.at, paper, design: read.design }];
    if (read && !read.ok)
      refused.push({ where, why: `${read.errors[0].path} ${read.errors[0].message}`.trim() });
    return [];
  });
  return { studies: taken, books: takenBooks, designs: takenDesigns, refused };
};

/** What is brought as it will be kept: always beside what is there, never over it. */
export const asKept = ({ studies, books, designs }: Brought): Everything => {
  const versions: KeptVersion[] = [];
  const kept = studies.map((one): KeptStudy => {
    const id = newId();
    for (const version of one.versions) versions.push({ id: newId(), study: id, ...version });
    return { id, revision: 1, at: one.at, deletedAt: null, history: begin(one.paper) };
  });
  return {
    studies: kept,
    versions,
    books: books.map((one) => ({ id: newId(), ...one })),
    designs: designs.map((one) => ({ id: newId(), ...one })),
  };
};
