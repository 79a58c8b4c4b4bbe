import type { Prices } from "../model/catalog.ts";
import { cents } from "../model/cents.ts";
import type { Refusal } from "./cutting.ts";

/** Alike holes to fill. m3 for one, as ordered: what is spilled is in it. */
export interface Pour {
  readonly name: string;
  readonly count: number;
  readonly volume: number;
}

export interface Supplied {
  readonly status: "supplied";
  readonly pours: readonly {
    readonly pour: Pour;
    /** How many of its holes are filled by bag, and by truck. */
    readonly byBag: number;
    readonly byTruck: number;
    /** For one hole; 0 where no bags are sold. */
    readonly bagsEach: number;
  }[];
  readonly bags: number;
  /** What the truck is ordered to bring, m3, and in how many loads; `short` of them pay the charge. */
  readonly truck: { readonly volume: number; readonly loads: number; readonly short: number };
  readonly cents: number;
}

type Supply = NonNullable<Prices["concreteSupply"]>;
type Truck = NonNullable<Supply["truck"]>;

/** Trucks are ordered in whole litres: far below what a chute can tell. */
const litres = (volume: number) => Math.ceil(volume * 1000 - 1e-6);

/** Loads that bring an order, `short` of them at the charge, and what is ordered for it, whole litres. */
interface Loads {
  readonly ordered: number;
  readonly loads: number;
  readonly short: number;
  readonly cents: number;
}
const NO_LOADS: Loads = { ordered: 0, loads: 0, short: 0, cents: 0 };

/** The least money that brings so many litres; null where no truck can. */
function loadsFor({ price, largest, shortLoadBelow, shortLoadCharge }: Truck, wanted: number): Loads | null {
  if (wanted === 0) return NO_LOADS;
  const most = Math.floor(largest * 1000 + 1e-6);
  const below = litres(shortLoadBelow);
  let best: Loads | null = null;
  // each full-priced load is large enough to be one: more than is poured may be ordered for it
  for (let full = 0; full <= Math.ceil(wanted / most); full++) {
    const ordered = Math.max(wanted, full * below);
    const left = ordered - full * most;
    if (left > 0 && below === 0) continue;
    const short = left > 0 ? Math.ceil(left / below) : 0;
    const all = cents((ordered / 1000) * price) + short * cents(shortLoadCharge);
    if (!best || all < best.cents) best = { ordered, loads: full + short, short, cents: all };
  }
  return best;
}

/**
 * The least money that fills every hole, each by bags or by truck (docs/theory/cost.md): an integer program of so few
 * numbers that each way is tried. A bag once opened is used up at its hole; a load serves one hole after another on
 * the day. Of equals the one with the most by truck.
 */
export function supplyConcrete({ bag, truck }: Supply, pours: readonly Pour[]): Supplied | Refusal {
  const bags = pours.map(({ volume }) => (bag ? Math.ceil(volume / bag.yield - 1e-9) : 0));
  const orders = pours.map(({ volume }) => litres(volume));
  let best: { loads: Loads; byTruck: readonly number[]; bags: number; cents: number } | null = null;
  const fill = (k: number, byTruck: readonly number[], ordered: number, bought: number): void => {
    if (k < pours.length) {
      const { count } = pours[k];
      for (let by = truck ? count : 0; by >= (bag ? 0 : count); by--)
        fill(k + 1, [...byTruck, by], ordered + by * orders[k], bought + (count - by) * bags[k]);
      return;
    }
    const loads = truck ? loadsFor(truck, ordered) : NO_LOADS;
    if (!loads) return;
    const all = loads.cents + bought * cents(bag?.price ?? 0);
    if (!best || all < best.cents) best = { loads, byTruck, bags: bought, cents: all };
  };
  fill(0, [], 0, 0);
  const found = best as { loads: Loads; byTruck: readonly number[]; bags: number; cents: number } | null;
  if (!found)
    return { status: "refused", found: "holes that nothing on sale fills", expected: "bags or a truck" };
  const { loads, byTruck } = found;
  return {
    status: "supplied",
    pours: pours.map((pour, k) => ({
      pour,
      byBag: pour.count - byTruck[k],
      byTruck: byTruck[k],
      bagsEach: bags[k],
    })),
    bags: found.bags,
    truck: { volume: loads.ordered / 1000, loads: loads.loads, short: loads.short },
    cents: found.cents,
  };
}
