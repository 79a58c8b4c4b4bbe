import type { Prices } from "../model/catalog.ts";
import { cents } from "../model/cents.ts";
import { type Cutting, cutFromStock, type Stock } from "./cutting.ts";

type BarStock = NonNullable<Prices["barStock"]>;

/** Alike bars of one cut length, m; mass kg/m. */
interface Run {
  readonly bar: { readonly name: string; readonly mass: number };
  readonly count: number;
  readonly length: number;
}

/** The bars of one size: what they are cut from, and their mass, kg. */
interface SizeCut {
  readonly name: string;
  readonly mass: number;
  readonly cutting: Cutting;
}

/** By the stock and the runs: many bases have the same bars. */
const known = new WeakMap<BarStock, Map<string, readonly SizeCut[]>>();

/** Bars as they are sold for these runs at the least money, size by size (docs/theory/cost.md). */
export function barCuttings(stock: BarStock, all: readonly Run[]): readonly SizeCut[] {
  const runs = all.filter(({ count, length }) => count > 0 && length > 0);
  const key = runs.map(({ bar, count, length }) => `${bar.name} ${count} ${length}`).join();
  const cuts = known.get(stock) ?? new Map<string, readonly SizeCut[]>();
  known.set(stock, cuts);
  let found = cuts.get(key);
  if (!found) {
    found = [...new Set(runs.map(({ bar }) => bar))].map((bar) => {
      const own = runs.filter((run) => run.bar === bar);
      const metres = own.reduce((sum, { count, length }) => sum + count * length, 0);
      return { name: bar.name, mass: bar.mass * metres, cutting: cutFromStock(stockOf(stock, bar), own) };
    });
    cuts.set(key, found);
  }
  return found;
}

const stockOf = (stock: BarStock, bar: Run["bar"]): Stock[] =>
  stock
    .filter((one) => one.bar === undefined || one.bar === bar.name)
    .map(({ length, perMass = 0, price }) => ({
      length,
      cents: cents(price ?? length * bar.mass * perMass),
    }));
