import type { Problem, SectionModel, StackModel } from "../problem/types.ts";
import type { Statics } from "./statics.ts";

/**
 * Utilisations that no completion of a partial design can stay below. Each has its argument in
 * docs/theory/search.md and a test against thousands of analysed structures. They assume that the lean check
 * passes: a design that leans more fails anyway, so the drift that they allow for is bounded by it.
 */

/** Integrals of the floors and of the solver agree to far better than this; floors give it away. */
export const SLACK = 0.999;

export interface RootFloors {
  /** Cantilever above a top guy at each height of `statics.z`. */
  readonly cantilever: Float64Array;
  /** Leg floor of a span from z[i] up to z[j] under the weight above it, free end moments; worked out when asked. */
  readonly span: (i: number, j: number) => number;
  /** As `span`, from the pinned base up to z[i]. */
  readonly baseSpan: (i: number) => number;
  /** Wind moment about the base less what drift of the mast's weight may take, N m. */
  readonly moment: number;
}

/** Heights nearer than this are one. */
const TOUCH = 1e-6;

/** @param armed do the top guys meet a torque arm? Then they bend the mast under it, and what bends it above is not below */
export function rootFloors(problem: Problem, stack: StackModel, s: Statics, armed = false): RootFloors {
  const n = s.z.length;
  const lean = leanOf(problem);
  const cantilever = new Float64Array(n);
  const known = new Float64Array(n * n).fill(Number.NaN);
  const span = (i: number, j: number, ends: SpanEnds): number => {
    const at = i * n + j;
    if (Number.isNaN(known[at])) known[at] = spanFloor(problem, stack, s, i, j, ends, s.light * s.weight[j]);
    return known[at];
  };
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
    span: (i, j) => span(i, j, "free"),
    // no guy stands at the base: spans from there are the pinned ones
    baseSpan: (i) => span(0, i, "pinned"),
    moment: Math.max(0, s.moment[0] - lean * s.heavy * s.lever[0]) * SLACK,
  };
}

/** How the ends of a span are held: by moments of any size, or on the pin of the base below. */
export type SpanEnds = "free" | "pinned";

/**
 * Least possible greatest moment over q / k2, whatever the end moments, of a span of kl under a thrust: both signs
 * reached equally (docs/theory/search.md). Free: tan2(kl/4). Pinned: (1 - c) / (2 + c + 2 sqrt(1 + c)), c = cos kl.
 */
const spread = (ends: SpanEnds, kl: number): number => {
  if (ends === "free") return Math.tan(kl / 4) ** 2;
  const c = Math.cos(kl);
  return (1 - c) / (2 + c + 2 * Math.sqrt(Math.max(0, 1 + c)));
};

/** A point load, and a moment, never do more than this much of a load spread over the span (search.md). */
export const POINT = 2;
export const COUPLE = 6;

/** The same at no thrust, over q l2: 1/16, and 3/2 - sqrt 2. */
const UNPRESSED: Readonly<Record<SpanEnds, number>> = { free: 1 / 16, pinned: 1.5 - Math.SQRT2 };

/**
 * Leg utilisation that a span can't stay below: its legs take the thrust and, together with it, a moment that no
 * end moments can lower. The least over every thrust from `leastThrust` (at the top of the span) upwards.
 */
export function spanFloor(
  problem: Problem,
  stack: StackModel,
  s: Statics,
  i: number,
  j: number,
  ends: SpanEnds,
  leastThrust: number,
): number {
  const length = s.z[j] - s.z[i];
  let q = Number.POSITIVE_INFINITY;
  for (let k = i; k < j; k++) q = Math.min(q, s.leastWind[k]);
  const within = sectionsBetween(stack, s.z[i] + TOUCH, s.z[j] - TOUCH);
  let weight = 0;
  for (const { lattice } of within) weight = Math.max(weight, lattice.weightPerLength + s.run);
  // what leans takes from the wind
  const lean = leanOf(problem);
  let load = q - lean * s.heavy * weight;
  let own = s.heavy * weight * length;
  for (const side of s.sides) {
    if (side.z < s.z[i] + TOUCH || side.z > s.z[j] - TOUCH) continue;
    own += s.heavy * side.weight;
    load -= (POINT * Math.max(0, lean * s.heavy * side.weight - side.force)) / length;
    load -= (COUPLE * s.heavy * side.leaning) / (length * length);
  }
  if (load <= 0) return 0;
  const force =
    within.length === 1
      ? pressedForce(problem, within[0], load, length, own, ends, leastThrust)
      : mixedForce(within, load, length, own, ends, leastThrust);
  return SLACK * force * problem.rules.leg.required;
}

