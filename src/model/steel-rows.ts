import { z } from "zod";
import { dimensioned, priced } from "../quantity/schema.ts";
import {
  force,
  id,
  invented,
  positiveLength,
  positiveSize,
  positiveStress,
  price,
  refuse,
  round,
  text,
} from "./fields.ts";

/**
 * A lattice section as one can buy it: one geometry in one condition. Rows of one `family` fit together.
 * Properties are computed from the members, never typed in.
 */
export const sectionSchema = z
  .strictObject({
    id,
    family: id,
    legs: z.union([z.literal(3), z.literal(4)]),
    /** Leg centre to leg centre. */
    face: positiveSize,
    leg: round,
    /** Thinnest leg wall measured on used stock; absent means as new. */
    measuredWall: positiveSize.optional(),
    /** Two diagonals a panel on each face: "single" zigzags between the legs, "x" crosses. */
    bracing: z.strictObject({ pattern: z.enum(["single", "x"]), member: round }),
    /** Height of leg between bracing points on one face. */
    panel: positiveSize,
    yield: positiveStress,
    modulus: positiveStress.default(200e9),
    /** Greatest pull that the joint between two pieces bears, per leg; absent means as the leg. */
    splice: force.optional(),
    /** Weight of joints and plates as a share of members. */
    extraWeight: z.number().min(0).max(1).default(0.08),
    /** Lengths it is sold in; `have` limits how many there are, absent means any number. */
    pieces: z
      .array(z.strictObject({ length: positiveLength, price, have: z.int().min(0).optional() }))
      .min(1)
      .max(20),
    used: z.boolean().default(false),
    invented,
  })
  .superRefine((section, context) => {
    const { face, leg, measuredWall } = section;
    if (face <= leg.diameter) refuse(context, ["face"], "a face wider than the leg");
    if (measuredWall === undefined) return;
    if (leg.wall === undefined)
      refuse(context, ["measuredWall"], "no measured wall on a leg that is a solid bar");
    else if (measuredWall > leg.wall)
      refuse(context, ["measuredWall"], "a measured wall no thicker than the wall as new");
  });

/** Seven-wire steel strand, one size and grade. */
export const strandSchema = z.strictObject({
  id,
  /** Nominal. */
  diameter: positiveSize,
  grade: text,
  /** Diameter of one of its seven wires. */
  wire: positiveSize,
  breakingStrength: force,
  weight: dimensioned("lineForce", { min: 0 }),
  modulus: positiveStress,
  price: priced("length"),
  /** Both end fittings, thimbles and turnbuckle of one guy. */
  fittings: price,
  /** Share of breaking strength that the end fitting holds. */
  efficiency: z.number().gt(0).max(1).default(1),
  source: text,
});

/** The pipe above the mast top that carries the antennas. */
export const pipeSchema = z
  .strictObject({
    id,
    name: text,
    diameter: positiveSize,
    wall: positiveSize,
    yield: positiveStress,
    length: positiveLength,
    price,
    invented,
  })
  .superRefine(({ diameter, wall }, context) => {
    if (wall > diameter / 2) refuse(context, ["wall"], "a wall of half the diameter at most");
  });
