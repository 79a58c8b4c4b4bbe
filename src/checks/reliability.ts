import type { Catalog } from "../model/catalog.ts";
import type { Design } from "../model/design.ts";
import { AS_STATED, type Place, statedSpeed } from "../model/place.ts";
import type { Study } from "../model/study.ts";
import type { Check } from "../model/verdict.ts";
import { movedTo } from "../problem/air.ts";
import { compile } from "../problem/compile.ts";
import { type Variable, variable } from "../reliability/distributions.ts";
import {
  type DesignPoint,
  FARTHEST,
  firstOrder,
  type LimitState,
  nearestOnAxes,
} from "../reliability/form.ts";
import { type SeriesBounds, seriesBounds } from "../reliability/series.ts";
import { DesignError } from "./resolve.ts";
import { stability } from "./stability.ts";
import { verify } from "./verify.ts";

/** What may be uncertain, in the order of the variables. */
export const UNCERTAIN = ["windSpeed", "soilStrength", "tension", "wallLoss"] as const;
export type UncertainName = (typeof UNCERTAIN)[number];

const STABILITY = stability.id;

/** Utilisations are kept inside, so that their logarithms are numbers. */
const LEAST_USE = 1e-6;
const MOST_USE = 1e6;
/** No wind blows backward, no wall grows, no soil or guy pulls the other way: the ends of normal distributions. */
const LEAST_SHARE = 1e-3;

/** A design whose study says how uncertain it is: `verify` by standard normal variables. */
export interface UncertainDesign {
  readonly names: readonly UncertainName[];
  /** In the units of the study: m/s, shares, m. */
  readonly values: (u: readonly number[]) => Record<UncertainName, number>;
  /** Utilisation of every strength check, by its id; all of them at most where the mast does not stand. */
  readonly uses: (u: readonly number[]) => ReadonlyMap<string, number>;
  /** The strength checks as all variables have their medians. */
  readonly checks: readonly Check[];
  /** Verdicts asked for. */
  readonly asked: () => number;
}

/** The rows that a design is made of: they are weakened and worn hundreds of times. */
const rowsOf = (catalog: Catalog, study: Study, { stack, guys }: Design): Catalog => ({
  ...catalog,
  sections: catalog.sections.filter((row) => stack.some((part) => part.section === row.id)),
  anchors: catalog.anchors.filter((row) => row.id === guys?.anchor.row),
  soils: catalog.soils.filter((row) => row.id === study.site.soil),
});

const drawn = (design: Design, factor: number): Design => ({
  ...design,
  guys: design.guys && {
    ...design.guys,
    tension: design.guys.tension * factor,
    levels: design.guys.levels.map((level) =>
      level.tension === undefined ? level : { ...level, tension: level.tension * factor },
    ),
  },
});

/**
 * @throws RangeError where the study states nothing uncertain, or distributions that are none
 * @throws DesignError where the design names what the study does not have
 */
export function uncertainDesign(study: Study, catalog: Catalog, design: Design): UncertainDesign {
  const { uncertain } = study;
  const names = UNCERTAIN.filter((name) => uncertain?.[name]);
  if (!uncertain || names.length === 0)
    throw new RangeError(
      'uncertain: found nothing, expected a "windSpeed", "soilStrength", "tension" or "wallLoss"',
    );
  const variables = new Map<UncertainName, Variable>();
  for (const name of names) {
    const distributed = uncertain[name];
    if (distributed) variables.set(name, variable(distributed, name === "windSpeed" ? uncertain.years : 1));
  }
  const speed = statedSpeed(study.site.wind) ?? 1;
  const stated = compile({ ...study, ranges: undefined }, catalog);
  const rows = rowsOf(catalog, study, design);
  const values = (u: readonly number[]): Record<UncertainName, number> => {
    const value = (name: UncertainName, otherwise: number, least: number) => {
      const at = names.indexOf(name);
      return at < 0 ? otherwise : Math.max(least, variables.get(name)?.at(u[at]) ?? otherwise);
    };
    return {
      windSpeed: value("windSpeed", speed, LEAST_SHARE * speed),
      soilStrength: value("soilStrength", AS_STATED.soilStrength, LEAST_SHARE),
      tension: value("tension", AS_STATED.tension, LEAST_SHARE),
      wallLoss: value("wallLoss", AS_STATED.wallLoss, 0),
    };
  };
  const judged = (u: readonly number[]): readonly Check[] => {
    const at = values(u);
    const place: Place = { ...at, windSpeed: at.windSpeed / speed };
    return verify(movedTo(stated, rows, place), drawn(design, place.tension)).checks.filter(
      ({ kind }) => kind === "strength",
    );
  };
  const checks = judged(names.map(() => 0));
  const known = new Map<string, ReadonlyMap<string, number>>();
  const uses = (u: readonly number[]): ReadonlyMap<string, number> => {
    const key = u.join(" ");
    let found = known.get(key);
    if (!found) known.set(key, (found = usesOf(() => judged(u), checks)));
    return found;
  };
  return { names, values, uses, checks, asked: () => known.size + 1 };
}

