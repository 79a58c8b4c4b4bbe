import type { StudyFile } from "../../model/study.ts";
import type { Way } from "../../search/relax.ts";
import type { Outcome } from "../../search/types.ts";
import { fromUnits, type System, said } from "../wording/figures.ts";
import { openArea, single } from "../wording/givens.ts";
import { job, type Paper, type Reading } from "./book.ts";
import { withValue } from "./path.ts";

/** A study with one given moved by one step. */
export interface Variant {
  readonly id: string;
  /** "5 more": the step, in words. */
  readonly label: string;
  readonly paper: Paper;
}

const studyWith = (paper: Paper, path: readonly (string | number)[], value: unknown): Paper => ({
  ...paper,
  study: withValue(paper.study, path, value) as StudyFile,
});

/** One harder step of each given: what it would add to the answer is the price of that given. */
export const stepVariants = (reading: Reading, system: System): readonly Variant[] => {
  const known = stepsOf.get(reading);
  if (known?.system === system) return known.variants;
  const variants = variantsOf(reading, system);
  stepsOf.set(reading, { system, variants });
  return variants;
};
/** Kept by reading: several places of a page ask for the same steps, and each paper is a question's identity. */
const stepsOf = new WeakMap<Reading, { readonly system: System; readonly variants: readonly Variant[] }>();

const variantsOf = (reading: Reading, system: System): readonly Variant[] => {
  const { paper, study, catalog } = reading;
  const us = system === "us";
  const variants: Variant[] = [];
  const add = (id: string, label: string, path: readonly (string | number)[], value: unknown) =>
    variants.push({ id, label, paper: studyWith(paper, path, value) });
  const { wind, frostDepth } = study.site;
  if (wind.basis === "uniform") {
    const step = us ? 5 : 0.25;
    const more = wind.pressure + fromUnits(step, "pressure", system);
    add("wind", `${step} more`, ["site", "wind", "pressure"], more);
  } else {
    const step = us ? 5 : 2;
    const field = wind.basis === "en1991" ? "basicSpeed" : "speed";
    const now = wind.basis === "en1991" ? wind.basicSpeed : wind.speed;
    add("wind", `${step} more`, ["site", "wind", field], now + fromUnits(step, "speed", system));
  }
  const foot = us ? 0.3048 : 0.3;
  const height = single(study.wishes.height);
  if (height !== null) {
    // a mast grows by whole pieces: no shorter step can be bought
    const piece = Math.min(
      ...catalog.sections.flatMap((section) => section.pieces.map(({ length }) => length)),
    );
    add("height", said(piece, "length", system), ["wishes", "height"], height + piece);
  }
  const area = openArea(study);
  if (area) add("area", us ? "1 ft²" : "0.1 m²", area.path, area.area + (us ? 0.09290304 : 0.1));
  add("margin", "10 %", ["wishes", "margin"], study.wishes.margin + 0.1);
  add("frost", us ? "½ ft more" : "0.15 m more", ["site", "frostDepth"], frostDepth + foot / 2);
  if (study.lot.setback > 0) {
    const less = Math.min(study.lot.setback, us ? 1.524 : 1.5);
    add("setback", `${said(less, "length", system)} less`, ["lot", "setback"], study.lot.setback - less);
  }
  const soil = catalog.soils.find((row) => row.id === study.site.soil);
  const softer = catalog.soils
    .filter((row) => soil && !row.layers && row.values === soil.values && row.bearing < soil.bearing)
    .sort((a, b) => b.bearing - a.bearing)[0];
  if (softer) add("soil", "softer", ["site", "soil"], softer.id);
  return variants;
};

