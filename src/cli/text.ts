import type { UnderRuleSet } from "../checks/under-rule-sets.ts";
import type { Place } from "../model/place.ts";
import type { Check, Verdict } from "../model/verdict.ts";
import { formatQuantity } from "../quantity/format.ts";
import { caution } from "../report/caution.ts";
import { NO_HOLD, percent } from "../report/names.ts";
import type { Outcome, Proof, Rejected } from "../search/types.ts";
import { type Book, changeText, designText, feet } from "./design-text.ts";

// readable text: the same facts as the JSON, in US units, for a terminal

const yards = (volume: number) => {
  const { value, unit } = formatQuantity(volume, "volume", "us", 2);
  return `${value} ${unit}`;
};
const dollars = (amount: number) =>
  `$${amount.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;
const many = (n: number) => (n < 1e6 ? n.toLocaleString("en-US") : n.toExponential(2).replace("e+", "e"));

/** The caution, as wide as a terminal's lines. */
export const cautionText = caution.replace(/(.{1,110})(?: |$)/g, "$1\n").trimEnd();

/** Of what it may bear; what no load at all would leave standing has no figure. */
const shareText = (utilisation: number): string =>
  utilisation === Number.POSITIVE_INFINITY ? NO_HOLD : utilisation.toFixed(2);
const usedText = (check: Check): string => {
  if (check.kind !== "strength") return check.passes ? "inside" : "outside";
  return shareText(check.utilisation);
};

/** Where in the ranges of a study, as far as it is not as stated. */
const placeText = ({ soilStrength, windSpeed, wallLoss, tension }: Place): string => {
  const ofStated = (share: number) => `${(100 * share).toFixed(0)} %`;
  return [
    soilStrength === 1 ? "" : `soil ${ofStated(soilStrength)}`,
    windSpeed === 1 ? "" : `wind speed ${ofStated(windSpeed)}`,
    wallLoss === 0 ? "" : `walls less ${formatQuantity(wallLoss, "size", "us", 3).value} in`,
    tension === 1 ? "" : `tension ${ofStated(tension)}`,
  ]
    .filter(Boolean)
    .join(", ");
};

const checkText = (check: Check): string => {
  const where = [
    check.where,
    check.at === undefined ? "" : feet(check.at),
    check.loadCase,
    check.place && placeText(check.place),
  ]
    .filter(Boolean)
    .join(", ");
  return `  ${check.passes ? " " : "x"} ${usedText(check).padStart(8)}  ${check.title.padEnd(24)} ${where}${check.note ? ` (${check.note})` : ""}`;
};

export function verdictText(verdict: Verdict): string {
  return [
    verdict.passes
      ? `Passes every check; the smallest margin is ${percent(verdict.smallestMargin)} %.`
      : "NOT SAFE: don't build this.",
    ...verdict.checks.map(checkText),
    `  cost ${dollars(verdict.bill.total)}, concrete ${yards(verdict.concreteVolume)}, dug ${yards(verdict.dugVolume)}`,
    ...verdict.assumptions.map((sentence) => `  Assumed: ${sentence}`),
  ].join("\n");
}

/** A design under every rule set: a line a check, a column a rule set, then whose factor each is. */
export function ruleSetsText(columns: readonly UnderRuleSet[]): string {
  const all = columns.flatMap((column) => (column.status === "judged" ? column.checks : []));
  const named = new Map(all.map((check) => [check.id, check]));
  // two places of one limit state need their place beside the title
  const titles = [...named.values()].map(({ id, title, where }): [string, string] => [
    id,
    [...named.values()].some((other) => other.title === title && other.id !== id)
      ? `${title}, ${where}`
      : title,
  ]);
  const wide = Math.max(22, ...columns.map(({ id }) => id.length + 2));
  const row = (head: string, cell: (column: UnderRuleSet) => string) =>
    `  ${head.padEnd(28)}${columns.map((column) => cell(column).padEnd(wide)).join("")}`.trimEnd();
  const cellOf = (id: string) => (column: UnderRuleSet) => {
    const check = column.status === "judged" ? column.checks.find((one) => one.id === id) : undefined;
    if (!check) return "-";
    const factor = check.kind === "strength" ? ` (x ${check.required.toFixed(2)})` : "";
    return `${usedText(check)}${factor}${check.passes ? "" : " fails"}`;
  };
  return [
    "The same mast on the same site under every rule set; the study's own, marked *, says whether it is safe.",
    row("used (required factor)", ({ id, own }) => `${id}${own ? " *" : ""}`),
    ...titles.map(([id, title]) => row(title, cellOf(id))),
    row("smallest margin", (c) => (c.status === "judged" ? `${percent(c.smallestMargin)} %` : "-")),
    row("", (c) => (c.status === "refused" ? "refused" : c.passes ? "passes" : "NOT SAFE")),
    ...columns.flatMap((column) => [
      `${column.id}: ${column.name}`,
      ...(column.status === "refused"
        ? [`  refused: ${column.reason}`]
        : column.checks
            .filter(({ kind }) => kind === "strength")
            .map(({ title, required, source }) => `  ${title}, x ${required.toFixed(2)}: ${source}`)
            .filter((line, i, lines) => lines.indexOf(line) === i)),
    ]),
  ].join("\n");
}

const proofText = (proof: Proof): string =>
  [
    `${many(proof.gridSize)} designs, ${many(proof.structures)} structures, ${many(proof.analysed)} analysed, ${proof.seconds.toFixed(2)} s on ${proof.workers} worker(s)`,
    ...Object.entries(proof.pruned)
      .sort(([, a], [, b]) => b - a)
      .map(([rule, count]) => `  ${many(count).padStart(12)}  ${rule}`),
  ].join("\n");

/** @param whyNot designs that show why nothing cheaper is safe */
export function outcomeText(outcome: Outcome, book: Book, whyNot: readonly Rejected[]): string {
  const { margin } = book.study.wishes;
  const lines: string[] = [];
  if (outcome.status === "proven")
    lines.push(
      "Cheapest safe mast: nothing cheaper on this grid is safe.",
      designText(outcome.best.design, book),
      verdictText(outcome.best.verdict),
    );
  else if (outcome.status === "stopped")
    lines.push(
      outcome.best
        ? `Stopped: safe, perhaps not the best${gapText(outcome.proof.gap)}.`
        : "Stopped before anything safe was found.",
      ...(outcome.best ? [designText(outcome.best.design, book), verdictText(outcome.best.verdict)] : []),
    );
  else
    lines.push(
      "Nothing on this grid is safe.",
      ...(outcome.nearest
        ? [
            "The nearest of those looked at:",
            designText(outcome.nearest.design, book),
            verdictText(outcome.nearest.verdict),
          ]
        : []),
    );
  lines.push(proofText(outcome.proof));
  if (whyNot.length > 0) {
    // what uses less than the whole capacity fails by the margin that the study wants
    const left =
      margin > 0 ? ` (used, of the ${(1 / (1 + margin)).toFixed(2)} that the wished margin leaves)` : "";
    lines.push(`Why not cheaper${left}:`);
    for (const row of whyNot)
      lines.push(
        `  saves ${dollars(row.saves)}  ${changeText(row.change, book)}: fails in ${row.failsIn.toLowerCase()}, ${shareText(row.utilisation)}`,
      );
  }
  return lines.join("\n");
}

/** How far it may be from the best; nothing where the question that was stopped had found nothing yet. */
const gapText = (gap: number): string => (Number.isFinite(gap) ? `; at most ${gap.toFixed(2)} off` : "");
