import { z } from "zod";
import { dimensioned } from "../quantity/schema.ts";
import { id, positiveStress, text } from "./fields.ts";
import { refuse } from "./refuse.ts";

/** What capacity must be, as a multiple of demand, and who says so. */
const factor = z.strictObject({ required: z.number().gt(0).max(100), source: text });

const iceFactors = z.strictObject({
  dead: z.number().gt(0),
  ice: z.number().gt(0),
  wind: z.number().gt(0),
  /** In its place on wind of service level, where the combination is written for maps of strength level. */
  service: z.number().gt(0).optional(),
  source: text,
});
/** Factors on dead weight, ice and the wind that blows while it hangs. */
export type IceFactors = z.output<typeof iceFactors>;

/** The rules that a design is judged by, as data: copy a row and edit it. Every check prints its factor. */
export const ruleSetSchema = z.strictObject({
  id,
  name: text,
  /** On the wind of each level: strength-level maps take 0.6 in allowable stress. */
  windFactor: z.strictObject({ service: z.number().gt(0), strength: z.number().gt(0), source: text }),
  /**
   * On dead weight, one load combination each: the first is the plain one, a second smaller one lets it relieve.
   * Guyed masts are asked with the first `guyed` of them, by default with all.
   */
  deadFactors: z
    .strictObject({
      values: z.array(z.number().gt(0)).min(1).max(3),
      guyed: z.number().int().min(1).max(3).optional(),
      source: text,
    })
    .default({ values: [1], source: "dead weight as it is" }),
  /** The combination with ice. */
  iced: iceFactors.default({ dead: 1, ice: 1, wind: 1, source: "all as stated" }),
  /** A second one, where the rules tell ice that leads from ice that goes along with the wind. */
  icedWind: iceFactors.optional(),
  /** Share of a footing's own weight that counts in its favour. */
  ownWeight: z
    .strictObject({ share: z.number().gt(0).max(1), source: text })
    .default({ share: 1, source: "own weight as it is" }),
  /** Where the strengths of legs, bracing and pipe come from. */
  steel: z.enum(["aisc360", "en1993"]).default("aisc360"),
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
  /** On the steel post of an anchor: bending with pull, and shear. */
  anchorPost: factor.default({
    required: 1.67,
    source: "not stated by this rule set: AISC 360-16 F1 under allowable stress, the safer",
  }),
  bearing: factor,
  overturning: factor,
  sliding: factor,
  baseCompression: factor,
  /** On the ratings of a base insulator. */
  baseInsulator: factor.default({
    required: 3,
    source: "not stated by this rule set: 3.0 under allowable stress, common practice, no source, the safer",
  }),
  /** Window of the initial tension, fractions of breaking strength. */
  tension: z
    .strictObject({ least: z.number().min(0).max(1), most: z.number().min(0).max(1), source: text })
    .superRefine(({ least, most }, context) => {
      if (least > most) refuse(context, ["most"], 'a value at or above "least"');
    }),
  /** With one guy gone: share of the design wind, and the factor that mast and guys must still have. */
  lossOfGuy: z
    .strictObject({ wind: z.number().min(0).max(1), required: z.number().min(1).max(100), source: text })
    .default({ wind: 0, required: 1, source: "still air, nominal strength: our choice, no source" }),
  /** Greatest slope of the mast from plumb, degrees. Beyond ten the solver's turns are no longer small. */
  tilt: z.strictObject({ most: z.number().gt(0).max(10), source: text }),
  /** Half-angle from the vertical of the soil lifted by a buried anchor, degrees. */
  upliftAngle: z.strictObject({ degrees: z.number().min(0).max(45), source: text }),
  concrete: z.strictObject({
    strength: positiveStress,
    unitWeight: dimensioned("unitWeight", { above: 0 }),
    source: text,
  }),
  /** From reactions and the pressures they cause to the strength level of ACI 318, and the bars of the concrete. */
  concreteDesign: z
    .strictObject({
      loadFactor: z.number().min(1).max(3),
      barYield: positiveStress.default(413.7e6),
      source: text,
    })
    .default({
      loadFactor: 1.67,
      barYield: 413.7e6,
      source: "1.67 on reactions as they come: our choice, safe for allowable stress",
    }),
  /** Double the lateral bearing where half an inch of motion at grade does no harm (IBC 1806.3.4). */
  doubleLateral: z.boolean().default(false),
});
