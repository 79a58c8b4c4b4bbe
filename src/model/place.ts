/** One place in the box of what may vary: what the checks read instead of what is stated. */
export interface Place {
  /** Times what is stated. */
  readonly soilStrength: number;
  /** Times the speed that is stated. */
  readonly windSpeed: number;
  /** m, off leg walls. */
  readonly wallLoss: number;
  /** Times what the design states. */
  readonly tension: number;
}
export const AS_STATED: Place = { soilStrength: 1, windSpeed: 1, wallLoss: 0, tension: 1 };

/** The speed of a wind basis; null of one that states a pressure. */
export const statedSpeed = (wind: {
  readonly basis: string;
  readonly speed?: number;
  readonly basicSpeed?: number;
}): number | null => wind.speed ?? wind.basicSpeed ?? null;
