import { type ParseErrorCode, printParseErrorCode, visit } from "jsonc-parser";
import { type InputError, inputError, MOST_ERRORS, type Refused } from "./input-error.ts";

/** A study of a thousand rows is a tenth of this. */
const MOST_BYTES = 5_000_000;

const refused = (error: InputError): Refused => ({ ok: false, errors: [error] });

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;

/** Bytes of the text, counted only where they could matter. */
const sizeOf = (text: string): number =>
  text.length > MOST_BYTES ? text.length : new TextEncoder().encode(text).length;

const PROBLEMS: Partial<Record<string, string>> = {
  InvalidSymbol: "a number, text in double quotes, true, false or null",
  PropertyNameExpected: "a key in double quotes",
  ValueExpected: "a value",
  ColonExpected: "a colon",
  CommaExpected: "a comma",
  CloseBraceExpected: "a closing brace",
  CloseBracketExpected: "a closing bracket",
  EndOfFileExpected: "the end of the file",
  InvalidCommentToken: "no comment",
  UnexpectedEndOfString: "a closing quote",
  InvalidNumberFormat: "a number",
  InvalidCharacter: "no control character in text",
  InvalidEscapeCharacter: "a known escape after the backslash",
  InvalidUnicode: "four hexadecimal digits",
};

/** What `JSON.parse` will not say: where the first slip is, and which keys stand twice. */
const inspected = (text: string): InputError[] => {
  const errors: InputError[] = [];
  const open: Set<string>[] = [];
  visit(
    text,
    {
      onObjectBegin: () => void open.push(new Set()),
      onObjectEnd: () => void open.pop(),
      onObjectProperty: (key, _offset, _length, line, column, path) => {
        if (open.at(-1)!.has(key) && errors.length < MOST_ERRORS)
          errors.push(
            inputError(
              [...path(), key],
              `key ${JSON.stringify(key)} a second time (line ${line + 1}, column ${column + 1})`,
              "each key once",
            ),
          );
        open.at(-1)!.add(key);
      },
      onError: (code: ParseErrorCode, offset, length, line, column) => {
        if (errors.some((error) => error.path === "")) return;
        const name = printParseErrorCode(code);
        const token = text.slice(offset, offset + Math.min(Math.max(length, 1), 20));
        const place = `(line ${line + 1}, column ${column + 1})`;
        const found = `${token === "" ? "the end of the file" : JSON.stringify(token)} ${place}`;
        errors.unshift(inputError([], found, PROBLEMS[name] ?? `JSON without ${name}`));
      },
    },
    { disallowComments: true },
  );
  return errors;
};

/** Reads JSON text, or says where it is none. Refuses what is too large before it looks inside. */
export const readJson = (text: string): { readonly ok: true; readonly value: unknown } | Refused => {
  const size = sizeOf(text);
  if (size > MOST_BYTES)
    return refused(
      inputError([], `a file of ${megabytes(size)}`, `a file of ${megabytes(MOST_BYTES)} or less`),
    );
  const plain = text.startsWith("\ufeff") ? text.slice(1) : text;
  let value: unknown;
  let slip: string | undefined;
  try {
    value = JSON.parse(plain);
  } catch (error) {
    slip = (error as Error).message;
  }
  try {
    const errors = inspected(plain);
    if (slip === undefined) return errors.length ? { ok: false, errors } : { ok: true, value };
    return refused(errors.find((error) => error.path === "") ?? inputError([], slip, "JSON"));
  } catch {
    return refused(
      inputError([], "lists or objects within each other too deep to read", "a study, design or catalog"),
    );
  }
};
