import type { Reliability, UncertainName } from "../checks/reliability.ts";
import { formatQuantity } from "../quantity/format.ts";
import {
  CHANCE_MEANS,
  chance,
  importanceWords,
  pointOutcomes,
  smallestMarginWords,
  uncertainNames,
} from "../report/chance-words.ts";

const valueText = (name: UncertainName, value: number): string => {
  switch (name) {
    case "windSpeed":
      return `${formatQuantity(value, "speed", "us", 0).value} mph`;
    case "wallLoss":
      return `${formatQuantity(value, "size", "us", 3).value} in off walls`;
    default:
      return `${uncertainNames[name]} ${(100 * value).toFixed(0)} %`;
  }
};

/** First-order reliability for a terminal: a line a check, the most probable to be missed first. */
export function reliabilityText(found: Reliability): string {
  const { checks, names, asked } = found;
  return [
    smallestMarginWords(found),
    CHANCE_MEANS,
    "",
    `  ${"probability".padStart(11)}  ${"index".padStart(6)}  check`,
    ...checks.map((check) => {
      const at = names.map((name) => valueText(name, check.at[name])).join(", ");
      const where =
        check.outcome === "beyond"
          ? ""
          : `; importance ${importanceWords(names, check)}; most probably at ${at}`;
      const also = pointOutcomes[check.outcome];
      return `  ${chance(check.probability).padStart(11)}  ${check.beta.toFixed(2).padStart(6)}  ${check.title}, ${check.where}${where}${also && `; ${also}`}`;
    }),
    `${asked} verdicts asked for.`,
  ].join("\n");
}
