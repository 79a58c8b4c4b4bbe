import type { Catalog, RuleSet, Section } from "../model/catalog.ts";
import type { Place } from "../model/place.ts";
import type { Study } from "../model/study.ts";
import { latticeProperties } from "../physics/steel/lattice.ts";
import { isAngle, widthOf } from "../physics/steel/member.ts";
import { type WindAction, windAction } from "../physics/wind/wind-action.ts";
import { guyPressure } from "./guy-pressure.ts";
import { type Iced, icing } from "./iced.ts";
import { latticeDragWidth } from "./lattice-drag-width.ts";
import { catalogAt, sectionAtPlace, siteAt } from "./place.ts";
import { pressureTable, remembered } from "./pressure-table.ts";
import type { Elsewhere, Problem, SectionModel } from "./types.ts";

/** Wind, ice and sections as a place of the study's ranges has them, and why a section can't be computed there. */
export interface Air extends Elsewhere {
  readonly uncovered: ReadonlyMap<string, string>;
}

/**
 * @param highest of all that wind may blow on, and of the masts, m over the base
 * @param stand height of the base over the ground, m
 */
export function airAt(
  study: Study,
  rows: readonly Section[],
  place: Place,
  rules: RuleSet,
  { highest, tallest, stand }: { highest: number; tallest: number; stand: number },
): Air {
  const site = siteAt(study.site, place);
  const wind = windAction(site.wind);
  const windFactor = rules.windFactor[wind.level];
  const pressure = pressureTable((z) => wind.pressure(z + stand) * windFactor, highest);
  const iced = icing({ ...study, site }, rules, highest, stand);
  const worn = rows.map((row) => sectionAtPlace(row, place.wallLoss));
  return {
    place,
    site,
    pressure,
    guyPressure: remembered((from, to) => guyPressure(pressure, from, to)),
    iced,
    ...sectionModels(worn, wind, rules, iced?.(tallest)),
  };
}

/** Sections ready to compute with, and why the others can't be: outside the range of the rule set's steel clauses. */
function sectionModels(
  rows: readonly Section[],
  wind: WindAction,
  rules: RuleSet,
  thickest: Iced | undefined,
): { sections: Map<string, SectionModel>; uncovered: Map<string, string> } {
  const sections = new Map<string, SectionModel>();
  const uncovered = new Map<string, string>();
  for (const row of rows)
    try {
      const lattice = latticeProperties(row, rules.steel);
      const model = {
        row,
        lattice,
        dragWidth: latticeDragWidth(wind, row.legs, lattice),
        legDragWidth: widthOf(row.leg) * (isAngle(row.leg) ? wind.areaFactor.flat : wind.roundFactor),
      };
      // under ice that closes its faces it is no lattice any more
      thickest?.section(model);
      sections.set(row.id, model);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      uncovered.set(row.id, error.message);
    }
  return { sections, uncovered };
}

/**
 * A problem without ranges as it is at a place, for designs whose rows are in the catalog that is given: far cheaper
 * than to make the study ready anew. What may be chosen from is not listed again.
 */
export function movedTo(problem: Problem, catalog: Catalog, place: Place): Problem {
  const { study, rules, heights, packages } = problem;
  const tallest = Math.max(...heights);
  const highest = tallest + Math.max(...packages.map((pack) => pack.exposed));
  const moved = catalogAt(catalog, place);
  const { site, uncovered, ...air } = airAt(study, catalog.sections, place, rules, {
    highest,
    tallest,
    stand: problem.ground.stand,
  });
  const soil = moved.soils.find((row) => row.id === study.site.soil) ?? problem.soil;
  return {
    ...problem,
    ...air,
    uncovered,
    catalog: moved,
    study: { ...study, site },
    soil,
    ground: { ...problem.ground, soil },
  };
}

/** The sections of the first place that every place can compute, and why the others can't be used. */
export function coveredEverywhere(all: readonly Air[]): Pick<Air, "sections" | "uncovered"> {
  const uncovered = new Map(all.flatMap((air) => [...air.uncovered]));
  return { sections: new Map([...all[0].sections].filter(([id]) => !uncovered.has(id))), uncovered };
}
