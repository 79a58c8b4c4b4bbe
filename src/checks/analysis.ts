import type { AnchorReaction, FootingLoads } from "../parts/types.ts";
import { utilisation } from "../parts/types.ts";
import { recoverForces } from "../physics/mast/recover.ts";
import type { Mast } from "../physics/mast/solver.ts";
import type { Twist } from "../physics/mast/twist.ts";
import type { Problem, SectionModel } from "../problem/types.ts";
import { armPull, pairRange } from "./arms.ts";
import { bracing } from "./bracing.ts";
import { type Gusts, gust, gustsOf, gusty, swaysFast } from "./gust.ts";
import { guyStrength } from "./guy-strength.ts";
import { legCompression } from "./leg-compression.ts";
import { legTension } from "./leg-tension.ts";
import { loadsOf } from "./loads.ts";
import type { MastLimitState, MastMeasure, SolvedCase } from "./mast-checks.ts";
import { stability } from "./stability.ts";
import { armsOf, atWorkbench, mastInput, type StructureModel, type Workbench } from "./structure.ts";
import { sway, twistAtAntennas } from "./sway.ts";
import { tilt } from "./tilt.ts";
import { twistOf } from "./torsion.ts";
import { twistRange } from "./twist.ts";
import { type WindCase, windCases } from "./wind-cases.ts";

/** Limit states of the mast, in the order that ends a bad case soonest. Stability last: it costs a factoring. */
export const mastLimitStates: readonly MastLimitState[] = [
  legCompression,
  guyStrength,
  tilt,
  twistRange,
  pairRange,
  armPull,
  sway,
  twistAtAntennas,
  legTension,
  bracing,
  stability,
  gust,
];

/** Reactions of one case, kept for the ground. */
export interface CaseReactions {
  readonly wind: WindCase;
  readonly anchors: readonly AnchorReaction[];
  readonly base: FootingLoads;
}

export type Analysis =
  | {
      readonly status: "complete";
      readonly gusts: Gusts;
      /** Worst utilisation of the mast's own limit states, and which. */
      readonly worst: number;
      readonly limitState: string;
      readonly cases: readonly CaseReactions[];
      /** Reactions of all cases in one list, as the ground reads them. */
      readonly anchors: readonly AnchorReaction[];
      readonly bases: readonly FootingLoads[];
    }
  | {
      /** A limit state was passed before the end: no later case can mend it. */
      readonly status: "failed";
      readonly worst: number;
      readonly limitState: string;
    };

/** What each case may be looked at for, before the mast goes on to the next. */
export type CaseVisitor = (c: SolvedCase, measures: readonly MastMeasure[], reactions: CaseReactions) => void;

export interface AnalysisOptions {
  /**
   * Utilisation above which the rest is not worth knowing. Where it is given, only the worst utilisation is wanted,
   * and a buckling factor is worked out only where it is the worst.
   */
  readonly giveUpAbove?: number;
  readonly visit?: CaseVisitor;
  /** For the audit: a finer mesh, more wind azimuths. */
  readonly elementsPerSpan?: number;
  readonly cases?: readonly WindCase[];
}

/**
 * Solves every load case of a structure and measures the mast in each. Search and verdict both come through
 * here: one mesh, one start, one set of cases.
 */
export function analyse(problem: Problem, model: StructureModel, options: AnalysisOptions = {}): Analysis {
  return atWorkbench(
    () => mastInput(model, options.elementsPerSpan, problem.study.site.baseStiffness),
    (bench) => analyseAt(bench, problem, model, options),
    failed("rigging"),
  );
}

const failed = (limitState: string, worst = Number.POSITIVE_INFINITY): Analysis => ({
  status: "failed",
  worst,
  limitState,
});

