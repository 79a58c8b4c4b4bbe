import { z } from "zod";
import { dimensioned } from "../quantity/schema.ts";
import { id } from "./fields.ts";
import { refuse } from "./refuse.ts";

const length = dimensioned("length", { above: 0 });

const anchorChoice = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("deadman"),
    row: id,
    length,
    height: length,
    width: length,
    depth: length,
  }),
  z.strictObject({ kind: z.literal("screw"), row: id }),
  z.strictObject({ kind: z.literal("rock-rod"), row: id, socket: length }),
  z.strictObject({ kind: z.literal("post"), row: id, width: length, depth: length }),
]);

/** What an insulated mast stands on, between it and its footing. */
const insulator = id.optional();

const footingChoice = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("block"), row: id, width: length, depth: length, insulator }),
  z.strictObject({
    kind: z.literal("pad"),
    row: id,
    width: length,
    thickness: length,
    depth: length,
    /** Bars of a mat each way, share of the slab's section; mats, below or below and above. */
    steel: z.number().min(0.0018).max(0.01).default(0.0018),
    mats: z.int().min(1).max(2).default(2),
    insulator,
  }),
  z.strictObject({ kind: z.literal("pier"), row: id, diameter: length, depth: length, insulator }),
  z.strictObject({
    kind: z.literal("rock-pad"),
    row: id,
    width: length,
    depth: length,
    dowels: z.int().min(4).max(24).multipleOf(4),
    socket: length,
    insulator,
  }),
]);

/** Rounding may part two equal lengths by this, m. */
const SLACK = 1e-6;

/** One point of the grid. Lengths in metres, angles in degrees clockwise from north. */
export const designSchema = z
  .strictObject({
    package: id,
    height: length,
    /** Bottom up: pieces of one catalog section, together `length` long. */
    stack: z.array(z.strictObject({ section: id, length })).min(1),
    guys: z
      .strictObject({
        perLevel: z.union([z.literal(3), z.literal(4)]),
        /** Of the farthest anchor. */
        radius: length,
        /** Of each anchor in turn where they differ. */
        radii: z.array(length).optional(),
        rotation: z.number(),
        /** At the anchor, of breaking strength; on uneven anchors that of the steepest guy, the others balance it. */
        tension: z.number().gt(0).max(1),
        /** Bottom up. */
        levels: z
          .array(
            z.strictObject({
              height: length,
              strand: id,
              /** Where it differs from that of the others. */
              tension: z.number().gt(0).max(1).optional(),
              /** Torque arm whose tips take two guys from each anchor. */
              arm: id.optional(),
            }),
          )
          .min(1)
          .max(5),
        anchor: anchorChoice,
      })
      .nullable(),
    footing: footingChoice,
  })
  .superRefine(({ height, stack, guys }, context) => {
    const stacked = stack.reduce((sum, part) => sum + part.length, 0);
    if (Math.abs(stacked - height) > SLACK)
      refuse(
        context,
        ["stack"],
        `sections that together reach the height of ${height} m`,
        `${stacked} m of sections`,
      );
    if (guys?.radii && guys.radii.length !== guys.perLevel)
      refuse(
        context,
        ["guys", "radii"],
        `a radius for each of the ${guys.perLevel} anchors`,
        `${guys.radii.length}`,
      );
    else if (guys?.radii && Math.abs(Math.max(...guys.radii) - guys.radius) > SLACK)
      refuse(context, ["guys", "radii"], `radii of which the greatest is the radius, ${guys.radius} m`);
    guys?.levels.forEach((level, index) => {
      const path = ["guys", "levels", index, "height"];
      if (level.height > height + SLACK) refuse(context, path, `a height up to the mast top, ${height} m`);
      if (index > 0 && level.height <= guys.levels[index - 1].height)
        refuse(context, path, "levels from the bottom up, each above the one before");
    });
  });

export type Design = z.output<typeof designSchema>;
export type AnchorChoice = z.output<typeof anchorChoice>;
export type FootingChoice = z.output<typeof footingChoice>;
