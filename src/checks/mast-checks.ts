import type { CheckUnit } from "../model/verdict.ts";
import type { Measure } from "../parts/types.ts";
import type { Forces } from "../physics/mast/recover.ts";
import type { Mast } from "../physics/mast/solver.ts";
import type { Twist } from "../physics/mast/twist.ts";
import type { Problem, SectionModel } from "../problem/types.ts";
import type { StructureModel } from "./structure.ts";
import type { WindCase } from "./wind-cases.ts";

/** A solved case, as the limit states of the mast read it. */
export interface SolvedCase {
  readonly problem: Problem;
  readonly model: StructureModel;
  readonly wind: WindCase;
  readonly mast: Mast;
  readonly forces: Forces;
  /** How it twists; null where nothing turns it. */
  readonly twist: Twist | null;
  /** Section of each element. */
  readonly sections: readonly SectionModel[];
}

/** A measure with its place: height above the base, or guy level. */
export interface MastMeasure extends Measure {
  readonly at?: number;
  readonly level?: number;
}

/** A limit state of the mast: measured in every solved case, its worst shown. */
export interface MastLimitState {
  readonly id: string;
  readonly title: string;
  readonly unit: CheckUnit;
  readonly kind: "strength" | "limit";
  measure(c: SolvedCase): MastMeasure[];
}

/** Said beside a capacity that a seller's rating gave. */
export const ratedNote = (by: string | undefined): string | undefined =>
  by === undefined ? undefined : `capacity as rated, not computed: ${by}`;

/** The station where demand / capacity is greatest. Hot: no allocation until the end. */
export function worstStation(
  c: SolvedCase,
  demand: (station: number, section: SectionModel) => number,
  capacity: (section: SectionModel) => number,
): { demand: number; capacity: number; at: number; section: SectionModel } {
  const { forces, sections } = c;
  let worst = 0;
  let use = Number.NEGATIVE_INFINITY;
  for (let s = 0; s < forces.count; s++) {
    const section = sections[forces.element[s]];
    const here = demand(s, section) / capacity(section);
    if (here > use) {
      use = here;
      worst = s;
    }
  }
  const section = sections[forces.element[worst]];
  return {
    demand: Math.max(demand(worst, section), 0),
    capacity: capacity(section),
    at: forces.z[worst],
    section,
  };
}
