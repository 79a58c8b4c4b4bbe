import { type Dimension, dimensions, type UnitSystem } from "../../quantity/dimensions.ts";
import { inShownUnit } from "../../quantity/format.ts";
import { onRule } from "../../quantity/inches.ts";
import { factorOf } from "../../quantity/units.ts";
import { NO_HOLD } from "../../report/names.ts";

export type System = UnitSystem;
export type Measure = Dimension;

export const unitOf = (measure: Measure, system: System): string => dimensions[measure][system].unit;
export const inUnits = (si: number, measure: Measure, system: System): number =>
  inShownUnit(si, measure, system).value;
export const fromUnits = (value: number, measure: Measure, system: System): number =>
  value * factorOf(unitOf(measure, system), measure)!;

/** "12,345.60": the browser's own formatter takes longer to make than all its uses on a page. */
const inThousands = (value: number, digits: number, fixed: boolean): string => {
  const [whole, parts = ""] = value.toFixed(digits).split(".");
  const left = fixed ? parts : parts.replace(/0+$/, "");
  return `${whole.replace(/\B(?=(\d{3})+$)/g, ",")}${left && `.${left}`}`;
};

/** Grouped, U+2212 for minus, and no trailing zeros unless `fixed`. */
export const grouped = (value: number, digits: number, system: System, fixed = false): string => {
  if (!Number.isFinite(value)) return value > 0 ? "no end" : "none";
  const text = inThousands(Math.abs(value), digits, fixed);
  const marked = system === "si" ? text.replaceAll(",", "\u2009") : text;
  const nothing = !/[1-9]/.test(text);
  return value < 0 && !nothing ? `−${marked}` : marked;
};

/** The number without its unit. */
export const figure = (si: number, measure: Measure, system: System, digits?: number): string =>
  grouped(inUnits(si, measure, system), digits ?? dimensions[measure][system].decimals, system);

/** Number and unit, never parted at a line end. */
export const said = (si: number, measure: Measure, system: System, digits?: number): string =>
  `${figure(si, measure, system, digits)} ${unitOf(measure, system)}`;

export const money = (amount: number, currency = "$", system: System = "us"): string =>
  `${amount < 0 ? "−" : ""}${currency}${grouped(Math.abs(Math.round(amount)), 0, system)}`;

/** Two decimals, rounded up past 1.00 so that what fails never reads as 1.00. */
export const used = (utilisation: number): string => {
  if (!Number.isFinite(utilisation)) return NO_HOLD;
  if (utilisation > 1) return (Math.ceil(utilisation * 100 - 1e-9) / 100).toFixed(2);
  return utilisation.toFixed(2);
};

export interface Count {
  /** "1.3" of 1.3 × 10¹¹, or the whole of a small number. */
  readonly figure: string;
  readonly power: number | null;
}

/** Small counts in full, large ones as a power of ten with two figures. */
export const counted = (count: number, system: System): Count => {
  if (count < 1e7) return { figure: grouped(count, 0, system), power: null };
  const power = Math.floor(Math.log10(count) + 1e-12);
  const mantissa = Math.round((count / 10 ** power) * 100) / 100;
  return { figure: `${mantissa}`, power };
};

const superscript = (power: number) =>
  `${power}`.replace(/[0-9-]/g, (digit) => (digit === "-" ? "⁻" : "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(digit)]));
export const countText = (count: number, system: System): string => {
  const { figure: text, power } = counted(count, system);
  return power === null ? text : `${text} × 10${superscript(power)}`;
};

/** Inches as on a rule where they are a usual fraction, else as a decimal. */
export const inches = (si: number): string => {
  const marks = onRule(si);
  if (marks !== null && marks !== "0") return marks;
  return (si / 0.0254).toFixed(3).replace(/0+$/, "").replace(/\.$/, "").replace(/^0\./, ".");
};

export const small = (si: number, system: System): string =>
  system === "us" ? `${inches(si)} in` : said(si, "size", "si");
/** Steel sizes without their unit, where the first size already carried it. */
export const smallBare = (si: number, system: System): string =>
  system === "us" ? inches(si) : figure(si, "size", "si");
