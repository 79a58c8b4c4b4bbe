import type { Check } from "../../model/verdict.ts";
import { grouped, type Measure, type System, said } from "./figures.ts";

const measures: Partial<Record<Check["unit"], Measure>> = {
  force: "force",
  moment: "moment",
  length: "length",
};

/** A demand or capacity in the unit of its check. */
export const checkFigure = (si: number, unit: Check["unit"], system: System): string => {
  if (!Number.isFinite(si)) return si > 0 ? "no end" : "none";
  const measure = measures[unit];
  if (measure) return said(si, measure, system);
  // Soil speaks in psf, steel in ksi: the size of the number tells which it is.
  if (unit === "pressure")
    return Math.abs(si) > 2e6
      ? said(si, "stress", system)
      : said(si, "pressure", system, system === "us" ? 0 : 1);
  if (unit === "angle") return `${grouped(si, 2, system)}°`;
  return grouped(si, 3, system);
};

export const demandOfCapacity = (check: Check, system: System): string => {
  const demand = checkFigure(check.demand, check.unit, system);
  const capacity = checkFigure(check.capacity, check.unit, system);
  const unit = demand.match(/ [^ ]+(?: ft)?$/)?.[0] ?? "";
  const bare = unit && capacity.endsWith(unit) ? demand.slice(0, demand.length - unit.length) : demand;
  return `${bare} of ${capacity}`;
};

export const placeWords = (check: Check, system: System): string =>
  check.at === undefined ? check.where : `${check.where}, ${said(check.at, "length", system)}`;

/** Numbers are given to strength checks only, in the order of the verdict: the road to failure. */
export const numberedChecks = (
  checks: readonly Check[],
): readonly { check: Check; number: number | null }[] => {
  let number = 0;
  return checks.map((check) => ({ check, number: check.kind === "strength" ? ++number : null }));
};

export const governing = (checks: readonly Check[]): Check | undefined =>
  checks.find((check) => !check.passes && check.kind !== "warning") ??
  checks.find((check) => check.kind === "strength");

export const limitWord = (check: Check): string => {
  if (check.kind === "warning") return check.passes ? "clear" : "look";
  return check.passes ? "inside" : "outside";
};

export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
