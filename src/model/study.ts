import { z } from "zod";
import { dimensioned } from "../quantity/schema.ts";
import { AIMS, isLeast } from "./aim.ts";
import type { Axis } from "./axis.ts";
import { barredSchema } from "./barred.ts";
import { catalogPatchSchema } from "./catalog.ts";
import { axis, distinct, force, id, length, positiveLength, price, text, unique } from "./fields.ts";
import { asceHill, enHill, oneRise } from "./hills.ts";
import { refuseOddCorners, refuseOddLot } from "./lot.ts";
import { guyHardware, refuseOddArms, refuseOddInsulation, temperature, turn } from "./mast-givens.ts";
import { rangesSchema, refuseOddSpeeds, uncertainSchema } from "./ranges.ts";
import { refuse } from "./refuse.ts";

/** The file version this program writes. Older files are migrated forward, newer ones refused. */
export const STUDY_VERSION = 1;

const signedLength = dimensioned("length");
/** East and north of any origin. */
const point = z.tuple([signedLength, signedLength]);

const speed = dimensioned("speed", { min: 0 });

/** Both editions state the same; they differ in their exposure constants. */
const asce7 = <Basis extends "asce7-16" | "asce7-22">(basis: Basis) =>
  z
    .strictObject({
      basis: z.literal(basis),
      /** Three-second gust at 33 ft in exposure C, from the map of the risk category. Strength level. */
      speed,
      exposure: z.enum(["B", "C", "D"]),
      topographicFactor: z.number().min(1).default(1),
      hill: asceHill.optional(),
      groundElevation: signedLength.default(0),
      /**
       * 0.85 of rigid structures (ASCE 7 section 26.11.1), or "computed": by each mast's own sway and the hourly speeds of
       * the edition's own table 26.11-1, at least 0.85.
       */
      gustFactor: z.union([z.literal("computed"), z.number().min(0.85)]).default(0.85),
    })
    .superRefine(({ hill, topographicFactor }, context) =>
      oneRise(hill, topographicFactor, "topographicFactor", context),
    );

const wind = z.discriminatedUnion("basis", [
  z.strictObject({
    basis: z.literal("uniform"),
    /** On the projected area of flats; round members take two thirds of it. Service level. */
    pressure: dimensioned("pressure", { min: 0 }),
  }),
  asce7("asce7-16"),
  asce7("asce7-22"),
  z
    .strictObject({
      basis: z.literal("en1991"),
      /** Ten-minute mean at 10 m in terrain II, from the National Annex. Service (characteristic) level. */
      basicSpeed: speed,
      terrain: z.enum(["0", "I", "II", "III", "IV"]),
      orographyFactor: z.number().min(1).default(1),
      hill: enHill.optional(),
      /** kg/m3, from the National Annex. */
      airDensity: z.number().min(0.9).max(1.5).default(1.25),
      /** cs cd, stated or by each mast's own sway (section 6.3 and annex B), at least 1. */
      structuralFactor: z.union([z.literal("computed"), z.number().min(1)]).default("computed"),
    })
    .superRefine(({ hill, orographyFactor }, context) =>
      oneRise(hill, orographyFactor, "orographyFactor", context),
    ),
]);

/** Ice from freezing rain, with the wind that blows while it hangs. */
const ice = z.strictObject({
  /**
   * Radial, at 33 ft, of a 500-year map (ASCE 7-16, 7-22); twice what the 50-year maps of ASCE 7-10 and older say, whose
   * equation doubles it. It grows with height to the mast top and counts so all over (ASCE 7-16 section 10.4.6).
   */
  thickness: positiveLength,
  /** On the thickness, by risk category (ASCE 7-16 table 1.5-2): 1 for category II, and with maps of the category itself. */
  importance: z.number().min(0.8).max(1.25).default(1),
  /** Gust or mean speed, as the wind basis states its own; for a uniform pressure basis state `pressure`. */
  speed: speed.optional(),
  pressure: dimensioned("pressure", { min: 0 }).optional(),
});

/** Where an antenna hangs: on the pipe above the mast top, or beside the mast. Exactly one is stated. */
const place = {
  above: length.optional(),
  /** Beside the mast, this far over its base. */
  at: dimensioned("length", { min: 0.1 }).optional(),
  /** Beside the mast, this far under its top. */
  below: length.optional(),
  /** From the mast's axis to the middle of the antenna's wind and weight. It twists and bends the mast. */
  offset: length.default(0),
};
const onePlace = (
  { above, at, below }: { above?: number; at?: number; below?: number },
  context: z.core.$RefinementCtx<unknown>,
): void => {
  const stated = [above, at, below].filter((value) => value !== undefined).length;
  if (stated === 0) refuse(context, [], 'one of "above", "at" and "below"', "none of them");
  if (stated > 1) refuse(context, [], 'one of "above", "at" and "below"', `${stated} of them`);
};

