import { z } from "zod";
import { force, length, price, refuse } from "./fields.ts";

/** Degrees Celsius that air on earth has. */
const celsius = z.number().min(-70).max(60);

/** Air when the guys are drawn to their initial tension, and the extremes that the mast meets in wind. Celsius. */
export const temperature = z
  .strictObject({
    installed: celsius,
    coldest: celsius,
    hottest: celsius,
    /** While ice hangs: freezing rain falls about there (ASCE 7-16 figure 10.6-1 has places apart, from memory). */
    iced: celsius.default(0),
  })
  .superRefine(({ installed, coldest, hottest }, context) => {
    if (coldest > installed) refuse(context, ["coldest"], `at most ${installed}, the air when installed`);
    if (hottest < installed) refuse(context, ["hottest"], `at least ${installed}, the air when installed`);
  });

/** Insulators, turnbuckles and links in one guy, all together. */
export const guyHardware = z.strictObject({
  weight: force,
  /** Of the guy's length that they take the place of: no strand is cut for it, and it does not stretch. */
  length: length.default(0),
  price: price.default(0),
});

/** Degrees from plumb or about the axis. */
export const turn = z.number().gt(0).max(10);
