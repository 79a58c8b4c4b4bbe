import type { z } from "zod";
import { foundText, type InputError, inputError, MOST_ERRORS, valueAt } from "./input-error.ts";
import { keysAt } from "./known-keys.ts";
import { nearlySame } from "./nearest.ts";

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

const KINDS: Record<string, string> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "an object",
  record: "an object",
};

const orList = (values: readonly unknown[]): string =>
  values.map((value) => JSON.stringify(value)).join(" or ");

const bound = (issue: Extract<Issue, { code: "too_small" | "too_big" }>): string => {
  const [limit, word] =
    issue.code === "too_small"
      ? [issue.minimum, issue.inclusive ? "or more" : "above"]
      : [issue.maximum, issue.inclusive ? "or less" : "below"];
  const amount = word === "above" || word === "below" ? `${word} ${limit}` : `of ${limit} ${word}`;
  if (issue.origin === "array") return `a list ${amount} entries`;
  if (issue.origin === "string") return `text ${amount} characters`;
  return `a number ${amount}`;
};

/** What an issue wanted, in words. Our own messages end in "expected ...". */
const expectation = (issue: Issue): string => {
  switch (issue.code) {
    case "invalid_type":
      return KINDS[issue.expected] ?? `a value of type ${issue.expected}`;
    case "invalid_value":
      return orList(issue.values);
    case "too_small":
    case "too_big":
      return bound(issue);
    case "not_multiple_of":
      return `a multiple of ${issue.divisor}`;
    case "custom":
      return String(issue.params?.expected ?? issue.message);
    case "invalid_key":
      return issue.issues.map(expectation).join(", ");
    case "invalid_union":
      if ("options" in issue && Array.isArray(issue.options)) return orList(issue.options);
      break;
  }
  return /(?:^|, )expected (.*)$/s.exec(issue.message)?.[1] ?? issue.message;
};

/** The value itself is of the wrong kind, so that nothing inside it could be looked at. */
const isWrongKind = (issue: Issue): boolean =>
  issue.path.length === 0 &&
  (issue.code === "invalid_type" ||
    issue.code === "invalid_value" ||
    (issue.code === "invalid_union" && !("discriminator" in issue) && chosen(issue) === undefined));

/** The branch of a union that was meant: one that the value is of the right kind for, with the fewest slips. */
const chosen = (issue: Extract<Issue, { code: "invalid_union" }>): readonly Issue[] | undefined =>
  issue.errors
    .filter((branch) => !branch.some(isWrongKind))
    .sort((a, b) => slips(a) - slips(b))
    .at(0);

const slips = (branch: readonly Issue[]): number =>
  branch.reduce((sum, issue) => sum + (issue.code === "unrecognized_keys" ? issue.keys.length : 1), 0);

/** "a list or a length in ft, ...": what the branches of a union wanted, none of which was met. */
const anyOf = (issue: Extract<Issue, { code: "invalid_union" }>): string => {
  if (issue.errors.length === 0 || issue.message.startsWith("found")) return expectation(issue);
  const wants = issue.errors.map(([first]) =>
    first.code === "invalid_union" ? anyOf(first) : expectation(first),
  );
  return [...new Set(wants)].join(" or ");
};

/** `inside` is the path in the input that `schema` describes, `path` the one to report. */
const unknownKey = (inside: Path, path: Path, key: string, schema: z.ZodType): InputError => {
  const known = keysAt(schema, inside);
  const near = nearlySame(key, known);
  const all = known.length ? `one of the keys ${known.join(", ")}` : "no key here";
  return inputError(
    [...path, key],
    `key ${JSON.stringify(key)}`,
    near === undefined ? all : `a known key; the nearest is ${JSON.stringify(near)}`,
  );
};

/** Zod's issues as found, expected and a sentence, with the path in the file. `schema` is that of `input`. */
export const describeIssues = (
  issues: readonly Issue[],
  input: unknown,
  schema: z.ZodType,
  at: Path = [],
): InputError[] => {
  const errors: InputError[] = [];
  const visit = (issue: Issue, above: Path): void => {
    if (errors.length >= MOST_ERRORS) return;
    const inside = [...above, ...issue.path];
    const path = [...at, ...inside];
    if (issue.code === "unrecognized_keys") {
      for (const key of issue.keys) errors.push(unknownKey(inside, path, key, schema));
      return;
    }
    const branch = issue.code === "invalid_union" ? chosen(issue) : undefined;
    if (branch) {
      for (const inner of branch) visit(inner, inside);
      return;
    }
    const expected = issue.code === "invalid_union" ? anyOf(issue) : expectation(issue);
    const stated = issue.code === "custom" ? issue.params?.found : undefined;
    const found = typeof stated === "string" ? stated : foundText(valueAt(input, inside));
    // the messages of the quantities name the remedy themselves
    const own = issue.code === "custom" && typeof stated === "string" ? issue.message : undefined;
    errors.push(inputError(path, found, expected, own));
  };
  for (const issue of issues) visit(issue, []);
  return errors.slice(0, MOST_ERRORS);
};
