import { assembleAcross, clamp } from "./assembly.ts";
import { factor } from "./banded.ts";
import { MATRIX } from "./element.ts";
import { type LanczosRoom, largestOf, type Operator } from "./lanczos.ts";
import type { MastState } from "./state.ts";

/** Factors the tangent that equilibrium left; false where a pivot is not positive: the equilibrium is unstable. */
export function stable(mast: MastState): boolean {
  const n = mast.nodes * mast.perNode;
  if (factor(mast.k, n, 2 * mast.perNode - 1) > 0) return false;
  if (mast.planes === 2) return true;
  assembleAcross(mast, 1);
  return factor(mast.k, mast.nodes * 2, 3) === 0;
}

/**
 * Would the state just solved still be stable with its compression times this factor? One factoring a plane
 * where `bucklingFactor` takes a dozen solutions.
 */
export function standsAt(mast: MastState, compressionFactor: number): boolean {
  const { perNode: per, k } = mast;
  k.set(mast.tangent);
  const width = 2 * per;
  const band = width - 1;
  const more = compressionFactor - 1;
  for (let plane = 0; plane < mast.planes; plane++) {
    const o = 1 + 2 * plane;
    for (let node = 0; node < mast.nodes; node++)
      k[(node * per + o + 1) * width + band] -= more * mast.lean[node];
    for (let e = 0; e < mast.elements; e++)
      for (let i = 0; i < 4; i++)
        for (let j = 0; j <= i; j++) {
          const m = e * MATRIX + 4 * i + j;
          const gi = (i < 2 ? e : e + 1) * per + o + (i % 2);
          const gj = (j < 2 ? e : e + 1) * per + o + (j % 2);
          k[gi * width + band + gj - gi] +=
            more * (mast.tension[e] * mast.g0[m] + mast.pressing[e] * mast.g1[m]);
        }
  }
  clamp(mast, per, width, band);
  if (factor(k, mast.nodes * per, band) > 0) return false;
  if (mast.planes === 2) return true;
  assembleAcross(mast, compressionFactor);
  return factor(k, mast.nodes * 2, 3) === 0;
}

/**
 * Factor on the mast's compression at which the state just solved buckles: the tangent, linearised there, loses
 * its stiffness. 0 where it has none left; Infinity where nothing compresses.
 */
export function bucklingFactor(mast: MastState, room: LanczosRoom): number {
  mast.k.set(mast.tangent);
  let least = factorOf(largestOf(mast, room, softening, mast.perNode, mast.planes, 1));
  if (mast.planes === 1) {
    assembleAcross(mast, 1);
    least = Math.min(least, factorOf(largestOf(mast, room, softening, 2, 1, 0)));
  }
  return least;
}

/** The factor on compression at which K + (factor - 1) Kg is singular, from the largest eigenvalue of K^-1 (-Kg). */
const factorOf = (mu: number): number =>
  mu === Number.POSITIVE_INFINITY ? 0 : mu > 0 ? 1 + 1 / mu : Number.POSITIVE_INFINITY;

/** y = -Kg x: what compression takes from the stiffness. */
const softening: Operator = (mast, x, y, per, planes, offset) => {
  y.fill(0, 0, mast.nodes * per);
  for (let node = 0; node < mast.nodes; node++)
    for (let plane = 0; plane < planes; plane++) {
      const at = node * per + offset + 2 * plane + 1;
      y[at] = mast.lean[node] * x[at];
    }
  for (let e = 0; e < mast.elements; e++) {
    const ge = e * MATRIX;
    for (let plane = 0; plane < planes; plane++) {
      const low = e * per + offset + 2 * plane;
      for (let i = 0; i < 4; i++) {
        let sum = 0;
        for (let j = 0; j < 4; j++) {
          const m = ge + 4 * i + j;
          const gj = j < 2 ? low + j : low + per + j - 2;
          sum += (mast.tension[e] * mast.g0[m] + mast.pressing[e] * mast.g1[m]) * x[gj];
        }
        y[i < 2 ? low + i : low + per + i - 2] -= sum;
      }
    }
  }
};
