/** KL/r beyond which a member in compression is refused: AISC 360-16 E2 user note, there an advice. */
export const MOST_SLENDER_STRUT = 200;
/** KL/r beyond which a tube or angle that only pulls is refused: AISC 360-16 D1 user note, which leaves rods out. */
export const MOST_SLENDER_TIE = 300;

/**
 * Refuses what stands outside the range of a method.
 * @throws RangeError with what was found, what was expected, who says so and the remedy
 */
export function within(what: string, found: number, most: number, source: string, remedy: string): void {
  if (!(found <= most))
    throw new RangeError(
      `${what}: found ${round(found)}, expected at most ${round(most)} (${source}); ${remedy}`,
    );
}

const round = (value: number): string => `${Number(value.toPrecision(4))}`;
