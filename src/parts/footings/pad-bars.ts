import {
  type Bar,
  type BarRun,
  developmentLength,
  EARTH_COVER,
  fewestBars,
  hookLength,
} from "../../physics/concrete/bars.ts";
import { squareCage } from "../../physics/concrete/cage.ts";
import { squareMoment } from "../../physics/concrete/section-strength.ts";
import type { Slab } from "../../physics/concrete/slab.ts";
import type { PadGeometry } from "../../physics/ground/pad.ts";

/** Bars of a pad and what they make of it; `uncovered` where 3 in. of concrete leave no room for them. */
export interface PadBars {
  readonly slab: Slab;
  readonly runs: readonly BarRun[];
  /** Design moment of the pedestal, N m. */
  readonly pedestalMoment: number;
  /** "7 bars #5 each way below". */
  readonly words: string;
}

/** Slabs: bars no further apart than 18 in. or three thicknesses, ACI 318-19 7.7.2.3. */
const MOST_SPACING = 0.4572;
const TWELVE_INCHES = 0.3048;

/**
 * The fewest bars that make up the mats and the pedestal's cage. A bar that is too short to develop by the face
 * counts in proportion (ACI 318-19 25.4.10.1).
 */
export function padBars(
  pad: PadGeometry & { readonly steel: number; readonly mats: number },
  cage: number,
  strength: number,
  barYield: number,
): PadBars {
  const { width, thickness, pedestal } = pad;
  const room = (width - pedestal) / 2 - EARTH_COVER;
  const mat = (top: boolean) => {
    const needs = (bar: Bar) => developmentLength(bar, strength, barYield, top);
    const picked = fewestBars(
      pad.steel * width * thickness,
      width,
      Math.min(3 * thickness, MOST_SPACING),
      (bar) => needs(bar) <= room,
    );
    if (!picked) return { area: 0, bar: null, count: 0 };
    const { bar, count } = picked;
    return { area: count * bar.area * Math.max(0, Math.min(1, room / needs(bar))), bar, count };
  };
  const below = mat(false);
  // a bar with more than 12 in. of fresh concrete under it holds less
  const above = pad.mats > 1 ? mat(thickness - EARTH_COVER > TWELVE_INCHES) : null;
  const run = ({ bar, count }: { bar: Bar | null; count: number }, where: string): BarRun[] =>
    bar ? [{ bar, count: 2 * count, length: width - 2 * EARTH_COVER, where }] : [];
  const thickest = Math.max(below.bar?.diameter ?? 0, above?.bar?.diameter ?? 0);

  const upright = squareCage(pedestal, pad.depth, cage);
  // hooked on the lower mat; a slab too thin for the hook lets it bear less
  const hooks = upright
    ? Math.max(0, thickness - EARTH_COVER - 2 * thickest) / hookLength(upright.bar, strength, barYield)
    : 0;
  const pedestalMoment = upright
    ? squareMoment(
        pedestal,
        upright.ring,
        upright.count / 4 + 1,
        upright.bar.area,
        strength,
        barYield * Math.min(1, hooks),
      )
    : 0;
  const words = (one: { bar: Bar | null; count: number }) =>
    `${one.count} bars ${one.bar?.name ?? ""} each way`;
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
      ...run(below, "below, both ways together"),
      ...(above ? run(above, "above, both ways together") : []),
      ...(upright?.runs ?? []),
    ],
    pedestalMoment,
    words: above ? `${words(below)} below, ${words(above)} above` : `${words(below)} below, none above`,
  };
}
