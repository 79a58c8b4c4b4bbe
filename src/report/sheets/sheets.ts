import program from "../../../package.json" with { type: "json" };
import { governing } from "../../checks/governing.ts";
import type { Design } from "../../model/design.ts";
import { designKey } from "../../model/design-key.ts";
import type { Verdict } from "../../model/verdict.ts";
import type { Problem } from "../../problem/types.ts";
import { lowerFirst, NO_HOLD, percent } from "../names.ts";
import { buySheet } from "./buy.ts";
import { calculationSheet } from "./calculation.ts";
import { digSheet } from "./dig.ts";
import { type Given, givenOf } from "./given.ts";
import { raiseSheet } from "./raise.ts";
import { tensionSheet } from "./tension.ts";
import type { Band, Sheet } from "./types.ts";
import { placeOf, shortHash } from "./words.ts";

/** A design that fails a check gets no sheets: nobody may build from it. */
export class UnsafeDesign extends Error {}

const pages: readonly (readonly [Sheet["id"], string, (given: Given) => Band[]])[] = [
  ["buy", "To buy", buySheet],
  ["dig", "To set out, dig and pour", digSheet],
  ["raise", "To raise", raiseSheet],
  ["tension", "To tension", tensionSheet],
  ["calculation", "Calculation", calculationSheet],
];

/**
 * What a crew needs to build a design, as plain data: five sheets, one subject each.
 * @throws UnsafeDesign naming the failing check where the verdict does not pass
 */
export function sheets(problem: Problem, design: Design, verdict: Verdict): Sheet[] {
  if (!verdict.passes) throw new UnsafeDesign(refusal(design, verdict));
  const given = givenOf(problem, design, verdict);
  return pages.map(([id, title, bands], i) => ({
    id,
    title,
    number: i + 1,
    of: pages.length,
    study: problem.study.name,
    design: shortHash(designKey(design)),
    currency: problem.prices.currency,
    bands: bands(given),
    foot: [
      ...footOf(given),
      `${problem.study.name}, design ${shortHash(designKey(design))}, sheet ${i + 1} of ${pages.length}. Demo sections, antennas and prices are invented. Mastwright ${program.version}.`,
    ],
  }));
}

function refusal(design: Design, verdict: Verdict): string {
  const fails = governing(verdict.checks);
  const what = fails ? `${fails.title}, ${placeOf(fails, design)}, ${fails.loadCase}` : "a check";
  const used =
    fails?.kind === "strength"
      ? ` (${Number.isFinite(fails.utilisation) ? `used ${fails.utilisation.toFixed(2)}` : NO_HOLD})`
      : "";
  return `Not safe: don't build this. ${what} fails${used}. No sheets were written.`;
}

function footOf({ verdict, design, problem }: Given): string[] {
  const check = governing(verdict.checks);
  const governs = check
    ? `Governs: ${lowerFirst(check.title)}, ${placeOf(check, design)}, ${check.loadCase}: ${check.utilisation.toFixed(2)} used; margin ${percent(verdict.smallestMargin)} %.`
    : "";
  return [`${governs} Rules: ${problem.rules.name}.`, `Assumed: ${verdict.assumptions.join(" ")}`];
}
