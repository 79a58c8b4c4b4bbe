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

/** Classes that a hole is dug through, top down, and the share of its volume in each. */
export function dugThrough(soil: Soil, hole: number): { digging: Soil["digging"]; share: number }[] {
  const classes = new Map<Soil["digging"], number>();
  for (const { layer, from, to } of stretches(soil, 0, hole))
    classes.set(layer.digging, (classes.get(layer.digging) ?? 0) + (to - from) / hole);
  return [...classes].map(([digging, share]) => ({ digging, share }));
}

/** Everything that one part in the ground costs, for `times` of them. */
export function partLines(
  name: string,
  group: Group,
  takeOff: TakeOff,
  extras: readonly Extra[],
  { prices, soil }: Pick<Ground, "prices" | "soil">,
  times: number,
): BillLine[] {
  const lines: BillLine[] = [];
  if (takeOff.concrete > 0) {
    lines.push(
      line(
        group,
        `${name}: concrete`,
        takeOff.concrete * (1 + prices.concreteWaste),
        "m3",
        prices.concrete,
        times,
      ),
      line(
        group,
        `${name}: bars`,
        takeOff.bars ?? takeOff.concrete * prices.rebarPerVolume,
        "kg",
        prices.rebar,
        times,
      ),
    );
    if (takeOff.formed > 0)
      lines.push(line(group, `${name}: forms`, takeOff.formed, "m2", prices.forms, times));
  }
  if (takeOff.dug > 0)
    for (const { digging, share } of dugThrough(soil, takeOff.hole))
      lines.push(
        line(
          "digging",
          soil.layers ? `${name}: digging, ${digging}` : `${name}: digging`,
          takeOff.dug * share,
          "m3",
          prices.digging[digging],
          times,
        ),
      );
  for (const extra of extras)
    lines.push(line(group, extra.item, extra.quantity, extra.unit, extra.price, times));
  return lines;
}

export const partCents = (takeOff: TakeOff, extras: readonly Extra[], ground: Ground): number =>
  partLines("", "other", takeOff, extras, ground, 1).reduce((sum, { amount }) => sum + amount, 0);
