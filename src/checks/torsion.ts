import type { Mast } from "../physics/mast/solver.ts";
import { type ShaftSection, Twist } from "../physics/mast/twist.ts";
import type { SectionModel } from "../problem/types.ts";

/** The shaft that a section is; its legs stand at the corners of a triangle or a square. */
const shaft = ({ row, lattice }: SectionModel): ShaftSection => ({
  stiffness: lattice.torsionStiffness,
  polar: row.face ** 2 / (row.legs === 3 ? 3 : 2),
});

/** The shaft that a mast is to torques. Guys that end on the axis hold nothing against twist, those on arms do. */
export const twistOf = (mast: Mast, sections: readonly SectionModel[]): Twist =>
  new Twist(
    mast,
    sections.map(shaft),
    Float64Array.from(mast.guys.flatMap(({ headX, headY }) => [headX, headY])),
  );
