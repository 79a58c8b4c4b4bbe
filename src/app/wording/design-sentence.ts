import type { Catalog } from "../../model/catalog.ts";
import type { Design } from "../../model/design.ts";
import { anchorKind, anchorSize, footingName } from "../../report/part-names.ts";
import { figure, type System, said, unitOf } from "./figures.ts";
import { byId, inWords, lengthsIn, sectionName, strandName } from "./parts.ts";

const listed = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;

export const stackWords = (design: Design, catalog: Catalog, system: System): string =>
  listed(
    design.stack.map((part) => {
      const section = byId(catalog.sections, part.section);
      return `${said(part.length, "length", system)} of ${section ? sectionName(section, system) : part.section} section`;
    }),
  );

export const guyWords = (design: Design, catalog: Catalog, system: System): string => {
  const guys = design.guys;
  if (!guys) return "no guys";
  const strands = guys.levels.map((level) => {
    const strand = byId(catalog.strand, level.strand);
    return strand ? strandName(strand, system) : level.strand;
  });
  const unit = unitOf("length", system);
  const heights = guys.levels.map((level) => figure(level.height, "length", system));
  const armed = guys.levels.flatMap(({ arm }, i) => (arm === undefined ? [] : `${heights[i]} ${unit}`));
  const pairs = armed.length > 0 ? `, two from each anchor to torque arms at ${listed(armed)}` : "";
  if (new Set(strands).size === 1)
    return `guys of ${strands[0]} strand at ${listed(heights)} ${unit}${pairs}`;
  return `guys ${listed(guys.levels.map((_, i) => `at ${heights[i]} ${unit} of ${strands[i]} strand`))}${pairs}`;
};

export const anchorWords = (design: Design, system: System): string | null => {
  const guys = design.guys;
  if (!guys) return null;
  const size = anchorSize(guys.anchor, lengthsIn(system));
  const what = `${inWords(guys.perLevel)} ${anchorKind(guys.anchor.kind, guys.perLevel)}`;
  return `${what}${size ? ` ${size}` : ""}, ${outWords(guys, system)} out`;
};

/** "34 ft", or each anchor's own: "34, 30 and 34 ft". */
const outWords = ({ radius, radii }: NonNullable<Design["guys"]>, system: System): string =>
  radii
    ? `${listed(radii.map((r) => figure(r, "length", system)))} ${unitOf("length", system)}`
    : said(radius, "length", system);

export const footingWords = ({ footing }: Design, system: System): string =>
  footingName(footing, lengthsIn(system).length);

/** The answer, readable without the drawing. */
export const designSentence = (design: Design, catalog: Catalog, system: System): string => {
  return `${[
    stackWords(design, catalog, system),
    guyWords(design, catalog, system),
    anchorWords(design, system),
    `on a ${footingWords(design, system)}`,
  ]
    .filter((part) => part !== null)
    .join("; ")}.`;
};

/** One line of what holds it, for the marked designs. */
export const holdWords = (design: Design, system: System): string => {
  if (!design.guys) return "free-standing";
  const { perLevel, anchor, levels } = design.guys;
  return `${perLevel} ${anchorKind(anchor.kind, perLevel)}, ${outWords(design.guys, system)} out; ${inWords(levels.length)} guy level${levels.length > 1 ? "s" : ""}`;
};
