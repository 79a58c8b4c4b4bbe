import { z } from "zod";
import { dimensioned } from "../quantity/schema.ts";
import { catalogPatchSchema, id } from "./catalog.ts";

/** The file version this program writes. Older files are migrated forward, newer ones refused. */
export const STUDY_VERSION = 1;

const length = dimensioned("length", { min: 0 });
const signedLength = dimensioned("length");

/** One axis of the grid: a single value, a list, or `{from, to, step}` (ends included). */
const axis = <T extends z.ZodType<number, unknown>>(value: T) =>
  z.union([z.strictObject({ from: value, to: value, step: value }), z.array(value).min(1), value]);

const point = z.tuple([signedLength, signedLength]);

const wind = z.discriminatedUnion("basis", [
  z.strictObject({
    basis: z.literal("uniform"),
    /** On the projected area of flats; round members take two thirds of it. Service level. */
    pressure: dimensioned("pressure", { min: 0 }),
  }),
  z.strictObject({
    basis: z.literal("asce7-16"),
    /** Three-second gust at 33 ft in exposure C, from the map of the risk category. Strength level. */
    speed: dimensioned("speed", { min: 0 }),
    exposure: z.enum(["B", "C", "D"]),
    topographicFactor: z.number().min(1).default(1),
    groundElevation: signedLength.default(0),
    /** Rigid-structure gust factor, ASCE 7-16 section 26.11.1. */
    gustFactor: z.number().min(0.85).default(0.85),
  }),
]);

/** An antenna of the catalog, or an area that stands for one not chosen yet. */
const antennaItem = z.union([
  z.strictObject({ antenna: id, above: length }),
  z.strictObject({
    area: dimensioned("area", { min: 0 }),
    areaKind: z.enum(["flat", "round", "effective"]),
    weight: dimensioned("force", { min: 0 }),
    above: length,
  }),
]);

export const studySchema = z.strictObject({
  mastwright: z.literal(STUDY_VERSION),
  name: z.string().min(1).max(120),
  /** Who asks, and what; shown under the title. Every place and person is invented. */
  story: z.string().max(2000).default(""),
  aim: z.enum(["cost", "concrete"]).default("cost"),

  site: z.strictObject({
    wind,
    soil: id,
    frostDepth: length,
    /** Below grade; absent means deeper than anything dug here. */
    waterTable: length.optional(),
    /** Deepest hole that can be dug here. */
    greatestDig: length.default(3),
  }),

  lot: z.strictObject({
    /** Corners in order, east and north of any origin. */
    corners: z.array(point).min(3),
    mast: point,
    /** Least distance from an anchor to the lot line. */
    setback: length.default(0),
    powerLines: z.array(z.strictObject({ name: z.string(), points: z.array(point).min(2) })).default([]),
  }),

  wishes: z.strictObject({
    /** Top of the mast above the base footing. More than one value lets the search choose. */
    height: axis(dimensioned("length", { min: 1 })),
    /** Sets of antennas, each good enough: the cheapest safe one is found. */
    packages: z
      .array(
        z.strictObject({
          id,
          name: z.string(),
          /** Pipe above the mast top that carries the antennas. */
          pipe: id,
          /** Antennas at a height above the mast top. */
          items: z.array(antennaItem).min(1),
          /** Flat area of cable and ladder per length of mast. */
          cableWidth: length.default(0),
        }),
      )
      .min(1),
    /** Least of capacity / required - 1 over every strength check. */
    margin: z.number().min(0).max(5).default(0),
    heightLimit: length.optional(),
    concreteCap: dimensioned("volume", { min: 0 }).optional(),
  }),

  rules: z.strictObject({
    set: id,
  }),

  /** What the search may choose from. `"all"` takes every row of the table. */
  parts: z
    .strictObject({
      sections: z.union([z.literal("all"), z.array(id).min(1)]).default("all"),
      /** May two conditions of one family stand in one mast, the one above the other? */
      mixedStacks: z.boolean().default(true),
      supports: z.array(z.enum(["guyed", "freestanding"])).min(1).default(["guyed", "freestanding"]),
      guysPerLevel: z.array(z.union([z.literal(3), z.literal(4)])).min(1).default([3]),
      levelCounts: z.array(z.int().min(1).max(5)).min(1).default([1, 2, 3]),
      levelHeights: axis(length).default({ from: 4.572, to: 60.96, step: 1.524 }),
      strands: z.union([z.literal("all"), z.array(id).min(1)]).default("all"),
      /** Initial tension as a fraction of breaking strength, one for all levels. */
      tensions: z.array(z.number().gt(0).max(0.4)).min(1).default([0.1]),
      radius: axis(length).default({ from: 6.096, to: 24.384, step: 0.6096 }),
      /** Bearing of anchor 1, degrees clockwise from north. */
      rotation: axis(z.number()).default({ from: 0, to: 110, step: 10 }),
      footings: z.union([z.literal("all"), z.array(id).min(1)]).default("all"),
      anchors: z.union([z.literal("all"), z.array(id).min(1)]).default("all"),
    })
    .prefault({}),

  /** Rows that this study adds to the catalog or puts in place of rows with the same id. */
  catalog: catalogPatchSchema.prefault({}),
});

/** A study as it is written: quantities as text with units or SI numbers. */
export type StudyFile = z.input<typeof studySchema>;
/** A study as it is computed with: SI numbers, defaults filled in. */
export type Study = z.output<typeof studySchema>;
export type WindGivens = Study["site"]["wind"];
export type AntennaPackage = Study["wishes"]["packages"][number];
