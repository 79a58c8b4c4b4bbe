import type { IceFactors } from "../model/rule-set.ts";
import type { WindGivens } from "../model/study.ts";
import type { Mast } from "../physics/mast/solver.ts";
import { gustAsked, gustComputed, RIGID } from "../physics/wind/gust-response.ts";
import { gustInside, RIGID_GUST_FACTOR } from "../physics/wind/wind-action.ts";
import { windInIce } from "../problem/iced.ts";
import type { Problem } from "../problem/types.ts";
import { loadCase } from "./loads.ts";
import type { MastLimitState, SolvedCase } from "./mast-checks.ts";
import type { StructureModel } from "./structure.ts";
import { stillCase, type WindCase } from "./wind-cases.ts";

/** What this structure's gusts make of the pressures of the problem: 1 where the study states the factor. */
export interface Gusts {
  readonly bare: number;
  readonly iced: number;
}

const STATED: Gusts = { bare: 1, iced: 1 };

const breadthOf = ({ stack }: StructureModel): number => stack.parts[0].section.lattice.outerWidth;

const askedOf = (givens: WindGivens, model: StructureModel, frequency: number): number | null =>
  gustAsked(givens, { height: model.stack.height, breadth: breadthOf(model), frequency });

/** A combination that counts 0.7 of the ice asks for a share of a force: what sways is all of the ice. */
const whole = new WeakMap<IceFactors, IceFactors>();
function wholeIce(factors: IceFactors): IceFactors {
  if (factors.ice >= 1) return factors;
  let all = whole.get(factors);
  if (!all) whole.set(factors, (all = { ...factors, ice: 1 }));
  return all;
}

/** In still air, with all of its ice on it. */
const asItSways = (problem: Problem, weather: "bare" | "iced"): WindCase => {
  const still = stillCase(problem, weather);
  return still.ice ? { ...still, ice: wholeIce(still.ice) } : still;
};

/**
 * The gusts of a structure whose study has them computed, each weather's from the mast as it stands in still air in
 * that weather. Null where it does not stand.
 */
export function gustsOf(problem: Problem, model: StructureModel, mast: Mast): Gusts | null {
  const { wind, ice } = problem.study.site;
  if (!gustComputed(wind)) return STATED;
  const inside = gustInside(wind);
  const share = (weather: "bare" | "iced", givens: WindGivens): number | null => {
    if (!mast.solve(loadCase(problem, model, asItSways(problem, weather))) || !mast.stable()) return null;
    return (askedOf(givens, model, mast.swayFrequency()) ?? inside) / inside;
  };
  const bare = share("bare", wind);
  const iced = ice ? share("iced", windInIce(wind, ice)) : 1;
  return bare === null || iced === null ? null : { bare, iced };
}

/** The problem with this structure's gusts in its pressures. */
export function gusty(problem: Problem, { bare, iced }: Gusts): Problem {
  if (bare === 1 && iced === 1) return problem;
  const { pressure, guyPressure, iced: icing } = problem;
  return {
    ...problem,
    pressure: (z) => bare * pressure(z),
    guyPressure: (from, to) => bare * guyPressure(from, to),
    iced:
      icing &&
      ((height, factors) => {
        const hung = icing(height, factors);
        return {
          ...hung,
          pressure: (z) => iced * hung.pressure(z),
          guyPressure: (from, to) => iced * hung.guyPressure(from, to),
        };
      }),
  };
}

/**
 * Is this the case to measure the gusts of a weather in, and which wind is it? The mast in still air; where the factor
 * is computed the iced one has its own already.
 */
function measured({ problem, wind }: SolvedCase): Exclude<WindGivens, { basis: "uniform" }> | null {
  const { wind: givens, ice } = problem.study.site;
  if (wind.toward !== null) return null;
  const blowing =
    wind.weather === "bare" ? givens : !ice || gustComputed(givens) ? null : windInIce(givens, ice);
  return blowing && blowing.basis !== "uniform" ? blowing : null;
}

/** Does the mast sway so fast that a stated gust factor is known to cover it? Cheaper than its frequency. */
export function swaysFast(c: SolvedCase): boolean {
  const givens = measured(c);
  if (!givens) return true;
  if (gustComputed(givens) || givens.basis === "en1991") return false;
  return gustInside(givens) >= RIGID_GUST_FACTOR && c.mast.swaysFasterThan(RIGID);
}

/**
 * Does the gust factor in the wind cover this mast? A mast that sways slowly resonates with gusts and asks more.
 * Measured on the mast as rigged and, where the factor is stated, under its ice; where it is computed, it says what was used.
 */
export const gust: MastLimitState = {
  id: "gust-factor",
  title: "Gust factor",
  unit: "ratio",
  kind: "limit",
  measure(c) {
    const { model, mast, wind } = c;
    const givens = measured(c);
    if (!givens) return [];
    const frequency = mast.swayFrequency();
    const asked = askedOf(givens, model, frequency) ?? 1;
    const computed = gustComputed(givens);
    const capacity = computed ? asked : gustInside(givens);
    const iced = wind.weather === "iced";
    // bare is what is told, unless ice asks for what is not there
    if (iced && asked <= capacity) return [];
    const european = givens.basis === "en1991";
    const name = european ? "structural factor" : "gust factor";
    const said = computed
      ? `: ${name} ${asked.toFixed(2)} is in the wind`
      : asked > capacity
        ? `: state a ${name} of ${asked.toFixed(2)} or more, or have it computed`
        : "";
    return [
      {
        limitState: gust.id,
        demand: asked,
        capacity,
        required: 1,
        source: european
          ? "EN 1991-1-4 section 6.3 and annex B, procedure 1, from memory"
          : `ASCE ${givens.basis.slice(4)} section 26.11, from memory`,
        of: 0,
        note: `first sway frequency ${iced ? "under ice " : ""}${frequency.toFixed(2)} Hz${said}`,
      },
    ];
  },
};
