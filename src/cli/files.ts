import { readFileSync, statSync } from "node:fs";
import type { Catalog } from "../model/catalog.ts";
import { defaultCatalog } from "../model/default-catalog.ts";
import type { Design } from "../model/design.ts";
import type { InputError } from "../model/input-error.ts";
import { parseDesign } from "../model/parse.ts";
import { designFromText, studyFromText } from "../model/parse-text.ts";
import type { Study, StudyFile } from "../model/study.ts";
import { compile, Uncovered } from "../problem/compile.ts";
import { UsageError } from "./arguments.ts";

/** A file this large is not a study; it is refused before it is read. */
const LARGEST = 5 * 1024 * 1024;

/** @throws UsageError where the file can't be read or is too large */
export function readText(path: string | undefined, what: string): string {
  if (path === undefined) throw new UsageError(`expected ${what}`);
  try {
    const { size } = statSync(path);
    if (size > LARGEST)
      throw new UsageError(
        `${path}: found ${(size / 1048576).toFixed(1)} MB, expected a file of at most ${LARGEST / 1048576} MB`,
      );
    return readFileSync(path, "utf8");
  } catch (error) {
    if (error instanceof UsageError) throw error;
    const { code, message } = error as NodeJS.ErrnoException;
    throw new UsageError(`${path}: ${code === "ENOENT" ? "found no such file" : message}; expected ${what}`);
  }
}

export interface OpenStudy {
  readonly file: StudyFile;
  readonly study: Study;
  readonly catalog: Catalog;
}

export function openStudy(path: string | undefined): OpenStudy {
  const text = readText(path, "a study file");
  const read = studyFromText(text, { catalog: defaultCatalog });
  if (!read.ok) throw refused(path ?? "", read.errors);
  try {
    compile(read.study, read.catalog);
  } catch (error) {
    if (error instanceof Uncovered) throw new UsageError(`${path}: ${error.message}`);
    throw error;
  }
  return { file: JSON.parse(text), study: read.study, catalog: read.catalog };
}

export function openDesign(path: string | undefined, { study, catalog }: OpenStudy): Design {
  const text = readText(path, "a design file");
  // what `find --json` prints is read too: the design is inside it
  const inside = designInside(text);
  const known = { study, catalog };
  const read = inside === undefined ? designFromText(text, known) : parseDesign(inside, known);
  if (!read.ok) throw refused(path ?? "", read.errors);
  return read.design;
}

function designInside(text: string): unknown {
  try {
    const value = JSON.parse(text);
    return value && typeof value === "object" && "status" in value && value.design ? value.design : undefined;
  } catch {
    // the parser says where the text is broken
    return undefined;
  }
}

const refused = (path: string, errors: readonly InputError[]): UsageError =>
  new UsageError(
    errors
      .map((error) => [path, error.path, error.message].filter((part) => part !== "").join(": "))
      .join("\n"),
  );
