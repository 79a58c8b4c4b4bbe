/** Standard gravity, m/s2. */
const GRAVITY = 9.80665;

/** How far a count by eye and a stopwatch by hand can be out. */
const COUNT_DOUBT = 0.5;
const TIME_DOUBT = 0.1;

/** Sag over chord, W / 8 T, up to which a guy is a string: there it is 4 % longer and its ends 12 % tighter than one. */
const GREATEST_SAG = 1 / 8;

/** A guy that is swung sideways by hand. */
export interface SwungGuy {
  /** Whole weight with insulators and hardware, N. */
  readonly guyWeight: number;
  /** Between its ends, m. */
  readonly guyLength: number;
}

/** Does a guy hang so tight at this tension that its swings tell it? */
export const isTaut = ({ guyWeight }: SwungGuy, tension: number): boolean =>
  guyWeight <= 8 * GREATEST_SAG * tension;

function refuseSlack(guy: SwungGuy, tension: number): void {
  if (!isTaut(guy, tension))
    throw new RangeError(
      `swings: found a tension of ${tension} N in a guy of ${guy.guyWeight} N, expected at least its weight; slacker it sags by more than an eighth and is no string`,
    );
}

/** Tension, and the band it may lie in for half a swing and a tenth of a second, N. */
export interface CountedTension {
  readonly tension: number;
  readonly least: number;
  readonly most: number;
}

/**
 * Tension from counted swings: T = 4 W L N2/(g t2), the vibrating string. Returns of a pulse count the same.
 * @param swings complete ones, over and back, above 1/2 @param seconds above 0.1
 * @throws RangeError where the count or the time is within its own doubt, or the guy too slack to be a string
 */
export function tensionFromSwings(guy: SwungGuy, swings: number, seconds: number): CountedTension {
  if (!(swings > COUNT_DOUBT && seconds > TIME_DOUBT))
    throw new RangeError(
      `swings: found ${swings} in ${seconds} s, expected more than ${COUNT_DOUBT} in more than ${TIME_DOUBT} s; count longer`,
    );
  const tension = (n: number, t: number) => (4 * guy.guyWeight * guy.guyLength * n ** 2) / (GRAVITY * t ** 2);
  refuseSlack(guy, tension(swings, seconds));
  return {
    tension: tension(swings, seconds),
    least: tension(swings - COUNT_DOUBT, seconds + TIME_DOUBT),
    most: tension(swings + COUNT_DOUBT, seconds - TIME_DOUBT),
  };
}

/**
 * Swings to count in a time for a wanted tension; not rounded.
 * @throws RangeError where the guy is too slack to be a string
 */
export function swingsForTension(guy: SwungGuy, tension: number, seconds: number): number {
  refuseSlack(guy, tension);
  return seconds * Math.sqrt((tension * GRAVITY) / (4 * guy.guyWeight * guy.guyLength));
}

/** Seconds that a number of swings takes at a wanted tension. Refuses as `swingsForTension`. */
export function secondsForSwings(guy: SwungGuy, tension: number, swings: number): number {
  return swings / swingsForTension(guy, tension, 1);
}
