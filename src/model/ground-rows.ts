import { z } from "zod";
import { dimensioned, priced } from "../quantity/schema.ts";
import {
  distinct,
  force,
  id,
  invented,
  positiveForce,
  positiveLength,
  positiveSize,
  positiveStress,
  price,
  sizes,
  text,
} from "./fields.ts";
import { refuse } from "./refuse.ts";

/** How hard it is to dig, and so what an earth screw can be turned into. */
const digging = z.enum(["easy", "firm", "hard", "rock"]);

const deadman = z.strictObject({
  id,
  kind: z.literal("deadman"),
  name: text,
  /** Across the pull. */
  length: sizes,
  height: sizes,
  /** Along the pull. */
  width: sizes,
  /** Grade to the bottom of the block. */
  depth: sizes,
  /** Shape of the soil that it lifts: a prism at the rule set's angle, or cones of 30 degrees from its edges. */
  lifts: z.enum(["prism", "cone"]).default("prism"),
  /** One along each of its four edges, inside ties; absent: plain concrete. */
  bars: z.enum(["#4", "#5", "#6", "#7", "#8"]).optional(),
  rod: price,
  /** What breaks the rod or the plate that it pulls by, as rated; absent: it is not asked, and the verdict says so. */
  rodHolds: positiveForce.optional(),
  invented,
});

const screw = z.strictObject({
  id,
  kind: z.literal("screw"),
  name: text,
  /** Ultimate pull along the shaft by digging class of the soil; a class not listed can't take it. */
  holds: z.partialRecord(digging, force),
  /** Greatest angle between guy resultant and shaft, degrees. */
  offAxis: z.number().min(0).max(90),
  /** Share of the ultimate pull that it holds sideways at the surface. */
  lateralShare: z.number().min(0).max(1),
  length: positiveLength,
  price,
  install: price,
  invented,
});

const rockRod = z
  .strictObject({
    id,
    kind: z.literal("rock-rod"),
    name: text,
    bar: positiveSize,
    yield: positiveStress,
    hole: positiveSize,
    /** Grouted length in rock. */
    socket: sizes,
    /** In one anchor: in a row across the pull, parallel, under a yoke that shares the pull evenly. */
    rods: z.int().min(1).max(6).default(1),
    /** Of the rods of a row. */
    spacing: positiveLength.optional(),
    drilling: priced("length"),
    /** One rod and its grout. */
    price,
    invented,
  })
  .superRefine(({ rods, spacing, hole }, context) => {
    if (rods > 1 && spacing === undefined)
      refuse(context, ["spacing"], "how far apart the rods of a row are");
    else if (rods > 1 && (spacing ?? 0) < 4 * hole)
      refuse(
        context,
        ["spacing"],
        `at least four holes, ${(4 * hole).toFixed(3)} m: nearer ones share their bond (BS 8081, from memory)`,
      );
  });

const post = z
  .strictObject({
    id,
    kind: z.literal("post"),
    name: text,
    /** Square block in the ground, its top at grade. */
    width: sizes,
    /** Grade to its underside. */
    depth: sizes,
    /** Of the guys' hold above grade. */
    height: positiveLength,
    /** A pipe, or the numbers of a compact W shape bent about its strong axis. */
    section: z.union([
      z.strictObject({ diameter: positiveSize, wall: positiveSize }),
      z.strictObject({
        plasticModulus: dimensioned("sectionModulus", { above: 0 }),
        area: dimensioned("sectionArea", { above: 0 }),
        /** Depth times web. */
        shearArea: dimensioned("sectionArea", { above: 0 }),
        /** Radius of gyration about the weak axis. */
        leastRadius: positiveSize,
      }),
    ]),
    yield: positiveStress,
    /** Of the post, which runs down to the block's underside. */
    post: priced("length"),
    price,
    invented,
  })
  .superRefine(({ section }, context) => {
    if ("diameter" in section && section.wall > section.diameter / 2)
      refuse(context, ["section", "wall"], "a wall of half the diameter at most");
  });

export const anchorSchema = z.discriminatedUnion("kind", [deadman, screw, rockRod, post]);

const block = z.strictObject({
  id,
  kind: z.literal("block"),
  name: text,
  /** Square. */
  width: sizes,
  /** Grade to underside. */
  depth: sizes,
  invented,
});

