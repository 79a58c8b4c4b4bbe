import type { Mast } from "../physics/mast/solver.ts";
import { type ShaftSection, Twist } from "../physics/mast/twist.ts";
import type { SectionModel } from "../problem/types.ts";

/** Torsional stiffness and strength of a section's faces. docs/theory/mast.md */
export interface Torsion extends ShaftSection {
  /** N m, the torque alone that the bracing bears. */
  readonly strength: number;
}

/**
 * The faces make a tube (Bredt): a torque T goes round it as the flow T / 2 A, so that each face of width b carries
 * T b / 2 A, and 4 A2 / sum(b / G t) is its stiffness, with G t = shear stiffness of a face / b.
 */
export function torsionOf({ row, lattice }: SectionModel): Torsion {
  const { legs, face } = row;
  const tube = face ** 2 * (legs === 3 ? Math.sqrt(3) / 4 : 1);
  // shear on the section is shared by its faces: sum of cos2 is half their number
  const faces = legs / 2;
  return {
    stiffness: (4 * tube ** 2 * lattice.shearStiffness) / (faces * legs * face ** 2),
    strength: (2 * tube * lattice.shearStrength) / (faces * face),
    polar: face ** 2 / (legs === 3 ? 3 : 2),
  };
}

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
