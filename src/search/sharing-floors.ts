import { guyWind } from "../checks/loads.ts";
import { type LevelModel, rigged } from "../checks/rigging.ts";
import type { Strand } from "../model/catalog.ts";
import { catenaryState, riggedLength, solveCatenary } from "../physics/guy/catenary.ts";
import { loadGuy } from "../physics/guy/wind.ts";
import { gustComputed } from "../physics/wind/gust-response.ts";
import type { Star } from "../problem/star.ts";
import type { Problem, StackModel } from "../problem/types.ts";
import { leanOf, SLACK } from "./floors.ts";
import type { Level } from "./level-facts.ts";

/**
 * What guys press the mast with while they hold it, however its levels share the moment of the wind: a head that
 * stays where it was leaves its leeward guys their tension, and one that gives way leaves the others more to hold.
 * docs/theory/search.md has the argument.
 */

/** Axial strain of the mast that heads are let sink by: one that is pressed harder has the higher thrust anyway. */
const STRAIN = 3e-4;
/** Given away of what stands between two drifts, for the turn of the guys: their pull is convex in the drift without it. */
const TURN = 0.01;
/** Prices of moment, of the one that takes the windward guys' pull away. */
const PRICES = [0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1];
/** Drifts, of the one that takes up what a guy in line with the wind was stretched by when it was rigged. */
const DRIFTS = [-4, -2, -1, -0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 7, 9, 13, 20];

/** Distance of the windward guys upwind, over the radius, in the killing case: toward a guy, along two. */
const WINDWARD: Readonly<Record<3 | 4, number>> = { 3: 0.5, 4: 1 };

/** Newtons of thrust for a newton metre held. */
const priceAt = ({ perLevel, radius }: Star, index: number): number =>
  PRICES[index] / (WINDWARD[perLevel] * radius);

/** What the guys of a level do, together, at drifts of their head: N down the mast, and N m that they hold about its base. */
export interface LevelCurve {
  readonly drifts: readonly number[];
  readonly press: Float64Array;
  readonly held: Float64Array;
}

