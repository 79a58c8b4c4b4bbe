import {
  type Bar,
  type BarRun,
  developed,
  developmentLength,
  EARTH_COVER,
  fewestBars,
  hookLength,
} from "../../physics/concrete/bars.ts";
import { squareCage } from "../../physics/concrete/cage.ts";
import { rectangleMoment } from "../../physics/concrete/section-strength.ts";
import type { Slab } from "../../physics/concrete/slab.ts";
import type { PadGeometry } from "../../physics/ground/pad.ts";

/** Bars of a pad and what they make of it; `uncovered` where 3 in. of concrete leave no room for them. */
export interface PadBars {
  readonly slab: Slab;
  readonly runs: readonly BarRun[];
  /** Design moment of the pedestal, N m; 0 where no cage of it has room for its hooks in the slab. */
  readonly pedestalMoment: number;
  /** "7 bars #5 each way below". */
  readonly words: string;
}

/** Slabs: bars no further apart than 18 in. or three thicknesses, ACI 318-19 7.7.2.3. */
const MOST_SPACING = 0.4572;
const TWELVE_INCHES = 0.3048;

/** One mat of a square slab: bars of one size, as many each way. */
interface Mat {
  readonly bar: Bar | null;
  readonly count: number;
  /** Of one direction, as far as its bars develop, m2. */
  readonly area: number;
}

/**
 * The fewest bars that make up a mat; none where 3 in. of concrete leave no room. A bar that is too short to develop
 * in `room` counts in proportion, and for nothing under 12 in. (ACI 318-19 25.4.10.1, 25.4.2.1).
 */
export function matOf(
  slab: {
    readonly width: number;
    readonly thickness: number;
    /** Share of the section. */
    readonly steel: number;
    /** From where the mat bends most to the end of its bars, m. */
    readonly room: number;
    readonly top: boolean;
  },
  strength: number,
  barYield: number,
): Mat {
  const { width, thickness, steel, room } = slab;
  // a bar with more than 12 in. of fresh concrete under it holds less
  const top = slab.top && thickness - EARTH_COVER > TWELVE_INCHES;
  const needs = (bar: Bar) => developmentLength(bar, strength, barYield, top);
  const picked = fewestBars(
    steel * width * thickness,
    width,
    Math.min(3 * thickness, MOST_SPACING),
    (bar) => needs(bar) <= room,
  );
  if (!picked) return { bar: null, count: 0, area: 0 };
  const { bar, count } = picked;
  return { bar, count, area: count * bar.area * developed(room, needs(bar)) };
}

/** Both ways of a mat as the dig sheet lists them. */
export const matRun = ({ bar, count }: Mat, width: number, where: string): BarRun[] =>
  bar
    ? [
        {
          bar,
          count: 2 * count,
          length: width - 2 * EARTH_COVER,
          where: `${where}, both ways together`,
        },
      ]
    : [];

/** The mats of a pad and the cage of its pedestal. */
export function padBars(
  pad: PadGeometry & { readonly steel: number; readonly mats: number },
  cage: number,
  strength: number,
  barYield: number,
): PadBars {
  const { width, thickness, pedestal } = pad;
  const mat = (top: boolean) =>
    matOf({ ...pad, room: (width - pedestal) / 2 - EARTH_COVER, top }, strength, barYield);
  const below = mat(false);
  const above = pad.mats > 1 ? mat(true) : null;
  const thickest = Math.max(below.bar?.diameter ?? 0, above?.bar?.diameter ?? 0);

  // a hook that is too short holds nothing: ACI 318-19 25.4.10.2 (d) lets no hooked bar develop in part
  const room = thickness - EARTH_COVER - 2 * thickest;
  const upright = squareCage(
    pedestal,
    pad.depth,
    cage,
    (bar, spacing) => hookLength(bar, strength, barYield, spacing) <= room * (1 + 1e-9),
  );
  const pedestalMoment = upright?.hooked
    ? rectangleMoment(
        { depth: pedestal, breadth: pedestal },
        upright.ring,
        upright.count / 4 + 1,
        upright.bar.area,
        strength,
        barYield,
      )
    : 0;
  const words = (one: Mat) => `${one.count} bars ${one.bar?.name ?? ""} each way`;
  return {
    slab: {
      width,
      thickness,
      pedestal,
      barDepth: Math.max(1e-3, thickness - EARTH_COVER - 1.5 * thickest),
      bottomArea: below.area,
      topArea: above?.area ?? 0,
      strength,
      barYield,
    },
    runs: [
      ...matRun(below, width, "below"),
      ...(above ? matRun(above, width, "above") : []),
      ...(upright?.runs ?? []),
    ],
    pedestalMoment,
    words:
      below.area === 0
        ? `${words(below)} below, too short to hold: as plain concrete`
        : above
          ? `${words(below)} below, ${words(above)} above`
          : `${words(below)} below, none above`,
  };
}