const pad = z.strictObject({
  id,
  kind: z.literal("pad"),
  name: text,
  /** Square. */
  width: sizes,
  thickness: sizes,
  /** Grade to underside. */
  depth: sizes,
  /** Side of the pedestal that carries the mast up to grade. */
  pedestal: positiveSize,
  /** Upright bars of the pedestal, share of its section. */
  cage: z.number().min(0.005).max(0.04).default(0.005),
  /** Bars of a mat each way, share of the slab's section. */
  steel: distinct(z.number().min(0.0018).max(0.01)).default([0.0018]),
  /** One mat, below, or a second above for a side that lifts. */
  mats: distinct(z.int().min(1).max(2)).default([2]),
  invented,
});

const pier = z.strictObject({
  id,
  kind: z.literal("pier"),
  name: text,
  /** Round, drilled. */
  diameter: sizes,
  /** Grade to its tip. */
  depth: sizes,
  /** Upright bars, share of the section. */
  cage: z.number().min(0.005).max(0.04).default(0.005),
  invented,
});

const rockPad = z
  .strictObject({
    id,
    kind: z.literal("rock-pad"),
    name: text,
    /** Square, cast on the rock. */
    width: sizes,
    /** Grade to the rock: its thickness. */
    depth: sizes,
    /** Grouted bars in all, in a square ring: a multiple of four. */
    dowels: distinct(z.int().min(4).max(24).multipleOf(4)),
    /** Grouted length in rock. */
    socket: sizes,
    bar: positiveSize,
    yield: positiveStress,
    hole: positiveSize,
    /** Face of the pad to the middle of a dowel. */
    edge: positiveSize,
    drilling: priced("length"),
    /** One dowel and its grout. */
    price,
    invented,
  })
  .superRefine(({ bar, hole, edge }, context) => {
    if (hole <= bar) refuse(context, ["hole"], "a hole wider than the bar");
    if (edge <= hole / 2) refuse(context, ["edge"], "an edge of more than half a hole");
  });

export const footingSchema = z.discriminatedUnion("kind", [block, pad, pier, rockPad]);

/** What parts an insulated mast from its footing, and lets its foot turn. */
export const insulatorSchema = z.strictObject({
  id,
  name: text,
  /** Ratings: what breaks it. */
  compression: positiveForce,
  shear: positiveForce,
  /** Greatest turn of the mast's foot that its hinge follows, degrees. */
  turn: z.number().gt(0).max(10),
  /** Of the mast's foot above the footing. */
  height: positiveSize,
  /** Side of its base on the footing. */
  plate: positiveSize,
  weight: force,
  price,
  invented,
});

/** What one layer of ground bears and weighs. */
const soilLayer = {
  bearing: dimensioned("pressure", { min: 0 }),
  lateralPerDepth: dimensioned("pressurePerDepth", { min: 0 }),
  /** Lateral bearing grows with depth up to this; absent means without end. */
  lateralCap: dimensioned("pressure", { min: 0 }).optional(),
  /** On the dead load. */
  friction: z.number().min(0).max(2).optional(),
  /** On the contact area, instead of friction. */
  cohesion: dimensioned("pressure", { min: 0 }).optional(),
  unitWeight: dimensioned("unitWeight", { above: 0 }),
  /** Degrees. */
  frictionAngle: z.number().min(0).max(50).optional(),
  /** Undrained shear strength of a clay, ultimate; absent means no pile method in clay answers here. */
  undrainedStrength: dimensioned("pressure", { above: 0 }).optional(),
  /** Ultimate grout-to-rock bond; absent means no rock rod holds here. */
  groutBond: dimensioned("stress", { min: 0 }).optional(),
  /** Shear on a buried upright side, share of the soil's effective weight above; absent: Jaky's, of its friction angle. */
  sideFriction: z.number().min(0).max(1).optional(),
  /** Pressure per settlement under a footing of the size in hand; absent means no stiffness can be told. */
  subgradeModulus: dimensioned("pressurePerDepth", { above: 0 }).optional(),
  digging,
};

export const soilSchema = z
  .strictObject({
    id,
    name: text,
    ...soilLayer,
    /** What lies beneath, top down, each from its depth below grade; the row's own values hold above the first. */
    layers: z
      .array(z.strictObject({ from: positiveLength, ...soilLayer }))
      .min(1)
      .max(9)
      .optional(),
    /** Allowable values already hold the safety that the table's code wants; ultimate ones do not. */
    values: z.enum(["allowable", "ultimate"]).default("allowable"),
    source: text,
  })
  .superRefine(({ layers = [] }, context) => {
    layers.forEach((layer, index) => {
      if (index > 0 && layer.from <= layers[index - 1].from)
        refuse(
          context,
          ["layers", index, "from"],
          "layers from the top down, each deeper than the one before",
        );
    });
  });
