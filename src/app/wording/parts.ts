import type { AnchorRow, Catalog, Section, Strand } from "../../model/catalog.ts";
import type { AnchorChoice, FootingChoice } from "../../model/design.ts";
import { isAngle, wallOf, widthOf } from "../../physics/steel/member.ts";
import { onGauge } from "../../quantity/inches.ts";
import { shortGrade } from "../../report/names.ts";
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

/** A line of the bill in the page's words: strand by its size and grade, what is sold whole by its length in the units shown. */
export const billItem = (item: string, catalog: Catalog, system: System): string =>
  item
    .replace(/\bstrand ([^\s:]+)/, (whole, id: string) => {
      const strand = byId(catalog.strand, id);
      return strand ? `${strandName(strand, system)} strand` : whole;
    })
    .replace(/\b(\d[\d.]*) m$/, (_, metres: string) => said(Number(metres), "length", system));

const grade = (name: string): string => {
  const short = shortGrade(name);
  return short === name && !/^[A-Z]+$/.test(name) ? name.toLowerCase() : short;
};

/** "2.5 × 2.5 × 4 ft": the unit once, at the end. */
export const sizes = (values: readonly number[], system: System): string =>
  `${values.map((value) => figure(value, "length", system)).join(" × ")} ${unitOf("length", system)}`;

export const anchorSize = (anchor: AnchorChoice, system: System): string => {
  if (anchor.kind === "deadman") return sizes([anchor.length, anchor.width, anchor.height], system);
  if (anchor.kind === "post") return sizes([anchor.width, anchor.width, anchor.depth], system);
  if (anchor.kind === "rock-rod") return `socket ${said(anchor.socket, "length", system)}`;
  return "";
};

const anchorKinds = {
  deadman: ["buried concrete anchor", "buried concrete anchors"],
  screw: ["earth screw", "earth screws"],
  "rock-rod": ["rock rod", "rock rods"],
  post: ["anchor post in concrete", "anchor posts in concrete"],
} as const;
export const anchorKind = (kind: AnchorRow["kind"], count = 1): string =>
  anchorKinds[kind][count === 1 ? 0 : 1];

type FootingOf<Kind extends FootingChoice["kind"]> = Extract<FootingChoice, { kind: Kind }>;
interface FootingWords<Footing> {
  /** Beside the drawing. */
  readonly size: (footing: Footing, system: System) => string;
  /** In the sentence of the design. */
  readonly base: (footing: Footing, system: System) => string;
}

const footingKinds: { readonly [Kind in FootingChoice["kind"]]: FootingWords<FootingOf<Kind>> } = {
  block: {
    size: ({ width, depth }, system) => sizes([width, width, depth], system),
    base: ({ width, depth }, system) => `block base ${sizes([width, width, depth], system)} deep`,
  },
  pad: {
    size: ({ width, thickness }, system) => sizes([width, width, thickness], system),
    base: ({ width, thickness, depth }, system) =>
      `pad base ${sizes([width, width, thickness], system)}, ${said(depth, "length", system)} down`,
  },
  "rock-pad": {
    size: ({ width, depth }, system) => sizes([width, width, depth], system),
    base: ({ width, depth, dowels, socket }, system) =>
      `pad on rock ${sizes([width, width, depth], system)}, ${inWords(dowels)} dowels socketed ${said(socket, "length", system)}`,
  },
  pier: {
    size: ({ diameter, depth }, system) =>
      `${figure(diameter, "length", system)} round × ${said(depth, "length", system)}`,
    base: ({ diameter, depth }, system) =>
      `drilled pier ${said(diameter, "length", system)} across, ${said(depth, "length", system)} deep`,
  },
};
const footingWordsOf = (footing: FootingChoice) =>
  footingKinds[footing.kind] as unknown as FootingWords<FootingChoice>;

const footingNames: Readonly<Record<FootingChoice["kind"], string>> = {
  block: "block",
  pad: "reinforced pad",
  pier: "drilled pier",
  "rock-pad": "pad on rock",
};
export const footingKind = (kind: FootingChoice["kind"]): string => footingNames[kind];

export const footingSize = (footing: FootingChoice, system: System): string =>
  footingWordsOf(footing).size(footing, system);

export const footingBase = (footing: FootingChoice, system: System): string =>
  `${footingWordsOf(footing).base(footing, system)}${footing.insulator === undefined ? "" : ", a base insulator on it"}`;

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
