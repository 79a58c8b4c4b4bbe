import { z } from "zod";
import { dimensioned } from "../quantity/schema.ts";

const hours = (otherwise: string) => dimensioned("work", { min: 0 }).prefault(otherwise);
const perVolume = (otherwise: string) => dimensioned("workPerVolume", { min: 0 }).prefault(otherwise);

/**
 * What building takes, of one pair of hands: for the comparison of designs, and no part of any price. What is not
 * stated is an invented guess, the user's to better.
 */
export const workSchema = z.strictObject({
  /** Once: setting out, fetching, clearing up. */
  setUp: hours("8 h"),
  digging: z
    .strictObject({
      easy: perVolume("1.5 h/yd3"),
      firm: perVolume("2.5 h/yd3"),
      hard: perVolume("5 h/yd3"),
      rock: perVolume("14 h/yd3"),
    })
    .prefault({}),
  /** Forms, bars and concrete, for what stands. */
  pouring: perVolume("3 h/yd3"),
  /** Each: its rod, screw or post set and lined up. */
  anchor: hours("1.5 h"),
  /** Each: cut, made up, hung and drawn. */
  guy: hours("1 h"),
  raising: dimensioned("workPerLength", { min: 0 }).prefault("9 min/ft"),
  /** Pipe, antennas and cables, once. */
  antennas: hours("6 h"),
  /** That concrete hardens before guys pull at it: no work, but time. */
  curing: hours("168 h"),
});
