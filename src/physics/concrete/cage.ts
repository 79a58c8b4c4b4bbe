import { type Bar, type BarRun, EARTH_COVER, footingBars, tieBar } from "./bars.ts";

/** Vertical bars inside ties. */
export interface Cage {
  readonly runs: readonly BarRun[];
  readonly bar: Bar;
  readonly count: number;
  /** Middle of the bars from the middle of the section: their ring or, in a square, their two rows. m. */
  readonly ring: number;
  /** Of its ties, at most, m. */
  readonly ties: number;
}

/** Hooks of one tie: two of 6 diameters and their bends, in diameters. ACI 318-19 table 25.3.2, from memory. */
const TIE_ENDS = 20;

/** Ties of #3, ACI 318-19 25.7.2.1: 16 bar diameters, 48 of the tie, the least side. */
const tieSpacing = (bar: Bar, side: number): number =>
  Math.min(16 * bar.diameter, 48 * tieBar.diameter, side);

const tiesAlong = (height: number, spacing: number): number =>
  Math.max(2, Math.ceil((height - 2 * EARTH_COVER) / spacing - 1e-9) + 1);

/**
 * The fewest bars, at least `least` and a multiple of `step`; equals by weight; null where no cage has room. Those that
 * are held at their ends go first.
 */
function fewest(
  area: number,
  least: number,
  step: number,
  fits: (bar: Bar, count: number) => boolean,
  holds: (bar: Bar, count: number) => boolean = () => true,
) {
  const all = footingBars.flatMap((bar) => {
    const count = Math.max(least, step * Math.ceil(area / bar.area / step - 1e-9));
    return fits(bar, count) ? [{ bar, count, held: holds(bar, count) }] : [];
  });
  all.sort(
    (a, b) =>
      Number(b.held) - Number(a.held) || a.count - b.count || a.count * a.bar.mass - b.count * b.bar.mass,
  );
  return all[0] ?? null;
}

const clearEnough = (clear: number, bar: Bar): boolean => clear >= Math.max(0.0381, 1.5 * bar.diameter);

/**
 * Cage of a round pier: at least 6 bars (ACI 318-19 10.7.3.1 asks 4 in ties) and `steel` of the section, no less than
 * the half of one per cent that a section larger than its load wants may have (10.3.1.2, 10.6.1.1).
 * Null where the pier has no room for it.
 */
export function roundCage(diameter: number, depth: number, steel: number): Cage | null {
  const inside = diameter / 2 - EARTH_COVER - tieBar.diameter;
  const ringOf = (bar: Bar) => inside - bar.diameter / 2;
  const picked = fewest((Math.PI / 4) * diameter ** 2 * steel, 6, 1, (bar, count) =>
    clearEnough(2 * ringOf(bar) * Math.sin(Math.PI / count) - bar.diameter, bar),
  );
  if (!picked) return null;
  const { bar, count } = picked;
  // ties further apart than half of the depth, 0.8 of the diameter, hold no shear: 10.7.6.5.2
  const ties = Math.min(tieSpacing(bar, diameter), 0.4 * diameter);
  const tie = 2 * Math.PI * (inside + tieBar.diameter / 2) + TIE_ENDS * tieBar.diameter;
  return {
    bar,
    count,
    ring: ringOf(bar),
    ties,
    runs: [
      { bar, count, length: depth - 2 * EARTH_COVER, where: "upright, in a ring" },
      { bar: tieBar, count: tiesAlong(depth, ties), length: tie, where: "ties" },
    ],
  };
}

/**
 * Cage of a square pedestal: bars in equal numbers on four sides. Null where it has no room.
 * @param hooked does a bar at this spacing, centre to centre, have room for its hook?
 */
