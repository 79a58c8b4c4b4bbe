import type { Design } from "../../model/design.ts";
import type { Check } from "../../model/verdict.ts";
import { levelNames } from "../../report/names.ts";
import { anchorKind, footingKind } from "../../report/part-names.ts";
import { grouped, type Measure, type System, said } from "./figures.ts";

const measures: Partial<Record<Check["unit"], Measure>> = {
  force: "force",
  moment: "moment",
  length: "length",
  volume: "volume",
};

/** A demand or capacity in the unit of its check. */
export const checkFigure = (si: number, unit: Check["unit"], system: System): string => {
  if (!Number.isFinite(si)) return si > 0 ? "no end" : "none";
  const measure = measures[unit];
  if (measure) return said(si, measure, system);
  // Soil speaks in psf, steel in ksi: the size of the number tells which it is.
  if (unit === "pressure") return said(si, Math.abs(si) > 2e6 ? "stress" : "pressure", system);
  if (unit === "angle") return `${grouped((si * 180) / Math.PI, 2, system)}°`;
  return grouped(si, unit === "money" ? 2 : 3, system);
};

/** "4,833 of 4,982 lbf": the unit once where both have it. */
export const demandOfCapacity = (check: Check, system: System): string => {
  const [demand, capacity] = [check.demand, check.capacity].map((si) => checkFigure(si, check.unit, system));
  const unit = / \D+$/.exec(demand)?.[0] ?? "";
  const bare = unit && capacity.endsWith(unit) ? demand.slice(0, -unit.length) : demand;
  return `${bare} of ${capacity}`;
};

/** Where on the mast a height lies, as said on site. */
const mastPlace = (at: number, levels: readonly number[], height: number): string => {
  if (at < 0.5) return "at the base";
  const names = levelNames(levels.length);
  const nearest = levels.findIndex((level) => Math.abs(level - at) < 0.5);
  if (nearest >= 0) return `${at > levels[nearest] + 1e-6 ? "over" : "under"} the ${names[nearest]}`;
  if (levels.length === 0) return "on the mast";
  if (at > levels[levels.length - 1]) return at > height - 0.5 ? "at the mast top" : "above the upper guys";
  return at < levels[0] ? "below the lowest guys" : "between guys";
};

/** Where in the study's ranges a check is worst, as far as that is not as stated: "wind 105 %, tension 85 %". */
const rangeWords = ({ place }: Check, system: System): string => {
  if (!place) return "";
  const share = (name: string, value: number) => (value === 1 ? "" : `${name} ${Math.round(100 * value)} %`);
  return [
    share("soil", place.soilStrength),
    share("wind speed", place.windSpeed),
    place.wallLoss === 0 ? "" : `walls ${said(place.wallLoss, "size", system)} thinner`,
    share("tension", place.tension),
  ]
    .filter(Boolean)
    .join(", ");
};

/** A verdict names places by code; the page says them as on site. */
export const placeWords = (check: Check, design: Design, system: System): string =>
  [placeOnMast(check, design, system), rangeWords(check, system)].filter(Boolean).join("; ");

const placeOnMast = (check: Check, design: Design, system: System): string => {
  const levels = design.guys?.levels.map((level) => level.height) ?? [];
  const at = check.at === undefined ? "" : `, ${said(check.at, "length", system)}`;
  const level = /^level (\d+)$/.exec(check.where);
  if (level) return `${levelNames(levels.length)[Number(level[1]) - 1]}${at}`;
  if (check.kind === "limit") return limitPlace(check, system);
  if (check.kind === "warning")
    return `${check.where}, ${checkFigure(check.capacity, check.unit, system)} away; mast reaches ${checkFigure(check.demand, check.unit, system)}`;
  if (check.where === "mast" && check.at !== undefined)
    return `${mastPlace(check.at, levels, design.height)}${at}`;
  if (check.where === "mast") return "the whole mast";
  if (check.where === "anchor" && design.guys) return `${anchorKind(design.guys.anchor.kind)}`;
  if (check.where === "base") return `base ${footingKind(design.footing.kind)}`;
  return `${check.where}${at}`;
};

const limitPlace = (check: Check, system: System): string => {
  if (check.limitState === "initial-tension")
    return `${grouped(check.demand * 100, 1, system)} % of breaking strength, window to ${grouped(check.capacity * 100, 1, system)} %`;
  if (check.limitState === "barred" || check.limitState === "reels")
    return check.note ? `${check.where}: ${check.note}` : check.where;
  return `${check.where}, ${demandOfCapacity(check, system)}`;
};

/** Numbers are given to strength checks only, in the order of the verdict: the road to failure. */
export const numberedChecks = (
  checks: readonly Check[],
): readonly { check: Check; number: number | null }[] => {
  let number = 0;
  return checks.map((check) => ({ check, number: check.kind === "strength" ? ++number : null }));
};

/** Limits that hold are read at a glance: one line for each kind, whatever the number of places. */
export const mergedLimits = (
  rows: readonly { check: Check; number: number | null }[],
  where: (check: Check) => string,
): readonly { check: Check; number: number | null; where: string }[] => {
  const merged: { check: Check; number: number | null; where: string }[] = [];
  for (const { check, number } of rows) {
    const same = merged.find(
      (row) =>
        row.check.kind === "limit" &&
        check.kind === "limit" &&
        row.check.passes &&
        check.passes &&
        row.check.title === check.title,
    );
    if (same) same.where = `${same.where}; ${where(check)}`;
    else merged.push({ check, number, where: where(check) });
  }
  return merged;
};
