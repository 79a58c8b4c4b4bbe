import { type Dimension, dimensions, type UnitSystem } from "./dimensions.ts";
import { factorOf, tidy } from "./units.ts";

const MINUS = "\u2212";
const THIN_SPACE = "\u2009";

/** A plain number with the grouping and the minus of the chosen system: "2,914" or "2 914". */
export const formatNumber = (value: number, system: UnitSystem, decimals: number): string => {
  if (!Number.isFinite(value)) return value > 0 ? "∞" : value < 0 ? `${MINUS}∞` : "–";
  const fixed = Math.abs(value).toFixed(decimals);
  const [whole, part] = fixed.split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, system === "us" ? "," : THIN_SPACE);
  const sign = value < 0 && Number(fixed) !== 0 ? MINUS : "";
  return `${sign}${grouped}${part === undefined ? "" : `.${part}`}`;
};

/** For the eye: rounded to `digits` decimals, else to what is usual for the dimension. */
export const formatQuantity = (
  si: number,
  dimension: Dimension,
  system: UnitSystem,
  digits?: number,
): { readonly value: string; readonly unit: string } => {
  const shown = dimensions[dimension][system];
  const value = si / factorOf(shown.unit, dimension)!;
  return { value: formatNumber(value, system, digits ?? shown.decimals), unit: shown.unit };
};

/** How many of the shown unit, for axes and fields. */
export const inShownUnit = (
  si: number,
  dimension: Dimension,
  system: UnitSystem,
): { readonly value: number; readonly unit: string } => {
  const { unit } = dimensions[dimension][system];
  return { value: si / factorOf(unit, dimension)!, unit };
};

/** The fewest digits that read back as the same number: 0.3048 m is "1 ft". */
export const shortest = (value: number, same: (text: number) => boolean): string => {
  for (let digits = 6; digits < 17; digits++) {
    const rounded = Number(value.toPrecision(digits));
    if (same(rounded)) return String(rounded);
  }
  return String(value);
};

/** For files and fields: reads back with `parseQuantity`, lossless for what was read, else within 1e-14. */
export const writeQuantity = (si: number, dimension: Dimension, system: UnitSystem): string => {
  const { unit } = dimensions[dimension][system];
  const factor = factorOf(unit, dimension)!;
  return `${shortest(si / factor, (value) => tidy(value * factor) === si)} ${unit}`;
};
