import type { Candidate } from "./candidate.ts";

/** Margins above this count as this: half as strong again as every rule asks is what reserve anybody pays for. */
export const MARGIN_COUNTED = 0.5;
/** Margins that differ by rounding only are one. */
export const SAME_USE = 1e-9;

/** Has a point of the front at least the margin that counts? Then its own may be more. */
export const hasAllMargin = (margin: number): boolean => margin >= MARGIN_COUNTED - SAME_USE;

const covers = (
  a: { cents: number; concrete: number; use: number },
  b: { cents: number; concrete: number; use: number },
) => a.cents <= b.cents && a.concrete <= b.concrete && a.use <= b.use + SAME_USE;

/** Least uses of the points no dearer than a price: the more concrete, the less use. */
interface Stair {
  readonly concrete: readonly number[];
  readonly use: readonly number[];
}

/** How many of these, sorted, are no more than a value. */
function noMore(count: number, value: number, at: (index: number) => number): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at(middle) <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Safe designs found so far, none beating another in cost, concrete and use, cheapest first. */
export class FrontPoints {
  all: Candidate[] = [];
  /** Points found so far, those beaten since among them. */
  found = 0;
  /** The same points by concrete, and a stair for every number of the cheapest ones, made when it is first asked. */
  private byConcrete: { readonly index: number; readonly concrete: number; readonly use: number }[] = [];
  private stairs: Stair[] = [];

  /** A design no cheaper and no smaller than this must use less than this to be worth having. */
  usable(cents: number, concrete: number): number {
    const { all } = this;
    const cheaper = noMore(all.length, cents, (i) => all[i].cents);
    if (cheaper === 0) return Number.POSITIVE_INFINITY;
    const stair = (this.stairs[cheaper] ??= this.stairOf(cheaper));
    const smaller = noMore(stair.concrete.length, concrete, (i) => stair.concrete[i]);
    return smaller === 0 ? Number.POSITIVE_INFINITY : stair.use[smaller - 1];
  }

  private stairOf(cheapest: number): Stair {
    const concrete: number[] = [];
    const use: number[] = [];
    for (const point of this.byConcrete) {
      if (point.index >= cheapest || (use.length > 0 && point.use >= use[use.length - 1])) continue;
      concrete.push(point.concrete);
      use.push(point.use);
    }
    return { concrete, use };
  }

  /** Of equals the smaller key stays. */
  keep(candidate: Candidate): void {
    for (const point of this.all) {
      if (point.cents > candidate.cents) break;
      if (!covers(point, candidate)) continue;
      const equal = covers(candidate, point);
      if (!equal || point.key <= candidate.key) return;
    }
    this.all = this.all.filter((point) => !covers(candidate, point));
    let at = this.all.findIndex(
      (point) =>
        point.cents > candidate.cents ||
        (point.cents === candidate.cents && point.concrete > candidate.concrete),
    );
    if (at < 0) at = this.all.length;
    this.all.splice(at, 0, candidate);
    this.byConcrete = this.all
      .map(({ concrete, use }, index) => ({ index, concrete, use }))
      .sort((a, b) => a.concrete - b.concrete);
    this.stairs = [];
    this.found++;
  }
}
