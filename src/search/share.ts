import type { Strand } from "../model/catalog.ts";
import type { PlacedStar } from "../problem/star.ts";
import type { Problem } from "../problem/types.ts";

/** Which part of the grid a worker walks: one of `of`. */
export interface Share {
  readonly index: number;
  readonly of: number;
  /** Is every star parted, by the strands of its top guys? Else only where stars are few: parted ones are walked twice. */
  readonly finely?: boolean;
}
export const WHOLE: Share = { index: 0, of: 1 };

/** A star that a worker takes, with the strands of the top guys that it takes there. */
export interface OwnStar {
  readonly star: PlacedStar;
  readonly topStrands: readonly Strand[];
}

/**
 * The grid is dealt by star, the one choice that every guyed design makes and that neighbours in cost differ in;
 * where stars are too few, or shares are to be even to the end, by star and strand of the top guys. No two workers share a guyed design, and each counts
 * its own.
 */
export function dealt(problem: Problem, perLevel: 3 | 4, { index, of, finely }: Share): OwnStar[] {
  const { strands } = problem;
  // what fits the lot is dealt first, so that shares are alike in work
  const stars = [...(problem.stars.get(perLevel) ?? [])].sort(
    (a, b) => Number(a.rotation === null) - Number(b.rotation === null),
  );
  const fitting = stars.filter((star) => star.rotation !== null).length;
  if (of === 1 || (!finely && fitting >= 2 * of))
    return stars.filter((_, i) => i % of === index).map((star) => ({ star, topStrands: strands }));
  return stars
    .map((star, i) => ({ star, topStrands: strands.filter((_, k) => (i + k) % of === index) }))
    .filter(({ topStrands }) => topStrands.length > 0);
}

/** Is a root's free-standing mast walked here? */
export const takesFree = (root: number, { index, of }: Share): boolean => root % of === index;
