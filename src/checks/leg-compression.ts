import { type MastLimitState, ratedNote, worstStation } from "./mast-checks.ts";

/** The worst leg at the worst station: its share of the thrust and the moment over the lever of the legs. */
export const legCompression: MastLimitState = {
  id: "leg-compression",
  title: "Leg compression",
  unit: "force",
  kind: "strength",
  measure(c) {
    const { compression, moment } = c.forces;
    const { section, ...worst } = worstStation(
      c,
      (s, { lattice }) => compression[s] * lattice.axialShare + moment[s] / lattice.momentArm,
      ({ lattice }) => lattice.legCompression,
    );
    return [
      {
        limitState: legCompression.id,
        ...worst,
        ...c.problem.rules.leg,
        of: 0,
        note: ratedNote(section.lattice.legsRatedBy),
      },
    ];
  },
};
