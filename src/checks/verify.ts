import { type Billed, bill, volumes } from "../cost/bill.ts";
import type { Design } from "../model/design.ts";
import type { CaseResponse, Check, Verdict } from "../model/verdict.ts";
import { anchorPart, footingPart } from "../parts/index.ts";
import { type AnchorPart, type FootingPart, type Measure, utilisation } from "../parts/types.ts";
import { stackOf } from "../problem/stacks.ts";
import { starOf } from "../problem/star.ts";
import type { Problem } from "../problem/types.ts";
import { analyse, type CaseReactions, mastLimitStates } from "./analysis.ts";
import { guyNotes } from "./guy-notes.ts";
import { guyStrength } from "./guy-strength.ts";
import type { MastMeasure, SolvedCase } from "./mast-checks.ts";
import { pipeBending } from "./pipe.ts";
import { plateSide } from "./plate.ts";
import { caseResponse } from "./response.ts";
import { type GuyModel, initialTensions, insideWindow } from "./rigging.ts";
import { capChecks, depthChecks, fallCheck, heightCheck, lotCheck, spacingCheck } from "./site.ts";
import type { StructureModel } from "./structure.ts";
import { limitStateTitles, limitStateUnits } from "./titles.ts";
import { windCases } from "./wind-cases.ts";

/** A design that can't be judged: a key, kind or stock that the study does not have. */
export class DesignError extends Error {
  constructor(
    readonly path: string,
    readonly found: string,
    readonly expected: string,
  ) {
    super(`${path}: found ${found}, expected ${expected}`);
  }
}

/** Resolves a design's keys. @throws DesignError */
export function resolve(
  problem: Problem,
  design: Design,
): { model: StructureModel; anchor: AnchorPart | null; footing: FootingPart } {
  const need = <T>(value: T | undefined | null, path: string, found: string, expected: string): T => {
    if (value === undefined || value === null) throw new DesignError(path, found, expected);
    return value;
  };
  const { catalog } = problem;
  const pack = need(
    problem.packages.find((p) => p.row.id === design.package),
    "package",
    `"${design.package}"`,
    "the id of one of the study's packages",
  );
  const parts = design.stack.map(({ section, length }, i) => ({
    section: need(
      problem.sections.get(section),
      `stack[${i}].section`,
      `"${section}"`,
      problem.uncovered.has(section)
        ? `a section that the rule set's steel covers: ${problem.uncovered.get(section)}`
        : "a section of the catalog",
    ),
    length,
  }));
  const total = parts.reduce((sum, part) => sum + part.length, 0);
  if (Math.abs(total - design.height) > 1e-6)
    throw new DesignError("stack", `${total} m in all`, `the height, ${design.height} m`);
  const stack = need(
    stackOf(parts),
    "stack",
    "lengths that the stock can't make up",
    "lengths that pieces on sale add up to",
  );
  let guys: StructureModel["guys"] = null;
  let anchor: AnchorPart | null = null;
  if (design.guys) {
    const { levels } = design.guys;
    const choice = design.guys.anchor;
    const row = need(
      catalog.anchors.find((a) => a.id === choice.row),
      "guys.anchor.row",
      `"${choice.row}"`,
      "an anchor of the catalog",
    );
    anchor = need(
      anchorPart(row, choice, problem.ground),
      "guys.anchor.kind",
      `"${choice.kind}"`,
      `"${row.kind}", the kind of row "${row.id}"`,
    );
    const star = starOf(problem.study.lot, design.guys, anchor.head);
    const highest = Math.max(...star.anchors.map((a) => a.elevation));
    const { tension: common } = design.guys;
    guys = {
      star,
      levels: levels.map(({ height, strand, tension }, i) => {
        const above = i === 0 ? 0 : levels[i - 1].height;
        if (height <= above || height > design.height + 1e-9)
          throw new DesignError(
            `guys.levels[${i}].height`,
            `${height} m`,
            `a height above ${above} m and at most the mast's ${design.height} m`,
          );
        if (height <= highest)
          throw new DesignError(
            `guys.levels[${i}].height`,
            `${height} m`,
            `a height above the highest anchor, ${highest.toFixed(2)} m over the base`,
          );
        return {
          height,
          tension: tension ?? common,
          hardware: problem.study.parts.guyHardware,
          strand: need(
            catalog.strand.find((s) => s.id === strand),
            `guys.levels[${i}].strand`,
            `"${strand}"`,
            "a strand of the catalog",
          ),
        };
      }),
    };
  }
  const row = need(
    catalog.footings.find((f) => f.id === design.footing.row),
    "footing.row",
    `"${design.footing.row}"`,
    "a footing of the catalog",
  );
  const footing = need(
    footingPart(row, design.footing, problem.ground),
    "footing.kind",
    `"${design.footing.kind}"`,
    `"${row.kind}", the kind of row "${row.id}"`,
  );
  return { model: { package: pack, stack, guys }, anchor, footing };
}

