import { lineLoad, sideForces, topForce } from "../checks/loads.ts";
import type { PackageModel, Problem, SectionModel, StackModel } from "../problem/types.ts";

/** Steps of the integrals over the height; their error is a millionth, the slack of the floors a thousandth. */
const STEPS = 240;
/** A joint is the end of one section and the start of the next: this far from it there is no doubt, m. */
const HAIR = 1e-6;

/** An antenna beside the mast, as the floors see it. */
export interface SideLoad {
  readonly z: number;
  /** Wind on it, N. */
  readonly force: number;
  /** N. */
  readonly weight: number;
  /** Weight times its offset from the axis, N m. */
  readonly leaning: number;
}

/**
 * What statics alone knows of a mast, at heights asked for: wind above and its moment, weight above and its lever.
 * Everything is first order; docs/theory/search.md adds what drift may take off.
 */
export interface Statics {
  readonly z: readonly number[];
  /** Moment at z of the wind above it, N m. */
  readonly moment: Float64Array;
  /** Wind above z, N; what acts at z itself is not above it. */
  readonly shear: Float64Array;
  /** Weight above z, N; as the wind's. */
  readonly weight: Float64Array;
  /** Weight above z times its height over z, N m: what lean turns into moment. */
  readonly lever: Float64Array;
  /** Least and greatest share of weight that the first wind case counts, against still air's: 1 where unfactored. */
  readonly light: number;
  readonly heavy: number;
  /** Least wind per height between neighbouring heights of `z`, N/m. */
  readonly leastWind: Float64Array;
  /** Weight of cables and ladder, N/m. */
  readonly run: number;
  /** Antennas beside the mast. */
  readonly sides: readonly SideLoad[];
}

/** @param heights ascending, the first 0; the foot of every part and every antenna beside the mast is one */
export function statics(
  problem: Problem,
  pack: PackageModel,
  stack: StackModel,
  heights: readonly number[],
): Statics {
  const top = stack.height;
  const model = { package: pack, stack, guys: null };
  const line = lineLoad(problem, model);
  const run = pack.row.runWeight;
  const weightAt = (z: number) => sectionOf(stack, z).lattice.weightPerLength + run;
  const force = topForce(problem, pack, top);
  const topWeight = pack.antennas.reduce((sum, a) => sum + a.weight, 0) + pack.pipeWeight;
  const topLever =
    pack.antennas.reduce((sum, a) => sum + a.weight * a.above, 0) + pack.pipeWeight * 0.5 * pack.exposed;

  const sides = sideForces(problem, pack, top).map(({ z, force }, i) => {
    const { weight, offset } = pack.sides[i];
    // the lowest of heights that rounding alone tells apart: at none of them it is above
    const joint = heights.findIndex((at) => Math.abs(at - z) < HAIR);
    if (joint < 0) throw new Error(`an antenna at ${z} m that is not among the heights of the statics`);
    return { joint, z, force, weight, leaning: weight * offset };
  });

  const n = heights.length;
  const moment = new Float64Array(n);
  const shear = new Float64Array(n);
  const weight = new Float64Array(n);
  const lever = new Float64Array(n);
  const leastWind = new Float64Array(n);
  // downwards from the top, panel by panel: all four carry over a height step
  let m = force.moment;
  let v = force.force;
  let w = topWeight;
  let l = topLever;
  let z = top;
  for (let i = n - 1; i >= 0; i--) {
    const from = heights[i];
    const span = z - from;
    const steps = Math.max(2, 2 * Math.ceil((0.5 * STEPS * span) / top));
    const h = span / steps;
    let dv = 0;
    let dm = 0;
    let dw = 0;
    let dl = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k <= steps && span > 0; k++) {
      // Simpson; every joint is a height of the list, and a panel's ends are asked a hair inside it
      const share = (k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2) * (h / 3);
      const at = from + k * h;
      const inside = Math.min(Math.max(at, from + HAIR), from + span - HAIR);
      const q = line(inside);
      const weightHere = weightAt(inside);
      dv += share * q;
      dm += share * q * (at - from);
      dw += share * weightHere;
      dl += share * weightHere * (at - from);
      least = Math.min(least, q);
    }
    m += v * span + dm;
    v += dv;
    l += w * span + dl;
    w += dw;
    moment[i] = m;
    shear[i] = v;
    weight[i] = w;
    lever[i] = l;
    leastWind[i] = least;
    z = from;
    for (const side of sides)
      if (side.joint === i) {
        v += side.force;
        w += side.weight;
      }
  }
  const [dead] = problem.rules.deadFactors.values;
  return {
    z: heights,
    moment,
    shear,
    weight,
    lever,
    leastWind,
    run,
    sides,
    light: Math.min(1, dead),
    heavy: Math.max(1, dead),
  };
}

function sectionOf(stack: StackModel, z: number): SectionModel {
  let top = 0;
  for (const { section, length } of stack.parts) {
    top += length;
    if (z < top) return section;
  }
  return stack.parts[stack.parts.length - 1].section;
}
