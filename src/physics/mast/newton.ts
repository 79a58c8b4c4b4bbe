import { assemble } from "./assembly.ts";
import { factor, solveFactored } from "./blocks.ts";
import type { MastState } from "./state.ts";

/**
 * Of 18,000 random structures none that passed its leg check took more than 8 steps, and loading in steps
 * rescued none that failed: a mast that has not settled by then is called unstable.
 */
const NEWTON_STEPS = 20;
/** Out-of-balance force, as a share of the loads, at which equilibrium is called reached. */
const BALANCE = 1e-9;
/** A Newton step that moves the mast by more than this share of its height is cut. */
const LONGEST_STEP = 0.1;

/** A guy whose step is below this share of its tension takes the next one with the mast. */
const NEAR = 1e-6;

/** Equilibrium from the state that `mast` is in; false where none is found. */
export function newton(mast: MastState): boolean {
  const per = mast.perNode;
  const n = mast.nodes * per;
  const longest = LONGEST_STEP * mast.z[mast.nodes - 1];
  for (let i = 0; i < NEWTON_STEPS; i++) {
    mast.iterations++;
    let unbalanced = assemble(mast, NEAR);
    if (unbalanced < BALANCE * mast.loadScale && !mast.settled) unbalanced = assemble(mast);
    if (!Number.isFinite(unbalanced)) return false;
    if (unbalanced < BALANCE * mast.loadScale) {
      mast.tangent.set(mast.k);
      return true;
    }
    factor(mast.k, mast.nodes, per);
    const step = mast.step;
    for (let j = 0; j < n; j++) step[j] = -mast.residual[j];
    solveFactored(mast.k, mast.nodes, per, step);
    let furthest = 0;
    for (let j = 0; j < n; j += per) {
      furthest = Math.max(furthest, Math.abs(step[j]), Math.abs(step[j + 1]));
      if (per === 5) furthest = Math.max(furthest, Math.abs(step[j + 3]));
    }
    if (!Number.isFinite(furthest)) return false;
    const cut = furthest > longest ? longest / furthest : 1;
    for (let j = 0; j < n; j++) mast.d[j] += cut * step[j];
  }
  return false;
}
