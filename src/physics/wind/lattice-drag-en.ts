import type { LatticeFace } from "./lattice-drag.ts";

/** Share of the diagonal growth by solidity. */
function diagonalShare(solidity: number): number {
  if (solidity <= 0.2 || solidity >= 0.8) return 0.2;
  return solidity <= 0.5 ? solidity : 1 - solidity;
}

/**
 * Force coefficient on the solid area of one face. EN 1993-3-1 annex B.2, from memory. Round members in subcritical
 * flow: the heavier of the two regimes, and the one that bars as thin as a mast's are in.
 * @throws RangeError where the solidity is not from 0 to 1
 */
export function latticeDragEn({ legs, solidity: e, members, direction }: LatticeFace): number {
  if (!(e >= 0 && e <= 1)) throw new RangeError(`lattice drag: found solidity ${e}, expected 0 to 1`);
  const [c1, c2] = legs === 4 ? [2.25, 1.5] : [1.9, 1.4];
  const normal =
    members === "flat" ? 1.76 * c1 * (1 - c2 * e + e ** 2) : c1 * (1 - c2 * e) + (c1 + 0.875) * e ** 2;
  if (legs === 3 || direction === "face") return normal;
  return normal * (1 + (members === "flat" ? 0.55 : 0.8) * diagonalShare(e));
}
