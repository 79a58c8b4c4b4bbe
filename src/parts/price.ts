import type { Soil } from "../model/catalog.ts";
import type { BillLine } from "../model/verdict.ts";
import { stretches } from "../physics/ground/soil.ts";
import type { Extra, Ground, TakeOff } from "./types.ts";

/** Money is added up in whole cents, line by line, so that sums never depend on their order. */
export const cents = (amount: number): number => Math.round(amount * 100);

type Group = BillLine["group"];

export function line(
  group: Group,
  item: string,
  quantity: number,
  unit: BillLine["unit"],
  price: number,
  times = 1,
): BillLine {
  return { group, item, quantity: quantity * times, unit, price, amount: times * cents(quantity * price) };
}

/** By soil and hole: parts of one depth are many. */
const through = new WeakMap<Soil, Map<number, readonly Dug[]>>();
interface Dug {
  readonly digging: Soil["digging"];
  readonly share: number;
}

/** Classes that a hole is dug through, top down, and the share of its volume in each. */
export function dugThrough(soil: Soil, hole: number): readonly Dug[] {
  let ofSoil = through.get(soil);
  if (!ofSoil) through.set(soil, (ofSoil = new Map()));
  let dug = ofSoil.get(hole);
  if (!dug) {
    const classes = new Map<Soil["digging"], number>();
    for (const { layer, from, to } of stretches(soil, 0, hole))
      classes.set(layer.digging, (classes.get(layer.digging) ?? 0) + (to - from) / hole);
    dug = [...classes].map(([digging, share]) => ({ digging, share }));
    ofSoil.set(hole, dug);
  }
  return dug;
}

type PricedGround = Pick<Ground, "prices" | "soil" | "concreteAsSold">;

/** What is paid for one part in the ground, each with its quantity and price. */
function* paidFor(
  takeOff: TakeOff,
  extras: readonly Extra[],
  { prices, soil, concreteAsSold }: PricedGround,
): Generator<{
  readonly what: "concrete" | "bars" | "forms" | "digging" | "extra";
  readonly quantity: number;
  readonly unit: BillLine["unit"];
  readonly price: number;
  readonly digging?: Soil["digging"];
  readonly item?: string;
}> {
  const { concrete, bars, formed, dug, hole } = takeOff;
  if (concrete > 0) {
    if (!concreteAsSold)
      yield {
        what: "concrete",
        quantity: concrete * (1 + prices.concreteWaste),
        unit: "m3",
        price: prices.concrete,
      };
    yield {
      what: "bars",
      quantity: bars ?? concrete * prices.rebarPerVolume,
      unit: "kg",
      price: prices.rebar,
    };
    if (formed > 0) yield { what: "forms", quantity: formed, unit: "m2", price: prices.forms };
  }
  if (dug > 0)
    for (const { digging, share } of dugThrough(soil, hole))
      yield { what: "digging", quantity: dug * share, unit: "m3", price: prices.digging[digging], digging };
  for (const { item, quantity, unit, price } of extras) yield { what: "extra", quantity, unit, price, item };
}

/** Everything that one part in the ground costs, for `times` of them. */
export function partLines(
  name: string,
  group: Group,
  takeOff: TakeOff,
  extras: readonly Extra[],
  ground: PricedGround,
  times: number,
): BillLine[] {
  const lines: BillLine[] = [];
  for (const { what, quantity, unit, price, digging, item } of paidFor(takeOff, extras, ground)) {
    const words = what === "digging" && ground.soil.layers ? `digging, ${digging}` : what;
    lines.push(
      line(what === "digging" ? what : group, item ?? `${name}: ${words}`, quantity, unit, price, times),
    );
  }
  return lines;
}

/**
 * Whole cents of one part: the sum of its lines, and where concrete is bought for all holes together the least that
 * its own adds to that purchase.
 */
export function pricesOf(
  takeOff: TakeOff,
  extras: readonly Extra[],
  ground: PricedGround,
): { cents: number; concreteShare: number } {
  const concreteShare = leastConcrete(takeOff, ground);
  let sum = concreteShare;
  for (const { quantity, price } of paidFor(takeOff, extras, ground)) sum += cents(quantity * price);
  return { cents: sum, concreteShare };
}

/** At the best rate by volume on sale: bags and litres are rounded up, but for a hair that this gives away. */
function leastConcrete({ concrete }: TakeOff, { prices, concreteAsSold }: PricedGround): number {
  const { concreteSupply, concreteWaste } = prices;
  if (!concreteAsSold || !concreteSupply) return 0;
  const { bag, truck } = concreteSupply;
  const rate = Math.min(
    bag ? cents(bag.price) / bag.yield : Number.POSITIVE_INFINITY,
    truck ? truck.price * 100 : Number.POSITIVE_INFINITY,
  );
  return Math.floor(rate * concrete * (1 + concreteWaste) * (1 - 1e-6));
}
