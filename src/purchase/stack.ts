import type { Section } from "../model/catalog.ts";
import { cents } from "../model/cents.ts";
import { solveInteger } from "./program.ts";

/** Lengths are compared in tenths of a millimetre: no two pieces on sale differ by less. */
const whole = (length: number) => Math.round(length * 1e4);

export interface Purchase {
  readonly pieces: readonly { readonly length: number; readonly count: number; readonly price: number }[];
  /** Whole cents. */
  readonly cents: number;
}

/**
 * The cheapest pieces of one section that make up a length exactly, from what there is: an integer program.
 * Null where no pieces do.
 */
export function buyLength(section: Section, length: number): Purchase | null {
  const target = whole(length);
  const lengths = section.pieces.map((piece) => whole(piece.length));
  // rows in metres keep the numbers small; equality is checked in whole units below
  const outcome = solveInteger({
    cost: section.pieces.map((piece) => cents(piece.price)),
    rows: [
      { coefficients: lengths.map((l) => l / 1e4), least: target / 1e4 - 2e-5, most: target / 1e4 + 2e-5 },
    ],
    most: section.pieces.map((piece) => piece.have),
  });
  if (outcome.status !== "solved") return null;
  const made = outcome.counts.reduce((sum, count, i) => sum + count * lengths[i], 0);
  if (Math.abs(made - target) > 1) return null;
  return {
    pieces: section.pieces
      .map((piece, i) => ({ length: piece.length, count: outcome.counts[i], price: piece.price }))
      .filter((piece) => piece.count > 0),
    cents: outcome.cost,
  };
}
