import type { CheckReliability, Reliability, UncertainName } from "../checks/reliability.ts";
import { formatQuantity } from "../quantity/format.ts";

const names: Readonly<Record<UncertainName, string>> = {
  windSpeed: "wind",
  soilStrength: "soil",
  tension: "tension",
  wallLoss: "walls",
};

const valueText = (name: UncertainName, value: number): string => {
  switch (name) {
    case "windSpeed":
      return `${formatQuantity(value, "speed", "us", 0).value} mph`;
    case "wallLoss":
      return `${formatQuantity(value, "size", "us", 3).value} in off walls`;
    default:
      return `${names[name]} ${(100 * value).toFixed(0)} %`;
  }
};

const outcomes: Readonly<Record<CheckReliability["outcome"], string>> = {
  found: "",
  step: "; a method ends there, or a check fails at a stroke",
  "falls-first": "; the mast falls before: counted with its stability",
  beyond: "; nothing that is uncertain decides it",
  "not-found": "; the search for the point did not settle: take it as a rough number",
};

const chance = (probability: number): string =>
  probability >= 1e-3 ? `${(100 * probability).toPrecision(2)} %` : probability.toExponential(1);

/** First-order reliability for a terminal: a line a check, the most probable to be missed first. */
export function reliabilityText({ checks, smallestMargin, years, names: known, asked }: Reliability): string {
  const { least, most } = smallestMargin;
  const span = years === 1 ? "one year" : `${years} years`;
  const both = chance(least) === chance(most) ? chance(most) : `${chance(least)} to ${chance(most)}`;
  return [
    `The smallest margin is below zero with a probability of ${both} in ${span}, to first order.`,
    "That a rule is missed, its factors kept: not that the mast falls. It is worth what the stated distributions are.",
    "",
    `  ${"probability".padStart(11)}  ${"index".padStart(6)}  check`,
    ...checks.map((check) => {
      const share = known
        .filter((name) => (check.importance[name] ?? 0) >= 0.005)
        .map((name) => `${names[name]} ${(100 * (check.importance[name] ?? 0)).toFixed(0)} %`)
        .join(", ");
      const at = known.map((name) => valueText(name, check.at[name])).join(", ");
      const where = check.outcome === "beyond" ? "" : `; importance ${share}; most probably at ${at}`;
      return `  ${chance(check.probability).padStart(11)}  ${check.beta.toFixed(2).padStart(6)}  ${check.title}, ${check.where}${where}${outcomes[check.outcome]}`;
    }),
    `${asked} verdicts asked for.`,
  ].join("\n");
}
