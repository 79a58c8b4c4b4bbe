import type { Prices } from "../model/catalog.ts";
import { cents } from "../parts/price.ts";
import type { Refusal } from "./cutting.ts";
import { solveInteger } from "./program.ts";

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

/** Trucks are ordered in whole litres: far below what a chute can tell. */
const litres = (volume: number) => Math.ceil(volume * 1000 - 1e-6);

/**
 * The least money that fills every hole, each by bags or by truck: an integer program (docs/theory/cost.md). A bag
 * once opened is used up at its hole; a load serves one hole after another on the day.
 */
export function supplyConcrete(
  { bag, truck }: NonNullable<Prices["concreteSupply"]>,
  pours: readonly Pour[],
): Supplied | Refusal {
  const n = pours.length;
  const bags = pours.map(({ volume }) => (bag ? Math.ceil(volume / bag.yield - 1e-9) : 0));
  const orders = pours.map(({ volume }) => litres(volume));
  const largest = Math.floor((truck?.largest ?? 0) * 1000 + 1e-6);
  const below = litres(truck?.shortLoadBelow ?? 0);
  // holes by bag, holes by truck, litres ordered, full-priced loads, short loads
  const none = pours.map(() => 0);
  const only = (k: number) => none.map((_, i) => (i === k ? 1 : 0));
  const outcome = solveInteger({
    cost: [
      ...bags.map((count) => count * cents(bag?.price ?? 0)),
      ...none,
      (truck?.price ?? 0) / 10,
      0,
      cents(truck?.shortLoadCharge ?? 0),
    ],
    rows: [
      ...pours.map(({ count }, k) => ({
        coefficients: [...only(k), ...only(k), 0, 0, 0],
        least: count,
        most: count,
      })),
      // what is ordered fills the holes, is brought, and makes every full-priced load large enough
      { coefficients: [...none, ...orders.map((order) => -order), 1, 0, 0], least: 0 },
      { coefficients: [...none, ...none, -1, largest, below], least: 0 },
      { coefficients: [...none, ...none, 1, -below, 0], least: 0 },
    ],
    most: [
      ...pours.map(() => (bag ? undefined : 0)),
      ...pours.map(() => (truck ? undefined : 0)),
      ...[0, 1, 2].map(() => (truck ? undefined : 0)),
    ],
  });
  if (outcome.status === "impossible")
    return { status: "refused", found: "holes that nothing on sale fills", expected: "bags or a truck" };
  const { counts } = outcome;
  const [ordered, loads, short] = counts.slice(2 * n);
  const bought = pours.reduce((sum, _, k) => sum + counts[k] * bags[k], 0);
  return {
    status: "supplied",
    pours: pours.map((pour, k) => ({ pour, byBag: counts[k], byTruck: counts[n + k], bagsEach: bags[k] })),
    bags: bought,
    truck: { volume: ordered / 1000, loads: loads + short, short },
    cents:
      bought * cents(bag?.price ?? 0) +
      cents((ordered / 1000) * (truck?.price ?? 0)) +
      short * cents(truck?.shortLoadCharge ?? 0),
  };
}
