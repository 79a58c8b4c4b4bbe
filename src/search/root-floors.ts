import type { Problem, StackModel } from "../problem/types.ts";
import { leanOf, SLACK, sectionsTouching, TOUCH } from "./floors.ts";
import { Spans } from "./span-floors.ts";
import type { Statics } from "./statics.ts";

/** What the mast alone can't stay below, whatever guys come to it. */
export interface RootFloors {
  /** Cantilever above a top guy at each height of `statics.z`. */
  readonly cantilever: Float64Array;
  /** What the legs of a span need, whatever its end moments. */
  readonly spans: Spans;
  /** Wind moment about the base less what drift of the mast's weight may take, N m. */
  readonly moment: number;
}

/** @param armed do the top guys meet a torque arm? Then they bend the mast under it, and what bends it above is not below */
export function rootFloors(problem: Problem, stack: StackModel, s: Statics, armed = false): RootFloors {
  const n = s.z.length;
  const lean = leanOf(problem);
  const cantilever = new Float64Array(n);
  const leg = problem.rules.leg.required;
  const brace = problem.rules.bracing.required;
  for (let i = n - 1; i >= 0; i--) {
    const m = Math.max(0, s.moment[i] - lean * s.heavy * s.lever[i]);
    const v = Math.max(0, s.shear[i] - lean * s.heavy * s.weight[i]);
    // what is higher in the cantilever is known as well, and at a joint both sections bear the same
    let most = i + 1 < n ? cantilever[i + 1] : 0;
    const above = s.z[i] < stack.height - TOUCH ? sectionsTouching(stack, s.z[i] + 2 * TOUCH) : [];
    for (const { lattice } of armed ? above : sectionsTouching(stack, s.z[i]))
      most = Math.max(
        most,
        (SLACK * (s.light * s.weight[i] * lattice.axialShare + m / lattice.momentArm) * leg) /
          lattice.legCompression,
      );
    // the guys take the shear: what is below them never feels it, and nothing of the mast is above its top
    for (const { lattice } of above) most = Math.max(most, (SLACK * v * brace) / lattice.shearStrength);
    cantilever[i] = most;
  }
  return {
    cantilever,
    spans: new Spans(problem, stack, s),
    moment: Math.max(0, s.moment[0] - lean * s.heavy * s.lever[0]) * SLACK,
  };
}