function usesOf(judged: () => readonly Check[], expected: readonly Check[]): ReadonlyMap<string, number> {
  const all = new Map(expected.map(({ id }) => [id, MOST_USE]));
  let found: readonly Check[];
  try {
    found = judged();
  } catch (error) {
    // a wall that is gone, or too thin for the clauses of its steel: nothing holds
    if (error instanceof DesignError) return all;
    throw error;
  }
  for (const { id, utilisation } of found) all.set(id, Math.min(Math.max(utilisation, LEAST_USE), MOST_USE));
  return all;
}

/**
 * One strength check with its own first-order probability of being used beyond what the rules leave.
 * - `found`: the point where it most probably is missed.
 * - `step`: the nearest place where it fails at a stroke, along one variable: a method ends there.
 * - `falls-first`: the mast no longer stands before it is missed; the check of stability counts that.
 * - `beyond`: nothing within 10 standard deviations changes whether it is missed.
 * - `not-found`: no such point was found; the probability is that of the last one looked at.
 */
export interface CheckReliability extends DesignPoint {
  readonly outcome: "found" | "step" | "falls-first" | "beyond" | "not-found";
  readonly id: string;
  readonly title: string;
  readonly where: string;
  /** Utilisation at the medians. */
  readonly use: number;
  /** Share of each variable, together 1. */
  readonly importance: Readonly<Partial<Record<UncertainName, number>>>;
  /** What the variables are where it most probably is missed. */
  readonly at: Readonly<Record<UncertainName, number>>;
}

export interface Reliability {
  readonly years: number;
  readonly names: readonly UncertainName[];
  /** The most probable to be missed first. */
  readonly checks: readonly CheckReliability[];
  /** Of the smallest margin below zero, first order: Ditlevsen's bounds over all checks. */
  readonly smallestMargin: SeriesBounds;
  /** Verdicts asked for. */
  readonly asked: number;
}

/** A little further on, past what may have stopped the search for a point: standard deviations. */
const BEYOND = [0.02, 0.1, 0.5];
/** Distances that differ by less are one. */
const SAME = 1e-3;

function nearestFailure(
  g: LimitState,
  { uses, names }: UncertainDesign,
  id: string,
): { point: DesignPoint; outcome: CheckReliability["outcome"] } {
  const smooth = firstOrder(g, names.length);
  // down the slope of the check, or straight out
  const falls = (at: DesignPoint): boolean => {
    const far = Math.hypot(...at.u);
    const stands = (way: readonly number[], by: number) =>
      (uses(at.u.map((x, i) => x + by * way[i])).get(STABILITY) ?? 0) < MOST_USE;
    const ways = far > 0 ? [at.alpha, at.u.map((x) => x / far)] : [at.alpha];
    return id !== STABILITY && BEYOND.some((by) => ways.some((way) => !stands(way, by)));
  };
  // every check is asked about the same places on the axes: `uses` remembers them
  // one that is flat at the medians leads nowhere, and may fail at a stroke all the same
  const flat = smooth.u.every((x) => x === 0) && g(smooth.u) >= 0;
  if (smooth.beta > 0 || flat) {
    const seen = nearestOnAxes(g, names.length, smooth.converged && !flat ? smooth.beta - SAME : FARTHEST);
    if (seen && !falls(seen)) {
      const again = firstOrder(g, names.length, seen.u);
      if (again.converged && again.beta <= seen.beta + SAME) return { point: again, outcome: "found" };
      return { point: seen, outcome: "step" };
    }
  }
  if (smooth.converged) return { point: smooth, outcome: "found" };
  if (falls(smooth)) return { point: smooth, outcome: "falls-first" };
  const beyond = Math.hypot(...smooth.u) >= FARTHEST || smooth.u.every((x) => x === 0);
  if (!beyond) return { point: smooth, outcome: "not-found" };
  const failed = g(names.map(() => 0)) < 0;
  const beta = failed ? -FARTHEST : FARTHEST;
  return { point: { ...smooth, beta, probability: failed ? 1 : 0 }, outcome: "beyond" };
}

/**
 * The probability that the smallest margin of a design is below zero, where the study says what is uncertain: by
 * first-order reliability of each strength check, and bounds for all together. docs/theory/robust.md.
 * @throws as `uncertainDesign`
 */
export function reliability(study: Study, catalog: Catalog, design: Design): Reliability {
  const state = uncertainDesign(study, catalog, design);
  const checks = state.checks.map((check): CheckReliability => {
    const g = (u: readonly number[]) => -Math.log(state.uses(u).get(check.id) ?? MOST_USE);
    const { point, outcome } = nearestFailure(g, state, check.id);
    return {
      ...point,
      outcome,
      id: check.id,
      title: check.title,
      where: check.where,
      use: check.utilisation,
      importance: Object.fromEntries(state.names.map((name, i) => [name, point.alpha[i] ** 2])),
      at: state.values(point.u),
    };
  });
  checks.sort((a, b) => b.probability - a.probability);
  return {
    years: study.uncertain?.years ?? 1,
    names: state.names,
    checks,
    smallestMargin: seriesBounds(checks.filter(({ outcome }) => outcome !== "falls-first")),
    asked: state.asked(),
  };
}
