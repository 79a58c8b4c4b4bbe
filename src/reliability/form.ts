import { normalBelow } from "./normal.ts";

/** A limit state in standard normal space: below 0 it fails. Smooth near its design point. */
export type LimitState = (u: readonly number[]) => number;

export interface DesignPoint {
  /** Hasofer and Lind's index: distance of the point nearest to the middle that fails; below 0 where the middle fails. */
  readonly beta: number;
  /** `Phi(-beta)`: first-order probability of failure. */
  readonly probability: number;
  /** The point itself, standard normal. */
  readonly u: readonly number[];
  /** Direction from the middle to it, of length 1: the squares are each variable's importance, and add up to 1. */
  readonly alpha: readonly number[];
  readonly converged: boolean;
  /** Times that the limit state was asked. */
  readonly asked: number;
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, x, i) => sum + x * b[i], 0);
const norm = (a: readonly number[]): number => Math.sqrt(dot(a, a));

/** Step of central differences, standard deviations. */
const STEP = 1e-3;
const MOST_STEPS = 100;
const HALVINGS = 14;
/** A slope a standard deviation, of what the limit state is at the middle, that is rounding and no slope. */
const FLAT = 1e-6;
/** Nothing further out counts: a probability below 1e-23. */
export const FARTHEST = 10;

function gradient(g: LimitState, u: readonly number[]): number[] {
  return u.map((value, i) => {
    const at = (x: number) => g(u.map((other, k) => (k === i ? x : other)));
    return (at(value + STEP) - at(value - STEP)) / (2 * STEP);
  });
}

/** How far apart an axis is looked at, standard deviations, and to what part of one a step is found. */
const STRIDE = 0.5;
const CLOSE = 1e-6;

/**
 * The nearest failure along an axis either way, nearer than a distance: where a limit state has steps, slopes lead
 * past them. Null where none is seen. Failures narrower than half a standard deviation may be stepped over.
 */
export function nearestOnAxes(g: LimitState, dimensions: number, nearerThan: number): DesignPoint | null {
  let asked = 0;
  let best: { axis: number; at: number } | null = null;
  for (let axis = 0; axis < dimensions; axis++)
    for (const side of [1, -1]) {
      const on = (x: number) => {
        asked++;
        return g(Array.from({ length: dimensions }, (_, i) => (i === axis ? side * x : 0)));
      };
      const most = Math.min(nearerThan, Math.abs(best?.at ?? FARTHEST));
      for (let far = STRIDE; far - STRIDE < most; far += STRIDE) {
        if (on(far) >= 0) continue;
        let [safe, failed] = [far - STRIDE, far];
        while (failed - safe > CLOSE) {
          const middle = 0.5 * (safe + failed);
          if (on(middle) < 0) failed = middle;
          else safe = middle;
        }
        if (failed < most) best = { axis, at: side * failed };
        break;
      }
    }
  if (!best) return null;
  const { axis, at } = best;
  const unit = (x: number) => Array.from({ length: dimensions }, (_, i) => (i === axis ? x : 0));
  const beta = Math.abs(at);
  return {
    beta,
    probability: normalBelow(-beta),
    u: unit(at),
    alpha: unit(Math.sign(at)),
    converged: false,
    asked,
  };
}

/**
 * First-order reliability: the point of failure nearest to the middle of standard normal space, by the rule of
 * Hasofer, Lind, Rackwitz and Fiessler with the merit function of Zhang and Der Kiureghian (1995), which shortens
 * steps that would not come nearer. docs/theory/robust.md.
 * @param start where to look first; the middle where absent
 * @returns `converged: false` with the last point where no such point is found within 10 standard deviations
 */
export function firstOrder(limit: LimitState, dimensions: number, start?: readonly number[]): DesignPoint {
  let asked = 0;
  const g: LimitState = (u) => {
    asked++;
    return limit(u);
  };
  const middle: number[] = Array.from({ length: dimensions }, () => 0);
  const atMiddle = g(middle);
  let u: readonly number[] = start ?? middle;
  let value = start ? g(start) : atMiddle;
  // a limit state is measured by what it is at the middle; one that starts on its limit by 1
  const scale = Math.abs(atMiddle) > 1e-9 ? Math.abs(atMiddle) : 1;
  const fails = atMiddle < 0;
  let converged = false;
  let alpha: readonly number[] = middle;
  for (let step = 0; step < MOST_STEPS && !converged; step++) {
    const slope = gradient(g, u);
    const steep = norm(slope);
    if (!(steep > FLAT * scale && Number.isFinite(steep) && Number.isFinite(value))) break;
    alpha = slope.map((x) => -x / steep);
    // along the tangent plane: the foot of the perpendicular from the middle
    const reach = dot(alpha, u) + value / steep;
    const foot = alpha.map((x) => x * reach);
    const direction = foot.map((x, i) => x - u[i]);
    if (Math.abs(value) < 1e-8 * scale && norm(direction) < 1e-5 * Math.max(1, norm(u))) {
      converged = true;
      break;
    }
    const penalty =
      2 * Math.max(norm(u) / steep, Math.abs(value) > 1e-12 ? norm(foot) ** 2 / (2 * Math.abs(value)) : 0) +
      1e-9;
    const merit = (at: readonly number[], of: number) => 0.5 * dot(at, at) + penalty * Math.abs(of);
    const now = merit(u, value);
    let share = Math.min(1, 3 / Math.max(norm(direction), 1e-9));
    let nearer = false;
    for (let halved = 0; halved < HALVINGS && !nearer; halved++, share /= 2) {
      const next = u.map((x, i) => x + share * direction[i]);
      const there = g(next);
      if (!(merit(next, there) < now)) continue;
      nearer = true;
      u = next;
      value = there;
    }
    // a step of the limit state, not a slope, stands in the way
    if (!nearer || norm(u) > FARTHEST) break;
  }
  const beta = (fails ? -1 : 1) * norm(u);
  return { beta, probability: normalBelow(-beta), u, alpha, converged, asked };
}
