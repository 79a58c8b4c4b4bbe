import { INCH, LOST, PLAIN, PSI, rootOf } from "./bars.ts";
import { greatestBlock } from "./section-strength.ts";

/** A square pad under a square pedestal, with the bars of its mats. m, m2, Pa. */
export interface Slab {
  readonly width: number;
  readonly thickness: number;
  readonly pedestal: number;
  /** Underside (and top) to the middle of the upper (lower) layer of a mat's two: both ways count as the worse. */
  readonly barDepth: number;
  /**
   * Bars of one direction that develop by the pedestal's face, m2; 0 above where the pad has no upper mat, and below
   * where they are too short: then the slab is plain concrete.
   */
  readonly bottomArea: number;
  readonly topArea: number;
  readonly strength: number;
  readonly barYield: number;
}

/** What presses on a slab: the mast's thrust and moment on it, and how the soil answers. Service level. */
export interface SlabLoads {
  /** Thrust of the mast, N, and its moment at the top of the slab, N m. */
  readonly compression: number;
  readonly moment: number;
  /** On the soil, N, and its eccentricity, m. */
  readonly normal: number;
  readonly eccentricity: number;
  /** Concrete and soil above the underside, Pa: what the soil's pressure was reckoned with, and all of it, dry. */
  readonly counted: number;
  readonly weight: number;
}

export interface SlabStrength {
  /** N m over the whole width at the pedestal's face. */
  readonly bottomMoment: number;
  readonly topMoment: number;
  /** N over the whole width, `barDepth` from the face. */
  readonly shear: number;
  /** Pa on the perimeter half of `barDepth` from the pedestal. */
  readonly punching: number;
}

/** Plain footings are no thinner, m: 8 in., ACI 318-19 14.3.2.1. */
const LEAST_PLAIN = 8 * INCH;

const root = (strength: number) => PSI * rootOf(strength);

/**
 * Flexure, ACI 318-19 22.3: 0.9 As fy (d - a/2). No strength where so many bars crush the concrete before they have
 * stretched: 8.3.3.1 allows tension-controlled slabs alone, and the 0.9 is theirs (table 21.2.2).
 */
function flexure({ width, barDepth, strength, barYield }: Slab, area: number): number {
  const block = (area * barYield) / (0.85 * strength * width);
  if (block > greatestBlock(strength, barYield) * barDepth) return 0;
  return 0.9 * area * barYield * (barDepth - block / 2);
}

/** A slab whose bars are too short to count: plain concrete, as it is until it cracks. ACI 318-19 14.5.2.1, 14.5.5.1. */
function plainStrength({ width, thickness, strength }: Slab): SlabStrength {
  const stress = PLAIN * root(strength);
  const sound = thickness < LEAST_PLAIN ? 0 : thickness - LOST;
  const moment = (stress * 5 * width * sound ** 2) / 6;
  return {
    bottomMoment: moment,
    topMoment: moment,
    shear: (stress * 4 * width * sound) / 3,
    punching: sound > 0 ? (stress * 8) / 3 : 0,
  };
}

/** Design strengths, the code's factors in them. ACI 318-19 chapters 13, 14 and 22. docs/theory/concrete.md. */
export function slabStrength(slab: Slab): SlabStrength {
  if (slab.bottomArea === 0) return plainStrength(slab);
  const { width, pedestal, barDepth, bottomArea, strength, barYield } = slab;
  // 22.5.5.1 (c) without the size effect, 13.2.6.2
  const oneWay =
    Math.min(5, 8 * Math.cbrt(bottomArea / (width * barDepth))) * root(strength) * width * barDepth;
  // 22.6.5.2; the pedestal is square, so 2 + 4/beta never governs
  const perimeter = 4 * (pedestal + barDepth);
  const twoWay = Math.min(4, 2 + (40 * barDepth) / perimeter) * root(strength);
  // 8.6.1.2: beyond half of that the mat across the pedestal must be as strong
  const bound = ((bottomArea / width) * 40 * barYield) / (5 * perimeter);
  return {
    bottomMoment: flexure(slab, bottomArea),
    topMoment: flexure(slab, slab.topArea),
    shear: 0.75 * oneWay,
    punching: 0.75 * Math.min(twoWay, Math.max(2 * root(strength), bound)),
  };
}

/** Pressure that falls from the loaded edge: `edge - fall x`, as far as `contact`. Per area, Pa, Pa/m, m. */
function pressure(slab: Slab, { normal, eccentricity }: SlabLoads) {
  const { width } = slab;
  const mean = normal / width ** 2;
  if (eccentricity <= width / 6) {
    const slope = (12 * mean * eccentricity) / width ** 2;
    return { edge: mean + (slope * width) / 2, fall: slope, contact: width };
  }
  const contact = 3 * (width / 2 - eccentricity);
  const edge = (2 * normal) / (contact * width);
  return { edge, fall: edge / contact, contact };
}

