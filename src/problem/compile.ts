import { axisValues } from "../model/axis.ts";
import type { Catalog, Section } from "../model/catalog.ts";
import type { Study } from "../model/study.ts";
import { anchorParts, footingParts } from "../parts/index.ts";
import { line } from "../parts/price.ts";
import type { Ground } from "../parts/types.ts";
import { latticeProperties, STEEL_UNIT_WEIGHT } from "../physics/steel/lattice.ts";
import { pipeMoment } from "../physics/steel/pipe.ts";
import { roundProperties } from "../physics/steel/round.ts";
import { type WindAction, windAction } from "../physics/wind/wind-action.ts";
import { icing } from "./iced.ts";
import { stacksOf } from "./stacks.ts";
import type { PackageModel, Problem, SectionModel } from "./types.ts";

/** Step of the pressure table, m: its chords stay within a millionth of the power law. */
const TABLE_STEP = 0.02;
/** Pipe that stands above its highest antenna, m: half a foot for the clamp (common practice, no source). */
const PIPE_END = 0.1524;

/** Makes a study ready to compute with. Both come from the parser: every key resolves. */
export function compile(study: Study, catalog: Catalog): Problem {
  const rules = find(catalog.rules, study.rules.set);
  const soil = find(catalog.soils, study.site.soil);
  const wind = windAction(study.site.wind);
  const windFactor = rules.windFactor[wind.level];
  const ground: Ground = {
    soil,
    rules,
    prices: catalog.prices,
    givens: {
      concreteUnitWeight: rules.concrete.unitWeight,
      upliftAngle: rules.upliftAngle.degrees,
      lateralMultiplier: rules.doubleLateral ? 2 : 1,
      waterTable: study.site.waterTable,
      deadShare: rules.ownWeight.share,
    },
    frostDepth: study.site.frostDepth,
    greatestDig: study.site.greatestDig,
    waterTable: study.site.waterTable ?? Number.POSITIVE_INFINITY,
  };
  const sections = new Map(catalog.sections.map((row) => [row.id, sectionModel(row, wind)]));
  const chosen = pick(catalog.sections, study.parts.sections).map(
    (row) => sections.get(row.id) as SectionModel,
  );
  const heights = axisValues(study.wishes.height);
  const packages = study.wishes.packages.map((row) => packageModel(row, catalog, wind));
  const highest = Math.max(...heights) + Math.max(...packages.map((p) => p.exposed));
  const byPrice = <T extends { cents: number; takeOff: { concrete: number }; choice: unknown }>(a: T, b: T) =>
    a.cents - b.cents ||
    a.takeOff.concrete - b.takeOff.concrete ||
    (JSON.stringify(a.choice) < JSON.stringify(b.choice) ? -1 : 1);
  return {
    study,
    catalog,
    rules,
    soil,
    prices: catalog.prices,
    ground,
    pressure: table((z) => wind.pressure(z) * windFactor, highest),
    roundFactor: wind.roundFactor,
    iced: icing(study, rules),
    sections,
    packages,
    heights,
    stacks: heights.map((height) => stacksOf(height, chosen, study.parts.mixedStacks)),
    strands: pick(catalog.strand, study.parts.strands),
    levelHeights: axisValues(study.parts.levelHeights),
    radii: axisValues(study.parts.radius),
    rotations: axisValues(study.parts.rotation),
    anchors: pick(catalog.anchors, study.parts.anchors)
      .flatMap((row) => anchorParts(row, ground))
      .sort(byPrice),
    footings: pick(catalog.footings, study.parts.footings)
      .flatMap((row) => footingParts(row, ground))
      .sort(byPrice),
    allowed: 1 / (1 + study.wishes.margin),
    assumptions: assumptions(study),
  };
}

const find = <T extends { id: string }>(rows: readonly T[], id: string): T => {
  const row = rows.find((candidate) => candidate.id === id);
  if (!row) throw new Error(`no row "${id}" in the catalog; the parser should have refused the study`);
  return row;
};

