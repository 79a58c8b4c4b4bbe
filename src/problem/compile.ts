import { axisValues } from "../model/axis.ts";
import type { Catalog, Pipe, RuleSet, TorqueArm } from "../model/catalog.ts";
import type { AntennaPackage, Study } from "../model/study.ts";
import type { BillLine } from "../model/verdict.ts";
import { anchorParts, footingParts } from "../parts/index.ts";
import { line } from "../parts/price.ts";
import type { AnchorPart, Ground } from "../parts/types.ts";
import { steelCodes } from "../physics/steel/codes.ts";
import { STEEL_UNIT_WEIGHT } from "../physics/steel/lattice.ts";
import { roundProperties } from "../physics/steel/round.ts";
import { gustComputed } from "../physics/wind/gust-response.ts";
import { risingGround, type WindAction, windAction } from "../physics/wind/wind-action.ts";
import { airAt, coveredEverywhere } from "./air.ts";
import { speaksOfAnchor } from "./barred.ts";
import { insulationOf } from "./insulation.ts";
import { catalogAt, placesOf, siteAt } from "./place.ts";
import { rangeWords } from "./range-words.ts";
import { stacksOf } from "./stacks.ts";
import { type Hold, placedStars } from "./star.ts";
import type { ArmModel } from "./torque-arm.ts";
import type { AntennaModel, MountedAntenna, PackageModel, Problem, SideAntenna } from "./types.ts";

type AntennaItem = AntennaPackage["items"][number];

/** Of a pipe's steel, Pa: the catalog does not state one. */
const PIPE_MODULUS = 200e9;
/** Pipe that stands above its highest antenna, m: half a foot for the clamp (common practice, no source). */
const PIPE_END = 0.1524;

/** A study that needs steel outside the range of its rule set's clauses: what was found and what was expected. */
export class Uncovered extends Error {}

/**
 * Makes a study ready to compute with: at the place that leads its ranges, and what differs at the others. Both come
 * from the parser: every key resolves.
 * @throws Uncovered where no section or not every pipe is inside the range of the rule set's steel
 */
export function compile(stated: Study, asStated: Catalog): Problem {
  const [place, ...others] = placesOf(stated);
  const study = { ...stated, site: siteAt(stated.site, place) };
  const catalog = catalogAt(asStated, place);
  const rules = find(catalog.rules, study.rules.set);
  const soil = find(catalog.soils, study.site.soil);
  const wind = windAction(study.site.wind);
  const { insulators, stand } = insulationOf(study, catalog);
  const ground: Ground = {
    soil,
    rules,
    prices: catalog.prices,
    concreteAsSold: study.parts.concreteAsSold === true,
    barsAsSold: study.parts.barsAsSold === true,
    givens: {
      concreteUnitWeight: rules.concrete.unitWeight,
      upliftAngle: rules.upliftAngle.degrees,
      lateralMultiplier: rules.doubleLateral ? 2 : 1,
      waterTable: study.site.waterTable,
      deadShare: rules.ownWeight.share,
      fall: study.lot.slope?.fall,
    },
    frostDepth: study.site.frostDepth,
    greatestDig: study.site.greatestDig,
    waterTable: study.site.waterTable ?? Number.POSITIVE_INFINITY,
    pourBelowWater: study.site.pourBelowWater,
    // a mast on an insulator stands on a pin
    baseStiffness: insulators ? undefined : study.site.baseStiffness,
    insulators,
    stand,
  };
  const heights = axisValues(study.wishes.height);
  const packages = study.wishes.packages.map((row) => packageModel(row, catalog, wind, rules));
  const highest = Math.max(...heights) + Math.max(...packages.map((p) => p.exposed));
  const reach = { highest, tallest: Math.max(...heights), stand };
  const airs = [place, ...others].map((one) => airAt(stated, asStated.sections, one, rules, reach));
  const { pressure, guyPressure, iced } = airs[0];
  const { sections, uncovered } = coveredEverywhere(airs);
  const chosen = pick(catalog.sections, study.parts.sections).flatMap((row) => sections.get(row.id) ?? []);
  if (chosen.length === 0)
    throw new Uncovered(`parts.sections: found none that can be computed; ${[...uncovered.values()][0]}`);
  const radii = axisValues(study.parts.radius);
  const rotations = axisValues(study.parts.rotation);
  const places = { lot: study.lot, radii, rotations, drawnIn: study.parts.drawnIn, stand };
  const byPrice = <T extends { cents: number; takeOff: { concrete: number }; choice: unknown }>(a: T, b: T) =>
    a.cents - b.cents ||
    a.takeOff.concrete - b.takeOff.concrete ||
    (JSON.stringify(a.choice) < JSON.stringify(b.choice) ? -1 : 1);
  const anchors = pick(catalog.anchors, study.parts.anchors)
    .flatMap((row) => anchorParts(row, ground))
    .sort(byPrice);
  const holds = holdsOf(anchors, study);
  return {
    study,
    catalog,
    rules,
    soil,
    prices: catalog.prices,
    ground,
    pressure,
    guyPressure,
    roundFactor: wind.roundFactor,
    iced,
    sections,
    uncovered,
    packages,
    heights,
    stacks: heights.map((height) => stacksOf(height, chosen, study.parts.mixedStacks)),
    strands: pick(catalog.strand, study.parts.strands),
    arms: pick(catalog.torqueArms, study.parts.torqueArms ?? []).map((row) => armModel(row, wind)),
    levelHeights: axisValues(study.parts.levelHeights),
    radii,
    rotations,
    stars: new Map(
      study.parts.guysPerLevel.map((perLevel) => [
        perLevel,
        holds.flatMap((hold, index) => placedStars(places, perLevel, hold, index)),
      ]),
    ),
    anchors,
    holds,
    footings: pick(catalog.footings, study.parts.footings)
      .flatMap((row) => footingParts(row, ground))
      .sort(byPrice),
    place,
    elsewhere: airs.slice(1),
    allowed: 1 / (1 + study.wishes.margin),
    assumptions: [
      ...assumptions(study, stand),
      ...rangeWords(stated, airs.length),
      ...leftOut(study, uncovered),
    ],
  };
}

