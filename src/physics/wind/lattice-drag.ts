export interface LatticeFace {
  readonly legs: 3 | 4;
  /** Solid over gross area of one face. */
  readonly solidity: number;
  readonly members: "round" | "flat";
  /** Wind square to a face, or along the diagonal of a square mast. A triangular mast has one value for all. */
  readonly direction: "face" | "diagonal";
}

/** Growth of the drag of a square mast in diagonal wind. ASCE 7 trussed towers. */
export function diagonalGrowth(solidity: number): number {
  return Math.min(1.2, 1 + 0.75 * solidity);
}

/**
 * Force coefficient on the solid area of one face, leeward faces inside. ASCE 7-16 figure 29.4-3.
 * @throws RangeError where the solidity is not from 0 to 1
 */
export function latticeDrag({ legs, solidity: e, members, direction }: LatticeFace): number {
  if (!(e >= 0 && e <= 1)) throw new RangeError(`lattice drag: found solidity ${e}, expected 0 to 1`);
  const flat = legs === 3 ? 3.4 * e ** 2 - 4.7 * e + 3.4 : 4 * e ** 2 - 5.9 * e + 4;
  const round = members === "round" ? Math.min(1, 0.51 * e ** 2 + 0.57) : 1;
  const turned = legs === 4 && direction === "diagonal" ? diagonalGrowth(e) : 1;
  return flat * round * turned;
}