/** Each choice that the study keeps from the search, given back to it: what it would save is the price of that lock. */
export const lockVariants = ({ paper, study, catalog }: Reading): readonly Variant[] => {
  const { parts } = study;
  const variants: Variant[] = [];
  const add = (field: keyof typeof parts, label: string, value: unknown) =>
    variants.push({ id: `lock-${field}`, label, paper: studyWith(paper, ["parts", field], value) });
  const kept = (
    field: "sections" | "strands" | "anchors" | "footings",
    rows: readonly unknown[],
    words: string,
  ) => {
    const chosen = parts[field];
    if (chosen !== "all" && chosen.length < rows.length)
      add(field, `Only ${chosen.length} of ${rows.length} ${words}`, "all");
  };
  kept("sections", catalog.sections, "sections");
  kept("anchors", catalog.anchors, "anchors");
  kept("footings", catalog.footings, "footings");
  kept("strands", catalog.strand, "strands");
  if (single(parts.radius) !== null) add("radius", "Only one radius", undefined);
  if (single(parts.levelHeights) !== null) add("levelHeights", "Only one guy height", undefined);
  if (parts.levelCounts.length === 1) add("levelCounts", "Only one number of guy levels", undefined);
  if (parts.supports.length === 1)
    add(
      "supports",
      parts.supports[0] === "guyed" ? "Only guyed masts" : "Only masts without guys",
      undefined,
    );
  return variants;
};

/** One given or wish to give in to. */
export interface WayOut extends Way {
  readonly id: string;
  /** "Wish: less height|10 ft": what, and by how much. */
  readonly label: string;
  readonly path: readonly (string | number)[];
  readonly value: unknown;
}

/** The study with all of these given in to. */
export const givenIn = (paper: Paper, ways: readonly WayOut[]): Paper =>
  ways.reduce((given, { path, value }) => studyWith(given, path, value), paper);

/** Ways to give in where nothing is safe, easiest first. */
export const waysOut = (reading: Reading, system: System): readonly WayOut[] => {
  const { study } = reading;
  const us = system === "us";
  const ways: WayOut[] = [];
  const add = (id: string, label: string, path: readonly (string | number)[], value: unknown) =>
    ways.push({ id, kind: id.split("-")[0], label, path, value });
  const height = single(study.wishes.height);
  for (const feet of [10, 20]) {
    const less = us ? feet * 0.3048 : feet * 0.3;
    if (height !== null && height - less > 3)
      add(
        `height-${feet}`,
        `Wish: less height|${said(less, "length", system)}`,
        ["wishes", "height"],
        height - less,
      );
  }
  const area = openArea(study);
  for (const share of [0.2, 0.4])
    if (area)
      add(
        `area-${share}`,
        `Wish: less antenna|${said(area.area * share, "area", system)}`,
        area.path,
        area.area * (1 - share),
      );
  if (study.lot.setback > 0) {
    const less = study.lot.setback / 2;
    add(
      "setback",
      `Lot: anchors nearer the line|${said(less, "length", system)}`,
      ["lot", "setback"],
      study.lot.setback - less,
    );
  }
  if (study.wishes.margin > 0)
    add("margin", `Wish: less margin|${Math.round(study.wishes.margin * 100)} %`, ["wishes", "margin"], 0);
  if (study.wishes.concreteCap !== undefined)
    add("cap", "Wish: any amount of concrete|all", ["wishes", "concreteCap"], undefined);
  if (study.parts.anchors !== "all")
    add("anchors", "Catalog: allow every anchor|all", ["parts", "anchors"], "all");
  if (study.parts.sections !== "all")
    add("sections", "Catalog: allow every section|all", ["parts", "sections"], "all");
  return ways;
};

export const costOf = (outcome: Outcome): number | null =>
  outcome.status === "proven" && outcome.best.verdict.passes ? outcome.best.verdict.bill.total : null;

const keys = new WeakMap<Paper, string>();

/** One key for one question, so that a question is asked once. Written once a paper: a catalog is long. */
export const questionKey = (paper: Paper): string => {
  const known = keys.get(paper);
  if (known) return known;
  const key = JSON.stringify(job(paper));
  keys.set(paper, key);
  return key;
};
