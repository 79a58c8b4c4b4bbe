import type { Prices, Soil } from "../model/catalog.ts";
import { cents } from "../model/cents.ts";
import type { BillItem, BillLine } from "../model/verdict.ts";
import type { BarRun } from "../physics/concrete/bars.ts";
import { stretches } from "../physics/ground/soil.ts";
import { barCuttings } from "../purchase/bars.ts";
import type { FootingPart, Ground, TakeOff } from "./types.ts";

type Group = BillLine["group"];

export function line(
  group: Group,
  what: string | BillItem,
  quantity: number,
  unit: BillLine["unit"],
  price: number,
  times = 1,
): BillLine {
  const item = typeof what === "string" ? { item: what } : what;
  return { group, ...item, quantity: quantity * times, unit, price, amount: times * cents(quantity * price) };
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

type PricedGround = Pick<Ground, "prices" | "soil" | "concreteAsSold" | "barsAsSold">;
type PricedPart = Pick<FootingPart, "takeOff" | "extras"> & Partial<Pick<FootingPart, "bars">>;

/** What is paid for, and how many alike. */
interface Paid extends BillItem {
  readonly quantity: number;
  readonly unit: BillLine["unit"];
  readonly price: number;
  readonly count?: number;
}

/** What is paid for one part in the ground, dug and built; concrete alone where it is not bought for all holes together. */
function* paidFor({ takeOff, bars }: PricedPart, ground: PricedGround): Generator<Paid> {
  const { concrete, formed } = takeOff;
  const { prices, concreteAsSold } = ground;
  if (concrete <= 0) return;
  if (!concreteAsSold)
    yield {
      item: "concrete",
      material: "concrete",
      quantity: concrete * (1 + prices.concreteWaste),
      unit: "m3",
      price: prices.concrete,
    };
  if (bars && bars.length > 0 && ground.barsAsSold) yield* barsSold(bars, prices);
  else if (takeOff.bars !== 0)
    yield {
      item: "bars",
      material: "bars",
      quantity: takeOff.bars ?? concrete * prices.rebarPerVolume,
      unit: "kg",
      price: prices.rebar,
    };
  if (formed > 0) yield { item: "forms", quantity: formed, unit: "m2", price: prices.forms };
}

/** Whole bars, size by size; of a size that no length on sale yields, or that makes too large a plan, its mass. */
function* barsSold(runs: readonly BarRun[], prices: Prices): Generator<Paid> {
  for (const { name, mass, cutting } of barCuttings(prices.barStock ?? [], runs))
    if (cutting.status === "cut")
      for (const { stock, count } of cutting.cutUp)
        yield {
          item: `${name} bar`,
          material: "bars",
          length: stock.length,
          quantity: 1,
          unit: "each",
          price: stock.cents / 100,
          count,
        };
    else yield { item: `${name} bars`, material: "bars", quantity: mass, unit: "kg", price: prices.rebar };
}

function* dugFor({ takeOff }: PricedPart, { prices, soil }: PricedGround): Generator<Paid> {
  const { dug, hole } = takeOff;
  if (dug <= 0) return;
  for (const { digging, share } of dugThrough(soil, hole))
    yield {
      item: soil.layers ? `digging, ${digging}` : "digging",
      quantity: dug * share,
      unit: "m3",
      price: prices.digging[digging],
    };
}

/** Everything that one part in the ground costs, for `times` of them. */
export function partLines(
  name: string,
  group: Group,
  part: PricedPart,
  ground: PricedGround,
  times: number,
): BillLine[] {
  const lineOf = (group: Group, { quantity, unit, price, count = 1, ...item }: Paid) =>
    line(group, item, quantity, unit, price, times * count);
  const named = (paid: Paid): Paid => ({ ...paid, item: `${name}: ${paid.item}` });
  return [
    ...[...paidFor(part, ground)].map((paid) => lineOf(group, named(paid))),
    ...[...dugFor(part, ground)].map((paid) => lineOf("digging", named(paid))),
    ...part.extras.map((extra) => lineOf(group, extra)),
  ];
}

/**
 * Whole cents of one part: the sum of its lines, and where concrete is bought for all holes together the least that
 * its own adds to that purchase.
 */
export function pricesOf(part: PricedPart, ground: PricedGround): { cents: number; concreteShare: number } {
  const concreteShare = leastConcrete(part.takeOff, ground);
  let sum = concreteShare;
  for (const { quantity, price, count = 1 } of paidFor(part, ground)) sum += count * cents(quantity * price);
  for (const { quantity, price } of dugFor(part, ground)) sum += cents(quantity * price);
  for (const { quantity, price } of part.extras) sum += cents(quantity * price);
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