/** An antenna of the catalog, or an area that stands for one not chosen yet. */
const antennaItem = z.union([
  z.strictObject({ antenna: id, ...place }).superRefine(onePlace),
  z
    .strictObject({
      area: dimensioned("area", { min: 0 }),
      areaKind: z.enum(["flat", "round", "effective"]),
      weight: force,
      ...place,
    })
    .superRefine(onePlace),
]);

type Item = z.output<typeof antennaItem>;

/** An antenna beside the mast must find a mast beside it, whichever height is chosen. */
function refuseHighPlaces(
  wishes: { height: Axis; packages: readonly { items: readonly Item[] }[] },
  context: z.core.$RefinementCtx<unknown>,
): void {
  const { height } = wishes;
  const least = typeof height === "number" ? height : "from" in height ? height.from : Math.min(...height);
  wishes.packages.forEach(({ items }, p) => {
    items.forEach(({ at, below }, i) => {
      const path = ["packages", p, "items", i];
      if (at !== undefined && at > least + 1e-9)
        refuse(
          context,
          [...path, "at"],
          `a height of at most ${least} m, the lowest mast that is wished for`,
        );
      if (below !== undefined && below > least - 0.1)
        refuse(
          context,
          [...path, "below"],
          `less than ${least - 0.1} m, for the lowest mast that is wished for`,
        );
    });
  });
}

