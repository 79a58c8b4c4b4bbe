import { expect, test } from "vitest";
import catalogPrices from "../../../catalog/prices.json" with { type: "json" };
import catalogStrand from "../../../catalog/strand.json" with { type: "json" };
import { verify } from "../../../src/checks/verify.ts";
import type { StudyFile } from "../../../src/model/study.ts";
import { buySheet } from "../../../src/report/sheets/buy.ts";
import { givenOf } from "../../../src/report/sheets/given.ts";
import { purchasePlan } from "../../../src/report/sheets/purchase-plan.ts";
import { design, freeStanding, pasture } from "../../checks/support/pasture.ts";
import { FOOT } from "../../support/us-units.ts";

type Prices = NonNullable<NonNullable<StudyFile["catalog"]>["prices"]>;
type Strand = NonNullable<NonNullable<StudyFile["catalog"]>["strand"]>[number];

/** A design under prices and strand of one's own. */
function given(d = design(), change: { prices?: Partial<Prices>; strand?: (row: Strand) => Strand } = {}) {
  const problem = pasture((study) => {
    study.catalog = {
      ...study.catalog,
      prices: { ...(catalogPrices as Prices), ...change.prices },
      strand: (catalogStrand as Strand[]).map(change.strand ?? ((row) => row)),
    };
  });
  return givenOf(problem, d, verify(problem, d));
}
const nothingWhole = {
  prices: { barStock: undefined, concreteSupply: undefined },
  strand: (row: Strand): Strand => ({ ...row, reels: undefined }),
};
const text = (g: ReturnType<typeof given>) => JSON.stringify(buySheet(g));

test("purchasePlan(the guyed mast of 70 ft) buys the reels that hold its guys, by hand", () => {
  const g = given();
  const plan = purchasePlan(g);
  if (!plan) throw new Error("no plan");
  const strands = plan.cut.filter(({ of }) => of === "strand");
  // three guys of 52 ft 8 in and three of 76 ft 9 in: a reel of 250 ft each, at $80 and $106
  expect(strands.map(({ cents }) => cents)).toEqual([8000, 10_600]);
  for (const [i, rig] of g.rigs.entries()) {
    const [{ cutting }] = strands[i].lots;
    if (cutting.status !== "cut") throw new Error(cutting.found);
    const [{ cuts, offcut, stock }] = cutting.cutUp;
    expect(cuts).toEqual([{ length: expect.closeTo(rig.cut, 3), count: 3 }]);
    expect(3 * rig.cut + offcut).toBeCloseTo(stock.length, 3);
    // the price of a reel by its metres is the least that any plan can cost
    expect(strands[i].cents).toBeGreaterThanOrEqual((28_500 / (1000 * FOOT)) * 3 * rig.cut);
  }
});

test("purchasePlan adds up to its parts, and the bill's lines for the same to what it is held against", () => {
  for (const d of [design(), freeStanding()]) {
    const g = given(d);
    const plan = purchasePlan(g);
    if (!plan) throw new Error("no plan");
    const all = [...plan.cut, ...(plan.concrete ? [plan.concrete] : [])];
    expect(plan.cents).toBe(all.reduce((sum, { cents }) => sum + (cents ?? 0), 0));
    const bought = g.verdict.bill.lines.filter(({ item }) => /^strand$|^base: bars$|: concrete$/.test(item));
    expect(plan.billed).toBe(bought.reduce((sum, { amount }) => sum + amount, 0));
    // a bill is what it was before anything was sold whole
    expect(g.verdict.bill).toEqual(given(d, nothingWhole).verdict.bill);
  }
});

test("purchasePlan cuts every bar of the dig sheet whole, size by size", () => {
  const g = given(freeStanding());
  const bars = purchasePlan(g)?.cut.find(({ of }) => of === "bars");
  if (!bars) throw new Error("no bars");
  const cut = bars.lots.flatMap(({ cutting }) => {
    if (cutting.status !== "cut") throw new Error(cutting.found);
    return cutting.cutUp.flatMap(({ count, cuts }) => cuts.map((one) => count * one.count));
  });
  expect(cut.reduce((a, b) => a + b, 0)).toBe(g.footing.bars.reduce((sum, { count }) => sum + count, 0));
  expect(bars.lots.map(({ name }) => name)).toEqual(
    [...new Set(g.footing.bars.map(({ bar }) => bar.name))].map((name) => `${name} bars`),
  );
});

test("purchasePlan(bars longer than their stock, guys longer than their reels) leaves the bill's amount and says why", () => {
  const g = given(design(), {
    prices: { barStock: [{ length: "10 ft", perMass: "$1/lb" }] },
    strand: (row) => (row.id === "ehs-1-4" ? { ...row, reels: [{ length: "60 ft", price: "$9" }] } : row),
  });
  const plan = purchasePlan(g);
  if (!plan) throw new Error("no plan");
  expect(plan.cut.map(({ cents }) => cents)).toEqual([8000, null, null]);
  expect(plan.cents).toBe(8000 + (plan.concrete?.cents ?? 0));
  expect(text(g)).toMatch(/No plan for 1\/4 in EHS strand: found a piece of 23\.\d\d m/);
  expect(text(g)).toMatch(
    /No plan for #5 bars: found a piece of 3\.\d\d m and nothing on sale longer than 3\.05 m/,
  );
});

test("purchasePlan where nothing is sold whole is none, and the sheet has no such section", () => {
  const g = given(design(), nothingWhole);
  expect(purchasePlan(g)).toBeNull();
  expect(text(g)).not.toContain("Buy and cut");
  expect(text(given())).toContain("Buy and cut");
  expect(text(given())).toMatch(
    /All that is planned here: \d+\.\d\d, \d+\.\d\d more than the \d+\.\d\d of the bill/,
  );
});

test("purchasePlan(a bar of one size at a price a bar) takes it beside what is sold by mass", () => {
  const g = given(design(), {
    prices: {
      barStock: [
        { length: "20 ft", perMass: "$100/lb" },
        { length: "12 ft", bar: "#5", price: "$3" },
        { length: "12 ft", bar: "#4", price: "$1" },
      ],
    },
  });
  const bars = purchasePlan(g)?.cut.find(({ of }) => of === "bars");
  // four rings of 10 ft 10 in fill a bar each; eight of 2 ft 6 in go four to a bar
  expect(bars?.cents).toBe(6 * 300);
});
