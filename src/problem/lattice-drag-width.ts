import type { WindAction } from "../physics/wind/wind-action.ts";

/**
 * Drag factor x solid area of one face, m2 per m of height. Round members take the factor of round ones and flats
 * that of flats, each by its share of the area (ASCE 7-16 figure 29.4-3 note 3; EN 1993-3-1 B.2.1, from memory). A mast
 * may be turned any way under its guys: the worst direction counts.
 */
export function latticeDragWidth(
  wind: WindAction,
  legs: 3 | 4,
  face: { readonly solidity: number; readonly faceArea: number; readonly roundShare: number },
): number {
  const { solidity, faceArea, roundShare } = face;
  const factor = (direction: "face" | "diagonal") => {
    const of = (members: "round" | "flat") => wind.latticeFactor({ legs, solidity, members, direction });
    return roundShare * of("round") + (1 - roundShare) * of("flat");
  };
  return faceArea * (legs === 4 ? Math.max(factor("face"), factor("diagonal")) : factor("face"));
}