const FAILS = Number.POSITIVE_INFINITY;

/** Moment of the loaded side's cantilever about the pedestal's face, less the weight on it, N m, service level. */
export function bottomDemand(slab: Slab, loads: SlabLoads): number {
  const out = (slab.width - slab.pedestal) / 2;
  if (!(loads.eccentricity < slab.width / 2)) return FAILS;
  const { edge, fall, contact } = pressure(slab, loads);
  const u = Math.min(out, contact);
  const up = edge * (out * u - u ** 2 / 2) - fall * ((out * u ** 2) / 2 - u ** 3 / 3);
  return Math.max(0, slab.width * (up - (loads.counted * out ** 2) / 2));
}

/** Moment that weight bends the lifted side down by, about the pedestal's face, N m, service level. */
export function topDemand(slab: Slab, loads: SlabLoads): number {
  const { width } = slab;
  const out = (width - slab.pedestal) / 2;
  if (!(loads.eccentricity < width / 2)) return FAILS;
  const { edge, fall, contact } = pressure(slab, loads);
  const least = edge - fall * width;
  // the soil that still touches holds a part of it up
  if (contact >= width)
    return Math.max(0, width * (((loads.counted - least) * out ** 2) / 2 - (fall * out ** 3) / 6));
  const up = (fall * Math.max(0, out - (width - contact)) ** 3) / 6;
  return Math.max(0, width * ((loads.weight * out ** 2) / 2 - up));
}

/** Shear at `barDepth` from the face, the worse of both sides, N, service level. */
export function shearDemand(slab: Slab, loads: SlabLoads): number {
  const beyond = (slab.width - slab.pedestal) / 2 - slab.barDepth;
  if (!(loads.eccentricity < slab.width / 2)) return FAILS;
  if (beyond <= 0) return 0;
  const { edge, fall, contact } = pressure(slab, loads);
  const u = Math.min(beyond, contact);
  const up = edge * u - (fall * u ** 2) / 2 - loads.counted * beyond;
  return slab.width * Math.max(up, loads.weight * beyond, 0);
}

/** Dead weight of the combinations that wind leads in, ASCE 7-05 2.3.2 and 7-16 2.3.1: 0.9 and 1.2, from memory. */
const DEAD_WITH_WIND = [0.9, 1.2] as const;
/**
 * Bearing on three twentieths of the width, of it: beyond it the pad tips, which overturning asks, and its concrete bears
 * what is left on a strip that narrows, so that more wind never uses it less nor the same.
 */
const TIPPING = 0.45;
const tipped = (share: number): number =>
  share <= TIPPING ? share : 0.5 - ((0.5 - TIPPING) * TIPPING) / share;

/**
 * A demand at strength level. All of the service state times the factor; and the wind alone grown by it, over dead
 * weight that did not: the soil then bears on less of the base, nearer to its edge, and bends the slab more.
 */
export function atStrength(
  demand: (slab: Slab, loads: SlabLoads) => number,
  slab: Slab,
  loads: SlabLoads,
  factor: number,
): number {
  let most = factor * demand(slab, loads);
  if (factor === 1 || loads.eccentricity === 0 || most === FAILS) return most;
  for (const dead of DEAD_WITH_WIND) {
    const grown = tipped(((factor / dead) * loads.eccentricity) / slab.width);
    // hot: named one by one, for a spread takes six times as long
    const state: SlabLoads = {
      compression: loads.compression,
      moment: loads.moment,
      normal: dead * loads.normal,
      eccentricity: Math.max(loads.eccentricity, grown * slab.width),
      counted: dead * loads.counted,
      weight: dead * loads.weight,
    };
    most = Math.max(most, demand(slab, state));
  }
  return most;
}

/**
 * Shear stress round the pedestal, Pa, service level: the thrust, nothing of it taken off for the soil inside, and
 * 0.4 of the moment by eccentric shear, ACI 318-19 8.4.4.2, at the corner of the way round where wind on the diagonal
 * adds that of both faces.
 */
export function punchingDemand(slab: Slab, { compression, moment }: SlabLoads): number {
  const { barDepth } = slab;
  const side = slab.pedestal + barDepth;
  if (side >= slab.width) return 0;
  const polar = (2 / 3) * barDepth * side ** 3 + (side * barDepth ** 3) / 6;
  return (
    Math.abs(compression) / (4 * side * barDepth) + (0.4 * Math.abs(moment) * side) / (Math.SQRT2 * polar)
  );
}