/** Anchors by the height of their hold and the sides that are barred to them. */
function holdsOf(anchors: readonly AnchorPart[], { parts }: Study): Problem["holds"] {
  const holds = new Map<string, Hold & { anchors: AnchorPart[] }>();
  for (const anchor of anchors) {
    const sides = (parts.barred ?? []).flatMap((entry) =>
      entry.side && speaksOfAnchor(entry, anchor.choice) ? [entry.side] : [],
    );
    const key = JSON.stringify([anchor.head, sides]);
    const hold = holds.get(key) ?? { head: anchor.head, sides, anchors: [] };
    holds.set(key, hold);
    hold.anchors.push(anchor);
  }
  // a study without anchors has its stars all the same
  return holds.size > 0 ? [...holds.values()] : [{ head: 0, sides: [], anchors: [] }];
}

const find = <T extends { id: string }>(rows: readonly T[], id: string): T => {
  const row = rows.find((candidate) => candidate.id === id);
  if (!row) throw new Error(`no row "${id}" in the catalog; the parser should have refused the study`);
  return row;
};

const pick = <T extends { id: string }>(rows: readonly T[], ids: "all" | readonly string[]): T[] =>
  ids === "all" ? [...rows] : ids.map((id) => find(rows, id));

function packageModel(
  row: Study["wishes"]["packages"][number],
  catalog: Catalog,
  wind: WindAction,
  rules: RuleSet,
): PackageModel {
  const pipe = find(catalog.pipes, row.pipe);
  const lines: BillLine[] = [];
  const antennas: MountedAntenna[] = [];
  const sides: SideAntenna[] = [];
  for (const item of row.items) {
    const model = antennaModel(item, catalog, wind);
    if ("antenna" in item)
      lines.push(line("antennas", model.name, 1, "each", find(catalog.antennas, item.antenna).price));
    if (item.above !== undefined) antennas.push({ ...model, above: item.above });
    else if (item.at !== undefined) sides.push({ ...model, from: "base", distance: item.at });
    else sides.push({ ...model, from: "top", distance: item.below ?? 0 });
  }
  const piped = antennas.length > 0;
  if (piped) lines.unshift(line("antennas", pipe.name, 1, "each", pipe.price));
  return {
    row,
    antennas,
    sides,
    pipe,
    pipeStrength: pipeStrength(pipe, rules),
    pipeDragWidth: pipe.diameter * wind.roundFactor,
    exposed: piped ? Math.min(pipe.length, Math.max(...antennas.map((a) => a.above)) + PIPE_END) : 0,
    pipeWeight: piped ? roundProperties(pipe).area * STEEL_UNIT_WEIGHT * pipe.length : 0,
    runDragWidth: row.cableWidth * wind.roundFactor + row.ladder * wind.areaFactor.flat,
    lines,
    cents: lines.reduce((sum, { amount }) => sum + amount, 0),
  };
}

function antennaModel(item: AntennaItem, catalog: Catalog, wind: WindAction): AntennaModel {
  const { offset } = item;
  if (!("antenna" in item))
    return {
      name: "antenna not chosen yet",
      offset,
      area: item.area,
      dragArea: item.area * wind.areaFactor[item.areaKind],
      weight: item.weight,
    };
  const { name, area, areaKind, weight, iced } = find(catalog.antennas, item.antenna);
  return {
    name,
    offset,
    area,
    dragArea: area * wind.areaFactor[areaKind],
    weight,
    icedDragArea: iced && iced.area * wind.areaFactor[areaKind],
    icedWeight: iced && Math.max(0, iced.weight - weight),
  };
}

export const armModel = (row: TorqueArm, { areaFactor }: WindAction): ArmModel => ({
  row,
  hung: {
    name: row.name,
    offset: 0,
    area: row.area,
    dragArea: row.area * areaFactor.flat,
    weight: row.weight,
  },
});

