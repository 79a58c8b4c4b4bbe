/** One thing wrong in what was read, as data first. */
export interface InputError {
  /** `site.wind.speed`, `catalog.sections[3].leg.wall`; empty for the file as a whole. */
  readonly path: string;
  /** As it stands in the file: `"105 mhp"`, `nothing`. */
  readonly found: string;
  readonly expected: string;
  /** A sentence for people; says found and expected, leaves the path to whoever shows it. */
  readonly message: string;
}

export type Refused = { readonly ok: false; readonly errors: readonly InputError[] };

/** More than these tell nobody more. */
export const MOST_ERRORS = 100;

const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, key) => {
    if (typeof key === "number") return `${text}[${key}]`;
    return text === "" ? String(key) : `${text}.${String(key)}`;
  }, "");

/** The value at a path, undefined where the path ends early. */
export const valueAt = (input: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      typeof value === "object" && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined,
    input,
  );

/** A value as it stands in the file, cut where it is long. */
export const foundText = (value: unknown): string => {
  if (value === undefined) return "nothing";
  const json = JSON.stringify(value) ?? String(value);
  return json.length > 80 ? `${json.slice(0, 80)}…` : json;
};

export const inputError = (
  path: readonly PropertyKey[],
  found: string,
  expected: string,
  message = `found ${found}, expected ${expected}`,
): InputError => ({ path: pathText(path), found, expected, message });
