import type { Problem, SectionModel, StackModel } from "../problem/types.ts";
import { leanOf, SLACK, sectionsBetween, sectionsTouching, TOUCH } from "./floors.ts";
import type { Statics } from "./statics.ts";

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

/** What is known of a span before the thrust on it: between two heights of the statics. */
interface Span {
  readonly length: number;
  readonly within: readonly SectionModel[];
  /** Least load square to it, N/m, less what leaning takes off. */
  readonly load: number;
  /** Its own weight, N. */
  readonly own: number;
  /** Greatest bending stiffness in it, N m2. */
  readonly stiffest: number;
  /** Leg floors under no more than the weight above, by how the ends are held. */
  readonly bare: Partial<Record<SpanEnds, number>>;
}

/** Spans of one mast, each looked at once: stars and strands ask for the same ones again and again. */
export class Spans {
  private readonly known: (Span | undefined)[] = [];
  private readonly meeting: (readonly SectionModel[] | undefined)[] = [];

  constructor(
    private readonly problem: Problem,
    private readonly stack: StackModel,
    private readonly s: Statics,
  ) {}

  /** Leg floor of the span from z[i] up to z[j] under the weight above it, free end moments. */
  free(i: number, j: number): number {
    return this.underWeight(i, j, "free");
  }

  /** As `free`, from the pinned base up to z[j]: no guy stands at the base. */
  fromBase(j: number): number {
    return this.underWeight(0, j, "pinned");
  }

  private underWeight(i: number, j: number, ends: SpanEnds): number {
    const { bare } = this.between(i, j);
    bare[ends] ??= this.pressed(i, j, ends, this.s.light * this.s.weight[j]);
    return bare[ends];
  }

  /**
   * Leg utilisation that a span can't stay below: its legs take the thrust and, together with it, a moment that no
   * end moments can lower. The least over every thrust from `leastThrust` (at the top of the span) upwards.
   */
  pressed(i: number, j: number, ends: SpanEnds, leastThrust: number): number {
    const { within, load, length, own } = this.between(i, j);
    if (load <= 0) return 0;
    const force =
      within.length === 1
        ? pressedForce(this.problem, within[0], load, length, own, ends, leastThrust)
        : mixedForce(within, load, length, own, ends, leastThrust);
    return SLACK * force * this.problem.rules.leg.required;
  }

  /** Greatest bending stiffness between z[i] and z[j], N m2. */
  stiffest(i: number, j: number): number {
    return this.between(i, j).stiffest;
  }

  /** Sections that meet at z[i]: one, or two at a joint. */
  touching(i: number): readonly SectionModel[] {
    this.meeting[i] ??= sectionsTouching(this.stack, this.s.z[i]);
    return this.meeting[i];
  }

  /** The section right under z[i]. */
  under(i: number): SectionModel {
    return this.touching(i)[0];
  }

  private between(i: number, j: number): Span {
    const at = i * this.s.z.length + j;
    this.known[at] ??= this.lookedAt(i, j);
    return this.known[at];
  }

  private lookedAt(i: number, j: number): Span {
    const { stack, s } = this;
    const length = s.z[j] - s.z[i];
    let q = Number.POSITIVE_INFINITY;
    for (let k = i; k < j; k++) q = Math.min(q, s.leastWind[k]);
    const within = sectionsBetween(stack, s.z[i] + TOUCH, s.z[j] - TOUCH);
    let weight = 0;
    let stiffest = 0;
    for (const { lattice } of within) weight = Math.max(weight, lattice.weightPerLength + s.run);
    for (const { lattice } of sectionsBetween(stack, s.z[i], s.z[j]))
      stiffest = Math.max(stiffest, lattice.bendingStiffness);
    // what leans takes from the wind
    const lean = leanOf(this.problem);
    let load = q - lean * s.heavy * weight;
    let own = s.heavy * weight * length;
    for (const side of s.sides) {
      if (side.z < s.z[i] + TOUCH || side.z > s.z[j] - TOUCH) continue;
      own += s.heavy * side.weight;
      load -= (POINT * Math.max(0, lean * s.heavy * side.weight - side.force)) / length;
      load -= (COUPLE * s.heavy * side.leaning) / (length * length);
    }
    return { length, within, load, own, stiffest, bare: {} };
  }
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
  const euler2 = (Math.PI / length) ** 2;
  const euler = euler2 * ei;
  // beyond the Euler load the comparison keeps its wave; the least is where the derivative vanishes
  const g = spread(ends, Math.PI);
  const wanted = g * Math.sqrt((q * soft) / (ei * momentArm * axialShare));
  const still = ((wanted - euler2 * (1 - g)) * ei) / (g * soft) - own;
  const beyond = Math.max(leastThrust, euler, still);
  let moment = leastMoment(q, length, ends, euler2, ((beyond + own) * soft) / ei - euler2);
  let force = beyond * axialShare + moment / momentArm;
  if (leastThrust < euler) {
    const k2 = leastThrust / ei;
    moment = leastMoment(q, length, ends, k2, ((leastThrust + own) * soft) / ei - k2);
    force = Math.min(force, leastThrust * axialShare + moment / momentArm);
  }
  return force / legCompression;
}

/** Of a span whose comparison has a wave of `k2`, and `over` more thrust over stiffness than that. */
function leastMoment(q: number, length: number, ends: SpanEnds, k2: number, over: number): number {
  const kl = Math.sqrt(k2) * length;
  if (kl < 0.01) return q / (1 / (UNPRESSED[ends] * length * length) + over);
  const g = spread(ends, kl);
  return (q * g) / (k2 + over * g);
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
