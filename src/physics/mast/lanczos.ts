import { factor, solveFactored } from "./blocks.ts";
import type { MastState } from "./state.ts";
import { eigenvalueFromTop } from "./tridiagonal.ts";

const LANCZOS_STEPS = 60;
/** What is left of a new direction, against the greatest force that one gave, when it is rounding only. */
const SPENT = 1e-9;
/** Steps that must move the eigenvalue by no more than rounding, all together. */
const CALM = 3;

/** y = A x on the displacements of `planes` planes, the first of them `offset` from the start of a node. */
export type Operator = (
  mast: MastState,
  x: Float64Array,
  y: Float64Array,
  per: number,
  planes: number,
  offset: number,
) => void;

/** Room for the directions, kept with the mast and filled as they are wanted. */
export class LanczosRoom {
  private readonly bases: Float64Array[] = [];
  private readonly forcesOf: Float64Array[] = [];
  readonly alphas = new Float64Array(LANCZOS_STEPS);
  readonly betas = new Float64Array(LANCZOS_STEPS);
  /** Steps of the last call: the size of the tridiagonal matrix that it left. */
  steps = 0;

  basis(step: number, n: number): Float64Array {
    return roomFor(this.bases, step, n);
  }

  forces(step: number, n: number): Float64Array {
    return roomFor(this.forcesOf, step, n);
  }
}

const roomFor = (kept: Float64Array[], step: number, n: number): Float64Array =>
  kept[step]?.length >= n ? kept[step] : (kept[step] = new Float64Array(n));

/**
 * Lanczos on K^-1 A in the inner product of K: with K v = p carried along, a step costs one product with A and
 * one solution. Returns the largest eigenvalue; Infinity where K is not positive definite.
 * @param rank settle this one, counted down from the largest; `room` then holds all above it
 */
export function largestOf(
  mast: MastState,
  room: LanczosRoom,
  operator: Operator,
  per: number,
  planes: number,
  offset: number,
  rank = 1,
): number {
  const n = mast.nodes * per;
  room.steps = 0;
  if (factor(mast.k, mast.nodes, per) > 0) return Number.POSITIVE_INFINITY;
  const steps = Math.min(LANCZOS_STEPS, n);
  // an arbitrary force that no mode is square to, and what it does
  let p = room.forces(0, n);
  let v = room.basis(0, n);
  for (let node = 0; node < mast.nodes; node++)
    for (let c = 0; c < per; c++) p[node * per + c] = c < offset ? 0 : 1 + 0.37 * Math.sin(1.7 * node + c);
  release(mast, p, per, offset);
  copy(p, v, n);
  solveFactored(mast.k, mast.nodes, per, v);
  scale(v, p, 1 / Math.sqrt(dot(v, p, n)), n);
  let mu = 0;
  let greatest = 0;
  for (let step = 0; step < steps; step++) {
    const y = room.forces(step + 1, n);
    const u = room.basis(step + 1, n);
    operator(mast, v, y, per, planes, offset);
    release(mast, y, per, offset);
    room.alphas[step] = dot(v, y, n);
    copy(y, u, n);
    solveFactored(mast.k, mast.nodes, per, u);
    // against the last two, which is all that exact numbers would ask, then against all that came before: without
    // it, rounding revives modes that are known already
    for (let pass = 0; pass < 2; pass++)
      for (let k = step; k >= (pass === 0 ? Math.max(step - 1, 0) : 0); k--) {
        const vk = room.basis(k, n);
        const pk = room.forces(k, n);
        const share = dot(u, pk, n);
        for (let j = 0; j < n; j++) {
          u[j] -= share * vk[j];
          y[j] -= share * pk[j];
        }
      }
    room.steps = step + 1;
    const left = dot(u, y, n);
    // nothing new is left: the modes that the start can reach are all found
    greatest = Math.max(greatest, Math.abs(room.alphas[step]));
    const spent = !(left > (SPENT * greatest) ** 2);
    if (spent || step === steps - 1 || (step + 1) % CALM === 0) {
      const next = eigenvalueFromTop(room.alphas, room.betas, step + 1, rank);
      // two modes close together hold it for a step or two at a value between them
      const calm = Math.abs(next - mu) < 1e-10 * Math.abs(next);
      mu = next;
      if (spent || calm) break;
    }
    room.betas[step] = Math.sqrt(left);
    scale(u, y, 1 / room.betas[step], n);
    v = u;
    p = y;
  }
  return mu;
}

/** Held displacements of the base stay zero. */
function release(mast: MastState, x: Float64Array, per: number, offset: number): void {
  for (let c = 0; c < per; c++) {
    const rotation = (c - offset) % 2 === 1 && c >= offset;
    if (mast.fixed || !rotation) x[c] = 0;
  }
}

function scale(a: Float64Array, b: Float64Array, factor: number, n: number): void {
  for (let i = 0; i < n; i++) {
    a[i] *= factor;
    b[i] *= factor;
  }
}

function copy(from: Float64Array, to: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) to[i] = from[i];
}

function dot(a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += a[i] * b[i];
  return sum;
}
