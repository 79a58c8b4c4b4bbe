const INCH = 0.0254;
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

/** Concrete over bars cast against earth: 3 in., ACI 318-19 table 20.5.1.3.1. */
export const EARTH_COVER = 3 * INCH;