/** Reach of everything that can fall, m. */
const reach = (model: StructureModel): number => model.stack.height + model.package.exposed;

/**
 * The only judge of safety. Every limit state of mast, guys, ground and site, each at its worst place and case.
 * @throws DesignError where the design names what the study does not have
 */
export function verify(problem: Problem, design: Design, elementsPerSpan?: number): Verdict {
  const { model, anchor, footing } = resolve(problem, design);
  const checks = new Map<string, Check>();
  const responses: CaseResponse[] = [];
  const put = (check: Check) => {
    const known = checks.get(check.id);
    if (!known || check.utilisation > known.utilisation) checks.set(check.id, check);
  };
  const seen: CaseReactions[] = [];
  // the wind with this mast's own gusts in it, as soon as they are known
  let blown = problem;
  const result = analyse(problem, model, {
    elementsPerSpan,
    visit: (c: SolvedCase, measures, reactions) => {
      blown = c.problem;
      for (const measure of measures) put(mastCheck(measure, c));
      responses.push(caseResponse(c, reactions));
      seen.push(reactions);
    },
  });
  if (result.status === "failed")
    put(unstable(problem, result.limitState, windCases(problem, model.guys)[seen.length]?.title ?? ""));

  put(
    groundCheck(
      pipeBending(blown, model.package, model.stack.height),
      "pipe on the mast top",
      ["wind"],
      problem.study.wishes.margin,
    ),
  );
  if (design.guys && model.guys && anchor) {
    put(tensionCheck(problem, model.guys));
    put(lotCheck(problem, design.guys));
    if (model.guys) put(spacingCheck(model.guys.star, anchor));
    for (const check of depthChecks(anchor, "anchors", problem.ground)) put(check);
    const reactions = seen.flatMap((r) => r.anchors);
    const names = seen.flatMap((r) => r.anchors.map(() => r.wind.title));
    if (reactions.length > 0)
      for (const measure of anchor.measures(reactions))
        put(groundCheck(measure, "anchor", names, problem.study.wishes.margin));
  }
  if (seen.length > 0)
    for (const measure of footing.measures(
      seen.map((r) => r.base),
      plateSide(model.stack),
    ))
      put(
        groundCheck(
          measure,
          "base",
          seen.map((r) => r.wind.title),
          problem.study.wishes.margin,
        ),
      );
  for (const check of depthChecks(footing, "base", problem.ground)) put(check);
  for (const check of heightCheck(problem, model.stack.height)) put(check);
  for (const check of fallCheck(problem, reach(model))) put(check);
  const billed: Billed = {
    pack: model.package,
    stack: model.stack,
    guys: model.guys && anchor ? { ...model.guys, anchor } : null,
    footing,
  };
  const { concrete, dug } = volumes(billed);
  const money = bill(problem, billed);
  for (const check of capChecks(problem, { concrete, dug, money: money.total })) put(check);

  const sorted = [...checks.values()]
    .map((check) =>
      check.limitState === guyStrength.id ? { ...check, note: guyNotes(check, responses) } : check,
    )
    .sort(byRoadToFailure);
  const strength = sorted.filter((check) => check.kind === "strength");
  const worst = Math.max(...strength.map((check) => check.utilisation));
  return {
    passes: sorted.every((check) => check.passes),
    smallestMargin: worst > 0 ? 1 / worst - 1 : Number.POSITIVE_INFINITY,
    checks: sorted,
    bill: money,
    concreteVolume: concrete,
    dugVolume: dug,
    assumptions: problem.assumptions,
    cases: responses,
  };
}

