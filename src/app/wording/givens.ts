import type { Catalog } from "../../model/catalog.ts";
import type { Study } from "../../model/study.ts";
import { figure, type System, said, unitOf } from "./figures.ts";
import { byId } from "./parts.ts";

type Axis = Study["wishes"]["height"];

/** A height as one value, or null where the search may choose among several. */
export const single = (axis: Axis): number | null =>
  typeof axis === "number" ? axis : Array.isArray(axis) && axis.length === 1 ? axis[0] : null;

export const axisWords = (axis: Axis, system: System): string => {
  const one = single(axis);
  if (one !== null) return said(one, "length", system);
  if (Array.isArray(axis)) {
    const unit = unitOf("length", system);
    return `${axis.map((value) => figure(value, "length", system)).join(", ")} ${unit}`;
  }
  const { from, to, step } = axis as { from: number; to: number; step: number };
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

const airWords = (celsius: number, system: System): string =>
  system === "us" ? `${Math.round(1.8 * celsius + 32)} °F` : `${Math.round(celsius)} °C`;

/** What a study asks of the site beside wind, ice and soil; empty where it states none of it. */
export const furtherSite = ({ site }: Study, system: System): string[] => {
  const { temperature, baseStiffness } = site;
  return [
    ...(temperature
      ? [
          `rigged at ${airWords(temperature.installed, system)}, air ${airWords(temperature.coldest, system)} to ${airWords(temperature.hottest, system)}`,
        ]
      : []),
    ...(baseStiffness === undefined
      ? []
      : [`base of a mast without guys turns against ${(baseStiffness / 1e6).toPrecision(2)} MN m/rad`]),
  ];
};

/** What it asks of the mast beside height, antennas and margin. */
export const furtherWishes = ({ wishes }: Study): string[] => {
  const { swayLimit, twistLimit, serviceWind, lossOfOneGuy, insulatedBase } = wishes;
  const turns = [
    ...(swayLimit === undefined ? [] : [`sway ${swayLimit}°`]),
    ...(twistLimit === undefined ? [] : [`twist ${twistLimit}°`]),
  ];
  return [
    ...(turns.length > 0
      ? [`antennas ${turns.join(" and ")} at most in ${Math.round(100 * serviceWind)} % of the wind`]
      : []),
    ...(lossOfOneGuy ? ["stands with any one guy lost"] : []),
    ...(insulatedBase ? ["insulated from the ground, guys too"] : []),
  ];
};
