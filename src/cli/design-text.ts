import type { Catalog } from "../model/catalog.ts";
import type { Design } from "../model/design.ts";
import { formatQuantity } from "../quantity/format.ts";
import type { ChoiceRow } from "../report/comparison.ts";
import { lowerFirst } from "../report/names.ts";
import { anchorName, footingName, type Lengths } from "../report/part-names.ts";
import { sectionName, strandName } from "../report/sheets/words.ts";
import type { Change } from "../search/types.ts";
import type { OpenStudy } from "./files.ts";

/** What a design's keys are looked up in. */
export type Book = Pick<OpenStudy, "study" | "catalog">;

const bare = (metres: number) => formatQuantity(metres, "length", "us", 1).value;
export const feet = (metres: number) => `${bare(metres)} ft`;
const lengths: Lengths = { length: feet, sizes: (si) => `${si.map(bare).join(" × ")} ft` };

type Guys = NonNullable<Design["guys"]>;

const sectionText = (id: string, { sections }: Catalog): string => {
  const row = sections.find((one) => one.id === id);
  return row ? sectionName(row) : id;
};
const strandText = (id: string, { strand }: Catalog): string => {
  const row = strand.find((one) => one.id === id);
  return row ? strandName(row) : id;
};
const armText = (id: string, { torqueArms }: Catalog): string =>
  lowerFirst(torqueArms.find((one) => one.id === id)?.name ?? id);
const stackText = (stack: Design["stack"], catalog: Catalog): string =>
  stack.map((part) => `${feet(part.length)} of ${sectionText(part.section, catalog)}`).join(", then ");
const footingText = (footing: Design["footing"]): string => footingName(footing, feet);
const outText = ({ radii, radius, rotation }: Guys): string =>
  `${(radii ?? [radius]).map(feet).join(", ")} out, the first toward ${rotation} degrees`;

export function designText({ height, stack, guys, footing }: Design, { catalog }: Book): string {
  const base = footingText(footing);
  if (!guys) return `${feet(height)} free-standing: ${stackText(stack, catalog)}; base ${base}`;
  const levels = guys.levels
    .map(({ strand, height: at, tension, arm }) => {
      const own = tension === undefined ? "" : ` (${percent(tension, 0)})`;
      const pairs = arm === undefined ? "" : `, six guys on ${armText(arm, catalog)}`;
      return `${strandText(strand, catalog)} at ${feet(at)}${own}${pairs}`;
    })
    .join(", ");
  const anchors = anchorName(guys.anchor, guys.perLevel, catalog.anchors, lengths);
  return `${feet(height)}: ${stackText(stack, catalog)}; ${guys.perLevel} guys a level: ${levels}, at ${percent(guys.tension, 0)} of breaking strength;\n  anchors ${outText(guys)}: ${anchors}; base ${base}`;
}

const percent = (share: number, digits: number) => `${(100 * share).toFixed(digits)} %`;

/** The choices of a design, one by one. */
export const choiceText = (
  what: ChoiceRow["what"],
  { stack, guys, footing, package: pack }: Design,
  { study, catalog }: Book,
): string => {
  switch (what) {
    case "package":
      return study.wishes.packages.find(({ id }) => id === pack)?.name ?? pack;
    case "stack":
      return stackText(stack, catalog);
    case "footing":
      return footingText(footing);
    case "anchor":
      return guys
        ? `${anchorName(guys.anchor, guys.perLevel, catalog.anchors, lengths)}, ${outText(guys)}`
        : "none";
    case "guys":
      return guys
        ? `${guys.perLevel} a level: ${guys.levels.map(({ strand, height }) => `${strandText(strand, catalog)} at ${feet(height)}`).join(", ")}; ${percent(guys.tension, 0)} of breaking strength`
        : "none";
  }
};

/** What a cheaper neighbour has, and what the answer has instead. */
export const changeText = (change: Change, { catalog }: Book): string => {
  switch (change.what) {
    case "radius":
      return `anchors ${feet(change.to)} out, not ${feet(change.from)}`;
    case "level":
      return `guys of level ${change.level} at ${feet(change.to)}, not ${feet(change.from)}`;
    case "strand":
      return `guys of level ${change.level} of ${strandText(change.to, catalog)}, not ${strandText(change.from, catalog)}`;
    case "section":
      return stackText(change.now, catalog);
    case "anchor":
      return anchorName(change.now, 2, catalog.anchors, lengths);
    case "footing":
      return `base: ${footingText(change.now)}`;
    case "arm":
      return change.to === null
        ? `no ${armText(change.from ?? "", catalog)} at the top guys`
        : `${armText(change.to, catalog)} at the top guys`;
    case "tension":
      return `guys${change.level === null ? "" : ` of level ${change.level}`} drawn to ${percent(change.to, 1)} of breaking strength, not ${percent(change.from, 1)}`;
    case "levels":
      return change.to === 0 ? "no guys" : `${change.to} guy levels, not ${change.from}`;
  }
};
