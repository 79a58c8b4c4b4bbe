import type { Dimension } from "../../quantity/dimensions.ts";
import { parseQuantity } from "../../quantity/parse.ts";
import { type Per, parsePrice } from "../../quantity/price.ts";
import { upperFirst } from "../../report/names.ts";
import { type System, unitOf } from "./figures.ts";

/** What was typed into a field, ready for the file: text with its unit, or why it can't be. */
export type Typed =
  | { readonly ok: true; readonly text: string; readonly si: number }
  | { readonly ok: false; readonly message: string };

const NUMBER = /\d[\d,]*(?:\.\d+)?(?:\/\d+)?/;
const numberIn = (found: string): number => {
  const [over, under] = found.replaceAll(",", "").split("/").map(Number);
  return under ? over / under : over;
};

/** A round step of some fiftieth of the number in a text: 5 of 120, 1 of 70, 0.1 of 2.5. */
export const stepSize = (text: string): number => {
  const value = numberIn(NUMBER.exec(text)?.[0] ?? "0");
  if (!(value > 0)) return 1;
  const tenth = 10 ** (Math.floor(Math.log10(value) + 1e-9) - 1);
  return value < 2 * 10 * tenth ? tenth / 2 : tenth;
};

/** The first number of a text moved by so much, never below nothing; a fraction becomes a decimal. */
export const stepped = (text: string, by: number): string =>
  text.replace(NUMBER, (found) => `${Number(Math.max(0, numberIn(found) + by).toFixed(6))}`);

/** A bare number is meant in the unit that the field shows, never in SI behind the user's back. */
export const typedQuantity = (
  text: string,
  dimension: Dimension,
  system: System,
  { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY }: { min?: number; max?: number } = {},
): Typed => {
  const plain = text.trim();
  const bare = /^[-−+]?[\d.,\s/]+$/.test(plain) && /\d/.test(plain);
  const whole = bare ? `${plain} ${unitOf(dimension, system)}` : plain;
  const read = parseQuantity(whole, dimension);
  if (!read.ok) return { ok: false, message: sentence(read.message) };
  if (read.value < min || read.value > max)
    return { ok: false, message: `“${whole}” is out of range for this given.` };
  return { ok: true, text: whole, si: read.value };
};

export const typedPrice = (text: string, per: Per): Typed => {
  const plain = text.trim();
  const read = parsePrice(plain, per);
  if (!read.ok) return { ok: false, message: sentence(read.message) };
  return { ok: true, text: plain, si: read.value };
};

export const typedPercent = (text: string, most: number): Typed => {
  const plain = text.replace("%", "").trim();
  const value = Number(plain);
  if (plain === "" || !Number.isFinite(value))
    return { ok: false, message: `“${text}” isn’t a number; write percent, as “10 %”.` };
  if (value < 0 || value > most) return { ok: false, message: `Found ${value} %, expected 0 to ${most} %.` };
  return { ok: true, text: plain, si: value / 100 };
};

/** A plain number with what is written after it, if it is written: "2°", "1.25". */
export const typedNumber = (
  text: string,
  { unit = "", min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY }: NumberRange = {},
): Typed => {
  const plain = text.replace(unit, "").trim();
  const value = Number(plain);
  if (plain === "" || !Number.isFinite(value))
    return { ok: false, message: `“${text}” isn’t a number${unit ? `; write it as “2${unit}”` : ""}.` };
  if (value < min || value > max)
    return { ok: false, message: `Found ${value}${unit}, expected ${min} to ${max}${unit}.` };
  return { ok: true, text: plain, si: value };
};
interface NumberRange {
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
}

/** Celsius from "40 °F" or "4 °C"; a bare number is meant in the scale that the page shows. */
export const typedAir = (text: string, system: System): Typed => {
  const found = /^\s*([-−+]?[\d.]+)\s*°?\s*([CF])?\s*$/i.exec(text);
  const value = Number(found?.[1].replace("−", "-"));
  if (!found || !Number.isFinite(value))
    return { ok: false, message: `“${text}” isn’t a temperature; write it as “40 °F” or “4 °C”.` };
  const scale = (found[2] ?? (system === "us" ? "F" : "C")).toUpperCase();
  const celsius = scale === "F" ? (value - 32) / 1.8 : value;
  return { ok: true, text: `${value} °${scale}`, si: Math.round(celsius * 1e4) / 1e4 };
};

/** N m/rad from "1600 kip ft/rad" or "2.2e6 N m": a moment for each radian of turn. */
export const typedStiffness = (text: string, system: System): Typed => {
  const moment = typedQuantity(text.replace(/\/\s*rad(ian)?\s*$/i, ""), "moment", system, { min: 0 });
  return moment.ok ? { ...moment, text: `${moment.text}/rad` } : moment;
};

/** One value, a list "20 ft, 25 ft", or "15 to 60 ft by 5 ft": the file's own form of it in `value`. */
export const typedAxis = (text: string, read: (text: string) => Typed): TypedAxis => {
  const unit = /[a-z°²³/]+\s*$/i.exec(text)?.[0] ?? "";
  const withUnit = (part: string) =>
    /^[\d.,\s]+$/.test(part) && unit ? `${part.trim()} ${unit.trim()}` : part.trim();
  const range = /^(.+?)\s+to\s+(.+?)\s+by\s+(.+)$/i.exec(text);
  const parts = range ? range.slice(1) : text.split(/\s*,\s+/);
  const typed = parts.map((part) => read(withUnit(part)));
  const wrong = typed.find((one) => !one.ok);
  if (wrong && !wrong.ok)
    return { ok: false, message: `${wrong.message} Or write “15 ft to 60 ft by 5 ft”.` };
  const values = typed.map((one) => (one.ok ? one.text : ""));
  if (range) return { ok: true, value: { from: values[0], to: values[1], step: values[2] } };
  return { ok: true, value: values.length === 1 ? values[0] : values };
};
export type TypedAxis =
  | {
      readonly ok: true;
      readonly value: string | readonly string[] | { from: string; to: string; step: string };
    }
  | { readonly ok: false; readonly message: string };

const sentence = (message: string): string => {
  const whole = upperFirst(message);
  return whole.endsWith(".") ? whole : `${whole}.`;
};
