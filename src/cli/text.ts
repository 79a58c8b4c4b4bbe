import type { UnderRuleSet } from "../checks/under-rule-sets.ts";
import { type Design, footingAcross } from "../model/design.ts";
import type { Check, Verdict } from "../model/verdict.ts";
import { formatQuantity } from "../quantity/format.ts";
import type { Outcome, Proof } from "../search/types.ts";

// readable text: the same facts as the JSON, in US units, for a terminal

const feet = (metres: number) => {
  const { value, unit } = formatQuantity(metres, "length", "us", 1);
  return `${value} ${unit}`;
};
const yards = (volume: number) => {
  const { value, unit } = formatQuantity(volume, "volume", "us", 2);
  return `${value} ${unit}`;
};
const dollars = (amount: number) =>
  `$${amount.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;
const many = (n: number) => (n < 1e6 ? n.toLocaleString("en-US") : n.toExponential(2).replace("e+", "e"));

export const caution =
  "An estimating and learning tool. Masts kill by falling, by electrocution and by collapse: local codes,\nthe maker's drawings and a licensed engineer decide; keep the fall zone clear of power lines.";

export function designText(design: Design): string {
  const stack = design.stack.map((part) => `${feet(part.length)} of ${part.section}`).join(", then ");
  const base = `${design.footing.kind.replace("-", " ")} ${feet(footingAcross(design.footing))} ${"diameter" in design.footing ? "across" : "wide"}, ${feet(design.footing.depth)} deep`;
  if (!design.guys) return `${feet(design.height)} free-standing: ${stack}; ${base}`;
  const { guys } = design;
  const percent = (tension: number) => `${(tension * 100).toFixed(0)} %`;
  const levels = guys.levels
    .map(({ strand, height, tension }) => {
      const own = tension === undefined ? "" : ` (${percent(tension)})`;
      return `${strand} at ${feet(height)}${own}`;
    })
    .join(", ");
  const out = (guys.radii ?? [guys.radius]).map(feet).join(", ");
  const anchor =
    guys.anchor.kind === "deadman"
      ? `deadman ${feet(guys.anchor.length)} x ${feet(guys.anchor.height)} x ${feet(guys.anchor.width)}, bottom ${feet(guys.anchor.depth)} down`
      : guys.anchor.kind === "post"
        ? `${guys.anchor.row}, block ${feet(guys.anchor.width)} square, ${feet(guys.anchor.depth)} deep`
        : guys.anchor.kind === "rock-rod"
          ? `${guys.anchor.row}, socket ${feet(guys.anchor.socket)}`
          : guys.anchor.row;
  return `${feet(design.height)}: ${stack}; ${guys.perLevel} guys a level: ${levels}, at ${percent(guys.tension)} of breaking strength;\n  anchors ${out} out, the first toward ${guys.rotation} degrees: ${anchor}; base ${base}`;
}

const usedText = (check: Check): string => {
  if (check.kind !== "strength") return check.passes ? "inside" : "outside";
  return check.utilisation === Number.POSITIVE_INFINITY ? "unstable" : check.utilisation.toFixed(2);
};

const checkText = (check: Check): string => {
  const where = [check.where, check.at === undefined ? "" : feet(check.at), check.loadCase]
    .filter(Boolean)
    .join(", ");
  return `  ${check.passes ? " " : "x"} ${usedText(check).padStart(8)}  ${check.title.padEnd(24)} ${where}${check.note ? ` (${check.note})` : ""}`;
};

export function verdictText(verdict: Verdict): string {
  return [
    verdict.passes
      ? `Passes every check; the smallest margin is ${(verdict.smallestMargin * 100).toFixed(0)} %.`
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
    row("smallest margin", (c) => (c.status === "judged" ? `${(c.smallestMargin * 100).toFixed(0)} %` : "-")),
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

export function outcomeText(outcome: Outcome): string {
  const lines: string[] = [];
  if (outcome.status === "proven")
    lines.push(
      "Cheapest safe mast: nothing cheaper on this grid is safe.",
      designText(outcome.best.design),
      verdictText(outcome.best.verdict),
    );
  else if (outcome.status === "stopped")
    lines.push(
      outcome.best
        ? `Stopped: safe, perhaps not the best${gapText(outcome.proof.gap)}.`
        : "Stopped before anything safe was found.",
      ...(outcome.best ? [designText(outcome.best.design), verdictText(outcome.best.verdict)] : []),
    );
  else
    lines.push(
      "Nothing on this grid is safe.",
      ...(outcome.nearest
        ? [
            "The nearest of those looked at:",
            designText(outcome.nearest.design),
            verdictText(outcome.nearest.verdict),
          ]
        : []),
    );
  lines.push(proofText(outcome.proof));
  if (outcome.status === "proven" && outcome.whyNotCheaper.length > 0) {
    lines.push("Why not cheaper:");
    for (const row of outcome.whyNotCheaper)
      lines.push(
        `  saves ${dollars(row.saves)} by ${row.change.what}: ${row.failsIn} fails, ${row.utilisation.toFixed(2)}`,
      );
  }
  return lines.join("\n");
}

/** How far it may be from the best; nothing where the question that was stopped had found nothing yet. */
const gapText = (gap: number): string => (Number.isFinite(gap) ? `; at most ${gap.toFixed(2)} off` : "");
