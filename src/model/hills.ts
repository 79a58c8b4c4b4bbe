import { z } from "zod";
import { length, positiveLength } from "./fields.ts";
import { refuse } from "./refuse.ts";

/** From the crest to the mast, and the side it stands on for the wind that counts. */
const fromCrest = {
  distance: length.default(0),
  side: z.enum(["upwind", "downwind"]).default("downwind"),
};

/** Rising ground of ASCE 7 section 26.8. Whoever states it says that it stands alone and above its surroundings. */
export const asceHill = z.strictObject({
  shape: z.enum(["ridge", "escarpment", "axisymmetric"]),
  height: positiveLength,
  /** From the crest upwind to where the ground is at half the height, Lh. */
  halfLength: positiveLength,
  ...fromCrest,
});

/** Rising ground of EN 1991-1-4 annex A.3: hills and ridges, or cliffs and escarpments. */
export const enHill = z
  .strictObject({
    shape: z.enum(["hill", "escarpment"]),
    height: positiveLength,
    /** Length of the upwind slope, Lu. */
    upwindLength: positiveLength,
    /** Length of the downwind slope, Ld: of a hill. */
    downwindLength: positiveLength.optional(),
    ...fromCrest,
  })
  .superRefine(({ shape, downwindLength }, context) => {
    if (shape === "hill" && downwindLength === undefined)
      refuse(context, ["downwindLength"], "the length of the hill's downwind slope", "none");
  });

/** A factor or the hill it comes from, not both. */
export const oneRise = (
  hill: unknown,
  factor: number,
  name: string,
  context: z.core.$RefinementCtx<unknown>,
): void => {
  if (hill !== undefined && factor !== 1)
    refuse(context, [name], `1, or no "hill": the hill's own factor is worked out`, String(factor));
};
