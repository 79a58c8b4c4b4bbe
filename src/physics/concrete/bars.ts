export const INCH = 0.0254;
/** Pounds per square inch, Pa: formulas of ACI 318 take strengths in them. */
export const PSI = 6894.757;
/** Root of f'c, psi, f'c in Pa: no more than 100 psi counts. ACI 318-19 22.5.3.1, 22.6.3.1, 25.4.1.4, from memory. */
export const rootOf = (strength: number): number => Math.min(100, Math.sqrt(strength / PSI));
const POUND_PER_FOOT = 0.45359237 / 0.3048;

/** A deformed bar. m, m2, kg/m. */
export interface Bar {
  /** "#5": eighths of an inch. */
  readonly name: string;
  readonly diameter: number;
  readonly area: number;
  readonly mass: number;
}

/** [size, diameter in., area in2, weight lb/ft]: ASTM A615/A615M table 1. */
const table = [
  [3, 0.375, 0.11, 0.376],
  [4, 0.5, 0.2, 0.668],
  [5, 0.625, 0.31, 1.043],
  [6, 0.75, 0.44, 1.502],
  [7, 0.875, 0.6, 2.044],
  [8, 1, 0.79, 2.67],
  [9, 1.128, 1, 3.4],
  [10, 1.27, 1.27, 4.303],
  [11, 1.41, 1.56, 5.313],
] as const;

/** Bars as rolled, smallest first. ASTM A615/A615M table 1. */
export const bars: readonly Bar[] = table.map(([size, diameter, area, weight]) => ({
  name: `#${size}`,
  diameter: diameter * INCH,
  area: area * INCH ** 2,
  mass: weight * POUND_PER_FOOT,
}));

export const [tieBar] = bars;
/** What footings here are built of: #4 to #8, which two hands can place. */
export const footingBars: readonly Bar[] = bars.slice(1, 6);

/** Alike bars of one cut length. */
export interface BarRun {
  readonly bar: Bar;
  readonly count: number;
  /** Of one, m. */
  readonly length: number;
  /** "bottom, each way". */
  readonly where: string;
}

/** Mass of all runs, kg. */
export const barMass = (runs: readonly BarRun[]): number =>
  runs.reduce((sum, { bar, count, length }) => sum + count * length * bar.mass, 0);

/** Factor of plain concrete, ACI 318-19 table 21.2.1, and the thickness that soil may have spoilt of it, 14.5.1.7. */
export const PLAIN = 0.6;
export const LOST = 2 * INCH;

/** Concrete over bars cast against earth: 3 in., ACI 318-19 table 20.5.1.3.1. */
export const EARTH_COVER = 3 * INCH;

/** No straight bar develops in less, m: 12 in., ACI 318-19 25.4.2.1 (b). */
const LEAST_DEVELOPMENT = 12 * INCH;

/**
 * Development of a straight bar in tension, m. ACI 318-19 25.4.2.3, from memory: clear spacing of at least two bars
 * (no ties cross them), cover of one, uncoated, normal weight.
 * @param strength f'c, Pa @param top more than 12 in. of fresh concrete below the bar
 */
export function developmentLength(bar: Bar, strength: number, barYield: number, top: boolean): number {
  // the grade's factor, table 25.4.2.5: 1 to grade 60, 1.15 to 80, 1.3 above
  const grade = barYield > 552e6 ? 1.3 : barYield > 415e6 ? 1.15 : 1;
  const divisor = bar.diameter < 0.8 * INCH ? 25 : 20;
  const length = (((barYield / PSI) * (top ? 1.3 : 1) * grade) / (divisor * rootOf(strength))) * bar.diameter;
  return Math.max(length, LEAST_DEVELOPMENT);
}

/**
 * Share of its strength that a straight bar develops in `room`: in proportion (ACI 318-19 25.4.10.1), but nothing in less
 * than 12 in., which that clause does not reduce (25.4.2.1 (b)); from memory.
 * @param needs its development length, m
 */
export const developed = (room: number, needs: number): number =>
  room < LEAST_DEVELOPMENT * (1 - 1e-9) ? 0 : Math.min(1, room / needs);

/**
 * Development of a hooked bar in tension, m. ACI 318-19 25.4.3.1, from memory: wide side cover; bars nearer to each
 * other than 6 diameters, with no ties round their hooks, take 1.6 times as much (25.4.3.2).
 * @param spacing centre to centre, m
 */
export function hookLength(bar: Bar, strength: number, barYield: number, spacing: number): number {
  const psi = strength / PSI;
  const inches = bar.diameter / INCH;
  const crowded = spacing < 6 * bar.diameter * (1 - 1e-9) ? 1.6 : 1;
  const length =
    (((barYield / PSI) * Math.min(1, psi / 15_000 + 0.6) * crowded) / (55 * rootOf(strength))) *
    inches ** 1.5 *
    INCH;
  return Math.max(length, 8 * bar.diameter, 6 * INCH);
}

/**
 * The fewest bars of one size that make up an area across a width, no further apart than `spacing` and not closer
 * than an inch (ACI 318-19 25.2.1) or two of their diameters, which their development asks; equals by weight. Those
 * that develop within `anchored` go first. Null where none fits.
 */
export function fewestBars(
  area: number,
  width: number,
  spacing: number,
  develops: (bar: Bar) => boolean,
): { readonly bar: Bar; readonly count: number } | null {
  const across = width - 2 * EARTH_COVER;
  const fitting = footingBars.flatMap((bar) => {
    const gaps = Math.ceil((across - bar.diameter) / spacing - 1e-9);
    const count = Math.max(2, Math.ceil(area / bar.area - 1e-9), gaps + 1);
    const clear = (across - count * bar.diameter) / (count - 1);
    return clear >= Math.max(INCH, 2 * bar.diameter) ? [{ bar, count, holds: develops(bar) }] : [];
  });
  fitting.sort(
    (a, b) =>
      Number(b.holds) - Number(a.holds) || a.count - b.count || a.count * a.bar.mass - b.count * b.bar.mass,
  );
  return fitting[0] ?? null;
}
