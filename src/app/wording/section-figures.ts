import type { Catalog, RuleSet, Section } from "../../model/catalog.ts";
import type { Study } from "../../model/study.ts";
import { latticeProperties } from "../../physics/steel/lattice.ts";
import { wallOf } from "../../physics/steel/member.ts";

export interface SectionFigures {
  /** N m that the legs bear with no thrust. */
  readonly moment: number;
  readonly leg: number;
  /** N per metre. */
  readonly weight: number;
  /** Who rated the legs, where a rating took the place of what was computed. */
  readonly ratedBy: string | undefined;
}

type Steel = RuleSet["steel"];

/** The standard that the study's rule set takes its steel from. */
export const steelOf = ({ study, catalog }: { study: Study; catalog: Catalog }): Steel =>
  catalog.rules.find((row) => row.id === study.rules.set)?.steel ?? "aisc360";

/** What a section bears from its members, or in words why the clauses used do not cover it. */
const judged = (section: Section, steel: Steel): SectionFigures | string => {
  try {
    const lattice = latticeProperties(section, steel);
    return {
      moment: lattice.legCompression * lattice.momentArm,
      leg: lattice.legCompression,
      weight: lattice.weightPerLength,
      ratedBy: lattice.legsRatedBy,
    };
  } catch (error) {
    if (error instanceof RangeError) return error.message;
    throw error;
  }
};

/** Null where the clauses used do not cover the section. */
export const sectionFigures = (section: Section, steel: Steel): SectionFigures | null => {
  const found = judged(section, steel);
  return typeof found === "string" ? null : found;
};

/** Why the clauses used do not cover a section; undefined where they do. */
export const whyNotCovered = (section: Section, steel: Steel): string | undefined => {
  const found = judged(section, steel);
  return typeof found === "string" ? found : undefined;
};

export const asNew = (section: Section): Section => ({ ...section, measuredWall: undefined });

/** Share of the wall that rust has taken. */
export const wallLost = (section: Section): number | null =>
  section.measuredWall === undefined
    ? null
    : Math.max(0, 1 - section.measuredWall / (wallOf(section.leg) ?? section.measuredWall));

/** What it bears as its wall thins, for a small curve. */
export const thinning = (section: Section, steel: Steel): readonly { wall: number; moment: number }[] => {
  const wall = wallOf(section.leg);
  if (wall === undefined) return [];
  return Array.from({ length: 13 }, (_, i) => wall * (0.4 + i * 0.05)).flatMap((thin) => {
    const figures = sectionFigures({ ...section, measuredWall: thin }, steel);
    return figures ? [{ wall: thin, moment: figures.moment }] : [];
  });
};
