import { addAxial, assembleAcross, clamp } from "./assembly.ts";
import { factor } from "./blocks.ts";
import { MATRIX } from "./element.ts";
import { type LanczosRoom, largestOf, type Operator } from "./lanczos.ts";
import type { MastState } from "./state.ts";

/** Factors the tangent that equilibrium left; false where a pivot is not positive: the equilibrium is unstable. */
export function stable(mast: MastState): boolean {
  mast.k.set(mast.tangent);
  if (factor(mast.k, mast.nodes, mast.perNode) > 0) return false;
  if (mast.planes === 2) return true;
  assembleAcross(mast, 1);
  return factor(mast.k, mast.nodes, 2) === 0;
}

/**
 * Would the state just solved still be stable with its compression times this factor? One factoring a plane
 * where `bucklingFactor` takes a dozen solutions. From 1 up, a mast that stands at it is stable as it is.
 */
export function standsAt(mast: MastState, compressionFactor: number): boolean {
  const { perNode: per, k } = mast;
  k.set(mast.tangent);
  const width = 2 * per;
  const more = compressionFactor - 1;
  for (let plane = 0; plane < mast.planes; plane++) {
    const o = 1 + 2 * plane;
    for (let node = 0; node < mast.nodes; node++)
      k[(node * per + o + 1) * width + per + o + 1] -= more * mast.lean[node];
    for (let e = 0; e < mast.elements; e++)
      addAxial(mast, e, per, o, more * mast.tension[e], more * mast.pressing[e]);
  }
  clamp(mast, per);
  if (factor(k, mast.nodes, per) > 0) return false;
  if (mast.planes === 2) return true;
  assembleAcross(mast, compressionFactor);
  return factor(k, mast.nodes, 2) === 0;
}

/** What the factor found may be beside the true one by. */
const DOUBT = 1e-9;
/** A factor above this is none: nothing compresses. */
const BEYOND = 1e12;
/** Halvings of the search for it, far beyond rounding. */
const HALVINGS = 60;

/**
 * Factor on the mast's compression at which the state just solved buckles: the tangent, linearised there, loses
 * its stiffness. 0 where it has none left; Infinity where nothing compresses. Lanczos comes down to it from above and
 * may rest on the way, at a mode near the lowest; and where few nodes leave few modes, rounding may show it one that
 * is none. So the mast must stand just below what it found and not just above; otherwise factoring alone finds it.
 */
export function bucklingFactor(mast: MastState, room: LanczosRoom): number {
  const found = settledFactor(mast, room);
  if (found <= 0 || found === Number.POSITIVE_INFINITY) return found;
  const stands = standsAt(mast, found * (1 - DOUBT));
  if (stands && !standsAt(mast, found * (1 + DOUBT))) return found;
  let standing = stands ? found : 0;
  let fallen = stands ? 2 * found : found;
  while (standsAt(mast, fallen)) {
    standing = fallen;
    fallen *= 2;
    if (fallen > BEYOND) return Number.POSITIVE_INFINITY;
  }
  for (let halving = 0; halving < HALVINGS && fallen - standing > 1e-12 * fallen; halving++) {
    const middle = 0.5 * (standing + fallen);
    if (standsAt(mast, middle)) standing = middle;
    else fallen = middle;
  }
  return standing;
}

function settledFactor(mast: MastState, room: LanczosRoom): number {
  mast.k.set(mast.tangent);
  const own = factorOf(largestOf(mast, room, softening, mast.perNode, mast.planes, 1));
  if (mast.planes === 2) return own;
  assembleAcross(mast, 1);
  return Math.min(own, factorOf(largestOf(mast, room, softening, 2, 1, 0)));
}

/** The factor on compression at which K + (factor - 1) Kg is singular, from the largest eigenvalue of K^-1 (-Kg). */
const factorOf = (mu: number): number =>
  mu === Number.POSITIVE_INFINITY ? 0 : mu > 0 ? 1 + 1 / mu : Number.POSITIVE_INFINITY;

/** y = -Kg x: what compression takes from the stiffness. */
const softening: Operator = (mast, x, y, per, planes, offset) => {
  const { g0, g1 } = mast;
  y.fill(0, 0, mast.nodes * per);
  for (let node = 0; node < mast.nodes; node++)
    for (let plane = 0; plane < planes; plane++) {
      const at = node * per + offset + 2 * plane + 1;
      y[at] = mast.lean[node] * x[at];
    }
  for (let e = 0; e < mast.elements; e++) {
    const m = e * MATRIX;
    const mean = mast.tension[e];
    const slope = mast.pressing[e];
    for (let plane = 0; plane < planes; plane++) {
      const low = e * per + offset + 2 * plane;
      const up = low + per;
      const rise = x[up] - x[low];
      const turn1 = x[low + 1];
      const turn2 = x[up + 1];
      const r1 = mean * g0[m + 1] + slope * g1[m + 1];
      const r2 = mean * g0[m + 2] + slope * g1[m + 2];
      const t12 = mean * g0[m + 4] + slope * g1[m + 4];
      const force = (mean * g0[m] + slope * g1[m]) * rise + r1 * turn1 + r2 * turn2;
      y[low] += force;
      y[low + 1] -= r1 * rise + (mean * g0[m + 3] + slope * g1[m + 3]) * turn1 + t12 * turn2;
      y[up] -= force;
      y[up + 1] -= r2 * rise + t12 * turn1 + (mean * g0[m + 5] + slope * g1[m + 5]) * turn2;
    }
  }
};
