import type { Section } from "../../model/catalog.ts";
import { latticeProperties } from "../../physics/steel/lattice.ts";

export interface SectionFigures {
  /** N m that the legs bear with no thrust. */
  readonly moment: number;
  readonly leg: number;
  /** N per metre. */
  readonly weight: number;
}

/** What a section bears from its members; null where the clauses used do not cover it. */
export const sectionFigures = (section: Section): SectionFigures | null => {
  try {
    const lattice = latticeProperties(section);
    return {
      moment: lattice.legCompression * lattice.momentArm,
      leg: lattice.legCompression,
      weight: lattice.weightPerLength,
    };
  } catch {
    return null;
  }
};

export const asNew = (section: Section): Section => ({ ...section, measuredWall: undefined });

/** Share of the wall that rust has taken. */
export const wallLost = (section: Section): number | null =>
  section.measuredWall === undefined || section.leg.wall === undefined
    ? null
    : Math.max(0, 1 - section.measuredWall / section.leg.wall);

/** What it bears as its wall thins, for a small curve. */
export const thinning = (section: Section): readonly { wall: number; moment: number }[] => {
  const wall = section.leg.wall;
  if (wall === undefined) return [];
  return Array.from({ length: 13 }, (_, i) => wall * (0.4 + i * 0.05)).flatMap((thin) => {
    const figures = sectionFigures({ ...section, measuredWall: thin });
    return figures ? [{ wall: thin, moment: figures.moment }] : [];
  });
};
