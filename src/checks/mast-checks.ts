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

/** What a section makes of the forces in it: shares that add up to the demand, and the capacity. */
export interface Stressed {
  /** Of the compression, of the moment, 1/m, of the shear, and of the torque, 1/m. */
  readonly compression: number;
  readonly moment: number;
  readonly shear: number;
  readonly torque: number;
  /** Of the wind on the mast per height, m. */
  readonly wind: number;
  readonly capacity: number;
}

/** The station where demand / capacity is greatest, and what the wind's own share is of its demand. Hot: no allocation but for what a section makes. */
export function worstStation(
  { mast, forces, sections, twist }: SolvedCase,
  of: (section: SectionModel) => Stressed,
): { demand: number; capacity: number; at: number; section: SectionModel; blown: number } {
  let worst = 0;
  let use = Number.NEGATIVE_INFINITY;
  let most = 0;
  let blown = 0;
  let section = sections[0];
  let stressed = of(section);
  let capacity = stressed.capacity;
  for (let s = 0; s < forces.count; s++) {
    const element = forces.element[s];
    if (sections[element] !== section) {
      section = sections[element];
      stressed = of(section);
    }
    const byWind = stressed.wind * Math.abs(mast.lineMean[element]);
    const demand =
      byWind +
      stressed.compression * forces.compression[s] +
      stressed.moment * forces.moment[s] +
      stressed.shear * forces.shear[s] +
      (twist ? stressed.torque * twist.torque[element] : 0);
    if (demand / stressed.capacity > use) {
      use = demand / stressed.capacity;
      worst = s;
      most = demand;
      blown = byWind;
      capacity = stressed.capacity;
    }
  }
  return {
    demand: Math.max(most, 0),
    capacity,
    at: forces.z[worst],
    section: sections[forces.element[worst]],
    blown,
  };
}
