import type { BillLine } from "../model/verdict.ts";
import { line } from "../parts/price.ts";
import type { AnchorPart, FootingPart } from "../parts/types.ts";
import type { Star } from "../problem/star.ts";
import type { Problem } from "../problem/types.ts";
import { type Pour, type Supplied, supplyConcrete } from "../purchase/concrete.ts";

/** What stands in the ground under a design. */
export interface GroundOf {
  readonly guys: { readonly star: Pick<Star, "perLevel">; readonly anchor: AnchorPart } | null;
  readonly footing: FootingPart;
}

/** Holes to fill, what is spilled with it. */
export const poursOf = ({ prices }: Problem, { guys, footing }: GroundOf): Pour[] =>
  [
    { name: "base", count: 1, volume: footing.takeOff.concrete },
    { name: "anchor", count: guys?.star.perLevel ?? 0, volume: guys?.anchor.takeOff.concrete ?? 0 },
  ]
    .filter(({ count, volume }) => count > 0 && volume > 0)
    .map((pour) => ({ ...pour, volume: pour.volume * (1 + prices.concreteWaste) }));

/** Purchases by study: the same holes are asked about under mast after mast. */
const known = new WeakMap<Problem, Map<string, Supplied>>();

/** Bags and loads for all holes at the least money; null where concrete is paid by volume. */
export function concreteOrder(problem: Problem, ground: GroundOf): Supplied | null {
  const { concreteSupply } = problem.prices;
  if (!problem.ground.concreteAsSold || !concreteSupply) return null;
  const pours = poursOf(problem, ground);
  const key = pours.map(({ count, volume }) => `${count} ${volume}`).join();
  const orders = known.get(problem) ?? new Map<string, Supplied>();
  known.set(problem, orders);
  let order = orders.get(key);
  if (!order) {
    const found = supplyConcrete(concreteSupply, pours);
    if (found.status === "refused")
      throw new Error(`concrete: found ${found.found}, expected ${found.expected}`);
    orders.set(key, (order = found));
  }
  return order;
}

/** Whole cents of the order beyond what the parts have of it in their own price; 0 where concrete is paid by volume. */
export function beyondShares(problem: Problem, ground: GroundOf): number {
  const order = concreteOrder(problem, ground);
  if (!order) return 0;
  const { guys, footing } = ground;
  return order.cents - footing.concreteShare - (guys ? guys.star.perLevel * guys.anchor.concreteShare : 0);
}

/** Whole cents of all that stands in the ground. */
export function groundCents(problem: Problem, ground: GroundOf): number {
  const { guys, footing } = ground;
  return footing.cents + (guys ? guys.star.perLevel * guys.anchor.cents : 0) + beyondShares(problem, ground);
}

/** The order in the bill. */
export function concreteLines(problem: Problem, ground: GroundOf): BillLine[] {
  const order = concreteOrder(problem, ground);
  const { bag, truck } = problem.prices.concreteSupply ?? {};
  if (!order) return [];
  const material = "concrete";
  const lines: BillLine[] = [];
  for (const { pour, byBag, bagsEach } of order.pours)
    if (bag && byBag > 0)
      lines.push(
        line(
          pour.name === "base" ? "footing" : "anchors",
          { item: `${pour.name}: concrete by the bag`, material },
          1,
          "each",
          bag.price,
          byBag * bagsEach,
        ),
      );
  if (truck && order.truck.loads > 0) {
    lines.push(
      line("footing", { item: "concrete by truck", material }, order.truck.volume, "m3", truck.price),
    );
    if (order.truck.short > 0)
      lines.push(
        line(
          "footing",
          { item: "charge for a short load", material },
          1,
          "each",
          truck.shortLoadCharge,
          order.truck.short,
        ),
      );
  }
  return lines;
}
