import { z } from "zod";
import { refuse } from "../../model/refuse.ts";

const positive = z.number().gt(0);
const notNegative = z.number().min(0);
/** Heights that differ by less are one. */
const SAME = 1e-6;

const segment = z.object({
  z_from_m: notNegative,
  z_to_m: positive,
  EI_N_m2: positive,
  EA_N: positive,
  GAs_N: positive.nullable(),
  weight_N_per_m: notNegative,
});

const level = z
  .object({
    z_m: positive,
    azimuths_deg: z.array(z.number()).min(1),
    anchor_radius_m: positive,
    anchor_elevations_m: z.array(z.number()).min(1),
    cable: z.object({
      area_m2: positive,
      E_Pa: positive,
      weight_N_per_m: positive,
      breaking_strength_N: positive,
      alpha_per_K: z.number(),
    }),
    initial_tension_fraction: positive,
    guy_wind_N_per_m: z.number(),
  })
  .superRefine(({ azimuths_deg, anchor_elevations_m }, context) => {
    if (azimuths_deg.length !== anchor_elevations_m.length)
      refuse(
        context,
        ["anchor_elevations_m"],
        `one elevation for each of ${azimuths_deg.length} azimuths`,
        `${anchor_elevations_m.length} elevations`,
      );
  });

/** As much of a reference mast as the solver reads; whatever else its file says is left alone. */
export const guyedMastSchema = z
  .object({
    kind: z.literal("guyed-mast"),
    id: z.string(),
    input: z.object({
      mast: z.object({
        height_m: positive,
        base: z.enum(["pinned", "fixed"]),
        segments: z.array(segment).min(1),
        point_weights: z.array(z.object({ z_m: notNegative, weight_N: notNegative })),
      }),
      guy_levels: z.array(level),
      loads: z.object({
        wind_towards_azimuth_deg: z.number(),
        wind_line_load_N_per_m: z.array(z.tuple([z.number(), z.number()])).min(1),
        point_loads: z.array(z.object({ z_m: notNegative, wind_force_N: z.number(), weight_N: notNegative })),
      }),
      temperature: z.object({ delta_K: z.number(), mast_alpha_per_K: z.number() }),
    }),
  })
  .superRefine(({ input: { mast, guy_levels, loads } }, context) => {
    const top = mast.height_m;
    let reached = 0;
    mast.segments.forEach((part, i) => {
      const path = ["input", "mast", "segments", i];
      if (Math.abs(part.z_from_m - reached) > SAME)
        refuse(context, [...path, "z_from_m"], `${reached}, where the segment below ends`);
      if (part.z_to_m <= part.z_from_m) refuse(context, [...path, "z_to_m"], "a height above z_from_m");
      reached = part.z_to_m;
    });
    if (Math.abs(reached - top) > SAME)
      refuse(context, ["input", "mast", "height_m"], `${reached}, where the last segment ends`);
    const onMast = (z: number, path: (string | number)[]) => {
      if (z > top + SAME) refuse(context, ["input", ...path, "z_m"], `a height up to the mast top, ${top}`);
    };
    mast.point_weights.forEach((p, i) => {
      onMast(p.z_m, ["mast", "point_weights", i]);
    });
    loads.point_loads.forEach((p, i) => {
      onMast(p.z_m, ["loads", "point_loads", i]);
    });
    guy_levels.forEach((guys, i) => {
      onMast(guys.z_m, ["guy_levels", i]);
      if (i > 0 && guys.z_m <= guy_levels[i - 1].z_m)
        refuse(context, ["input", "guy_levels", i, "z_m"], "levels from the bottom up");
    });
    loads.wind_line_load_N_per_m.forEach(([height], i, all) => {
      if (i > 0 && height < all[i - 1][0])
        refuse(context, ["input", "loads", "wind_line_load_N_per_m", i, 0], "heights in rising order");
    });
  });
