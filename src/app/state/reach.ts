import type { Section } from "../../model/catalog.ts";
import type { StudyFile } from "../../model/study.ts";
import type { Judged, Outcome } from "../../search/types.ts";
import { packageArea, single } from "../wording/givens.ts";
import type { Paper, Reading } from "./book.ts";

/** More than any mast of a study costs: what a section can do at all is asked without a purse. */
const ANY_MONEY = 1e9;
/** Shares of the study's own antenna area that are tried. */
const SHARES = [0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3];
/** Pieces above and below the wished height that are tried. */
const [BELOW, ABOVE] = [4, 4];

const asking = (reading: Reading, section: Section, aim: "height" | "area", wishes: object): Paper => {
  const { study } = reading.paper;
  return {
    ...reading.paper,
    study: {
      ...study,
      aim,
      nextAim: undefined,
      parts: { ...study.parts, sections: [section.id] },
      wishes: {
        ...study.wishes,
        budget: ANY_MONEY,
        concreteCap: undefined,
        digCap: undefined,
        heightLimit: undefined,
        ...wishes,
      },
    } as StudyFile,
  };
};

/** The study with one section, at every height that its pieces make around the wish; null without one wished height. */
export const tallestPaper = (reading: Reading, section: Section): Paper | null => {
  const wished = single(reading.study.wishes.height);
  if (wished === null) return null;
  const piece = Math.min(...section.pieces.map(({ length }) => length));
  const height: number[] = [];
  for (let k = -BELOW; k <= ABOVE; k++)
    if (wished + k * piece >= piece - 1e-9) height.push(wished + k * piece);
  return asking(reading, section, "height", { height });
};

/** The study with one section and its first set of antennas in every size: area and weight grow alike. */
export const widestPaper = (reading: Reading, section: Section): Paper => {
  const [set] = reading.study.wishes.packages;
  const packages = SHARES.map((share) => ({
    ...set,
    id: `${set.id}-${share}`,
    items: set.items.map((item) => {
      if ("area" in item) return { ...item, area: item.area * share, weight: item.weight * share };
      const { antenna, ...place } = item;
      const row = reading.catalog.antennas.find(({ id }) => id === antenna);
      if (!row) throw new Error(`the antenna "${antenna}" of a study that was read is in no catalog`);
      return { ...place, area: row.area * share, areaKind: row.areaKind, weight: row.weight * share };
    }),
  }));
  return asking(reading, section, "area", { packages });
};

/** Area of the set of antennas in a design of `widestPaper`, m2; is it the largest that was tried? */
export const widestOf = (
  reading: Reading,
  pack: string,
): { readonly area: number; readonly last: boolean } => {
  const [set] = reading.study.wishes.packages;
  const share = Number(pack.slice(set.id.length + 1));
  return { area: share * packageArea(set, reading.catalog), last: share === SHARES[SHARES.length - 1] };
};

/** The greatest height that is tried: a section that reaches it may reach higher, m. */
export const highestTried = (reading: Reading, section: Section): number =>
  (single(reading.study.wishes.height) ?? 0) +
  ABOVE * Math.min(...section.pieces.map(({ length }) => length));

/** What the pieces on offer make up, m; Infinity where they are bought new. */
export const stockLength = (section: Section): number =>
  section.pieces.every((piece) => piece.have !== undefined)
    ? section.pieces.reduce((sum, piece) => sum + piece.length * (piece.have ?? 0), 0)
    : Number.POSITIVE_INFINITY;

/** What a question found and proved. */
export const foundIn = (outcome: Outcome): Judged | null =>
  outcome.status === "proven" && outcome.best.verdict.passes ? outcome.best : null;
