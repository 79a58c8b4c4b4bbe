import { z } from "zod";
import { dimensioned, priced } from "../quantity/schema.ts";
import { force, id, invented, length, price, text, unique } from "./fields.ts";
import { anchorSchema, footingSchema, insulatorSchema, soilSchema } from "./ground-rows.ts";
import { ruleSetSchema } from "./rule-set.ts";
import { pipeSchema, sectionSchema, strandSchema, torqueArmSchema } from "./steel-rows.ts";
import { barStockSchema, concreteSupplySchema } from "./supply.ts";
import { workSchema } from "./work.ts";

const antennaSchema = z.strictObject({
  id,
  name: text,
  area: dimensioned("area", { min: 0 }),
  /** What the area is: flat or round projected, or effective (drag already in it). */
  areaKind: z.enum(["flat", "round", "effective"]),
  weight: force,
  /** Area (of the same kind) and whole weight under the ice that the study states; absent means estimated. */
  iced: z.strictObject({ area: dimensioned("area", { min: 0 }), weight: force }).optional(),
  /** For the drawing. */
  boom: length.default(0),
  elements: z.int().min(1).max(100).default(1),
  span: length.default(0),
  bands: text.default(""),
  /** Stated by the user, dBi in free space. */
  gain: z.number().optional(),
  price,
  invented,
});

export const pricesSchema = z.strictObject({
  currency: z.string().min(1).max(8).default("$"),
  concrete: priced("volume"),
  /** Concrete ordered beyond what stands, as a share. */
  concreteWaste: z.number().min(0).max(1),
  forms: priced("area"),
  /** Steel in the concrete. */
  rebar: priced("mass"),
  /** Mass of steel in a volume of concrete. */
  rebarPerVolume: dimensioned("density", { min: 0 }),
  digging: z.strictObject({
    easy: priced("volume"),
    firm: priced("volume"),
    hard: priced("volume"),
    rock: priced("volume"),
  }),
  /** Base plate, pin or anchor bolts. */
  baseHardware: price,
  /** Brackets that take the guys of one level to the mast. */
  guyBracket: price,
  /** Work of raising, per height. */
  raising: priced("length"),
  /** Extra strand cut per guy for its two terminations. */
  termination: length,
  permit: price,
  /** What one pair of hands takes for each; no part of any price. */
  work: workSchema.prefault({}),
  /** Lengths that bars are sold in; absent means by mass alone. */
  barStock: barStockSchema.optional(),
  /** How concrete is sold; absent means by volume alone. */
  concreteSupply: concreteSupplySchema.optional(),
  invented,
});

/** The tables of a catalog, one schema for a row of each. */
export const rowSchemas = {
  sections: sectionSchema,
  strand: strandSchema,
  anchors: anchorSchema,
  footings: footingSchema,
  insulators: insulatorSchema,
  torqueArms: torqueArmSchema,
  soils: soilSchema,
  antennas: antennaSchema,
  pipes: pipeSchema,
  rules: ruleSetSchema,
};
export type Table = keyof typeof rowSchemas;
export const tables = Object.keys(rowSchemas) as Table[];

export const catalogSchema = z.strictObject({
  sections: unique(rowSchemas.sections),
  strand: unique(rowSchemas.strand),
  anchors: unique(rowSchemas.anchors),
  footings: unique(rowSchemas.footings),
  /** These two in catalogs written before there were any: none. */
  insulators: unique(rowSchemas.insulators).default([]),
  torqueArms: unique(rowSchemas.torqueArms).default([]),
  soils: unique(rowSchemas.soils),
  antennas: unique(rowSchemas.antennas),
  pipes: unique(rowSchemas.pipes),
  rules: unique(rowSchemas.rules),
  prices: pricesSchema,
});
/** What a study may carry: whole rows, added or in place of rows with the same id. */
export const catalogPatchSchema = catalogSchema.partial();

/** A catalog as it is written. */
export type CatalogFile = z.input<typeof catalogSchema>;
/** A catalog as it is computed with: SI numbers, defaults filled in. */
export type Catalog = z.output<typeof catalogSchema>;
export type CatalogPatch = z.output<typeof catalogPatchSchema>;
export type Section = Catalog["sections"][number];
export type Strand = Catalog["strand"][number];
export type AnchorRow = Catalog["anchors"][number];
export type FootingRow = Catalog["footings"][number];
export type TorqueArm = Catalog["torqueArms"][number];
export type Insulator = Catalog["insulators"][number];
export type Soil = Catalog["soils"][number];
export type Antenna = Catalog["antennas"][number];
export type Pipe = Catalog["pipes"][number];
export type RuleSet = Catalog["rules"][number];
export type Prices = Catalog["prices"];

const mergedRows = <Row extends { id: string }>(rows: readonly Row[], patch: readonly Row[] = []): Row[] => {
  const replaced = new Map(patch.map((row) => [row.id, row]));
  const known = new Set(rows.map((row) => row.id));
  return [...rows.map((row) => replaced.get(row.id) ?? row), ...patch.filter((row) => !known.has(row.id))];
};

/** The catalog with a study's own rows in it: a known id is replaced in its place, a new one added at the end. */
export const mergedCatalog = (catalog: Catalog, patch: CatalogPatch): Catalog => ({
  sections: mergedRows(catalog.sections, patch.sections),
  strand: mergedRows(catalog.strand, patch.strand),
  anchors: mergedRows(catalog.anchors, patch.anchors),
  footings: mergedRows(catalog.footings, patch.footings),
  insulators: mergedRows(catalog.insulators, patch.insulators),
  torqueArms: mergedRows(catalog.torqueArms, patch.torqueArms),
  soils: mergedRows(catalog.soils, patch.soils),
  antennas: mergedRows(catalog.antennas, patch.antennas),
  pipes: mergedRows(catalog.pipes, patch.pipes),
  rules: mergedRows(catalog.rules, patch.rules),
  prices: patch.prices ?? catalog.prices,
});
