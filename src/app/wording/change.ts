import type { Catalog } from "../../model/catalog.ts";
import type { Change } from "../../search/types.ts";
import { figure, type System, said } from "./figures.ts";
import { inWords, rowName } from "./parts.ts";

/** "anchors at 26 ft, not 28": how a rejected design differs, as said on site. */
export const changeWords = (change: Change, catalog: Catalog, system: System, levelCount = 0): string => {
  const length = (to: number, from: number) =>
    `${said(to, "length", system)}, not ${figure(from, "length", system)}`;
  const level = (index: number) => levelWord(index, levelCount);
  switch (change.what) {
    case "radius":
      return `anchors at ${length(change.to, change.from)}`;
    case "height":
      return `mast ${length(change.to, change.from)}`;
    case "footingDepth":
      return `base ${length(change.to, change.from)} deep`.replace(/, not (.*) deep$/, " deep, not $1");
    case "footingWidth":
      return `base ${length(change.to, change.from)} wide`.replace(/, not (.*) wide$/, " wide, not $1");
    case "level":
      return `${level(change.level)} at ${length(change.to, change.from)}`;
    case "strand":
      return `${level(change.level)} of ${rowName(catalog, change.to, system)}`;
    case "section":
      return `${rowName(catalog, change.to, system)} sections`;
    case "anchor":
      return `${rowName(catalog, change.to, system)} as anchors`;
    case "footing":
      return `${rowName(catalog, change.to, system)} as base`;
    case "package":
      return `antennas of ${change.to}`;
    case "levels":
      return change.to === 0
        ? "no guys at all"
        : `${inWords(change.to)} guy level${change.to === 1 ? "" : "s"}, not ${inWords(change.from)}`;
    case "tension":
      return `guys at ${Math.round(change.to * 100)} % of breaking strength, not ${Math.round(change.from * 100)} %`;
  }
};

const levelWord = (index: number, count: number): string => {
  if (count === 1) return "guys";
  if (index === 0) return "lower guys";
  if (count > 0 && index === count - 1) return "upper guys";
  return count === 0 && index === 1 ? "upper guys" : `guys of level ${index + 1}`;
};
