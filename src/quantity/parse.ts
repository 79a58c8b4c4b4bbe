import { type Dimension, dimensions, howToWrite, whatToWrite } from "./dimensions.ts";
import { leadingNumber, plainText } from "./number.ts";
import { dimensionMeasuredBy, factorOf, tidy, unitNamed } from "./units.ts";

export type Parsed =
  | { readonly ok: true /** SI. */; readonly value: number }
  | {
      readonly ok: false;
      readonly found: string;
      readonly expected: string;
      /** One sentence: found, expected, an example. */
      readonly message: string;
    };

/** Longer text is no quantity, and would only make the message unreadable. */
const LONGEST = 80;

export const refusal = (found: string, expected: string, message: string): Parsed => ({
  ok: false,
  found: JSON.stringify(found.length > LONGEST ? `${found.slice(0, LONGEST)}…` : found),
  expected,
  message,
});

/** Feet and inches: one larger and one smaller unit, the sign standing for both. */
const TWO_TERMS = /^(ft|foot|feet|yd|m)\b[\s,-]*(?=[\d.])/i;

const sumOfLengths = (first: { value: number; rest: string }): number | undefined => {
  const split = TWO_TERMS.exec(first.rest);
  const second = split && leadingNumber(first.rest.slice(split[0].length));
  if (!split || !second || second.value < 0) return undefined;
  const large = factorOf(split[1], "length");
  const small = factorOf(second.rest, "length");
  if (large === undefined || small === undefined || small >= large) return undefined;
  const sign = first.value < 0 || Object.is(first.value, -0) ? -1 : 1;
  return tidy(first.value * large + sign * second.value * small);
};

/** Reads a quantity at the boundary: "18 ft 6 in", "105 mph", "3/16 in", or a bare number of SI. */
export const parseQuantity = (text: string, dimension: Dimension): Parsed => {
  const { name, noun } = dimensions[dimension];
  const how = howToWrite(dimension);
  const expected = whatToWrite(dimension);
  const refuse = (message: string) => refusal(text, expected, message);
  if (text.length > LONGEST) return refuse(`found ${text.length} characters, expected ${expected}`);

  const plain = plainText(text);
  if (plain === "") return refuse(`found nothing, expected ${expected}`);
  const number = leadingNumber(plain);
  if (!number)
    return refuse(
      /^[+-]?\s?[\d.,]/.test(plain)
        ? `${JSON.stringify(text)} isn't a number with a unit; write a decimal point and no comma, ${how}`
        : `${JSON.stringify(text)} doesn't start with a number; write ${expected}`,
    );
  if (number.rest === "") return { ok: true, value: number.value };

  const factor = factorOf(number.rest, dimension);
  if (factor !== undefined) return { ok: true, value: tidy(number.value * factor) };
  const sum = factorOf("m", dimension) === 1 ? sumOfLengths(number) : undefined;
  if (sum !== undefined) return { ok: true, value: sum };

  const unit = JSON.stringify(number.rest);
  const other = dimensionMeasuredBy(number.rest);
  if (other) return refuse(`${unit} is a unit of ${dimensions[other].noun}, not of ${noun}; write ${how}`);
  if (unitNamed(number.rest)) return refuse(`${unit} doesn't measure ${name}; write ${how}`);
  return refuse(`${unit} isn't a unit of ${noun}; write ${how}`);
};
