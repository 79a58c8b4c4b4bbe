import type { Section, Strand } from "../../model/catalog.ts";
import type { Design, FootingChoice } from "../../model/design.ts";
import type { Check } from "../../model/verdict.ts";
import { isAngle, wallOf, widthOf } from "../../physics/steel/member.ts";
import type { As, Figure } from "./types.ts";

export const caution =
  "This is an estimating and learning tool, not a permit. Masts kill by falling, by electrocution and by collapse. Local codes, the maker’s drawings and a licensed engineer decide. Keep the fall zone clear of power lines. Demo sections, antennas and prices are invented.";

/** A figure to be shown; `both` puts SI beside it. */
export const figure = (si: number, as: As, digits?: number, both = false): Figure => ({
  si,
  as,
  digits,
  both,
});
export const both = (si: number, as: As, digits?: number): Figure => figure(si, as, digits, true);

const fraction = (value: number, parts: number): string => {
  const count = Math.round(value * parts);
  const whole = Math.floor(count / parts);
  let top = count % parts;
  let under = parts;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    under /= 2;
  }
  return top === 0 ? `${whole}` : whole === 0 ? `${top}/${under}` : `${whole} ${top}/${under}`;
};

/** Inches as a rule reads them. */
export const inchesOf = (si: number): string => {
  const value = si / 0.0254;
  const sixteenths = value * 16;
  return Math.abs(sixteenths - Math.round(sixteenths)) < 0.02
    ? fraction(value, 16)
    : value.toFixed(3).replace(/^0/, "");
};

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
      : `${width} × ${(shown / 0.0254).toFixed(3).replace(/^0/, "")} in${isAngle(section.leg) ? " angle" : ""}`;
  const face = Math.round((section.face / 0.0254) * 100) / 100;
  const worn = section.used ? ", used" : "";
  return `${face} in ${section.legs === 3 ? "three-leg" : "four-leg"}, ${leg}${worn}`;
};

const footingNames: {
  readonly [Kind in FootingChoice["kind"]]: (footing: Extract<FootingChoice, { kind: Kind }>) => string;
} = {
  block: ({ width, depth }) => `block ${tape(width)} square, ${tape(depth)} deep`,
  pad: ({ width, thickness, depth }) =>
    `pad ${tape(width)} square, ${tape(thickness)} thick, ${tape(depth)} deep`,
  "rock-pad": ({ width, depth, dowels, socket }) =>
    `pad on rock ${tape(width)} square, ${tape(depth)} thick, ${dowels} dowels socketed ${tape(socket)}`,
  pier: ({ diameter, depth }) => `drilled pier ${tape(diameter)} across, ${tape(depth)} deep`,
};
export const footingName = (footing: FootingChoice): string =>
  `${(footingNames[footing.kind] as (footing: FootingChoice) => string)(footing)}${footing.insulator === undefined ? "" : ", a base insulator on it"}`;

export const strandName = (strand: Strand): string =>
  `${inchesOf(strand.diameter)} in ${shortGrade(strand.grade)} strand`;

/** Extra-High-Strength is EHS to everybody who buys it; one word stays a word. */
const shortGrade = (grade: string): string => {
  const words = grade.split(/[-\s]+/);
  return words.length > 1 ? words.map((word) => word.charAt(0).toUpperCase()).join("") : grade;
};

/** Levels bottom up: by place, and the letter that stands in drawings and tables. */
export const levelNames = (count: number): readonly { readonly name: string; readonly letter: string }[] => {
  if (count === 1) return [{ name: "Guys", letter: "G" }];
  const lower = { name: "Lower guys", letter: "L" };
  const upper = { name: "Upper guys", letter: "U" };
  if (count === 2) return [lower, upper];
  if (count === 3) return [lower, { name: "Middle guys", letter: "M" }, upper];
  return Array.from({ length: count }, (_, i) => ({ name: `Guys of level ${i + 1}`, letter: `G${i + 1}.` }));
};

export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** A verdict names places by code; a sheet says them as on site. */
export const placeOf = (check: Check, design: Design): string => {
  const at = check.at === undefined ? "" : ` at ${tape(check.at)}`;
  const level = /^level (\d+)$/.exec(check.where);
  if (level && design.guys)
    return `${lowerFirst(levelNames(design.guys.levels.length)[Number(level[1]) - 1].name)}${at}`;
  return `${check.where}${at}`;
};

export const usedOf = (check: Check): string =>
  check.kind !== "strength"
    ? check.kind === "warning"
      ? check.demand <= check.capacity
        ? "clear"
        : "▲ reached"
      : check.passes
        ? "inside"
        : "outside"
    : Number.isFinite(check.utilisation)
      ? check.utilisation.toFixed(2)
      : "unstable";

/** The shortest road to failure: what fails, else the strength check that is used most. */
export const governing = (checks: readonly Check[]): Check | undefined =>
  checks.find((check) => !check.passes && check.kind !== "warning") ??
  checks.find((check) => check.kind === "strength");

/** A compass as the crew reads it: 0 to 359 degrees from north. */
export const bearing = (degrees: number): number => (Math.round(degrees * 10) / 10 + 720) % 360;

/** FNV-1a: eight hex digits that tell designs apart on paper. */
export function shortHash(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, "0");
}
