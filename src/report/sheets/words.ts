import type { Section, Strand } from "../../model/catalog.ts";
import type { Design } from "../../model/design.ts";
import type { Check } from "../../model/verdict.ts";
import { isAngle, wallOf, widthOf } from "../../physics/steel/member.ts";
import { fraction, onGauge, onRule } from "../../quantity/inches.ts";
import { levelNames, limitWord, NO_HOLD, shortGrade, upperFirst } from "../names.ts";
import type { Lengths } from "../part-names.ts";
import type { As, Figure } from "./types.ts";

/** A figure to be shown; `both` puts SI beside it. */
export const figure = (si: number, as: As, digits?: number, both = false): Figure => ({
  si,
  as,
  digits,
  both,
});
export const both = (si: number, as: As, digits?: number): Figure => figure(si, as, digits, true);

/** Inches as a rule reads them, else as a decimal. */
export const inchesOf = (si: number): string => onRule(si) ?? onGauge(si);

/** 72′ 1 1/2″: to the half inch, as a tape is read on site. */
export const tape = (si: number): string => {
  const halves = Math.round((Math.abs(si) / 0.0254) * 2);
  const feet = Math.floor(halves / 24);
  const inches = (halves - feet * 24) / 2;
  const sign = si < 0 && halves > 0 ? "−" : "";
  return `${sign}${feet}′\u00a0${fraction(inches, 2).replace(" ", "\u00a0")}″`;
};

export const sectionName = (section: Section): string => {
  const width = inchesOf(widthOf(section.leg));
  const shown = section.measuredWall ?? wallOf(section.leg);
  const leg =
    shown === undefined
      ? `${width} in solid`
      : `${width} × ${onGauge(shown)} in${isAngle(section.leg) ? " angle" : ""}`;
  const face = Math.round((section.face / 0.0254) * 100) / 100;
  const worn = section.used ? ", used" : "";
  return `${face} in ${section.legs === 3 ? "three-leg" : "four-leg"}, ${leg}${worn}`;
};

/** Lengths as the crew reads them. */
export const taped: Lengths = { length: tape, sizes: (si) => si.map(tape).join(" × ") };

export const strandSize = (strand: Strand): string =>
  `${inchesOf(strand.diameter)} in ${shortGrade(strand.grade)}`;
export const strandName = (strand: Strand): string => `${strandSize(strand)} strand`;

/** Levels bottom up: by place, and the letter that stands in drawings and tables. */
export const letteredLevels = (
  count: number,
): readonly { readonly name: string; readonly letter: string }[] =>
  levelNames(count).map((name, i) => ({
    name: upperFirst(name),
    letter: count > 3 ? `G${i + 1}.` : name.charAt(0).toUpperCase(),
  }));

/** A verdict names places by code; a sheet says them as on site. */
export const placeOf = (check: Check, design: Design): string => {
  const at = check.at === undefined ? "" : ` at ${tape(check.at)}`;
  const level = /^level (\d+)$/.exec(check.where);
  if (level && design.guys) return `${levelNames(design.guys.levels.length)[Number(level[1]) - 1]}${at}`;
  return `${check.where}${at}`;
};

export const usedOf = (check: Check): string => {
  if (check.kind !== "strength") return limitWord(check);
  return Number.isFinite(check.utilisation) ? check.utilisation.toFixed(2) : NO_HOLD;
};

/** A compass as the crew reads it: 0 to 359 degrees from north. */
export const bearing = (degrees: number): number => (Math.round(degrees * 10) / 10 + 720) % 360;

/** FNV-1a: eight hex digits that tell designs apart on paper. */
export function shortHash(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, "0");
}