const pick = <T extends { id: string }>(rows: readonly T[], ids: "all" | readonly string[]): T[] =>
  ids === "all" ? [...rows] : ids.map((id) => find(rows, id));

function sectionModel(row: Section, wind: WindAction): SectionModel {
  const lattice = latticeProperties(row);
  const face = (direction: "face" | "diagonal") =>
    wind.latticeFactor({ legs: row.legs, solidity: lattice.solidity, members: "round", direction });
  // a mast may be turned any way under its guys: the worst direction counts in all
  const drag = row.legs === 4 ? Math.max(face("face"), face("diagonal")) : face("face");
  return { row, lattice, dragWidth: drag * lattice.faceArea };
}

function packageModel(
  row: Study["wishes"]["packages"][number],
  catalog: Catalog,
  wind: WindAction,
): PackageModel {
  const pipe = find(catalog.pipes, row.pipe);
  const lines = [line("antennas", pipe.name, 1, "each", pipe.price)];
  const antennas = row.items.map((item) => {
    if ("antenna" in item) {
      const antenna = find(catalog.antennas, item.antenna);
      lines.push(line("antennas", antenna.name, 1, "each", antenna.price));
      return {
        name: antenna.name,
        above: item.above,
        area: antenna.area,
        dragArea: antenna.area * wind.areaFactor[antenna.areaKind],
        weight: antenna.weight,
        icedDragArea: antenna.iced && antenna.iced.area * wind.areaFactor[antenna.areaKind],
        icedWeight: antenna.iced && Math.max(0, antenna.iced.weight - antenna.weight),
      };
    }
    return {
      name: "antenna not chosen yet",
      above: item.above,
      area: item.area,
      dragArea: item.area * wind.areaFactor[item.areaKind],
      weight: item.weight,
    };
  });
  return {
    row,
    antennas,
    pipe,
    pipeStrength: pipeMoment(pipe, pipe.yield),
    pipeDragWidth: pipe.diameter * wind.roundFactor,
    exposed: Math.min(pipe.length, Math.max(...antennas.map((a) => a.above)) + PIPE_END),
    pipeWeight: roundProperties(pipe).area * STEEL_UNIT_WEIGHT * pipe.length,
    cableDragWidth: row.cableWidth * wind.roundFactor,
    lines,
    cents: lines.reduce((sum, { amount }) => sum + amount, 0),
  };
}

/** Pressure by height as a fine table: the hot path never raises to a power. */
function table(pressure: (z: number) => number, top: number): (z: number) => number {
  const count = Math.ceil(top / TABLE_STEP) + 3;
  const values = Float64Array.from({ length: count }, (_, i) => pressure(i * TABLE_STEP));
  return (z) => {
    const x = z / TABLE_STEP;
    const i = x <= 0 ? 0 : x >= count - 2 ? count - 2 : Math.floor(x);
    return values[i] + (x - i) * (values[i + 1] - values[i]);
  };
}

function assumptions(study: Study): string[] {
  const said: string[] = [];
  if (study.site.waterTable === undefined)
    said.push("No water table is stated: the ground is taken as dry to below the deepest hole.");
  const { wind, ice } = study.site;
  if ((wind.basis === "asce7-16" || wind.basis === "asce7-22") && wind.gustFactor === 0.85)
    said.push(`The gust factor is that of a rigid structure, 0.85 (ASCE ${wind.basis.slice(4)} 26.11.1).`);
  if (study.lot.powerLines.length === 0)
    said.push("No power line is stated: the fall zone is not checked against any.");
  if (!ice) said.push("Ice is not stated and not counted.");
  else {
    said.push("Ice has the thickness of the mast top all over (ASCE 7-16 10.4.3).");
    said.push("Antennas whose iced area is not stated are taken as inch tubes that grow by the ice.");
  }
  if (study.wishes.packages.some((p) => p.items.some((item) => !("antenna" in item))))
    said.push("Antennas not chosen yet count by their area and weight and cost nothing here.");
  said.push("The ground is level: every anchor head stands at the height of the base.");
  return said;
}
