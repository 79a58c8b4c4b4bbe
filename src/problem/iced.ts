import type { RuleSet, Strand } from "../model/catalog.ts";
import type { IceFactors } from "../model/rule-set.ts";
import type { Study, WindGivens } from "../model/study.ts";
import { iceAt, icedLattice, iceWeight } from "../physics/wind/ice.ts";
import { risingGround, type WindAction, windAction } from "../physics/wind/wind-action.ts";
import { guyPressure } from "./guy-pressure.ts";
import { latticeDragWidth } from "./lattice-drag-width.ts";
import { pressureTable, remembered } from "./pressure-table.ts";
import type { AntennaModel, PackageModel, SectionModel } from "./types.ts";

/**
 * Members of an antenna whose iced size its maker does not state, and of a ladder: an inch wide (common practice, no
 * source). They grow by the ice all round.
 */
const ANTENNA_TUBE = 0.0254;

/** What ice does to the things that stand in it, at the thickness of one mast top. Factors are inside. */
export interface Iced {
  /** Pa at z, and on a guy between two heights. */
  readonly pressure: (z: number) => number;
  readonly guyPressure: (from: number, to: number) => number;
  /** Drag width, m2/m, and ice, N/m. */
  section(section: SectionModel): { readonly dragWidth: number; readonly weight: number };
  /** Cables and ladder. */
  run(pack: PackageModel): { readonly dragWidth: number; readonly weight: number };
  pipe(pack: PackageModel): { readonly dragWidth: number; readonly weight: number };
  /** Drag area, m2, and ice, N. */
  antenna(antenna: AntennaModel): { readonly dragArea: number; readonly weight: number };
  /** Drag width, m, and ice, N/m. */
  strand(strand: Strand): { readonly dragWidth: number; readonly weight: number };
}

/** The wind that blows while the ice hangs, on the study's own basis. */
export const windInIce = (wind: WindGivens, ice: NonNullable<Study["site"]["ice"]>): WindGivens => {
  if (wind.basis === "uniform") return { ...wind, pressure: ice.pressure ?? 0 };
  if (wind.basis === "en1991") return { ...wind, basicSpeed: ice.speed ?? 0 };
  return { ...wind, speed: ice.speed ?? 0 };
};

/** Ice on a mast of a given height, in one of the rule set's combinations: `rules.iced` where none is named. */
export type Icing = (height: number, factors?: IceFactors) => Iced;

/**
 * How ice is counted; null where the study states none. One answer is kept a height and combination.
 * @param top of everything that wind may blow on, m
 * @param stand of the mast's foot above its footing, m
 */
export function icing(study: Study, rules: RuleSet, top: number, stand: number): Icing | null {
  const { ice, wind } = study.site;
  if (!ice) return null;
  const action = windAction(windInIce(wind, ice));
  const pressure = pressureTable((z) => action.pressure(z + stand), top);
  const onGuys = remembered((from, to) => guyPressure(pressure, from, to));
  // what the hill adds is most at the ground; ASCE 7-16 equation 10.4-5. Other bases know no such growth.
  const mapped = wind.basis === "asce7-16" || wind.basis === "asce7-22";
  const growth = ice.importance * (mapped ? risingGround(wind).factor(0) ** 0.35 : 1);
  const kept = new Map<IceFactors, Map<number, Iced>>();
  return (height, factors = rules.iced) => {
    let heights = kept.get(factors);
    if (!heights) kept.set(factors, (heights = new Map()));
    let iced = heights.get(height);
    if (!iced) {
      const factor = (action.level === "service" ? factors.service : undefined) ?? factors.wind;
      iced = {
        ...icedAt(iceAt(growth * ice.thickness, height), action, factors),
        pressure: (z) => factor * pressure(z),
        guyPressure: (from, to) => factor * onGuys(from, to),
      };
      heights.set(height, iced);
    }
    return iced;
  };
}

function icedAt(
  thickness: number,
  action: WindAction,
  { ice }: IceFactors,
): Omit<Iced, "pressure" | "guyPressure"> {
  const round = (diameter: number) => ({
    dragWidth: diameter > 0 ? (diameter + 2 * thickness) * action.roundFactor : 0,
    weight: diameter > 0 ? ice * iceWeight(diameter, thickness) : 0,
  });
  const growth = (ANTENNA_TUBE + 2 * thickness) / ANTENNA_TUBE;
  /** Ice on inch-wide members that show this area. */
  const onTubes = (area: number) => (ice * iceWeight(ANTENNA_TUBE, thickness) * area) / ANTENNA_TUBE;
  const sections = new Map<SectionModel, { dragWidth: number; weight: number }>();
  return {
    section(section) {
      let known = sections.get(section);
      if (!known) {
        const grown = icedLattice(section.row, thickness);
        known = {
          dragWidth: latticeDragWidth(action, section.row.legs, grown),
          weight: ice * grown.weight,
        };
        sections.set(section, known);
      }
      return known;
    },
    run({ row }) {
      const cable = round(row.cableWidth);
      return {
        dragWidth: cable.dragWidth + row.ladder * growth * action.areaFactor.flat,
        weight: cable.weight + onTubes(row.ladder),
      };
    },
    pipe: (pack) => round(pack.pipe.diameter),
    antenna: ({ area, dragArea, icedDragArea, icedWeight }) => ({
      dragArea: icedDragArea ?? dragArea * growth,
      weight: icedWeight === undefined ? onTubes(area) : ice * icedWeight,
    }),
    strand: (strand) => round(3 * strand.wire),
  };
}
