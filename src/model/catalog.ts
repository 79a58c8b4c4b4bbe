import { z } from "zod";
import { dimensioned, priced } from "../quantity/schema.ts";

/** The key of a row: short, lower case, stable. */
export const id = z
  .string()
  .regex(/^[a-z0-9][a-z0-9._-]{0,59}$/, "expected a key of lower-case letters, digits, '.', '_' or '-'");

const length = dimensioned("length", { min: 0 });
const positiveLength = dimensioned("length", { above: 0 });
const force = dimensioned("force", { min: 0 });
const sizes = z.union([
  z.strictObject({ from: positiveLength, to: positiveLength, step: positiveLength }),
  z.array(positiveLength).min(1),
  positiveLength,
]);
const invented = z.boolean().default(false);

/** A round bar (no wall) or tube. */
const round = z.strictObject({ diameter: positiveLength, wall: positiveLength.optional() });

/**
 * A lattice section as one can buy it: one geometry in one condition. Rows of one `family` fit together.
 * Properties are computed from the members, never typed in.
 */
export const sectionSchema = z.strictObject({
  id,
  family: id,
  legs: z.union([z.literal(3), z.literal(4)]),
  /** Leg centre to leg centre. */
  face: positiveLength,
  leg: round,
  /** Thinnest leg wall measured on used stock; absent means as new. */
  measuredWall: positiveLength.optional(),
  bracing: z.strictObject({ pattern: z.enum(["single", "x"]), member: round }),
  /** Height of leg between bracing points on one face. */
  panel: positiveLength,
  yield: dimensioned("pressure", { above: 0 }),
  modulus: dimensioned("pressure", { above: 0 }).default(200e9),
  /** Greatest pull that the joint between two pieces bears, per leg; absent means as the leg. */
  splice: force.optional(),
  /** Weight of joints and plates as a share of members. */
  extraWeight: z.number().min(0).max(1).default(0.08),
  pieces: z
    .array(z.strictObject({ length: positiveLength, price: priced("each"), have: z.int().min(0).optional() }))
    .min(1),
  used: z.boolean().default(false),
  invented,
});

export const strandSchema = z.strictObject({
  id,
  diameter: positiveLength,
  grade: z.string(),
  /** Diameter of one of its seven wires. */
  wire: positiveLength,
  breakingStrength: force,
  weight: dimensioned("lineForce", { min: 0 }),
  modulus: dimensioned("pressure", { above: 0 }),
  price: priced("length"),
  /** Both end fittings, thimbles and turnbuckle of one guy. */
  fittings: priced("each"),
  /** Share of breaking strength that the end fitting holds. */
  efficiency: z.number().gt(0).max(1).default(1),
  source: z.string(),
});

const deadman = z.strictObject({
  id,
  kind: z.literal("deadman"),
  name: z.string(),
  length: sizes,
  height: sizes,
  width: sizes,
  /** Grade to the bottom of the block. */
  depth: sizes,
  rod: priced("each"),
  invented,
});
const screw = z.strictObject({
  id,
  kind: z.literal("screw"),
  name: z.string(),
  /** Ultimate pull along the shaft by digging class of the soil; a class not listed can't take it. */
  holds: z.record(z.string(), force),
  /** Greatest angle between guy resultant and shaft, degrees. */
  offAxis: z.number().min(0).max(90),
  /** Share of the ultimate pull that it holds sideways at the surface. */
  lateralShare: z.number().min(0).max(1),
  length: positiveLength,
  price: priced("each"),
  install: priced("each"),
  invented,
});
const rockRod = z.strictObject({
  id,
  kind: z.literal("rock-rod"),
  name: z.string(),
  bar: positiveLength,
  yield: dimensioned("pressure", { above: 0 }),
  hole: positiveLength,
  socket: sizes,
  drilling: priced("length"),
  price: priced("each"),
  invented,
});
export const anchorSchema = z.discriminatedUnion("kind", [deadman, screw, rockRod]);

const block = z.strictObject({
  id,
  kind: z.literal("block"),
  name: z.string(),
  width: sizes,
  depth: sizes,
  invented,
});
const pad = z.strictObject({
  id,
  kind: z.literal("pad"),
  name: z.string(),
  width: sizes,
  thickness: sizes,
  /** Grade to underside. */
  depth: sizes,
  /** Side of the pedestal that carries the mast up to grade. */
  pedestal: positiveLength,
  invented,
});
export const footingSchema = z.discriminatedUnion("kind", [block, pad]);

export const soilSchema = z.strictObject({
  id,
  name: z.string(),
  bearing: dimensioned("pressure", { min: 0 }),
  lateralPerDepth: dimensioned("unitWeight", { min: 0 }),
  lateralCap: dimensioned("pressure", { min: 0 }).optional(),
  friction: z.number().min(0).max(2).optional(),
  cohesion: dimensioned("pressure", { min: 0 }).optional(),
  unitWeight: dimensioned("unitWeight", { above: 0 }),
  frictionAngle: z.number().min(0).max(50).optional(),
  /** Ultimate grout-to-rock bond; absent means no rock rod holds here. */
  groutBond: dimensioned("pressure", { min: 0 }).optional(),
  digging: z.enum(["easy", "firm", "hard", "rock"]),
  /** Allowable values already hold the safety that the table's code wants; ultimate ones do not. */
  values: z.enum(["allowable", "ultimate"]).default("allowable"),
  source: z.string(),
});

