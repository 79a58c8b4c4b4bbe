import { z } from "zod";
import { distinct, id } from "./fields.ts";
import { refuse } from "./refuse.ts";

/** Degrees clockwise from north, seen from the mast. */
const bearing = z.number().min(0).max(360);

/**
 * What may not stand together: a design is barred where it has one of every list that an entry states, and, where
 * the entry states a side, where one such anchor stands there.
 */
export const barredSchema = z
  .array(
    z
      .strictObject({
        /** Why, in a few words: what the check and the page call it. */
        name: z.string().min(1).max(120),
        /** Rows, or every row of a kind. */
        anchors: distinct(id).optional(),
        anchorKinds: distinct(z.enum(["deadman", "screw", "rock-rod", "post"])).optional(),
        /** From one bearing clockwise to the other, both ends barred. Without anchors or kinds it bars all anchors. */
        side: z.strictObject({ from: bearing, to: bearing }).optional(),
        sections: distinct(id).optional(),
        strands: distinct(id).optional(),
        footings: distinct(id).optional(),
        footingKinds: distinct(z.enum(["block", "pad", "pier", "rock-pad"])).optional(),
      })
      .superRefine(({ name: _n, anchors, anchorKinds, side, ...others }, context) => {
        const beside = Object.entries(others).filter(([, list]) => list !== undefined);
        if (anchors === undefined && anchorKinds === undefined && side === undefined && beside.length === 0)
          refuse(
            context,
            [],
            "something that is barred: anchors, a side, sections, strands or footings",
            "a name alone",
          );
        if (side === undefined) return;
        for (const [key] of beside)
          refuse(context, [key], "anchors alone beside a side", `${key} and a side`);
      }),
  )
  .max(50);
