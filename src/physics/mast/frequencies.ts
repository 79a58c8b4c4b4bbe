import { assemble, assembleAcross } from "./assembly.ts";
import { GAUSS3, shape } from "./element.ts";
import { type LanczosRoom, largestOf, type Operator } from "./lanczos.ts";
import type { MastState } from "./state.ts";
import { eigenvalueFromTop } from "./tridiagonal.ts";

/** Standard gravity, m/s2. */
const GRAVITY = 9.80665;

const shapes = new Float64Array(4);

/**
 * First sway frequency of the state just solved, Hz: its tangent against the mass that hangs on it. Guys count
 * with a third of their mass, as a string whose one end moves (Rayleigh).
 */
export function swayFrequency(mast: MastState, room: LanczosRoom): number {
  assemble(mast);
  const mu = largestOf(mast, room, inertia, mast.perNode, mast.planes, 1);
  return mu === Number.POSITIVE_INFINITY ? 0 : Math.sqrt(1 / mu) / (2 * Math.PI);
}

/** Two frequencies nearer than this share are one mode seen in two planes. */
const SAME = 1e-6;

/**
 * The lowest sway frequencies of the state just solved, Hz, rising: the same tangent and mass. A mode that a round
 * star lets sway in any direction counts once. Fewer than asked where the mesh has no more; empty where the tangent
 * is not positive definite.
 */
export function swayFrequencies(mast: MastState, room: LanczosRoom, count: number): number[] {
  const found: number[] = [];
  const take = (per: number, planes: number, offset: number): void => {
    largestOf(mast, room, inertia, per, planes, offset, count);
    for (let rank = 1; rank <= Math.min(count, room.steps); rank++) {
      const mu = eigenvalueFromTop(room.alphas, room.betas, room.steps, rank);
      if (mu > 0) found.push(Math.sqrt(1 / mu) / (2 * Math.PI));
    }
  };
  assemble(mast);
  take(mast.perNode, mast.planes, 1);
  if (mast.planes === 1) {
    assembleAcross(mast, 1);
    take(2, 1, 0);
  }
  return found
    .sort((a, b) => a - b)
    .filter((frequency, i, all) => i === 0 || frequency - all[i - 1] > SAME * frequency)
    .slice(0, count);
}

/** y = M x: distributed mass by the shape functions, point masses where they ride. */
const inertia: Operator = (mast, x, y, per, planes, offset) => {
  y.fill(0, 0, mast.nodes * per);
  const n = shapes;
  for (let e = 0; e < mast.elements; e++) {
    const mass = (mast.pressing[e] * mast.length[e]) / GRAVITY;
    for (let plane = 0; plane < planes; plane++) {
      const low = e * per + offset + 2 * plane;
      const up = low + per;
      for (const [xi, weight] of GAUSS3) {
        shape(xi, mast.length[e], mast.shear[e], n, 0);
        const u = n[0] * x[low] + n[1] * x[low + 1] + n[2] * x[up] + n[3] * x[up + 1];
        const force = weight * mass * u;
        y[low] += force * n[0];
        y[low + 1] += force * n[1];
        y[up] += force * n[2];
        y[up + 1] += force * n[3];
      }
    }
  }
  for (const { node, weight, arm } of mast.riding)
    for (let plane = 0; plane < planes; plane++) {
      const at = node * per + offset + 2 * plane;
      const force = (weight / GRAVITY) * (x[at] + arm * x[at + 1]);
      y[at] += force;
      y[at + 1] += arm * force;
    }
};
