import { type MastLimitState, ratedNote, worstStation } from "./mast-checks.ts";

/**
 * Shear square to the bent mast against the diagonals of its faces, at the worst direction. Torque goes round all
 * faces alike and adds to the shear of the worst one: it counts as the shear that would use the bracing as much.
 */
export const bracing: MastLimitState = {
  id: "bracing-shear",
  title: "Bracing shear",
  unit: "force",
  kind: "strength",
  measure(c) {
    const { shear, element } = c.forces;
    const { twist } = c;
    const { section, ...worst } = worstStation(
      c,
      twist
        ? (s, section) =>
            shear[s] +
            (twist.torque[element[s]] * section.lattice.shearStrength) / section.lattice.torsionStrength
        : (s) => shear[s],
      ({ lattice }) => lattice.shearStrength,
    );
    const notes = [
      twist ? "with the torque of antennas beside the axis" : undefined,
      ratedNote(section.lattice.bracingRatedBy),
    ].filter((said) => said !== undefined);
    return [
      {
        limitState: bracing.id,
        ...worst,
        ...c.problem.rules.bracing,
        of: 0,
        note: notes.length > 0 ? notes.join("; ") : undefined,
      },
    ];
  },
};
