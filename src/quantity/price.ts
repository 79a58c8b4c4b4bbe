import { dimensions, type UnitSystem } from "./dimensions.ts";
import { formatNumber, shortest } from "./format.ts";
import { leadingNumber, plainText } from "./number.ts";
import { type Parsed, refusal } from "./parse.ts";
import { dimensionMeasuredBy, factorOf, tidy } from "./units.ts";

/** What a price is for. */
export type Per = "each" | "length" | "area" | "volume" | "mass";

const EXAMPLES: Record<Per, string> = {
  each: "$218",
  length: "$0.62/ft",
  area: "$3.40/ft2",
  volume: "$185/yd3",
  mass: "$1.10/lb",
};

const SYMBOL = /^(-?)\s?\p{Sc}\s?/u;
const EACH = /^(?:(?:\/|per )? ?(?:each|ea|piece|pc)\.?)?$/i;

/** Reads a price: "$0.62/ft", or a bare number of currency per SI unit. Gives currency per SI unit. */
export const parsePrice = (text: string, per: Per): Parsed => {
  const what = per === "each" ? "a price for one" : `a price per ${per}`;
  const expected = `${what}, as ${JSON.stringify(EXAMPLES[per])}`;
  const refuse = (reason: string) => refusal(text, expected, `${reason}; write ${expected}`);
  const plain = plainText(text.slice(0, 100));
  const number = leadingNumber(plain.replace(SYMBOL, "$1"));
  if (!number) return refuse(`${JSON.stringify(text.slice(0, 80))} isn't a price`);
  if (per === "each")
    return EACH.test(number.rest)
      ? { ok: true, value: number.value }
      : refuse(`${JSON.stringify(number.rest)} isn't understood after the amount`);

  // a currency without a unit is half a statement: dollars for how much?
  if (number.rest === "")
    return SYMBOL.test(plain)
      ? refuse(`${JSON.stringify(text)} doesn't say per what`)
      : { ok: true, value: number.value };
  const unit = /^(?:\/|per\b) ?(.*)$/i.exec(number.rest)?.[1];
  const factor = unit && factorOf(unit, per);
  if (factor) return { ok: true, value: tidy(number.value / factor) };
  const other = unit && dimensionMeasuredBy(unit);
  return refuse(
    other
      ? `${JSON.stringify(unit)} is a unit of ${dimensions[other].noun}, not of ${per}`
      : `${JSON.stringify(number.rest)} isn't understood after the amount`,
  );
};

/** For the eye: {value: "0.62", unit: "$/ft"}. */
export const formatPrice = (
  perSi: number,
  per: Per,
  system: UnitSystem,
  currency = "$",
): { readonly value: string; readonly unit: string } => {
  if (per === "each") return { value: formatNumber(perSi, system, 0), unit: currency };
  const { unit } = dimensions[per][system];
  return { value: formatNumber(perSi * factorOf(unit, per)!, system, 2), unit: `${currency}/${unit}` };
};

/** For files: reads back with `parsePrice`. */
export const writePrice = (perSi: number, per: Per, system: UnitSystem, currency = "$"): string => {
  if (per === "each") return `${currency}${perSi}`;
  const { unit } = dimensions[per][system];
  const factor = factorOf(unit, per)!;
  return `${currency}${shortest(perSi * factor, (amount) => tidy(amount / factor) === perSi)}/${unit}`;
};
