import type { Strand } from "../model/catalog.ts";
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
  /** Greatest of the leg and bracing floors of a span from z[i] (row) up to z[j], free end moments. */
  readonly span: Float64Array;
  /** As `span`, from the pinned base. */
  readonly baseSpan: Float64Array;
  /** Wind moment about the base less what drift of the mast's weight may take, N m. */
  readonly moment: number;
}

/** Greatest moment in a span that end moments can't lower: q l2 / 16 between guys, 0.0858 q l2 over a pin. */
export const FREE_ENDS = 1 / 16;
export const PINNED_END = 1.5 - Math.SQRT2;
/** Heights nearer than this are one. */
const TOUCH = 1e-6;

export function rootFloors(problem: Problem, stack: StackModel, s: Statics): RootFloors {
  const n = s.z.length;
  const lean = leanOf(problem);
  const cantilever = new Float64Array(n);
  const span = new Float64Array(n * n);
  const baseSpan = new Float64Array(n);
  const leg = problem.rules.leg.required;
  const brace = problem.rules.bracing.required;
  for (let i = n - 1; i >= 0; i--) {
    const m = Math.max(0, s.moment[i] - lean * s.heavy * s.lever[i]);
    const v = Math.max(0, s.shear[i] - lean * s.heavy * s.weight[i]);
    // what is higher in the cantilever is known as well, and at a joint both sections bear the same
    let most = i + 1 < n ? cantilever[i + 1] : 0;
    for (const { lattice } of sectionsTouching(stack, s.z[i]))
      most = Math.max(
        most,
        (SLACK * (s.light * s.weight[i] * lattice.axialShare + m / lattice.momentArm) * leg) /
          lattice.legCompression,
        (SLACK * v * brace) / lattice.shearStrength,
      );
    cantilever[i] = most;
    for (let j = i + 1; j < n; j++)
      span[i * n + j] = spanFloor(problem, stack, s, i, j, FREE_ENDS, s.light * s.weight[j]);
    baseSpan[i] = i === 0 ? 0 : spanFloor(problem, stack, s, 0, i, PINNED_END, s.light * s.weight[i]);
  }
  return {
    cantilever,
    span,
    baseSpan,
    moment: Math.max(0, s.moment[0] - lean * s.heavy * s.lever[0]) * SLACK,
  };
}

/**
 * m >= c (q - k2 m) l2 whatever the end moments, so m >= c q l2 / (1 + c k2 l2) with k2 = N / EI; the leg takes
 * N and m together, and the least of that over every thrust N from the weight above upwards is the floor.
 */
export function spanFloor(
  problem: Problem,
  stack: StackModel,
  s: Statics,
  i: number,
  j: number,
  c: number,
  leastThrust: number,
): number {
  const lean = leanOf(problem);
  const length = s.z[j] - s.z[i];
  let q = Number.POSITIVE_INFINITY;
  for (let k = i; k < j; k++) q = Math.min(q, s.leastWind[k]);
  const within = sectionsBetween(stack, s.z[i] + TOUCH, s.z[j] - TOUCH);
  let ei = Number.POSITIVE_INFINITY;
  let weight = 0;
  for (const { lattice } of within) {
    ei = Math.min(ei, lattice.bendingStiffness);
    weight = Math.max(weight, lattice.weightPerLength);
  }
  const load = q - lean * s.heavy * weight;
  if (load <= 0) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const { lattice } of within) {
    const a = (c * length * length) / ei;
    const top = c * load * length * length;
    const scale = lattice.axialShare * lattice.momentArm;
    // stationary where (1 + a N)2 = top a / scale; N in the span lies between its top and its foot
    const spread = s.heavy * weight * length;
    const at = Math.max(leastThrust, (Math.sqrt((top * a) / scale) - 1) / a - spread);
    const force = at * lattice.axialShare + top / (1 + a * (at + spread)) / lattice.momentArm;
    least = Math.min(least, (force * problem.rules.leg.required) / lattice.legCompression);
  }
  return SLACK * least;
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

export interface GuyFloor {
  /** Least uplift and lateral pull at the windward anchor under the worst wind, N. */
  readonly uplift: number;
  readonly lateral: number;
}

/**
 * The free body of mast and guys together about the base: whatever the sharing of the thrust, the windward
 * anchor's uplift times R is the wind's moment plus what the leeward anchors pull, less what weights lend.
 * @param guyMoment moment of the wind on the guys, N m, 0 where not known yet (it is never negative)
 * @param guyWeight weight of all guys of one anchor, N, an upper bound
 */
export function windwardFloor(
  moment: number,
  guyMoment: number,
  radius: number,
  top: number,
  guyWeight: number,
  perLevel: number,
  lean: number,
): GuyFloor {
  const lent = 0.5 * perLevel * guyWeight * lean * top;
  // three guys: half of two leeward ones; four: the one behind; either way no less than the weight of one
  const uplift = (moment + guyMoment - lent) / radius - guyWeight;
  const reach = radius - lean * top;
  return { uplift, lateral: reach > 0 ? (Math.max(uplift, 0) * reach) / top : 0 };
}

/**
 * Moment about the base of the wind on the three or four guys of a level, wind away from a guy (three) or along
 * two (four), N m. Chords for curves: 5 % is given away for sag.
 */
export function guyWindMoment(wind: number, height: number, radius: number, perLevel: number): number {
  const chord2 = height * height + radius * radius;
  const chord = Math.sqrt(chord2);
  const inLine = 0.5 * wind * height * height * ((height * height - radius * radius) / chord2);
  if (perLevel === 4) return 0.95 * (2 * inLine + wind * chord * height);
  const oblique = (radius * radius) / (4 * chord2);
  const side = wind * chord * Math.sqrt(1 - oblique) * height * (0.5 - oblique);
  return 0.95 * (inLine + 2 * side);
}

/** Utilisation of the guys together that the windward uplift can't go without. */
export function guyFloor(
  problem: Problem,
  uplift: number,
  radius: number,
  levels: readonly { readonly height: number; readonly strand: Strand }[],
  lean: number,
): number {
  let most = 0;
  for (const { height, strand } of levels) {
    const reach = Math.max(radius - lean * height, 0);
    most += strand.breakingStrength * strand.efficiency * (height / Math.hypot(reach, height));
  }
  return (SLACK * Math.max(uplift, 0) * problem.rules.guy.required) / most;
}
