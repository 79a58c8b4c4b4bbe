import type { Catalog, Section, Strand } from "../../model/catalog.ts";
import type { BillItem } from "../../model/verdict.ts";
import { isAngle, wallOf, widthOf } from "../../physics/steel/member.ts";
import { onGauge } from "../../quantity/inches.ts";
import { billWords, shortGrade } from "../../report/names.ts";
import type { Lengths } from "../../report/part-names.ts";
import { figure, type System, said, small, smallBare, unitOf } from "./figures.ts";

const counts = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
export const inWords = (count: number): string => counts[count] ?? `${count}`;

export const byId = <T extends { readonly id: string }>(rows: readonly T[], id: string): T | undefined =>
  rows.find((row) => row.id === id);

/** Sections are named by their geometry, never by a maker's number. */
export const sectionName = (section: Section, system: System): string => {
  const legs = section.legs === 3 ? "three-leg" : "four-leg";
  return `${face(section.face, system)} ${legs}, ${legSize(section, system)}`;
};

const patterns = { single: "zigzag", x: "crossed", z: "one way" } as const;

/** "crossed, horizontals": how the faces are braced. */
export const bracingWords = ({ bracing }: Section): string => {
  const { pattern, horizontal, joined } = bracing;
  const words = `${patterns[pattern]}${joined ? " and joined" : ""}`;
  return pattern === "z" || horizontal ? `${words}, horizontals` : words;
};

/** A face is measured with a tape: a decimal reads faster than a fraction. */
const face = (si: number, system: System): string =>
  system === "us" ? `${Math.round((si / 0.0254) * 100) / 100} in` : said(si, "size", "si", 0);

export const legSize = (section: Section, system: System): string => {
  const width = smallBare(widthOf(section.leg), system);
  const shown = section.measuredWall ?? wallOf(section.leg);
  if (shown === undefined) return `${width} solid`;
  const angle = isAngle(section.leg) ? " angle" : "";
  const worn = section.measuredWall !== undefined ? " used" : "";
  return `${width} × ${thickness(shown, system)}${angle}${worn}`;
};

/** A wall is always a decimal, as a gauge reads it. */
export const thickness = (si: number, system: System): string =>
  system === "us" ? onGauge(si) : figure(si, "size", "si", 2);

export const strandName = (strand: Strand, system: System): string =>
  `${small(strand.diameter, system)} ${grade(strand.grade)}`;

/** A line of the bill, its rows named and its lengths in the units shown. */
export const billItem = (line: BillItem, catalog: Catalog, system: System, levelCount: number): string =>
  billWords(line, levelCount, {
    row: (id) => rowName(catalog, id, system),
    length: (si) => said(si, "length", system),
  });

const grade = (name: string): string => {
  const short = shortGrade(name);
  return short === name && !/^[A-Z]+$/.test(name) ? name.toLowerCase() : short;
};

/** "2.5 × 2.5 × 4 ft": the unit once, at the end. */
const sizes = (values: readonly number[], system: System): string =>
  `${values.map((value) => figure(value, "length", system)).join(" × ")} ${unitOf("length", system)}`;

/** Lengths as the page says them. */
export const lengthsIn = (system: System): Lengths => ({
  length: (si) => said(si, "length", system),
  sizes: (si) => sizes(si, system),
});

export const rowName = (catalog: Catalog, id: string, system: System): string => {
  const section = byId(catalog.sections, id);
  if (section) return sectionName(section, system);
  const strand = byId(catalog.strand, id);
  if (strand) return strandName(strand, system);
  const named =
    byId(catalog.anchors, id) ??
    byId(catalog.footings, id) ??
    byId(catalog.insulators, id) ??
    byId(catalog.torqueArms, id) ??
    byId(catalog.antennas, id) ??
    byId(catalog.soils, id) ??
    byId(catalog.pipes, id);
  return named?.name ?? id;
};
