import type { CaseResponse } from "../model/verdict.ts";
import { thrustShare } from "../physics/guy/thrust-share.ts";
import type { SolvedCase } from "./mast-checks.ts";

/**
 * What each level of guys holds back along the wind, N: exactly, and by the hand method (thrusts in proportion to
 * height that balance the unguyed base moment), with the pull of one guy that stands alone against that thrust, its
 * initial tension left out. It is right for one level only: a teaching figure, never a check.
 */
export function handMethod(c: SolvedCase): NonNullable<CaseResponse["hand"]> {
  const { mast, model } = c;
  const levels = model.guys?.levels ?? [];
  const exact = levels.map(() => 0);
  const slope = levels.map(() => 1);
  for (const { level, node, state, ax, ay, z } of mast.guys) {
    exact[level] -= state.fx;
    const span = Math.hypot(ax, ay);
    slope[level] = Math.max(slope[level], Math.hypot(span, mast.z[node] - z) / span);
  }
  const heights = levels.map(({ height }) => height);
  const thrusts = thrustShare(Math.abs(unguyedMoment(c)), heights, heights);
  return { exact, thrusts, tensions: thrusts.map((thrust, level) => thrust * slope[level]) };
}

/** Moment of the wind about the base, N m: consistent nodal loads turn a straight mast as the load does. */
function unguyedMoment({ mast }: SolvedCase): number {
  let sum = 0;
  for (let e = 0; e < mast.elements; e++) {
    const f = mast.lineLoad;
    sum += f[4 * e] * mast.z[e] + f[4 * e + 1] + f[4 * e + 2] * mast.z[e + 1] + f[4 * e + 3];
  }
  for (let i = 0; i < mast.nodes; i++) sum += mast.pointForce[i] * mast.z[i] + mast.pointMoment[i];
  return sum;
}
