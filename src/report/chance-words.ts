import type { CheckReliability, Reliability, UncertainName } from "../checks/reliability.ts";

// how page and command line speak of a chance

export const uncertainNames: Readonly<Record<UncertainName, string>> = {
  windSpeed: "wind",
  soilStrength: "soil",
  tension: "tension",
  wallLoss: "walls",
};

/** What else must be said of a check's point. */
export const pointOutcomes: Readonly<Record<CheckReliability["outcome"], string>> = {
  found: "",
  step: "a method ends there, or a check fails at a stroke",
  "falls-first": "the mast falls before: counted with its stability",
  beyond: "nothing that is uncertain decides it",
  "not-found": "the search for the point did not settle: take it as a rough number",
};

/** "1.2 %", or "3.4e-5" where it is small. */
export const chance = (probability: number): string =>
  probability >= 1e-3 ? `${(100 * probability).toPrecision(2)} %` : probability.toExponential(1);

/** Between the bounds of a series where they differ as they are written. */
export const smallestMarginWords = ({ smallestMargin, years }: Reliability): string => {
  const [least, most] = [chance(smallestMargin.least), chance(smallestMargin.most)];
  const span = years === 1 ? "one year" : `${years} years`;
  return `The smallest margin is below zero with a probability of ${least === most ? most : `${least} to ${most}`} in ${span}, to first order.`;
};

export const CHANCE_MEANS =
  "That a rule is missed, its factors kept: not that the mast falls. It is worth what the stated distributions are.";

/** "wind 82 %, soil 17 %": what weighs in a check, what hardly does left out. */
export const importanceWords = (
  names: readonly UncertainName[],
  { importance }: Pick<CheckReliability, "importance">,
): string =>
  names
    .filter((name) => (importance[name] ?? 0) >= 0.005)
    .map((name) => `${uncertainNames[name]} ${(100 * (importance[name] ?? 0)).toFixed(0)} %`)
    .join(", ");
