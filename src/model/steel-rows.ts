import { z } from "zod";
import { dimensioned, priced } from "../quantity/schema.ts";
import {
  force,
  id,
  invented,
  member,
  positiveForce,
  positiveLength,
  positiveMoment,
  positiveSize,
  positiveStress,
  price,
  text,
} from "./fields.ts";
import { refuse } from "./refuse.ts";

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
    /** A rod, a tube or, with four legs, an angle whose heel stands outward. */
    leg: member,
    /** Thinnest leg wall (an angle's thickness) measured on used stock; absent means as new. */
    measuredWall: positiveSize.optional(),
    /**
     * Each face: "single" zigzags between the legs (two diagonals a panel), "x" crosses, "z" has one diagonal a panel,
     * all the same way, and horizontals between. A horizontal a panel may be stated with the others too; "z" takes
     * the diagonals' member where none is.
     */
    bracing: z.strictObject({
      pattern: z.enum(["single", "x", "z"]),
      member,
      horizontal: member.optional(),
      /** Diagonals of an "x" joined where they cross: each then holds the other. */
      joined: z.boolean().optional(),
    }),
    /** Height of leg between bracing points on one face. */
    panel: positiveSize,
    yield: positiveStress,
    modulus: positiveStress.default(200e9),
    /** How its tubes were made. Only EN 1993 asks; the default is the weaker. */
    tubing: z.enum(["cold-formed", "hot-finished"]).default("cold-formed"),
    /** Greatest pull that the joint between two pieces bears, per leg; absent means as the leg. */
    splice: force.optional(),
    /** What the seller says that the section as new bears, no factor inside; it takes the place of what is computed. */
    rated: z
      .strictObject({
        moment: positiveMoment.optional(),
        axial: positiveForce.optional(),
        shear: positiveForce.optional(),
        source: text,
      })
      .optional(),
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
    const { face, leg, legs, bracing, measuredWall, rated } = section;
    const [width, wall] = "angle" in leg ? [leg.angle, leg.thickness] : [leg.diameter, leg.wall];
    if (face <= width) refuse(context, ["face"], "a face wider than the leg");
    if (legs === 3 && "angle" in leg)
      refuse(
        context,
        ["leg"],
        "rods or tubes: the faces of a triangular mast meet at 60 degrees, an angle's legs at 90, and bent angles are not covered",
        "angles as legs of a triangular mast",
      );
    if (bracing.joined && bracing.pattern !== "x")
      refuse(context, ["bracing", "joined"], 'a joined crossing with pattern "x" alone');
    if (rated && rated.moment === undefined && rated.axial === undefined && rated.shear === undefined)
      refuse(context, ["rated"], "a moment, an axial force or a shear that the seller states");
    if (measuredWall === undefined) return;
    if (wall === undefined)
      refuse(context, ["measuredWall"], "no measured wall on a leg that is a solid bar");
    else if (measuredWall > wall)
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
  /**
   * Whole reels that it is sold on, for the plan of what to buy and how to cut it; absent means by the metre. The
   * bill and the search price strand by the metre all the same, unless the study says `wholeReels`. `have` limits how many there are.
   */
  reels: z
    .array(z.strictObject({ length: positiveLength, price, have: z.int().min(0).optional() }))
    .min(1)
    .max(6)
    .optional(),
  /** Share of breaking strength that the end fitting holds. */
  efficiency: z.number().gt(0).max(1).default(1),
  source: text,
});

/** The pipe above the mast top that carries the antennas. */
/** A triangular frame about the mast whose three tips take two guys each, so that guys hold against twist. */
export const torqueArmSchema = z.strictObject({
  id,
  name: text,
  /** From the mast's axis to a tip. */
  length: dimensioned("size", { min: 0.1, max: 1.5 }),
  /** Rated: what one guy may pull at a tip, the other one there pulling as much. */
  pull: positiveForce,
  /** Of its members as the wind sees them, flat. */
  area: dimensioned("area", { min: 0 }),
  weight: force,
  price,
  invented,
});

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
