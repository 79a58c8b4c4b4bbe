import { useEffect, useMemo } from "react";
import { type Reading, useBook } from "../state/book.ts";
import { askAll, pricing } from "../state/pricing.ts";
import { answerOf } from "../state/shown.ts";
import { costOf, lockVariants, questionKey, stepVariants } from "../state/steps.ts";
import { useStore } from "../state/store.ts";
import { money, type System } from "../wording/figures.ts";

/** How long an answer stands before its steps are priced, ms: their worker would take a core from its drawing, or from the next edit. */
const STANDS = 1000;

/** Prices are asked for only once the answer itself is proven and the hand rests: these come first. */
export const useStepPrices = () => {
  const ended = useBook((state) => (state.finding.state === "ended" ? state.finding : null));
  const system = useBook((state) => state.system);
  useEffect(() => {
    if (ended?.outcome.status !== "proven") return undefined;
    const variants = [...stepVariants(ended.reading, system), ...lockVariants(ended.reading)];
    let takeBack = () => {};
    const begin = () => {
      takeBack = askAll(variants.map((variant) => variant.paper));
    };
    const timer = setTimeout(begin, STANDS);
    return () => {
      clearTimeout(timer);
      takeBack();
    };
  }, [ended, system]);
};

export const StepPrice = ({ id, also }: { id: string; also?: string }) => {
  const answers = useStore(pricing, (state) => state.answers);
  const finding = useBook((state) => state.finding);
  const system = useBook((state) => state.system);
  const words = useMemo(() => {
    const answer = answerOf({ finding, former: null });
    if (answer.kind !== "proven") return "";
    const base = answer.best.verdict.bill.total;
    return [id, also]
      .map((one) => (one ? stepWords(one, answer.reading, base, system, answers) : ""))
      .filter(Boolean)
      .join(" · ");
  }, [answers, finding, system, id, also]);
  return <span className="price">{words}</span>;
};

const stepWords = (
  id: string,
  reading: Reading,
  base: number,
  system: System,
  answers: ReturnType<typeof pricing.get>["answers"],
): string => {
  const variant = stepVariants(reading, system).find((one) => one.id === id);
  const outcome = variant && answers.get(questionKey(variant.paper));
  if (!variant || !outcome) return "";
  if (outcome.status === "none-safe") return `${variant.label}: none safe`;
  const cost = costOf(outcome);
  if (cost === null) return "";
  if (Math.abs(cost - base) < 0.5) return "binds not";
  return `${variant.label}: ${money(cost - base, "$", system)}`;
};
