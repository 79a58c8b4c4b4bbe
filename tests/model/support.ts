import { defaultCatalog } from "../../src/model/default-catalog.ts";
import type { InputError } from "../../src/model/input-error.ts";
import { parseCatalog } from "../../src/model/parse.ts";
import { studyFromText } from "../../src/model/parse-text.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";

/** A file as anybody may have spoilt it. */
// biome-ignore lint/suspicious/noExplicitAny: tests break files in ways that no type allows
export type Loose = any;

/** The demo study with an edit in it, read from text. */
export const editedStudy = (edit: (study: Loose) => void) => {
  const study = structuredClone(startingStudies[0].file) as Loose;
  edit(study);
  return studyFromText(JSON.stringify(study), { catalog: defaultCatalog });
};

export const errorsOf = (
  read: { ok: true } | { ok: false; errors: readonly InputError[] },
): readonly InputError[] => (read.ok ? [] : read.errors);

export const readCatalog = () => {
  const read = parseCatalog(defaultCatalog);
  if (!read.ok) throw new Error(JSON.stringify(read.errors, null, 2));
  return read.catalog;
};
