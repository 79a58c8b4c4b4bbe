import { z } from "zod";
import { type Dimension, dimensions, whatToWrite } from "./dimensions.ts";
import { type Parsed, parseQuantity } from "./parse.ts";
import { type Per, parsePrice } from "./price.ts";

// the page's policy allows no code that is made as it runs, and every other schema is built on these
z.config({ jitless: true });

/** `min` and `max` are allowed themselves, `above` is not. SI. */
export interface Limits {
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
}

/** A schema that takes text with a unit, or a number of SI units, and gives SI. */
export type QuantitySchema = z.ZodPipe<
  z.ZodUnion<readonly [z.ZodString, z.ZodNumber]>,
  z.ZodTransform<number, string | number>
>;

// `measures` goes into the JSON Schema, so that tables and forms know which unit a field is shown in
const quantity = (
  what: string,
  description: string,
  parse: (text: string) => Parsed,
  outside: (value: number) => string | undefined,
  measures: Readonly<Record<string, string>>,
): QuantitySchema =>
  z
    .union([z.string(), z.number()], {
      error: (issue) => `found ${JSON.stringify(issue.input) ?? "nothing"}, expected ${what}`,
    })
    .transform((input, context) => {
      const refuse = (found: string, expected: string, message: string) => {
        context.addIssue({ code: "custom", message, input, params: { found, expected } });
        return z.NEVER;
      };
      const parsed: Parsed = typeof input === "number" ? { ok: true, value: input } : parse(input);
      if (!parsed.ok) return refuse(parsed.found, parsed.expected, parsed.message);
      const limit = outside(parsed.value);
      if (limit === undefined) return parsed.value;
      const found = JSON.stringify(input);
      return refuse(found, limit, `found ${found}, expected ${limit}`);
    })
    .meta({ description, ...measures });

const outsideOf = (name: string, unit: string, { min, above, max }: Limits) => {
  const bound = (value: number) => (value === 0 ? "0" : `${value} ${unit}`);
  return (value: number): string | undefined => {
    if (above !== undefined && !(value > above)) return `${name} above ${bound(above)}`;
    if (min !== undefined && value < min) return `${name} of ${bound(min)} or more`;
    if (max !== undefined && value > max) return `${name} of ${bound(max)} or less`;
    return undefined;
  };
};

/** A measured quantity: `"18 ft 6 in"`, or a number in the SI unit. */
export function dimensioned(dimension: Dimension, limits: Limits = {}): QuantitySchema {
  const { name, base } = dimensions[dimension];
  const what = whatToWrite(dimension);
  return quantity(
    what,
    `${what}; a bare number is in ${base}`,
    (text) => parseQuantity(text, dimension),
    outsideOf(name, base, limits),
    { "x-dimension": dimension },
  );
}

/** A price of 0 or more: `"$0.62/ft"`, or a number of currency per SI unit. */
export function priced(per: Per): QuantitySchema {
  const what = per === "each" ? "a price" : `a price per ${per}`;
  return quantity(
    what,
    per === "each" ? `${what}, as "$218"` : `${what}; a bare number is per ${dimensions[per].base}`,
    (text) => parsePrice(text, per),
    outsideOf(what, "", { min: 0 }),
    { "x-per": per },
  );
}
