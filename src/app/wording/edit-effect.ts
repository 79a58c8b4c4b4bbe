import { percent } from "../../report/names.ts";
import type { Outcome } from "../../search/types.ts";
import { money, type System, said } from "./figures.ts";

export interface EffectRow {
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

const bestOf = (outcome: Outcome) =>
  outcome.status === "none-safe" || !outcome.best?.verdict.passes ? null : outcome.best;

/** What an edit did to the answer, figure by figure. */
export const effectRows = (
  before: Outcome,
  after: Outcome,
  system: System,
  currency: string,
): readonly EffectRow[] => {
  const [a, b] = [bestOf(before), bestOf(after)];
  const row = (name: string, pick: (best: NonNullable<typeof a>) => string): EffectRow => ({
    name,
    before: a ? pick(a) : "none safe",
    after: b ? pick(b) : "none safe",
  });
  return [
    row("Whole mast", (best) => money(best.verdict.bill.total, currency, system)),
    row("Concrete", (best) => said(best.verdict.concreteVolume, "volume", system)),
    row("Margin", (best) => `${percent(best.verdict.smallestMargin)} %`),
  ];
};

export const effectSentence = (before: Outcome, after: Outcome, system: System, currency: string): string => {
  const [a, b] = [bestOf(before), bestOf(after)];
  if (!a && !b) return "Nothing was safe before, and nothing is now.";
  if (!b) return "With this edit nothing on the grid is safe.";
  if (!a) return `With this edit a safe mast exists, for ${money(b.verdict.bill.total, currency, system)}.`;
  const difference = b.verdict.bill.total - a.verdict.bill.total;
  const same = JSON.stringify(a.design) === JSON.stringify(b.design);
  const mast = same ? "the same mast" : "another mast";
  if (Math.abs(difference) < 0.5) return `The answer costs the same, with ${mast}.`;
  const words = money(Math.abs(difference), currency, system);
  return difference < 0
    ? `The answer is ${words} cheaper, with ${mast}.`
    : `The answer is ${words} dearer, with ${mast}.`;
};
