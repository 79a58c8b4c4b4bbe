import type { Cut } from "../../purchase/cutting.ts";
import type { Given } from "./given.ts";
import { type ConcretePlan, type CutPlan, type PurchasePlan, purchasePlan } from "./purchase-plan.ts";
import type { Cell, Section, Table } from "./types.ts";
import { both, figure, tape } from "./words.ts";

/** What to buy whole and how to cut it; nothing where the prices state no reels, stock or supply. */
export function buyAndCut(given: Given): Section[] {
  const plan = purchasePlan(given);
  if (!plan) return [];
  const rows = [...plan.cut.flatMap(cutRows), ...concreteRows(plan, given)];
  const table: Table = {
    kind: "table",
    head: ["Buy", "How many", "Out of each", "Left of each", "Amount"],
    words: [2],
    rows,
    sum: ["Planned", "", "", "", figure(plan.cents / 100, "money")],
  };
  const said = [
    ...refusals(plan),
    ...parts(plan).flatMap(([name, one]) => (one.cents === null ? [] : [difference(name, one.cents, one)])),
    ...(rows.length > 0 ? [difference("All that is planned here", plan.cents, plan)] : []),
    billed(given.problem.study.parts),
    ...(plan.cut.some(({ of }) => of === "bars")
      ? ["Every bar of the base is cut whole, without laps; an anchor’s bars are bought by mass."]
      : []),
    "No length is counted for a cut. Measure on site before the first.",
  ];
  return [
    {
      title: "Buy and cut",
      gloss: "whole reels, bars, bags and loads for the least money",
      parts: [...(rows.length > 0 ? [table] : []), { kind: "words", text: said.join(" ") }],
    },
  ];
}

/** What the bill has for what is planned here. */
const billed = ({ wholeReels, barsAsSold, concreteAsSold }: Given["problem"]["study"]["parts"]): string =>
  `The bill prices ${[
    wholeReels ? "strand by these reels, their guys at the straight distance" : "strand by length",
    barsAsSold ? "bars of the base by these lengths" : "bars by mass",
    concreteAsSold ? "concrete by these bags and loads" : "concrete by volume",
  ].join(", ")}${wholeReels || barsAsSold || concreteAsSold ? "" : ", and stays as it is"}.`;

const refusals = ({ cut, concrete }: PurchasePlan): string[] =>
  [
    ...cut.flatMap(({ lots }) => lots.map(({ name, cutting }) => [name, cutting] as const)),
    ...(concrete ? [["concrete", concrete.supply] as const] : []),
  ].flatMap(([name, outcome]) =>
    outcome.status === "refused"
      ? [
          `No plan for ${name}: found ${outcome.found}, expected ${outcome.expected}; the bill’s amount stands.`,
        ]
      : [],
  );

const parts = ({ cut, concrete }: PurchasePlan): [string, CutPlan | ConcretePlan][] => [
  ...cut.map((one): [string, CutPlan] => [one.of === "bars" ? "Bars of the base" : one.lots[0].name, one]),
  ...(concrete ? [["Concrete", concrete] as [string, ConcretePlan]] : []),
];

const money = (whole: number): string => (whole / 100).toFixed(2);

function difference(name: string, planned: number, { billed }: { readonly billed: number }): string {
  const more = planned - billed;
  if (more === 0) return `${name}: ${money(planned)}, as in the bill.`;
  return `${name}: ${money(planned)}, ${money(Math.abs(more))} ${more > 0 ? "more" : "less"} than the ${money(billed)} of the bill.`;
}

const cutWords = (cuts: readonly Cut[]): string =>
  cuts.map(({ length, count }) => `${count} × ${tape(length)}`).join(", ");

const cutRows = ({ of, lots }: CutPlan): Cell[][] =>
  lots.flatMap(({ name, cutting }) =>
    cutting.status === "refused"
      ? []
      : cutting.cutUp.map(({ stock, count, cuts, offcut }): Cell[] => [
          `${name}, ${of === "bars" ? "bar" : "reel"} of ${tape(stock.length)}`,
          `${count}`,
          cutWords(cuts),
          both(offcut, "feet"),
          figure((count * stock.cents) / 100, "money"),
        ]),
  );

function concreteRows({ concrete }: PurchasePlan, { problem }: Given): Cell[][] {
  const { bag, truck } = problem.prices.concreteSupply ?? {};
  if (concrete?.supply.status !== "supplied") return [];
  const { supply } = concrete;
  const holes = (by: "byBag" | "byTruck", each: boolean) =>
    supply.pours
      .filter((one) => one[by] > 0)
      .map((one) => `${one[by]} × ${one.pour.name}${each ? ` (${one.bagsEach} bags)` : ""}`)
      .join(", ");
  const rows: Cell[][] = [];
  const byBag = supply.bags * Math.round((bag?.price ?? 0) * 100);
  if (bag && supply.bags > 0)
    rows.push([
      `Concrete: bag of ${(bag.yield / 0.3048 ** 3).toFixed(2)} ft³`,
      `${supply.bags}`,
      holes("byBag", true),
      "",
      figure(byBag / 100, "money"),
    ]);
  if (truck && supply.truck.loads > 0)
    rows.push([
      `Concrete: by truck, ${(supply.truck.volume / 0.9144 ** 3).toFixed(2)} yd³ ordered`,
      `${supply.truck.loads}${supply.truck.short > 0 ? `, ${supply.truck.short} short` : ""}`,
      holes("byTruck", false),
      "",
      figure((supply.cents - byBag) / 100, "money"),
    ]);
  return rows;
}