/** Over leg strength: one section throughout. Rises with the thrust to the span's Euler load, and is sought beyond. */
function pressedForce(
  problem: Problem,
  { lattice }: SectionModel,
  q: number,
  length: number,
  own: number,
  ends: SpanEnds,
  leastThrust: number,
): number {
  const ei = lattice.bendingStiffness;
  const { axialShare, momentArm, legCompression } = lattice;
  // shear softens: no thrust above what the legs may carry matters
  const limit = (problem.allowed * legCompression) / (problem.rules.leg.required * axialShare);
  const soft = 1 / (1 - Math.min(0.3, limit / lattice.shearStiffness));
  const moment = (k2: number, over: number) => {
    const kl = Math.sqrt(k2) * length;
    if (kl < 0.01) return q / (1 / (UNPRESSED[ends] * length * length) + over);
    const g = spread(ends, kl);
    return (q * g) / (k2 + over * g);
  };
  const at = (thrust: number, k2: number) =>
    thrust * axialShare + moment(k2, ((thrust + own) * soft) / ei - k2) / momentArm;
  const euler2 = (Math.PI / length) ** 2;
  const euler = euler2 * ei;
  // beyond the Euler load the comparison keeps its wave; the least is where the derivative vanishes
  const g = spread(ends, Math.PI);
  const wanted = g * Math.sqrt((q * soft) / (ei * momentArm * axialShare));
  const still = ((wanted - euler2 * (1 - g)) * ei) / (g * soft) - own;
  let force = at(Math.max(leastThrust, euler, still), euler2);
  if (leastThrust < euler) force = Math.min(force, at(leastThrust, leastThrust / ei));
  return force / legCompression;
}

/** Over leg strength, where sections differ: m >= c (q - k2 m) l2 with the softest section's k2 = N / EI. */
function mixedForce(
  within: readonly SectionModel[],
  q: number,
  length: number,
  own: number,
  ends: SpanEnds,
  leastThrust: number,
): number {
  const c = UNPRESSED[ends];
  let ei = Number.POSITIVE_INFINITY;
  let ga = Number.POSITIVE_INFINITY;
  for (const { lattice } of within) {
    ei = Math.min(ei, lattice.bendingStiffness);
    ga = Math.min(ga, lattice.shearStiffness);
  }
  let least = Number.POSITIVE_INFINITY;
  for (const { lattice } of within) {
    const soft = 1 / (1 - Math.min(0.3, (4 * lattice.legCompression) / ga));
    const a = (c * length * length * soft) / ei;
    const top = c * q * length * length;
    // stationary where (1 + a N)2 = top a / scale; N in the span lies between its top and its foot
    const scale = lattice.axialShare * lattice.momentArm;
    const at = Math.max(leastThrust, (Math.sqrt((top * a) / scale) - 1) / a - own);
    const force = at * lattice.axialShare + top / (1 + a * (at + own)) / lattice.momentArm;
    least = Math.min(least, force / lattice.legCompression);
  }
  return least;
}

/** Slope that the lean check allows: no node drifts further than this times its height. */
export const leanOf = (problem: Problem): number => Math.tan((problem.rules.tilt.most * Math.PI) / 180);

/** Sections that meet at a height: one, or two at a joint. */
export const sectionsTouching = (stack: StackModel, z: number): SectionModel[] =>
  sectionsBetween(stack, z - TOUCH, z + TOUCH);

export function sectionsBetween(stack: StackModel, from: number, to: number): SectionModel[] {
  const found: SectionModel[] = [];
  let low = 0;
  for (const { section, length } of stack.parts) {
    if (low < to && low + length > from) found.push(section);
    low += length;
  }
  return found;
}

/** The foot of each part of a stack: where rigging presses hardest. */
export function partFeet(stack: StackModel): { z: number; section: SectionModel }[] {
  let low = 0;
  return stack.parts.map(({ section, length }) => {
    const foot = { z: low, section };
    low += length;
    return foot;
  });
}
