import type { Mast } from "../physics/mast/solver.ts";
import { type ShaftSection, Twist } from "../physics/mast/twist.ts";
import type { SectionModel } from "../problem/types.ts";

/** Torsional stiffness and strength of a section's faces. docs/theory/mast.md */
export interface Torsion extends ShaftSection {
  /** N m, the torque alone that the bracing bears. */
  readonly strength: number;
}

/** What the tube of the faces resists torque with (docs/theory/steel.md), for the shaft of the whole mast. */
export const torsionOf = ({ row, lattice }: SectionModel): Torsion => ({
  stiffness: lattice.torsionStiffness,
  strength: lattice.torsionStrength,
  polar: row.face ** 2 / (row.legs === 3 ? 3 : 2),
});

const known = new WeakMap<SectionModel, Torsion>();

/** The same, worked out once a section. */
export function torsion(section: SectionModel): Torsion {
  let found = known.get(section);
  if (!found) {
    found = torsionOf(section);
    known.set(section, found);
  }
  return found;
}

/** The shaft that a mast is to torques. Guys end on the axis: they hold nothing against twist. */
export const twistOf = (mast: Mast, sections: readonly SectionModel[]): Twist =>
  new Twist(mast, sections.map(torsion), new Float64Array(2 * mast.guys.length));
