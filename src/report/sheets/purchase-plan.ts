import { poursOf } from "../../cost/concrete.ts";
import { reelPlans } from "../../cost/reels.ts";
import { cents } from "../../model/cents.ts";
import type { BillLine } from "../../model/verdict.ts";
import { barCuttings } from "../../purchase/bars.ts";
import { type Supplied, supplyConcrete } from "../../purchase/concrete.ts";
import { type Cutting, cutFromStock, type Refusal } from "../../purchase/cutting.ts";
import type { Given } from "./given.ts";
import { strandName } from "./words.ts";

/** What one plan costs, and what the bill has for the same; whole cents. */
interface Priced {
  /** Null where a part of it is refused: the bill's amount stands. */
  readonly cents: number | null;
  readonly billed: number;
}

/** Whole reels of a strand, or whole bars of every size. */
export interface CutPlan extends Priced {
  readonly of: "strand" | "bars";
  readonly lots: readonly { readonly name: string; readonly cutting: Cutting }[];
}

export interface ConcretePlan extends Priced {
  readonly supply: Supplied | Refusal;
}

/** What to buy whole and how to cut it, for a design that is decided. Plain data. */
export interface PurchasePlan {
  readonly cut: readonly CutPlan[];
  readonly concrete: ConcretePlan | null;
  /** Of all that is planned, whole cents. */
  readonly cents: number;
  /** What the bill has for just that. */
  readonly billed: number;
}

/**
 * The least money for what the prices state to be sold whole: reels of strand, bars of stock length, bags and trucks
 * of concrete. Null where they state none of it. Where the study does not pay for it so, the bill prices by the metre, by
 * mass and by volume, and stays as it is (docs/theory/cost.md).
 */
export function purchasePlan(given: Given): PurchasePlan | null {
  const cut = [...strandPlans(given), ...barPlan(given)];
  const concrete = concretePlan(given);
  if (cut.length === 0 && !concrete) return null;
  const planned = [...cut, ...(concrete ? [concrete] : [])].filter((one) => one.cents !== null);
  return {
    cut,
    concrete,
    cents: planned.reduce((sum, one) => sum + (one.cents ?? 0), 0),
    billed: planned.reduce((sum, one) => sum + one.billed, 0),
  };
}

const billedFor = ({ verdict }: Given, is: (line: BillLine) => boolean): number =>
  verdict.bill.lines.reduce((sum, line) => sum + (is(line) ? line.amount : 0), 0);

const sumOf = (cuttings: readonly Cutting[]): number | null =>
  cuttings.reduce<number | null>(
    (sum, one) => (sum === null || one.status === "refused" ? null : sum + one.cents),
    0,
  );

function strandPlans(given: Given): CutPlan[] {
  const { problem, model } = given;
  const paid = model.guys ? reelPlans(problem, model.guys.star, model.guys.levels) : [];
  if (problem.study.parts.wholeReels)
    return paid.map(({ strand, cutting }) => ({
      of: "strand",
      lots: [{ name: strandName(strand), cutting }],
      cents: sumOf([cutting]),
      billed: billedFor(given, ({ row }) => row === strand.id),
    }));
  const strands = new Set(given.rigs.map(({ strand }) => strand));
  return [...strands].flatMap((strand): CutPlan[] => {
    if (!strand.reels) return [];
    const cutting = cutFromStock(
      strand.reels.map(({ length, price, have }) => ({ length, cents: cents(price), have })),
      given.rigs.filter((rig) => rig.strand === strand).map(({ cut, count }) => ({ length: cut, count })),
    );
    return [
      {
        of: "strand",
        lots: [{ name: strandName(strand), cutting }],
        cents: sumOf([cutting]),
        billed: billedFor(given, ({ row }) => row === strand.id),
      },
    ];
  });
}

/** Bars of the base, size by size; those of anchors are bought by mass. */
function barPlan(given: Given): CutPlan[] {
  const { barStock } = given.problem.prices;
  const sizes = barStock ? barCuttings(barStock, given.footing.bars) : [];
  if (sizes.length === 0) return [];
  return [
    {
      of: "bars",
      lots: sizes.map(({ name, cutting }) => ({ name: `${name} bars`, cutting })),
      cents: sumOf(sizes.map(({ cutting }) => cutting)),
      billed: billedFor(given, ({ group, material }) => group === "footing" && material === "bars"),
    },
  ];
}

function concretePlan(given: Given): ConcretePlan | null {
  const { problem, model, anchor, footing } = given;
  const { concreteSupply } = problem.prices;
  const pours = poursOf(problem, { guys: model.guys && anchor ? { ...model.guys, anchor } : null, footing });
  if (!concreteSupply || pours.length === 0) return null;
  const supply = supplyConcrete(concreteSupply, pours);
  return {
    supply,
    cents: supply.status === "supplied" ? supply.cents : null,
    billed: billedFor(given, ({ material }) => material === "concrete"),
  };
}
