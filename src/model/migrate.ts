import { foundText, inputError, type Refused } from "./input-error.ts";
import { STUDY_VERSION } from "./study.ts";

type File = Readonly<Record<string, unknown>>;
/** From version n to n + 1, under key n; each writes the next number itself. */
export type Migrations = Readonly<Record<number, (file: File) => File>>;

const migrations: Migrations = {};

/** Brings an older study forward step by step; refuses one that a newer program wrote. */
export const migrated = (
  input: unknown,
  steps: Migrations = migrations,
  newest: number = STUDY_VERSION,
): { readonly ok: true; readonly value: unknown } | Refused => {
  if (typeof input !== "object" || input === null || Array.isArray(input)) return { ok: true, value: input };
  let file = input as File;
  const version = file.mastwright;
  const refuse = (found: string, message?: string): Refused => ({
    ok: false,
    errors: [
      inputError(["mastwright"], found, `a version up to ${newest}, as "mastwright": ${newest}`, message),
    ],
  });
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1)
    return refuse(foundText(version));
  if (version > newest)
    return refuse(`version ${version}`, `found version ${version}, this program reads up to ${newest}`);
  for (let from = version; from < newest; from++) file = steps[from](file);
  return { ok: true, value: file };
};
