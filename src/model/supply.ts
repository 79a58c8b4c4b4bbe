import { z } from "zod";
import { dimensioned, priced } from "../quantity/schema.ts";
import { positiveLength, price } from "./fields.ts";
import { refuse } from "./refuse.ts";

/** Bars of ASTM A615, by eighths of an inch. */
const barSize = z.enum(["#3", "#4", "#5", "#6", "#7", "#8", "#9", "#10", "#11"]);

/** Lengths that reinforcing bars are sold in: every size at a price by mass, or one size at a price a bar. */
export const barStockSchema = z
  .array(
    z
      .strictObject({
        length: positiveLength,
        perMass: priced("mass").optional(),
        bar: barSize.optional(),
        price: price.optional(),
      })
      .superRefine(({ perMass, bar, price: each }, context) => {
        if ((perMass === undefined) === (each === undefined))
          refuse(
            context,
            [],
            'either "perMass", or "bar" and its "price"',
            perMass === undefined ? "no price" : "two prices",
          );
        else if (each !== undefined && bar === undefined)
          refuse(context, ["bar"], 'the size that a "price" a bar is for', "none");
      }),
  )
  .min(1)
  .max(40);

const volume = dimensioned("volume", { above: 0 });

/** Concrete by the bag, by the truck, or both. */
export const concreteSupplySchema = z
  .strictObject({
    /** What one bag makes in place, and its price. */
    bag: z.strictObject({ yield: volume, price }).optional(),
    /** A load of less than `shortLoadBelow` pays the charge besides; `largest` is what one truck brings. */
    truck: z
      .strictObject({
        price: priced("volume"),
        shortLoadBelow: dimensioned("volume", { min: 0 }),
        shortLoadCharge: price,
        largest: volume,
      })
      .optional(),
  })
  .superRefine(({ bag, truck }, context) => {
    if (!bag && !truck) refuse(context, [], 'a "bag", a "truck" or both', "neither");
    if (truck && truck.shortLoadBelow > truck.largest)
      refuse(context, ["truck", "shortLoadBelow"], "a short load no larger than the largest");
  });
