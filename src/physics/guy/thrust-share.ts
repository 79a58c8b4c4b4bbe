/**
 * The hand method: thrusts of the guy levels in a stated ratio that balance the base moment of the mast without
 * guys, N. Right for one level only; docs/theory/tension.md.
 * @param baseMoment N m @param levelHeights m @param ratios one a level
 * @throws RangeError where the lists differ in length or no level can balance anything
 */
export function thrustShare(
  baseMoment: number,
  levelHeights: readonly number[],
  ratios: readonly number[],
): number[] {
  if (levelHeights.length !== ratios.length)
    throw new RangeError(
      `thrust share: found ${levelHeights.length} heights and ${ratios.length} ratios, expected one ratio a level`,
    );
  const arm = levelHeights.reduce((sum, height, level) => sum + height * ratios[level], 0);
  if (!(arm > 0))
    throw new RangeError(
      `thrust share: found a sum of ratio x height of ${arm}, expected above 0; give a level above the base a ratio above 0`,
    );
  return ratios.map((ratio) => (ratio * baseMoment) / arm);
}