export function squareCage(
  side: number,
  height: number,
  steel: number,
  hooked: (bar: Bar, spacing: number) => boolean,
): (Cage & { readonly hooked: boolean }) | null {
  const inside = side / 2 - EARTH_COVER - tieBar.diameter;
  const spacing = (bar: Bar, count: number) => (2 * inside - bar.diameter) / (count / 4);
  const picked = fewest(
    side ** 2 * steel,
    4,
    4,
    (bar, count) => clearEnough(spacing(bar, count) - bar.diameter, bar),
    (bar, count) => hooked(bar, spacing(bar, count)),
  );
  if (!picked || inside <= 0) return null;
  const { bar, count } = picked;
  const tie = 8 * (inside + tieBar.diameter / 2) + TIE_ENDS * tieBar.diameter;
  return {
    bar,
    count,
    ring: inside - bar.diameter / 2,
    ties: tieSpacing(bar, side),
    hooked: hooked(bar, spacing(bar, count)),
    runs: [
      { bar, count, length: Math.max(0, height - 2 * EARTH_COVER), where: "upright, along four sides" },
      { bar: tieBar, count: tiesAlong(height, tieSpacing(bar, side)), length: tie, where: "ties" },
    ],
  };
}

/** Share of shrinkage and temperature bars, ACI 318-19 24.4.3.2. */
const LEAST_SLAB_STEEL = 0.0018;
/** Bars no further apart, m: 18 in., ACI 318-19 24.4.3.3. */
const MOST_SPACING = 0.4572;

/**
 * Bars near the faces of a solid square block: upright bars and rings of the same size, each way the share that
 * holds a slab against shrinkage. Its bending needs none; nothing where it is too narrow for 3 in. of cover.
 */
export function blockBars(width: number, depth: number): readonly BarRun[] {
  const across = width - 2 * EARTH_COVER;
  const along = depth - 2 * EARTH_COVER;
  if (!(across > 0.1 && along > 0.1)) return [];
  const perSide = Math.ceil(across / MOST_SPACING - 1e-9);
  const picked = fewest(width ** 2 * LEAST_SLAB_STEEL, 4 * perSide, 4, (bar, count) =>
    clearEnough((4 * (across - bar.diameter)) / count - bar.diameter, bar),
  );
  if (!picked) return [];
  const { bar, count } = picked;
  // a ring crosses each way twice
  const rings = Math.max(
    Math.ceil((width * depth * LEAST_SLAB_STEEL) / (2 * bar.area) - 1e-9),
    Math.ceil(along / MOST_SPACING - 1e-9) + 1,
  );
  return [
    { bar, count, length: along, where: "upright, along four sides" },
    { bar, count: rings, length: 4 * (across - bar.diameter) + TIE_ENDS * bar.diameter, where: "rings" },
  ];
}

/** Four bars along the edges of a block that bends, inside ties that hold its shear. */
export interface EdgeCage {
  readonly bar: Bar;
  /** Middle of the bars from the middle of the section, along its height and along its width, m. */
  readonly rows: { readonly height: number; readonly width: number };
  /** Of its ties, m: half of the lesser depth to the bars, the furthest at which ties hold shear (9.7.6.2.2). */
  readonly ties: number;
  readonly runs: readonly BarRun[];
}

/** Null where the block has no room for them, or its bars would stand further apart than 18 in. */
export function edgeCage(length: number, height: number, width: number, bar: Bar): EdgeCage | null {
  const off = EARTH_COVER + tieBar.diameter + bar.diameter / 2;
  const rows = { height: height / 2 - off, width: width / 2 - off };
  const [least, most] = [2 * Math.min(rows.height, rows.width), 2 * Math.max(rows.height, rows.width)];
  if (!(clearEnough(least - bar.diameter, bar) && most <= MOST_SPACING && length > 4 * EARTH_COVER))
    return null;
  const ties = (Math.min(height, width) - off) / 2;
  const tie = 2 * (height + width - 4 * EARTH_COVER - 2 * tieBar.diameter) + TIE_ENDS * tieBar.diameter;
  return {
    bar,
    rows,
    ties,
    runs: [
      { bar, count: 4, length: length - 2 * EARTH_COVER, where: "along the four edges" },
      { bar: tieBar, count: tiesAlong(length, ties), length: tie, where: "ties" },
    ],
  };
}
