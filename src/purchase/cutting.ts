import { cheapest, type Lengths, type Pattern, patternsOf, radix } from "./patterns.ts";

/** A length as it is sold: a reel of strand, a bar. m; whole cents; `have` limits how many, absent means any number. */
export interface Stock {
  readonly length: number;
  readonly cents: number;
  readonly have?: number;
}

/** Alike pieces, m. */
export interface Cut {
  readonly length: number;
  readonly count: number;
}

/** Alike reels or bars, cut alike. m. */
export interface CutUp {
  readonly stock: Stock;
  readonly count: number;
  /** Out of each, longest first. */
  readonly cuts: readonly Cut[];
  /** Left of each. */
  readonly offcut: number;
}

export interface Refusal {
  readonly status: "refused";
  readonly found: string;
  readonly expected: string;
}
export type Cutting =
  | { readonly status: "cut"; readonly cutUp: readonly CutUp[]; readonly cents: number }
  | Refusal;

/** Whole tenths of a millimetre: a cut is rounded up and a reel down, so that what is planned can be cut. */
const wanted = (length: number) => Math.ceil(length * 1e4 - 1e-3);
const there = (length: number) => Math.floor(length * 1e4 + 1e-3);
const metres = (whole: number) => whole / 1e4;

/** Ways to cut one piece, states of the recursion and steps between them: beyond some seconds it refuses. */
const MOST_PATTERNS = 20_000;
const MOST_STATES = 4e6;
const MOST_STEPS = 4e8;

/**
 * The least money for which every cut comes whole from one piece of stock (docs/theory/cost.md). A cut costs no
 * length: strand and bars are sheared.
 */
export function cutFromStock(stock: readonly Stock[], cuts: readonly Cut[]): Cutting {
  const lengths = lengthsOf(stock, cuts);
  const [longestCut] = lengths.cuts;
  if (longestCut === undefined) return { status: "cut", cutUp: [], cents: 0 };
  const longest = lengths.stock.reduce((most, { length, have }) => Math.max(most, have > 0 ? length : 0), 0);
  if (longestCut > longest)
    return {
      status: "refused",
      found: `a piece of ${metres(longestCut).toFixed(2)} m and nothing on sale longer than ${metres(longest).toFixed(2)} m`,
      expected: "a length that it can be cut from whole",
    };
  const patterns = patternsOf(lengths, MOST_PATTERNS);
  const { states, stockStates } = radix(lengths);
  const all = states * stockStates;
  if (patterns === null || all > MOST_STATES || all * patterns.length > MOST_STEPS)
    return {
      status: "refused",
      found: `${lengths.demand.reduce((sum, count) => sum + count, 0)} pieces of ${lengths.cuts.length} lengths`,
      expected: "about twelve unlike pieces, or some dozens of a few lengths",
    };
  const taken = cheapest(lengths, patterns);
  if (taken === null)
    return {
      status: "refused",
      found: "less in stock than there is to cut",
      expected: "enough of it to cut every piece whole",
    };
  return {
    status: "cut",
    cutUp: alike(stock, lengths, taken),
    cents: taken.reduce((sum, pattern) => sum + stock[pattern.stock].cents, 0),
  };
}

function lengthsOf(stock: readonly Stock[], cuts: readonly Cut[]): Lengths {
  const demand = new Map<number, number>();
  for (const { length, count } of cuts)
    if (count > 0) demand.set(wanted(length), (demand.get(wanted(length)) ?? 0) + count);
  const kinds = [...demand].sort(([a], [b]) => b - a);
  const pieces = kinds.reduce((sum, [, count]) => sum + count, 0);
  const whole = kinds.reduce((sum, [length, count]) => sum + length * count, 0);
  return {
    stock: stock.map(({ length, cents, have = Number.POSITIVE_INFINITY }) => {
      // two of a kind whose cuts would go into one are never bought: all but one are over half full
      const enough = Math.min(pieces, Math.floor((2 * whole) / there(length)) + 1);
      return { length: there(length), cents, have: have >= enough ? Number.POSITIVE_INFINITY : have };
    }),
    cuts: kinds.map(([length]) => length),
    demand: kinds.map(([, count]) => count),
  };
}

/** Patterns may cut more than is wanted; what is surplus stays on its reel. */
function alike(stock: readonly Stock[], { cuts, demand }: Lengths, taken: readonly Pattern[]): CutUp[] {
  const left = [...demand];
  const groups = new Map<string, CutUp>();
  for (const pattern of taken) {
    const counts = pattern.counts.map((count, i) => Math.min(count, left[i]));
    counts.forEach((count, i) => {
      left[i] -= count;
    });
    const key = `${pattern.stock}: ${counts.join(" ")}`;
    const used = counts.reduce((sum, count, i) => sum + count * cuts[i], 0);
    const from = stock[pattern.stock];
    groups.set(key, {
      stock: from,
      count: (groups.get(key)?.count ?? 0) + 1,
      cuts: counts.flatMap((count, i) => (count > 0 ? [{ length: metres(cuts[i]), count }] : [])),
      offcut: metres(there(from.length) - used),
    });
  }
  if (left.some((count) => count > 0)) throw new Error(`pieces without stock: ${JSON.stringify(left)}`);
  return [...groups.values()];
}