export const antennaSchema = z.strictObject({
  id,
  name: z.string(),
  area: dimensioned("area", { min: 0 }),
  areaKind: z.enum(["flat", "round", "effective"]),
  weight: force,
  /** For the drawing. */
  boom: length.default(0),
  elements: z.int().min(1).default(1),
  span: length.default(0),
  bands: z.string().default(""),
  /** Stated by the user, dBi in free space. */
  gain: z.number().optional(),
  price: priced("each"),
  invented,
});

export const pipeSchema = z.strictObject({
  id,
  name: z.string(),
  diameter: positiveLength,
  wall: positiveLength,
  yield: dimensioned("pressure", { above: 0 }),
  length: positiveLength,
  price: priced("each"),
  invented,
});

export const pricesSchema = z.strictObject({
  currency: z.string().default("$"),
  concrete: priced("volume"),
  /** Concrete ordered beyond what stands, as a share. */
  concreteWaste: z.number().min(0).max(1),
  forms: priced("area"),
  /** Steel in the concrete. */
  rebar: priced("mass"),
  rebarPerVolume: z.number().min(0),
  digging: z.strictObject({
    easy: priced("volume"),
    firm: priced("volume"),
    hard: priced("volume"),
    rock: priced("volume"),
  }),
  /** Base plate, pin or anchor bolts. */
  baseHardware: priced("each"),
  /** Brackets that take the guys of one level to the mast. */
  guyBracket: priced("each"),
  /** Work of raising, per height. */
  raising: priced("length"),
  /** Extra strand cut per guy for its two terminations. */
  termination: length,
  permit: priced("each"),
  invented,
});

const factor = z.strictObject({ required: z.number().gt(0), source: z.string() });

export const ruleSetSchema = z.strictObject({
  id,
  name: z.string(),
  /** On the wind of each basis: strength-level maps take 0.6 in allowable stress. */
  windFactor: z.strictObject({ uniform: z.number().gt(0), "asce7-16": z.number().gt(0), source: z.string() }),
  leg: factor,
  legTension: factor,
  bracing: factor,
  stability: factor,
  guy: factor,
  pipe: factor,
  uplift: factor,
  anchorLateral: factor,
  screw: factor,
  rockRod: factor,
  bearing: factor,
  overturning: factor,
  sliding: factor,
  baseCompression: factor,
  /** Window of the initial tension, fractions of breaking strength. */
  tension: z.strictObject({ least: z.number(), most: z.number(), source: z.string() }),
  /** Greatest slope of the mast from plumb, degrees. */
  tilt: z.strictObject({ most: z.number().gt(0), source: z.string() }),
  /** Half-angle from the vertical of the soil lifted by a buried anchor, degrees. */
  upliftAngle: z.strictObject({ degrees: z.number().min(0).max(45), source: z.string() }),
  concrete: z.strictObject({ strength: dimensioned("pressure", { above: 0 }), unitWeight: dimensioned("unitWeight", { above: 0 }), source: z.string() }),
  /** Double the lateral bearing where half an inch of motion at grade does no harm (IBC 1806.3.4). */
  doubleLateral: z.boolean().default(false),
});

const unique = <T extends z.ZodType<{ id: string }, unknown>>(row: T) =>
  z.array(row).superRefine((rows, context) => {
    const first = new Map<string, number>();
    rows.forEach((value, index) => {
      const earlier = first.get(value.id);
      if (earlier !== undefined)
        context.addIssue({
          code: "custom",
          path: [index, "id"],
          message: `found "${value.id}" a second time (row ${earlier + 1} has it), expected a key of its own`,
        });
      else first.set(value.id, index);
    });
  });

export const catalogSchema = z.strictObject({
  sections: unique(sectionSchema),
  strand: unique(strandSchema),
  anchors: unique(anchorSchema),
  footings: unique(footingSchema),
  soils: unique(soilSchema),
  antennas: unique(antennaSchema),
  pipes: unique(pipeSchema),
  rules: unique(ruleSetSchema),
  prices: pricesSchema,
});
export const catalogPatchSchema = catalogSchema.partial();

export type CatalogFile = z.input<typeof catalogSchema>;
export type Catalog = z.output<typeof catalogSchema>;
export type Section = Catalog["sections"][number];
export type Strand = Catalog["strand"][number];
export type AnchorRow = Catalog["anchors"][number];
export type FootingRow = Catalog["footings"][number];
export type Soil = Catalog["soils"][number];
export type Antenna = Catalog["antennas"][number];
export type Pipe = Catalog["pipes"][number];
export type RuleSet = Catalog["rules"][number];
export type Prices = Catalog["prices"];
