import { type Bar, type BarRun, EARTH_COVER, footingBars, tieBar } from "./bars.ts";

/** Vertical bars inside ties. */
export interface Cage {
  readonly runs: readonly BarRun[];
  readonly bar: Bar;
  readonly count: number;
  /** Middle of the bars from the middle of the section: their ring or, in a square, their two rows. m. */
  readonly ring: number;
}

/** Hooks of one tie: two of 6 diameters and their bends, in diameters. ACI 318-19 table 25.3.2, from memory. */
const TIE_ENDS = 20;

/** Ties of #3, ACI 318-19 25.7.2.1: 16 bar diameters, 48 of the tie, the least side. */
const tieSpacing = (bar: Bar, side: number): number =>
  Math.min(16 * bar.diameter, 48 * tieBar.diameter, side);

const tiesAlong = (height: number, spacing: number): number =>
  Math.max(2, Math.ceil((height - 2 * EARTH_COVER) / spacing - 1e-9) + 1);

/** The fewest bars, at least `least` and a multiple of `step`; equals by weight; null where no cage has room. */
function fewest(area: number, least: number, step: number, fits: (bar: Bar, count: number) => boolean) {
  const all = footingBars.flatMap((bar) => {
    const count = Math.max(least, step * Math.ceil(area / bar.area / step - 1e-9));
    return fits(bar, count) ? [{ bar, count }] : [];
  });
  all.sort((a, b) => a.count - b.count || a.count * a.bar.mass - b.count * b.bar.mass);
  return all[0] ?? null;
}

const clearEnough = (clear: number, bar: Bar): boolean => clear >= Math.max(0.0381, 1.5 * bar.diameter);

/**
 * Cage of a round pier: at least 6 bars and `steel` of the section (ACI 318-19 10.7.3.1 asks 4 in ties).
 * Null where the pier has no room for it.
 */
export function roundCage(diameter: number, depth: number, steel: number): Cage | null {
  const inside = diameter / 2 - EARTH_COVER - tieBar.diameter;
  const ringOf = (bar: Bar) => inside - bar.diameter / 2;
  const picked = fewest((Math.PI / 4) * diameter ** 2 * steel, 6, 1, (bar, count) =>
    clearEnough(2 * ringOf(bar) * Math.sin(Math.PI / count) - bar.diameter, bar),
  );
  if (!picked) return null;
  const { bar, count } = picked;
  const tie = 2 * Math.PI * (inside + tieBar.diameter / 2) + TIE_ENDS * tieBar.diameter;
  return {
    bar,
    count,
    ring: ringOf(bar),
    runs: [
      { bar, count, length: depth - 2 * EARTH_COVER, where: "upright, in a ring" },
      { bar: tieBar, count: tiesAlong(depth, tieSpacing(bar, diameter)), length: tie, where: "ties" },
    ],
  };
}