export const studySchema = z
  .strictObject({
    mastwright: z.literal(STUDY_VERSION),
    name: z.string().min(1).max(120),
    /** Who asks, and what; shown under the title. Every place and person is invented. */
    story: z.string().max(2000).default(""),
    /** Least of the first three; most of the others, within the budget. */
    aim: z.enum(AIMS).default("cost"),
    /** Among those equally good, this next; absent: cost, and where cost is the aim the greater margin. */
    nextAim: z.enum(AIMS).optional(),

    site: z
      .strictObject({
        wind,
        /** Absent means no ice. */
        ice: ice.optional(),
        /** What the footing of a mast without guys resists turning with, N m/rad. Absent: it does not turn. */
        baseStiffness: z.number().gt(0).optional(),
        /** Absent means that guys and mast keep the temperature that they are rigged at. */
        temperature: temperature.optional(),
        soil: id,
        frostDepth: length,
        /** Below grade; absent means deeper than anything dug here. */
        waterTable: length.optional(),
        /** May concrete be poured below water (by tremie, or pumped dry)? Then its weight there counts less water. */
        pourBelowWater: z.boolean().default(false),
        /** Deepest hole that can be dug here. */
        greatestDig: length.default(3),
      })
      .superRefine(({ wind: { basis }, ice: hung }, context) => {
        if (!hung) return;
        if (basis === "uniform" && hung.pressure === undefined)
          refuse(context, ["ice", "pressure"], "the wind pressure that blows while the ice hangs");
        if (basis !== "uniform" && hung.speed === undefined)
          refuse(context, ["ice", "speed"], "the wind speed that blows while the ice hangs");
      }),

    lot: z
      .strictObject({
        /** Corners in order, either way round. */
        corners: z.array(point).min(3).max(200),
        mast: point,
        /** Least distance from an anchor to the lot line. */
        setback: length.default(0),
        /** The ground falls evenly toward a bearing (degrees clockwise from north), by so much per distance. Absent: level. */
        slope: z
          .strictObject({ toward: z.number().min(0).max(360), fall: z.number().gt(0).max(0.5) })
          .optional(),
        /** Plots where no anchor may stand: a drive, a septic field, the side of a neighbour. */
        keepOut: z
          .array(
            z
              .strictObject({ name: text, corners: z.array(point).min(3).max(200) })
              .superRefine((plot, context) => void refuseOddCorners(plot, context)),
          )
          .max(50)
          .optional(),
        /** Level distance that guys, anchors and mast keep from power lines; absent means 10 ft. */
        lineClearance: length.optional(),
        /** May a power line stand where a falling mast reaches it? Then that is said and fails nothing. */
        linesWithinFall: z.boolean().optional(),
        powerLines: z
          .array(z.strictObject({ name: text, points: z.array(point).min(2).max(200) }))
          .max(50)
          .default([]),
      })
      .superRefine(refuseOddLot),

    wishes: z
      .strictObject({
        /** Top of the mast above the base footing. More than one value lets the search choose. */
        height: axis(dimensioned("length", { min: 1, max: 200 }), positiveLength),
        /** Sets of antennas, each good enough: the cheapest safe one is found. */
        packages: unique(
          z.strictObject({
            id,
            name: text,
            /** Pipe above the mast top that carries antennas; where all hang beside the mast it is not bought. */
            pipe: id,
            items: z.array(antennaItem).min(1).max(20),
            /** Projected width of all cables: round. */
            cableWidth: length.default(0),
            /** Projected solid width of a ladder, rails and rungs: flat. */
            ladder: length.default(0),
            /** What cables, ladder and their clamps weigh along the mast. */
            runWeight: dimensioned("lineForce", { min: 0 }).default(0),
          }),
        )
          .min(1)
          .max(50),
        /** Least of capacity / required - 1 over every strength check. */
        margin: z.number().min(0).max(5).default(0),
        /** Greatest turn of any antenna from plumb, and about the mast's axis, degrees, in the service wind. */
        swayLimit: turn.optional(),
        twistLimit: turn.optional(),
        /** Service wind as a share of the design wind pressure of the rule set. */
        serviceWind: z.number().gt(0).max(1).default(1),
        /** Must the mast stand with any one guy gone? The rule set says in which wind and by how much. */
        lossOfOneGuy: z.boolean().default(false),
        /** Is the mast itself the aerial? Then it stands on a base insulator and hangs in insulated guys. */
        insulatedBase: z.boolean().default(false),
        heightLimit: length.optional(),
        concreteCap: dimensioned("volume", { min: 0 }).optional(),
        /** All that may be spent, and dug. */
        budget: price.optional(),
        digCap: dimensioned("volume", { min: 0 }).optional(),
      })
      .superRefine(refuseHighPlaces),

    rules: z.strictObject({
      set: id,
    }),

    /** What the search may choose from. `"all"` takes every row of the table. */
    parts: z
      .strictObject({
        sections: z.union([z.literal("all"), distinct(id)]).default("all"),
        /** May two conditions of one family stand in one mast, the one above the other? */
        mixedStacks: z.boolean().default(true),
        supports: distinct(z.enum(["guyed", "freestanding"])).default(["guyed", "freestanding"]),
        guysPerLevel: distinct(z.union([z.literal(3), z.literal(4)])).default([3]),
        levelCounts: distinct(z.int().min(1).max(5)).default([1, 2, 3]),
        levelHeights: axis(length, positiveLength).default({ from: 4.572, to: 60.96, step: 1.524 }),
        strands: z.union([z.literal("all"), distinct(id)]).default("all"),
        /** Initial tension as a fraction of breaking strength. */
        tensions: distinct(z.number().gt(0).max(0.4)).default([0.1]),
        /** May each level have a tension of its own? Otherwise one for all. */
        tensionEachLevel: z.boolean().default(false),
        radius: axis(length, positiveLength).default({ from: 6.096, to: 24.384, step: 0.6096 }),
        /** May an anchor stand nearer than the others, at the farthest radius of the list, where the lot is too short? */
        drawnIn: z.boolean().default(false),
        /** What hangs in every guy beside its strand and end fittings. Absent: nothing. */
        guyHardware: guyHardware.optional(),
        /** Bearing of anchor 1, degrees clockwise from north. */
        rotation: axis(z.number(), z.number().gt(0)).default({ from: 0, to: 110, step: 10 }),
        footings: z.union([z.literal("all"), distinct(id)]).default("all"),
        anchors: z.union([z.literal("all"), distinct(id)]).default("all"),
        /** Is strand that the catalog has on reels paid by whole reels, cut for the least money? Else by length. */
        wholeReels: z.boolean().optional(),
        /** Is concrete paid as it is sold, by bags, truckloads and short loads, for the least money? Else by volume. */
        concreteAsSold: z.boolean().optional(),
        /** Are bars of the base paid by the lengths that they are sold in, cut for the least money? Else by mass. */
        barsAsSold: z.boolean().optional(),
        /** Torque arms that the top guys may meet; absent: all guys meet the mast's axis. */
        torqueArms: distinct(id).optional(),
        /** What may not stand together, or not on a side of the mast. Absent: anything may. */
        barred: barredSchema.optional(),
        /** Base insulators, for a mast that is wished insulated. */
        insulators: z.union([z.literal("all"), distinct(id)]).default("all"),
      })
      .prefault({}),

    /** What may be otherwise than stated: a design must be safe all over. Absent: as stated, nowhere else. */
    ranges: rangesSchema.optional(),
    /** How what is stated may turn out, for the probability that a check is missed. */
    uncertain: uncertainSchema.optional(),

    /** Rows that this study adds to the catalog or puts in place of rows with the same id. */
    catalog: catalogPatchSchema.prefault({}),
  })
  .superRefine((study, context) => {
    const { aim, nextAim, wishes, parts } = study;
    refuseOddInsulation(wishes, parts, context);
    if (parts.torqueArms) refuseOddArms(study, context);
    refuseOddSpeeds(study, context);
    const most = [aim, nextAim].find((one) => one !== undefined && !isLeast(one));
    if (most && wishes.budget === undefined)
      refuse(
        context,
        ["wishes", "budget"],
        `what may be spent: the most ${most} without a budget has no end`,
      );
    if (nextAim === aim) refuse(context, ["nextAim"], `another aim than "${aim}"`);
  });

/** A study as it is written: quantities as text with units or SI numbers. */
export type StudyFile = z.input<typeof studySchema>;
/** A study as it is computed with: SI numbers, defaults filled in. */
export type Study = z.output<typeof studySchema>;
export type WindGivens = Study["site"]["wind"];
export type GuyHardware = NonNullable<Study["parts"]["guyHardware"]>;
export type AntennaPackage = Study["wishes"]["packages"][number];
