import type { Dimension } from "../../quantity/dimensions.ts";
import { parseQuantity } from "../../quantity/parse.ts";
import { type Per, parsePrice } from "../../quantity/price.ts";
import { type System, unitOf } from "./figures.ts";

/** What was typed into a field, ready for the file: text with its unit, or why it can't be. */
export type Typed =
  | { readonly ok: true; readonly text: string; readonly si: number }
  | { readonly ok: false; readonly message: string };

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

/** "0.5 in with 40 mph", or "none". */
export const typedIce = (text: string, byPressure: boolean, system: System): Typed => {
  const plain = text.trim();
  if (/^(none|no|no ice)?$/i.test(plain)) return { ok: true, text: "none", si: 0 };
  const [thickness, wind, ...more] = plain.split(/\s+with\s+/i);
  if (!wind || more.length > 0)
    return {
      ok: false,
      message: `“${plain}” lacks the wind that blows on the ice; write both, as “0.5 in with ${byPressure ? "4 psf" : "40 mph"}”, or “none”.`,
    };
  const thick = typedQuantity(thickness, "size", system, { min: 0 });
  if (!thick.ok) return thick;
  const blows = typedQuantity(wind, byPressure ? "pressure" : "speed", system, { min: 0 });
  return blows.ok ? { ok: true, text: `${thick.text} with ${blows.text}`, si: thick.si } : blows;
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

/** "10 % toward 90°", or "level". */
export const typedSlope = (text: string): Typed => {
  const plain = text.trim();
  if (/^(level|flat|none|)$/i.test(plain)) return { ok: true, text: "level", si: 0 };
  const found = /^([\d.]+)\s*%\s*(?:toward\s*)?([\d.]+)\s*°?$/i.exec(plain);
  if (!found)
    return {
      ok: false,
      message: `“${plain}” isn’t a slope; write how much it falls and where to, as “10 % toward 90°”, or “level”.`,
    };
  return { ok: true, text: `${found[1]} % toward ${found[2]}°`, si: Number(found[1]) / 100 };
};

const sentence = (message: string): string => {
  const whole = `${message.charAt(0).toUpperCase()}${message.slice(1)}`;
  return whole.endsWith(".") ? whole : `${whole}.`;
};