function analyseAt(
  { mast, forces }: Workbench,
  problem: Problem,
  model: StructureModel,
  { giveUpAbove, visit, cases = windCases(problem, model.guys) }: AnalysisOptions,
): Analysis {
  const gusts = gustsOf(problem, model, mast);
  if (!gusts) return failed(stability.id);
  const blown = gusty(problem, gusts);
  const sections: SectionModel[] = [];
  for (let e = 0; e < mast.elements; e++) sections.push(model.stack.parts[mast.segment[e]].section);
  const loads = loadsOf(blown, model);
  const searching = giveUpAbove !== undefined;
  let shaft: Twist | null = null;
  // what the wind makes unlike in the guys of arms turns the mast by itself
  const armed = armsOf(model).length > 0;
  let worst = 0;
  let limitState = "";
  const all: CaseReactions[] = [];
  for (const wind of cases) {
    const load = loads(wind);
    // in the search a mast that stands with more compression than it has is stable: one factoring answers both
    let solved = mast.solve(load) && (searching || mast.stable());
    let twist: Twist | null = null;
    if (solved && ((load.torques && load.torques.length > 0) || (armed && wind.toward !== null))) {
      shaft ??= twistOf(mast, sections);
      twist = shaft;
      solved = twist.solve(load.toward, load.torques ?? []);
    }
    if (!solved) return failed(stability.id);
    recoverForces(mast, forces);
    const c: SolvedCase = { problem: blown, model, wind, mast, forces, twist, sections };
    const measures: MastMeasure[] = [];
    // an accident has its own factor on mast and guys; the ground keeps its own
    const eased = wind.purpose === "accident" ? problem.rules.lossOfGuy : null;
    const reactions = caseReactions(c);
    let stands = !searching;
    for (const state of mastLimitStates) {
      if (searching && state === stability) {
        const factor = (eased ?? problem.rules.stability).required / worst;
        stands = mast.standsAt(Math.max(1, factor));
        // buckling does not govern
        if (stands && factor >= 1) continue;
        if (!stands && !mast.stable()) return failed(stability.id);
        stands = true;
      }
      if (searching && state === gust && swaysFast(c)) continue;
      for (const stated of state.measure(c)) {
        const measure =
          eased && state.kind === "strength" && state !== tilt
            ? { ...stated, required: eased.required, source: eased.source }
            : stated;
        if (visit) measures.push(measure);
        const use = utilisation(measure);
        if (state.kind === "limit") {
          // outside a limit nothing else matters; inside it, it has no margin
          if (searching && use > 1 + 1e-12) return failed(stands || mast.stable() ? state.id : stability.id);
        } else if (use > worst) {
          worst = use;
          limitState = state.id;
        }
      }
      if (searching && worst > giveUpAbove)
        return stands || mast.stable() ? failed(limitState, worst) : failed(stability.id);
    }
    all.push(reactions);
    visit?.(c, measures, reactions);
  }
  return {
    status: "complete",
    gusts,
    worst,
    limitState,
    cases: all,
    anchors: all.flatMap((r) => r.anchors),
    bases: all.map((r) => r.base),
  };
}

function caseReactions({ model, wind, mast, forces }: SolvedCase): CaseReactions {
  const anchors: AnchorReaction[] = [];
  const count = model.guys?.star.perLevel ?? 0;
  for (let anchor = 0; anchor < count; anchor++) {
    let x = 0;
    let y = 0;
    let up = 0;
    for (const guy of mast.guys)
      if (guy.anchor === anchor) {
        x += guy.state.ax;
        y += guy.state.ay;
        up += guy.state.az;
      }
    anchors.push({ uplift: up, lateral: Math.sqrt(x * x + y * y) });
  }
  return { wind, anchors, base: baseLoads(mast, forces.moment[0], model.guys !== null) };
}

function baseLoads(mast: Mast, moment: number, pinned: boolean): FootingLoads {
  const across = mast.planes === 2 ? mast.baseReaction[3] : 0;
  return {
    compression: mast.baseReaction[0],
    shear: Math.hypot(mast.baseReaction[1], across),
    moment: pinned ? 0 : moment,
    turn: pinned ? Math.hypot(mast.d[2], mast.planes === 2 ? mast.d[4] : 0) : 0,
  };
}
