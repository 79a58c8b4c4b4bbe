import { assemble, assembleAcross, clamp } from "./assembly.ts";
import { factor } from "./blocks.ts";
import { GAUSS3, shape } from "./element.ts";
import { type LanczosRoom, largestOf, type Operator } from "./lanczos.ts";
import type { MastState } from "./state.ts";
import { eigenvalueFromTop } from "./tridiagonal.ts";

/** Standard gravity, m/s2. */
const GRAVITY = 9.80665;

const shapes = new Float64Array(4);

/** What rides on the nodes in the state just solved: dead weight as the case counts it, and the ice that hangs on it. */
function hangMasses(mast: MastState): void {
  const { moving, movingArm, movingArm2, riding, ridingArm, ridingArm2, guys, hung } = mast;
  const { dead = 1, addedPoints = [], guyAdded = [] } = hung;
  for (let node = 0; node < mast.nodes; node++) {
    moving[node] = dead * riding[node];
    movingArm[node] = dead * ridingArm[node];
    movingArm2[node] = dead * ridingArm2[node];
  }
  for (const { z, weight, arm } of addedPoints) {
    const node = mast.nodeAt(z);
    moving[node] += weight;
    movingArm[node] += weight * arm;
    movingArm2[node] += weight * arm * arm;
  }
  for (const { node, level, length } of guys) moving[node] += ((guyAdded[level] ?? 0) * length) / 3;
}

/**
 * First sway frequency of the state just solved, Hz: its tangent against the mass that hangs on it. Guys count
 * with a third of their mass, as a string whose one end moves (Rayleigh).
 */
export function swayFrequency(mast: MastState, room: LanczosRoom): number {
  hangMasses(mast);
  assemble(mast);
  const mu = largestOf(mast, room, inertia, mast.perNode, mast.planes, 1);
  return mu === Number.POSITIVE_INFINITY ? 0 : Math.sqrt(1 / mu) / (2 * Math.PI);
}

/**
 * Does the state just solved sway faster than this, Hz? As `swayFrequency`, by the inertia of K - omega2 M: one
 * factoring where the frequency itself takes a dozen solutions.
 */
export function swaysFasterThan(mast: MastState, frequency: number): boolean {
  const { perNode: per, k } = mast;
  hangMasses(mast);
  k.set(mast.tangent);
  const omega2 = (2 * Math.PI * frequency) ** 2;
  for (let plane = 0; plane < mast.planes; plane++) {
    const o = 1 + 2 * plane;
    for (let e = 0; e < mast.elements; e++) lessInertia(mast, e, o, omega2);
    for (let node = 0; node < mast.nodes; node++) {
      const shift = (node * per + o) * 2 * per + per + o;
      const turn = shift + 2 * per;
      k[shift] -= (omega2 / GRAVITY) * mast.moving[node];
      k[turn] -= (omega2 / GRAVITY) * mast.movingArm[node];
      k[turn + 1] -= (omega2 / GRAVITY) * mast.movingArm2[node];
    }
  }
  clamp(mast, per);
  return factor(k, mast.nodes, per) === 0;
}

function lessInertia(mast: MastState, e: number, o: number, omega2: number): void {
  const { perNode: per, k } = mast;
  const width = 2 * per;
  const mass = (mast.pressing[e] * mast.length[e]) / GRAVITY;
  const low = (e * per + o) * width + per + o;
  const up = low + per * width;
  const n = shapes;
  for (let g = 0; g < 3; g++) {
    const [xi, weight] = GAUSS3[g];
    shape(xi, mast.length[e], mast.shear[e], n, 0);
    const share = omega2 * weight * mass;
    for (let i = 0; i < 4; i++) {
      const row = i < 2 ? low + i * width : up + (i - 2) * width;
      for (let j = 0; j <= i; j++) k[i < 2 ? row + j : row + j - (j < 2 ? per : 2)] -= share * n[i] * n[j];
    }
  }
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
  hangMasses(mast);
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
      for (let g = 0; g < 3; g++) {
        const [xi, weight] = GAUSS3[g];
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
  for (let node = 0; node < mast.nodes; node++) {
    if (mast.moving[node] === 0) continue;
    for (let plane = 0; plane < planes; plane++) {
      const at = node * per + offset + 2 * plane;
      const shift = x[at] / GRAVITY;
      const turn = x[at + 1] / GRAVITY;
      y[at] += mast.moving[node] * shift + mast.movingArm[node] * turn;
      y[at + 1] += mast.movingArm[node] * shift + mast.movingArm2[node] * turn;
    }
  }
};