/** The guys of a level under the killing wind, their head sunk as far as it may. Null where one can't be rigged. */
export function levelCurve(problem: Problem, star: Star, level: LevelModel): LevelCurve | null {
  const { height } = level;
  const { anchors, ea, weight, tension } = rigged(star, level);
  const [{ z: elevation }] = anchors;
  const { radius } = star;
  const rise = height - elevation;
  let length: number;
  try {
    length = riggedLength(radius, rise, tension, ea, weight);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
  const wind = guyWind(problem, star, height, level.strand);
  const [dead] = problem.rules.deadFactors.values;
  const limit = leanOf(problem) * height;
  // a guy in line with the wind, stretched by T/EA of its chord
  const unit = ((radius * radius + rise * rise) * tension) / (ea * radius);
  const drifts = [-limit, ...DRIFTS.map((d) => d * unit).filter((u) => Math.abs(u) < limit), limit];
  const sinks = sinkOf(problem, height);
  const press = new Float64Array(drifts.length);
  const held = new Float64Array(drifts.length);
  const state = catenaryState();
  const load = { qx: 0, qy: 0, qz: 0 };
  for (const { x, y } of anchors) {
    loadGuy(load, x, y, rise, wind, dead * weight);
    state.h = 0;
    for (let k = 0; k < drifts.length; k++) {
      const u = drifts[k];
      const sunk = sinks + (u * u) / (2 * height);
      state.fxx = 0;
      solveCatenary(-x + u, -y, rise - sunk, length, ea, load.qx, load.qy, load.qz, state);
      if (!state.converged) return null;
      press[k] -= state.fz;
      held[k] -= state.fx * height - state.fz * u;
    }
  }
  return { drifts, press, held };
}

/**
 * For each price of moment the least, over every drift of the head, of what the guys of a level press down with less
 * the price of what they hold, N. Null where that is not known.
 */
export function levelShares(problem: Problem, star: Star, level: LevelModel): Float64Array | null {
  const curve = levelCurve(problem, star, level);
  if (!curve) return null;
  const { drifts, press, held } = curve;
  return Float64Array.from(PRICES, (_, i) => {
    const price = priceAt(star, i);
    return leastOfConvex(
      drifts,
      drifts.map((_, k) => press[k] - price * held[k]),
    );
  });
}

/** Least thrust on the base, N, of levels with these shares under a moment about the base, N m, and so much weight, N. */
export function sharedThrust(
  { stack, star }: { readonly stack: StackModel; readonly star: Star },
  shares: readonly (Float64Array | null)[],
  moment: number,
  weight: number,
): number {
  let most = 0;
  for (let i = 0; i < PRICES.length; i++) {
    let sum = weight + priceAt(star, i) * moment;
    for (const share of shares) {
      if (!share) return 0;
      sum += share[i];
    }
    most = Math.max(most, sum);
  }
  let softest = Number.POSITIVE_INFINITY;
  for (const { section } of stack.parts) softest = Math.min(softest, section.lattice.axialStiffness);
  return SLACK * Math.min(most, STRAIN * softest);
}

/** Shares of the levels of a tree, each worked out once a worker: strands and tensions come back with every edit. */
export class Shares {
  private readonly problem: Problem;
  private readonly kept: Map<string, Float64Array | null>;
  private readonly known = new WeakMap<Level, Map<Strand | undefined, Float64Array | null>>();
  /** Has each mast gusts of its own? Then the killing wind is not yet known. */
  private readonly gusty: boolean;
  private readonly basis: string;

  /** @param kept what is known under the same givens, by the rest that it depends on */
  constructor(problem: Problem, kept: Map<string, Float64Array | null>) {
    this.problem = problem;
    this.kept = kept;
    this.gusty = gustComputed(problem.study.site.wind);
    const { curvature, racking } = bendOf(problem);
    this.basis = `${curvature} ${racking}`;
  }

  /** Drawn to a tension; null where nothing is known. */
  at(star: Star, level: Level, strand: Strand, tension: number): Float64Array | null {
    if (!star.even || level.arm || this.gusty) return null;
    const { problem } = this;
    const { height } = level;
    const key = `${this.basis} ${star.perLevel} ${star.key} ${height} ${strand.id} ${tension}`;
    const hardware = problem.study.parts.guyHardware;
    return found(this.kept, key, () => levelShares(problem, star, { height, strand, tension, hardware }));
  }

  /** The least at any tension of the study, with this strand or, where none is chosen, with any. */
  least(star: Star, level: Level, strand: Strand | undefined): Float64Array | null {
    if (!star.even || level.arm || this.gusty) return null;
    const strands = found(this.known, level, () => new Map<Strand | undefined, Float64Array | null>());
    return found(strands, strand, () => {
      const { problem } = this;
      const each = strand
        ? problem.study.parts.tensions
            .filter((tension) => level.drawn(strand, tension).inside)
            .map((tension) => this.at(star, level, strand, tension))
        : problem.strands.map((one) => this.least(star, level, one));
      const least = new Float64Array(PRICES.length).fill(Number.POSITIVE_INFINITY);
      for (const share of each) {
        if (!share) return null;
        for (let i = 0; i < least.length; i++) least[i] = Math.min(least[i], share[i]);
      }
      return least;
    });
  }
}

/** What is known by this key, worked out where it is not. */
function found<K, V>(
  known: { get(key: K): V | undefined; set(key: K, value: V): unknown },
  key: K,
  work: () => V,
): V {
  let value = known.get(key);
  if (value === undefined) known.set(key, (value = work()));
  return value;
}

/** Least value of a convex function between and at these places: above the lines on through neighbouring ones. */
function leastOfConvex(at: readonly number[], value: readonly number[]): number {
  let lowest = 0;
  for (let k = 1; k < at.length; k++) if (value[k] < value[lowest]) lowest = k;
  let least = value[lowest];
  // in the step before the lowest and in the one after it
  for (const k of [lowest - 1, lowest]) {
    if (k < 0 || k + 1 >= at.length) continue;
    const slope = (i: number) => (value[i + 1] - value[i]) / (at[i + 1] - at[i]);
    const before = k > 0 ? slope(k - 1) : Number.NEGATIVE_INFINITY;
    const after = k + 2 < at.length ? slope(k + 1) : Number.POSITIVE_INFINITY;
    const from = Math.max(before, -Number.MAX_VALUE);
    const to = Math.min(after, Number.MAX_VALUE);
    // where the two lines meet; one that is missing leaves the other alone
    if (k === 0) least = Math.min(least, value[k + 1] - to * (at[k + 1] - at[k]));
    else if (k + 2 >= at.length) least = Math.min(least, value[k] + from * (at[k + 1] - at[k]));
    else if (to > from) {
      const met = (value[k + 1] - value[k] + from * at[k] - to * at[k + 1]) / (from - to);
      if (met > at[k] && met < at[k + 1]) least = Math.min(least, value[k] + from * (met - at[k]));
    }
  }
  return least - TURN * Math.max(0, value[lowest] - least);
}

const bends = new WeakMap<Problem, { readonly curvature: number; readonly racking: number }>();

/** The most that legs let a mast curve, 1/m, and bracing let its panels rack. */
function bendOf(problem: Problem): { readonly curvature: number; readonly racking: number } {
  let bend = bends.get(problem);
  if (!bend) {
    const { allowed, rules, stacks } = problem;
    let curvature = 0;
    let racking = 0;
    for (const { lattice } of new Set(stacks.flat().flatMap((s) => s.parts.map((part) => part.section)))) {
      const moment = (lattice.momentArm * lattice.legCompression * allowed) / rules.leg.required;
      curvature = Math.max(curvature, moment / lattice.bendingStiffness);
      const shear = (lattice.shearStrength * allowed) / rules.bracing.required;
      racking = Math.max(racking, shear / lattice.shearStiffness);
    }
    bends.set(problem, (bend = { curvature, racking }));
  }
  return bend;
}

/** How far a head may sink beside what its drift makes it: the mast shortens, and bends between base and head, m. */
function sinkOf(problem: Problem, height: number): number {
  const { curvature, racking } = bendOf(problem);
  // slopes about their mean: a curvature all one way spreads them most
  const spread = curvature * Math.sqrt(height ** 3 / 12) + racking * Math.sqrt(height);
  return STRAIN * height + 0.5 * spread * spread;
}
