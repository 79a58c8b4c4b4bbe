import { INCH, PSI, rootOf } from "./bars.ts";

/** The concrete in compression to a depth from its extreme fibre: area and its distance from the middle. */
export interface Compressed {
  readonly area: number;
  readonly centroid: number;
}

/** A doubly symmetric section bent about its middle, by its shape and its bars. m, m2, Pa. */
export interface BarredSection {
  /** From the extreme fibre to the opposite one. */
  readonly depth: number;
  readonly compressed: (depth: number) => Compressed;
  /** Distance of each bar from the middle, towards the compressed side. */
  readonly bars: readonly number[];
  /** Of one bar. */
  readonly barArea: number;
  readonly strength: number;
  readonly barYield: number;
}

const STEEL_MODULUS = 200e9;
/** Crushing strain of concrete, ACI 318-19 22.2.2.1. */
const CRUSHING = 0.003;
/** Strain of the bars beyond yield from which a section is tension-controlled, ACI 318-19 table 21.2.2. */
const BEYOND_YIELD = 0.003;

/**
 * Depth of the pressed concrete, as a share of that to the bars, up to which they have yielded far enough when it
 * crushes that a bent section gives warning. ACI 318-19 table 21.2.2, from memory.
 */
export const greatestBlock = (strength: number, barYield: number): number =>
  (blockFactor(strength) * CRUSHING) / (CRUSHING + BEYOND_YIELD + barYield / STEEL_MODULUS);

/** ACI 318-19 table 22.2.2.4.3. */
function blockFactor(strength: number): number {
  const psi = strength / PSI;
  return Math.min(0.85, Math.max(0.65, 0.85 - (0.05 * (psi - 4000)) / 1000));
}

/**
 * Design moment without thrust, N m: strain compatibility with the rectangular stress block of ACI 318-19 22.2,
 * and the factor of table 21.2.2 for ties. Leaving the thrust of a mast out is on the safe side: it is far below
 * the balanced one.
 */
export function sectionMoment(section: BarredSection): number {
  const { depth, strength, barYield, barArea } = section;
  const beta = blockFactor(strength);
  const state = (neutral: number) => {
    const deep = Math.min(depth, beta * neutral);
    const { area, centroid } = section.compressed(deep);
    let force = 0.85 * strength * area;
    let moment = force * centroid;
    let tension = 0;
    for (const bar of section.bars) {
      const from = depth / 2 - bar;
      const strain = (CRUSHING * (neutral - from)) / neutral;
      const stress = Math.max(-barYield, Math.min(barYield, strain * STEEL_MODULUS));
      // a bar inside the stress block stands in place of its concrete
      const pull = barArea * (stress - (from < deep ? 0.85 * strength : 0));
      force += pull;
      moment += pull * bar;
      tension = Math.max(tension, -strain);
    }
    return { force, moment, tension };
  };
  let low = 1e-6 * depth;
  let high = depth;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (state(middle).force < 0) low = middle;
    else high = middle;
  }
  const { moment, tension } = state(high);
  const yields = barYield / STEEL_MODULUS;
  const factor = Math.min(0.9, Math.max(0.65, 0.65 + (0.25 * (tension - yields)) / BEYOND_YIELD));
  return Math.max(0, factor * moment);
}

/** A round section with a ring of bars, however it is turned: the weaker of a bar or a gap at the extreme. */
export function roundMoment(
  diameter: number,
  ring: number,
  count: number,
  barArea: number,
  strength: number,
  barYield: number,
): number {
  const radius = diameter / 2;
  const compressed = (depth: number): Compressed => {
    const half = Math.acos(Math.max(-1, Math.min(1, 1 - depth / radius)));
    const area = radius ** 2 * (half - Math.sin(half) * Math.cos(half));
    return { area, centroid: area > 0 ? (2 * (radius * Math.sin(half)) ** 3) / (3 * area) : radius };
  };
  const turned = (start: number) =>
    sectionMoment({
      depth: diameter,
      compressed,
      bars: Array.from({ length: count }, (_, i) => ring * Math.cos(start + (2 * Math.PI * i) / count)),
      barArea,
      strength,
      barYield,
    });
  return Math.min(turned(0), turned(Math.PI / count));
}

/**
 * A rectangular section with its bars in two equal rows, those between them left out.
 * @param depth across which it bends @param row of the middle of each row from the section's
 */
export function rectangleMoment(
  { depth, breadth }: { readonly depth: number; readonly breadth: number },
  row: number,
  perRow: number,
  barArea: number,
  strength: number,
  barYield: number,
): number {
  return sectionMoment({
    depth,
    compressed: (deep) => ({ area: breadth * deep, centroid: (depth - deep) / 2 }),
    bars: [row, -row],
    barArea: perRow * barArea,
    strength,
    barYield,
  });
}

/**
 * Design shear of a section as wide as `breadth` and bent over `depth`, N. ACI 318-19 22.5.5.1 (a) and (c), 22.5.8.5,
 * from memory. Ties further apart than half of the depth (9.7.6.2.2) hold nothing of it.
 * @param pulled area of the bars on the pulled side, m2 @param tieArea both legs of a tie, m2 @param spacing of the ties, m
 */
export function tiedShear(
  { depth, breadth }: { readonly depth: number; readonly breadth: number },
  pulled: number,
  tieArea: number,
  spacing: number,
  strength: number,
  barYield: number,
): number {
  const web = breadth * depth;
  const root = PSI * rootOf(strength);
  const tied = spacing <= (depth / 2) * (1 + 1e-9);
  // 9.6.3.4
  const least = (Math.max(0.75 * root, 50 * PSI) * breadth * spacing) / barYield;
  const sizeEffect = Math.min(1, Math.sqrt(2 / (1 + depth / (10 * INCH))));
  const plain = Math.min(5, 8 * sizeEffect * Math.cbrt(pulled / web)) * root * web;
  const concrete = tied && tieArea >= least ? Math.max(2 * root * web, plain) : plain;
  const ties = tied
    ? Math.min((tieArea * Math.min(barYield, 60_000 * PSI) * depth) / spacing, 8 * root * web)
    : 0;
  return 0.75 * (concrete + ties);
}

/**
 * Design shear of a round section, N: width its diameter, depth 0.8 of it (ACI 318-19 22.5.2.2, from memory), half of
 * the bars pulled.
 */
export const roundShear = (
  diameter: number,
  barArea: number,
  tieArea: number,
  spacing: number,
  strength: number,
  barYield: number,
): number =>
  tiedShear({ depth: 0.8 * diameter, breadth: diameter }, barArea / 2, tieArea, spacing, strength, barYield);
