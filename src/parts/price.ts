import type { BillLine } from "../model/verdict.ts";
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
      line(group, `${name}: bars`, takeOff.concrete * prices.rebarPerVolume, "kg", prices.rebar, times),
    );
    if (takeOff.formed > 0)
      lines.push(line(group, `${name}: forms`, takeOff.formed, "m2", prices.forms, times));
  }
  if (takeOff.dug > 0)
    lines.push(line("digging", `${name}: digging`, takeOff.dug, "m3", prices.digging[soil.digging], times));
  for (const extra of extras)
    lines.push(line(group, extra.item, extra.quantity, extra.unit, extra.price, times));
  return lines;
}

export const partCents = (takeOff: TakeOff, extras: readonly Extra[], ground: Ground): number =>
  partLines("", "other", takeOff, extras, ground, 1).reduce((sum, { amount }) => sum + amount, 0);