/** @throws Uncovered */
function pipeStrength(pipe: Pipe, rules: RuleSet): number {
  try {
    return steelCodes[rules.steel].bending(pipe, pipe.yield, PIPE_MODULUS);
  } catch (error) {
    if (error instanceof RangeError) throw new Uncovered(`pipe "${pipe.id}": ${error.message}`);
    throw error;
  }
}

/** Chosen sections that steel or wind of the study do not cover: said, never passed over in silence. */
const leftOut = (study: Study, uncovered: ReadonlyMap<string, string>): string[] =>
  [...uncovered]
    .filter(([id]) => study.parts.sections === "all" || study.parts.sections.includes(id))
    .map(([id, reason]) => `Section ${id} is left out, outside what is computed: ${reason}.`);

/** What is said of a hill, where the study states one. */
function hillWords(study: Study): string[] {
  const { wind } = study.site;
  if (wind.basis === "uniform" || !wind.hill) return [];
  const { factor, reason } = risingGround(wind);
  const { shape } = wind.hill;
  if (reason !== null) return [`The ${shape} that is stated does not count: ${reason}.`];
  const heights = axisValues(study.wishes.height);
  const top = heights[heights.length - 1];
  const name = wind.basis === "en1991" ? "co" : "Kzt";
  const where = wind.basis === "en1991" ? "EN 1991-1-4 A.3" : `ASCE ${wind.basis.slice(4)} 26.8`;
  return [
    `The ${shape} speeds the wind up, in every direction alike: ${name} ${factor(0).toFixed(2)} at the ground, ${factor(top).toFixed(2)} at ${top.toFixed(1)} m (${where}). That it stands alone, above what is round it, is the study's word.`,
  ];
}

function assumptions(study: Study, stand: number): string[] {
  const said: string[] = [];
  if (study.site.waterTable === undefined)
    said.push("No water table is stated: the ground is taken as dry to below the deepest hole.");
  else if (study.site.pourBelowWater)
    said.push(
      "Concrete may be poured below water: it and the soil weigh less the water there, and lateral bearing falls with the soil's weight.",
    );
  const { wind, ice } = study.site;
  if ((wind.basis === "asce7-16" || wind.basis === "asce7-22") && wind.gustFactor === 0.85)
    said.push(`The gust factor is that of a rigid structure, 0.85 (ASCE ${wind.basis.slice(4)} 26.11.1).`);
  if (gustComputed(wind))
    said.push(
      wind.basis === "en1991"
        ? "The structural factor follows each mast's first sway frequency, at least 1 (EN 1991-1-4 annex B, procedure 1; a guyed mast is taken as swaying in one mode)."
        : `The gust factor follows each mast's first sway frequency, at least 0.85 (ASCE ${wind.basis.slice(4)} 26.11.5).`,
    );
  said.push(...hillWords(study));
  if (study.lot.powerLines.length === 0)
    said.push("No power line is stated: neither the fall zone nor the guys are checked against any.");
  else if (study.lot.lineClearance === undefined)
    said.push(
      "No clearance from power lines is stated: guys and anchors keep 10 ft (3.0 m) from them, seen from above, which is for lines of up to 50 kV.",
    );
  if (study.lot.powerLines.length > 0 && study.lot.linesWithinFall)
    said.push(
      "Power lines may stand within reach of a falling mast, as the study says: the owner of the line decides.",
    );
  if (!ice) said.push("Ice is not stated and not counted.");
  else {
    said.push("Ice has the thickness of the mast top all over (ASCE 7-16 10.4.3).");
    said.push(
      "The ice stated is taken as that of a 500-year map (ASCE 7-16; 7-22 has one for each risk category, its importance 1). ASCE 7-10 and older map 50 years, whose thickness their equation doubles: state twice theirs.",
    );
    said.push("Antennas whose iced area is not stated are taken as inch tubes that grow by the ice.");
  }
  if (study.wishes.packages.some((p) => p.items.some((item) => !("antenna" in item))))
    said.push("Antennas not chosen yet count by their area and weight and cost nothing here.");
  if (study.wishes.packages.some((p) => p.runWeight === 0 && p.cableWidth + p.ladder > 0))
    said.push(
      "Cables and ladder catch the wind and weigh nothing, where the study does not state their weight.",
    );
  if (study.wishes.insulatedBase)
    said.push(
      `The mast stands on a base insulator: heights count from its foot, ${stand.toFixed(2)} m above the footing, as high as the tallest insulator of the list; a shorter one is packed up to that. Voltages are not worked out: neither of the base insulator nor of those in the guys.`,
    );
  said.push(
    study.lot.slope
      ? `The ground falls evenly by ${(100 * study.lot.slope.fall).toFixed(0)} % toward ${study.lot.slope.toward} degrees; anchors stand at grade, posts hold their guys above it. Soil that holds sideways is taken as falling away before every face; bearing is taken as level ground has it${study.lot.slope.fall > 1 / 3 ? ", and the setback from slopes steeper than 1 in 3 that IBC 1808.7 asks is not checked" : ""}.`
      : "The ground is level: every anchor stands at the height of the base, and only a post holds its guys above it.",
  );
  return said;
}
