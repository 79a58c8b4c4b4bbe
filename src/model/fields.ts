import { z } from "zod";
import { dimensioned, priced, type QuantitySchema } from "../quantity/schema.ts";
import { axisCount, MOST_AXIS_VALUES } from "./axis.ts";
import { refuse } from "./refuse.ts";

/** The key of a row: short, lower case, stable. */
export const id = z
  .string()
  .regex(/^[a-z0-9][a-z0-9._-]{0,59}$/, "expected a key of lower-case letters, digits, '.', '_' or '-'");

export const length = dimensioned("length", { min: 0 });
export const positiveLength = dimensioned("length", { above: 0 });
/** Lengths that are shown in inches or millimetres. */
export const positiveSize = dimensioned("size", { above: 0 });
export const force = dimensioned("force", { min: 0 });
export const positiveForce = dimensioned("force", { above: 0 });
export const positiveMoment = dimensioned("moment", { above: 0 });
export const positiveStress = dimensioned("stress", { above: 0 });
export const price = priced("each");
export const text = z.string().max(400);
export const invented = z.boolean().default(false);

const range = <T extends z.ZodType<number, unknown>, S extends z.ZodType<number, unknown>>(
  value: T,
  step: S,
) =>
  z.strictObject({ from: value, to: value, step }).superRefine((output, context) => {
    const axis = output as { from: number; to: number; step: number };
    if (axis.from > axis.to) return refuse(context, ["to"], 'a value at or above "from"');
    const count = axisCount(axis);
    if (count > MOST_AXIS_VALUES)
      refuse(
        context,
        ["step"],
        `a step that makes at most ${MOST_AXIS_VALUES} values`,
        `a step that makes ${count === Number.POSITIVE_INFINITY ? "endless" : count} values`,
      );
  });

/** One axis of the grid: a single value, a list, or `{from, to, step}` (see `axisValues`). */
export const axis = <T extends z.ZodType<number, unknown>, S extends z.ZodType<number, unknown>>(
  value: T,
  step: S,
) => z.union([range(value, step), z.array(value).min(1).max(MOST_AXIS_VALUES), value]);

/** Sizes that the search may choose from. */
export const sizes = axis<QuantitySchema, QuantitySchema>(positiveLength, positiveLength);

/** A round bar (no wall) or tube. */
const round = z
  .strictObject({ diameter: positiveSize, wall: positiveSize.optional() })
  .superRefine(({ diameter, wall }, context) => {
    if (wall !== undefined && wall > diameter / 2)
      refuse(context, ["wall"], "a wall of half the diameter at most");
  });

/** An equal-leg angle: outside width of its legs, and their thickness. */
const angle = z
  .strictObject({ angle: positiveSize, thickness: positiveSize })
  .superRefine(({ angle: width, thickness }, context) => {
    if (thickness > width / 2) refuse(context, ["thickness"], "a thickness of half the angle's leg at most");
  });

/** A solid rod, a tube or an angle. */
export const member = z.union([round, angle]);

/** A list in which nothing stands twice: a second would count every design twice. */
export const distinct = <T extends string | number>(item: z.ZodType<T, unknown>) =>
  z
    .array(item)
    .min(1)
    .superRefine((values, context) => {
      values.forEach((value, index) => {
        const earlier = values.indexOf(value);
        if (earlier < index)
          refuse(context, [index], "each value once", `${JSON.stringify(value)} a second time`);
      });
    });

/** A table in which each row has a key of its own. */
export const unique = <T extends z.ZodType<{ id: string }, unknown>>(row: T) =>
  z.array(row).superRefine((rows, context) => {
    const first = new Map<string, number>();
    rows.forEach((value, index) => {
      const earlier = first.get(value.id);
      if (earlier === undefined) first.set(value.id, index);
      else
        refuse(
          context,
          [index, "id"],
          "a key of its own",
          `"${value.id}" a second time (row ${earlier + 1} has it)`,
        );
    });
  });
