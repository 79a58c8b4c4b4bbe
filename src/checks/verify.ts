import { type Billed, bill, volumes } from "../cost/bill.ts";
import { workOf } from "../cost/work.ts";
import type { Design } from "../model/design.ts";
import type { Place } from "../model/place.ts";
import type { CaseResponse, Check, Verdict } from "../model/verdict.ts";
import { type Measure, utilisation } from "../parts/types.ts";
import type { Problem } from "../problem/types.ts";
import { analyse, type CaseReactions, mastLimitStates } from "./analysis.ts";
import { barredChecks } from "./barred.ts";
import { demanded } from "./demanded.ts";
import { guyNotes } from "./guy-notes.ts";
import { guyStrength } from "./guy-strength.ts";
import { initialTensionCheck } from "./initial-tension.ts";
import type { MastMeasure, SolvedCase } from "./mast-checks.ts";
import { pipeBending } from "./pipe.ts";
import { plateSide } from "./plate.ts";
import { reelsChecks } from "./reels.ts";
import { resolve } from "./resolve.ts";
import { caseResponse } from "./response.ts";
import { capChecks, depthChecks, fallCheck, heightCheck, lineCheck, lotCheck, spacingCheck } from "./site.ts";
import type { StructureModel } from "./structure.ts";
import { limitStateTitles, limitStateUnits } from "./titles.ts";
import { windCases } from "./wind-cases.ts";

/** Said of a design with buried concrete anchors whose row rates no rod: no check asks it. */
const ROD_NOT_ASKED =
  "The rod of a buried concrete anchor and the plate that it pulls by are not checked: the catalog states no rating of it.";

/** What a mast makes of all its cases, whatever it stands on: one answer for every anchor and footing under it. */
export interface JudgedMast {
  readonly checks: readonly Check[];
  readonly responses: readonly CaseResponse[];
  /** Reactions of every case, for the ground. */
  readonly seen: readonly Seen[];
}

/** Keeps the worst of every check. */
function worstOf(known: readonly Check[] = []) {
  const checks = new Map(known.map((check) => [check.id, check]));
  const put = (check: Check) => {
    const before = checks.get(check.id);
    if (!before || check.utilisation > before.utilisation) checks.set(check.id, check);
  };
  return { checks, put };
}

/**
 * The only judge of safety. Every limit state of mast, guys, ground and site, each at its worst place and case.
 * @throws DesignError where the design names what the study does not have
 */
export function verify(problem: Problem, design: Design, elementsPerSpan?: number): Verdict {
  const resolved = resolve(problem, design);
  return judge(problem, design, resolved, judgeMast(problem, resolved.model, elementsPerSpan));
}

/** Mast, guys and antenna pipe in every load case at every place that is demanded. */
export function judgeMast(problem: Problem, model: StructureModel, elementsPerSpan?: number): JudgedMast {
  const { checks, put } = worstOf();
  const responses: CaseResponse[] = [];
  const { margin } = problem.study.wishes;
  const seen: Seen[] = [];
  for (const at of demanded(problem, model)) {
    // nothing is said of places where the study states no ranges
    const place = problem.study.ranges && at.place;
    let solved = 0;
    // the wind with this mast's own gusts in it, as soon as they are known
    let blown = at.problem;
    const result = analyse(at.problem, at.model, {
      elementsPerSpan,
      visit: (c: SolvedCase, measures, reactions) => {
        blown = c.problem;
        solved++;
        for (const measure of measures) put({ ...mastCheck(measure, c), place });
        if (at.problem === problem) responses.push(caseResponse(c, reactions));
        seen.push({ ...reactions, place });
      },
    });
    if (result.status === "failed") {
      const { title } = windCases(at.problem, at.model.guys)[solved] ?? { title: "" };
      put({ ...unstable(problem, result.limitState, title), place });
    }
    const pipe = pipeBending(blown, model.package, model.stack.height);
    put(groundCheck(pipe, "pipe on the mast top", [{ wind: { title: "wind" }, place }], margin));
  }
  return { checks: [...checks.values()], responses, seen };
}

/** The verdict on a design whose mast has been judged: with its ground, its site and what it costs. */
export function judge(
  problem: Problem,
  design: Design,
  { model, anchor, footing }: ReturnType<typeof resolve>,
  { checks: ofMast, responses, seen }: JudgedMast,
): Verdict {
  const { checks, put } = worstOf(ofMast);
  const { margin } = problem.study.wishes;
  if (design.guys && model.guys && anchor) {
    put(initialTensionCheck(problem, model.guys));
    put(lotCheck(problem, design.guys));
    for (const check of lineCheck(problem, design.guys)) put(check);
    for (const check of reelsChecks(problem, model.guys)) put(check);
    put(spacingCheck(model.guys.star, anchor));
    for (const check of depthChecks(anchor, "anchors", problem.ground)) put(check);
    const reactions = seen.flatMap((r) => r.anchors);
    const of = seen.flatMap((r) => r.anchors.map(() => r));
    if (reactions.length > 0)
      for (const measure of anchor.measures(reactions)) put(groundCheck(measure, "anchor", of, margin));
  }
  if (seen.length > 0)
    for (const measure of footing.measures(
      seen.map((r) => r.base),
      plateSide(model.stack),
    ))
      put(groundCheck(measure, "base", seen, margin));
  for (const check of depthChecks(footing, "base", problem.ground)) put(check);
  for (const check of heightCheck(problem, model.stack.height)) put(check);
  for (const check of fallCheck(problem, model.stack.height, model.package.exposed)) put(check);
  for (const check of barredChecks(problem, design)) put(check);
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
    work: workOf(problem, billed),
    assumptions:
      anchor?.choice.kind === "deadman" && !checks.has("anchor-rod")
        ? [...problem.assumptions, ROD_NOT_ASKED]
        : problem.assumptions,
    cases: responses,
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

/** Reactions of a case, and where in the study's ranges it was. */
type Seen = CaseReactions & { readonly place?: Place };

const groundCheck = (
  measure: Measure & { at?: number },
  where: string,
  cases: readonly { readonly wind: { readonly title: string }; readonly place?: Place }[],
  margin: number,
): Check => ({
  ...asCheck(measure, {
    id: measure.limitState,
    where,
    at: measure.at,
    loadCase: cases[measure.of]?.wind.title ?? "",
    margin,
  }),
  place: cases[measure.of]?.place,
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
