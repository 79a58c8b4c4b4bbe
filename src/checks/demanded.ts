import type { Place } from "../model/place.ts";
import { ledByFirst } from "../problem/place.ts";
import type { Elsewhere, Problem } from "../problem/types.ts";
import type { StructureModel } from "./structure.ts";

/** A structure at one of the places where the study's ranges demand that it is safe. */
export interface Demanded {
  readonly problem: Problem;
  readonly model: StructureModel;
  readonly place: Place;
}

const problemAt = (
  problem: Problem,
  { place, site, pressure, guyPressure, iced, sections }: Elsewhere,
): Problem => ({
  ...problem,
  study: { ...problem.study, site },
  place,
  pressure,
  guyPressure,
  iced,
  sections,
});

const modelAt = (
  { package: pack, stack, guys }: StructureModel,
  { place, sections }: Pick<Problem, "place" | "sections">,
): StructureModel => ({
  package: pack,
  stack: {
    ...stack,
    parts: stack.parts.map(({ section, length }) => ({
      // every section of the first place is there in all: `coveredEverywhere`
      section: sections.get(section.row.id) ?? section,
      length,
    })),
  },
  guys: guys && {
    ...guys,
    levels: guys.levels.map((level) => ({ ...level, tension: level.tension * place.tension })),
  },
});

/** Of a problem, the same object at every structure: what is kept by problem is kept. */
const kept = new WeakMap<Problem, readonly Problem[]>();
const othersOf = (problem: Problem): readonly Problem[] => {
  let others = kept.get(problem);
  if (!others) kept.set(problem, (others = problem.elsewhere.map((other) => problemAt(problem, other))));
  return others;
};

/**
 * Where a structure must be safe: the place that leads the study's ranges, and the others where the first does not
 * stand for them. docs/theory/robust.md.
 */
export function* demanded(problem: Problem, model: StructureModel): Generator<Demanded> {
  yield { problem, model, place: problem.place };
  if (model.guys === null && ledByFirst(problem.study.site)) return;
  for (const other of othersOf(problem))
    if (model.guys !== null || other.place.tension === 1)
      yield { problem: other, model: modelAt(model, other), place: other.place };
}