/** Is every guy inside the window of initial tension? */
function tensionCheck(problem: Problem, guys: GuyModel): Check {
  const { least, most, source } = problem.rules.tension;
  const all = initialTensions(guys);
  const slackest = Math.min(...all);
  const tautest = Math.max(...all);
  const slack = slackest < least - 1e-12;
  return {
    id: "initial-tension",
    limitState: "initial-tension",
    title: limitStateTitles["initial-tension"],
    kind: "limit",
    where: "all guys",
    loadCase: "still air",
    unit: "ratio",
    demand: slack ? slackest : tautest,
    capacity: most,
    required: 1,
    utilisation: slack ? least / slackest : tautest / most,
    passes: insideWindow(problem, guys),
    source,
    note: slack
      ? "slacker than the window: guys that gallop"
      : tautest > most
        ? "tauter than the window: strand that hums and tires"
        : undefined,
  };
}

const kinds = { strength: 0, limit: 1, warning: 2 } as const;
const byRoadToFailure = (a: Check, b: Check): number =>
  Number(a.passes) - Number(b.passes) ||
  kinds[a.kind] - kinds[b.kind] ||
  b.utilisation - a.utilisation ||
  (a.id < b.id ? -1 : 1);

function mastCheck(measure: MastMeasure, c: SolvedCase): Check {
  const limited = mastLimitStates.some((state) => state.id === measure.limitState && state.kind === "limit");
  const place = measure.level === undefined ? "mast" : `level ${measure.level + 1}`;
  return asCheck(measure, {
    id: measure.level === undefined ? measure.limitState : `${measure.limitState}/${measure.level + 1}`,
    where: place,
    at: measure.at,
    loadCase: c.wind.title,
    margin: limited ? 0 : c.problem.study.wishes.margin,
    kind: limited ? "limit" : "strength",
  });
}

const groundCheck = (
  measure: Measure & { at?: number },
  where: string,
  cases: readonly string[],
  margin: number,
): Check =>
  asCheck(measure, {
    id: measure.limitState,
    where,
    at: measure.at,
    loadCase: cases[measure.of] ?? "",
    margin,
  });

function asCheck(
  measure: Measure,
  at: { id: string; where: string; at?: number; loadCase: string; margin: number; kind?: Check["kind"] },
): Check {
  const use = utilisation(measure);
  return {
    id: at.id,
    limitState: measure.limitState,
    title: limitStateTitles[measure.limitState] ?? measure.limitState,
    kind: at.kind ?? "strength",
    where: at.where,
    at: at.at,
    loadCase: at.loadCase,
    unit: limitStateUnits[measure.limitState] ?? "force",
    demand: measure.demand,
    capacity: measure.capacity,
    required: measure.required,
    utilisation: use,
    passes: use * (1 + at.margin) <= 1 + 1e-12,
    source: measure.source,
    note: measure.note || undefined,
  };
}

function unstable(problem: Problem, limitState: string, loadCase: string): Check {
  const rigging = limitState === "rigging";
  return {
    id: rigging ? "rigging" : "stability",
    limitState: rigging ? "rigging" : "stability",
    title: rigging ? "Rigging" : limitStateTitles.stability,
    kind: "strength",
    where: "mast",
    loadCase,
    unit: "ratio",
    demand: 1,
    capacity: 0,
    required: problem.rules.stability.required,
    utilisation: Number.POSITIVE_INFINITY,
    passes: false,
    source: problem.rules.stability.source,
    note: rigging ? "a guy can't be drawn to this tension" : "unstable under this load",
  };
}
