import type { Axis } from "../../model/axis.ts";
import type { Catalog } from "../../model/catalog.ts";
import type { Study } from "../../model/study.ts";
import { figure, type System, said, unitOf } from "./figures.ts";
import { byId } from "./parts.ts";

/** A height as one value, or null where the search may choose among several. */
export const single = (axis: Axis): number | null =>
  typeof axis === "number" ? axis : !("from" in axis) && axis.length === 1 ? axis[0] : null;

export const axisWords = (axis: Axis, system: System): string => {
  const one = single(axis);
  if (one !== null) return said(one, "length", system);
  if (typeof axis === "number") return said(axis, "length", system);
  if (!("from" in axis)) {
    const unit = unitOf("length", system);
    return `${axis.map((value) => figure(value, "length", system)).join(", ")} ${unit}`;
  }
  const { from, to, step } = axis;
  return `${figure(from, "length", system)} to ${said(to, "length", system)} by ${figure(step, "length", system)}`;
};

/** Everything the wind sees of a package, as stated, not as drag. */
export const packageArea = (set: Study["wishes"]["packages"][number], catalog: Catalog): number =>
  set.items.reduce(
    (sum, item) => sum + ("antenna" in item ? (byId(catalog.antennas, item.antenna)?.area ?? 0) : item.area),
    0,
  );

/** The one area that a package states without naming an antenna, which the strip can edit. */
export const openArea = (study: Study): { path: (string | number)[]; area: number } | null => {
  if (study.wishes.packages.length !== 1) return null;
  const { items } = study.wishes.packages[0];
  const index = items.findIndex((item) => "area" in item);
  const item = items[index];
  if (items.length !== 1 || !item || !("area" in item)) return null;
  return { path: ["wishes", "packages", 0, "items", index, "area"], area: item.area };
};

export const antennaWords = (study: Study, catalog: Catalog, system: System): string => {
  const sets = study.wishes.packages;
  if (sets.length > 1) return `any of ${sets.length} sets of antennas`;
  const [set] = sets;
  const area = said(packageArea(set, catalog), "area", system);
  return set.items.length > 1 ? `${set.items.length} antennas, ${area}` : `${area} of antenna`;
};

export const lotSize = (study: Study, system: System): string => {
  const easts = study.lot.corners.map(([east]) => east);
  const norths = study.lot.corners.map(([, north]) => north);
  const wide = Math.max(...easts) - Math.min(...easts);
  const deep = Math.max(...norths) - Math.min(...norths);
  return `${figure(wide, "length", system)} × ${said(deep, "length", system)}`;
};

export const exposureWords: Readonly<Record<"B" | "C" | "D", string>> = {
  B: "among houses or trees",
  C: "open country",
  D: "open water’s edge",
};

export const terrainWords: Readonly<Record<"0" | "I" | "II" | "III" | "IV", string>> = {
  "0": "open sea",
  I: "flat, no trees",
  II: "open country",
  III: "suburb or wood",
  IV: "town",
};

export const airWords = (celsius: number, system: System): string =>
  system === "us" ? `${Math.round(1.8 * celsius + 32)} °F` : `${Math.round(celsius)} °C`;

export const basisWords: Readonly<Record<Study["site"]["wind"]["basis"], string>> = {
  uniform: "one pressure all the way up",
  "asce7-16": "ASCE 7-16, three-second gust",
  "asce7-22": "ASCE 7-22, three-second gust",
  en1991: "EN 1991-1-4, ten-minute mean",
};

export const iceWords = ({ site: { ice } }: Study, system: System): string => {
  if (!ice) return "no ice";
  const wind =
    ice.speed !== undefined ? said(ice.speed, "speed", system) : said(ice.pressure ?? 0, "pressure", system);
  const thickness = said(ice.thickness, "size", system, system === "us" ? 2 : 0);
  return `ice ${thickness} with ${wind}${ice.importance === 1 ? "" : `, importance ${ice.importance}`}`;
};

export const hillWords = ({ site: { wind } }: Study, system: System): string => {
  if (wind.basis === "uniform" || !wind.hill) return "no hill";
  const { shape, height, distance, side } = wind.hill;
  const place =
    distance > 0 ? `${said(distance, "length", system)} ${side} of its crest` : "the mast on its crest";
  return `${shape === "axisymmetric" ? "round hill" : shape} ${said(height, "length", system)} high, ${place}`;
};

type Item = Study["wishes"]["packages"][number]["items"][number];

/** "Five-element beam 2 ft above the top". */
export const itemWords = (item: Item, catalog: Catalog, system: System): string => {
  const name =
    "antenna" in item
      ? (byId(catalog.antennas, item.antenna)?.name ?? item.antenna)
      : `${said(item.area, "area", system)} of antenna`;
  const of = (si: number) => said(si, "length", system);
  const place =
    item.above !== undefined
      ? `${of(item.above)} above the top`
      : item.at !== undefined
        ? `beside the mast at ${of(item.at)}`
        : `beside the mast ${of(item.below ?? 0)} under the top`;
  return `${name} ${place}${item.offset > 0 ? `, ${of(item.offset)} off the axis` : ""}`;
};

/** What a study states that most leave out: said where the rarer givens are folded away. */
export const rareWords = (
  { site, wishes, parts, lot, ranges, uncertain }: Study,
  system: System,
): string[] => {
  const { wind, temperature } = site;
  const stated: readonly (readonly [boolean, string])[] = [
    [wind.basis !== "uniform" && wind.hill !== undefined, "a hill"],
    [temperature !== undefined, "temperature"],
    [site.baseStiffness !== undefined, "a base that turns"],
    [site.waterTable !== undefined, `water ${said(site.waterTable ?? 0, "length", system)} down`],
    [wishes.swayLimit !== undefined || wishes.twistLimit !== undefined, "limits of sway and twist"],
    [wishes.lossOfOneGuy, "one guy may be lost"],
    [wishes.insulatedBase, "insulated from the ground"],
    [wishes.heightLimit !== undefined, "a limit of height"],
    [wishes.digCap !== undefined, "a limit of digging"],
    [parts.guyHardware !== undefined, "hardware in the guys"],
    [parts.tensionEachLevel, "a tension for each level"],
    [parts.drawnIn, "anchors drawn in"],
    [parts.barred !== undefined, "what may not be built"],
    [[parts.wholeReels, parts.concreteAsSold, parts.barsAsSold].includes(true), "paid as it is sold"],
    [parts.torqueArms !== undefined, "torque arms"],
    [lot.slope !== undefined, "a falling lot"],
    [ranges !== undefined, "ranges"],
    [uncertain !== undefined, "what is uncertain"],
  ];
  return stated.filter(([is]) => is).map(([, words]) => words);
};
