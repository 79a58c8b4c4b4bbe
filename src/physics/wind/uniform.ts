import { diagonalGrowth, type LatticeFace } from "./lattice-drag.ts";

/** Share of the pressure on flats that a cylinder takes. Mast standards RS-222 to revision C, from memory. */
export const CYLINDER_SHARE = 2 / 3;

/** Faces' worth of flat pressure on one face's projected area, leeward faces inside. The same standards. */
const openFrame = { 3: 1.5, 4: 1.75 } as const;

/**
 * Factor on the flat pressure for the solid area of one face. docs/theory/wind.md says why it is not the drag
 * of a velocity pressure: the flat pressure holds a shape factor already.
 */
export function uniformLatticeFactor({ legs, solidity, members, direction }: LatticeFace): number {
  const round = members === "round" ? CYLINDER_SHARE : 1;
  const turned = legs === 4 && direction === "diagonal" ? diagonalGrowth(solidity) : 1;
  return openFrame[legs] * round * turned;
}
