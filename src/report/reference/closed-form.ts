import { blockOverturning } from "../../physics/ground/block-overturning.ts";
import { shortPileClay, shortPileSand } from "../../physics/ground/broms.ts";
import { eccentricPressure } from "../../physics/ground/eccentric.ts";
import { restrainedDepth, unrestrainedDepth } from "../../physics/ground/embedded-post.ts";
import { upliftPrism } from "../../physics/ground/uplift-pyramid.ts";
import { tensionFromSwings } from "../../physics/guy/swings.ts";
import { thrustShare } from "../../physics/guy/thrust-share.ts";
import { fieldFactor } from "../../physics/radio/ground-reflection.ts";
import { columnStress } from "../../physics/steel/column.ts";
import { exposureCoefficient, velocityPressure } from "../../physics/wind/asce7.ts";
import { peakVelocityPressure } from "../../physics/wind/en1991.ts";
import { latticeDrag } from "../../physics/wind/lattice-drag.ts";
import { GivenReader } from "./given-reader.ts";

/** A case from outside: kind and givens, perhaps with the answer that its author expects. SI, angles in degrees. */
export interface ClosedFormCase {
  readonly id: string;
  readonly kind: string;
  readonly input: Readonly<Record<string, unknown>>;
}

type ComputedValues = Readonly<Record<string, number | readonly number[]>>;

/** How one kind of case is put to the project's own functions. */
export type ClosedFormKind = (given: GivenReader) => ComputedValues;

export type ClosedFormResult =
  | { readonly id: string; readonly kind: string; readonly computed: ComputedValues }
  | { readonly id: string; readonly kind: string; readonly error: string };

const radians = (degrees: number) => (degrees * Math.PI) / 180;

const postOf = (given: GivenReader) => ({
  lateralForce: given.number("lateralForce"),
  forceHeight: given.number("forceHeight"),
  width: given.number("width"),
  lateralBearingPerDepth: given.number("lateralBearingPerDepth"),
  multiplier: given.number("multiplier"),
});

const kinds: Readonly<Record<string, ClosedFormKind>> = {
  "swing-tension": (given) => {
    const guy = { guyWeight: given.number("guyWeight"), guyLength: given.number("guyLength") };
    return { tension: tensionFromSwings(guy, given.number("swings"), given.number("seconds")).tension };
  },
  "thrust-share": (given) => ({
    thrusts: thrustShare(given.number("baseMoment"), given.numbers("levelHeights"), given.numbers("ratios")),
  }),
  "block-overturning": (given) => ({
    ...blockOverturning({
      width: given.number("width"),
      breadth: given.number("breadth"),
      depth: given.number("depth"),
      concreteUnitWeight: given.number("concreteUnitWeight"),
      soil: {
        bearing: 0,
        unitWeight: 0,
        lateralPerDepth: given.number("lateralBearingPerDepth"),
        lateralCap: given.has("lateralBearingCap") ? given.number("lateralBearingCap") : undefined,
      },
      lateralMultiplier: 1,
      verticalLoad: given.number("verticalLoad"),
      momentAtGround: given.number("momentAtGround"),
      shearAtGround: given.number("shearAtGround"),
      layerThickness: given.number("layerThickness"),
    }),
  }),
  "embedded-post": (given) => ({
    depthUnrestrained: unrestrainedDepth(postOf(given), "none"),
    depthRestrained: restrainedDepth(postOf(given)),
  }),
  "wind-asce7": (given) => {
    const wind = {
      edition: given.oneOf("edition", ["7-16", "7-22"]),
      speed: given.number("speed"),
      exposure: given.oneOf("exposure", ["B", "C", "D"]),
      topographicFactor: given.number("topographicFactor"),
      directionalityFactor: given.number("directionalityFactor"),
      groundElevation: given.number("groundElevation"),
    };
    const height = given.number("height");
    return {
      exposureCoefficient: exposureCoefficient(wind.edition, wind.exposure, height),
      velocityPressure: velocityPressure(wind, height),
    };
  },
  "wind-en1991": (given) => {
    const wind = {
      basicSpeed: given.number("basicSpeed"),
      terrain: given.oneOf("terrain", ["0", "I", "II", "III", "IV"]),
      orographyFactor: given.number("orographyFactor"),
      airDensity: given.number("airDensity"),
    };
    return { ...peakVelocityPressure(wind, given.number("height")) };
  },
  "lattice-drag": (given) => ({
    dragCoefficient: latticeDrag({
      legs: given.oneOf("legs", [3, 4]),
      solidity: given.number("solidity"),
      members: given.oneOf("members", ["round", "flat"]),
      direction: given.oneOf("direction", ["face", "diagonal"]),
    }),
  }),
  "column-stress": (given) => ({
    criticalStress: columnStress(
      given.number("yieldStress"),
      given.number("modulus"),
      given.number("slenderness"),
    ),
  }),
  "short-pile-clay": (given) => {
    const { ultimateLateral, maxMoment } = shortPileClay(
      given.number("undrainedStrength"),
      given.number("diameter"),
      given.number("embedment"),
      given.number("eccentricity"),
    );
    return { ultimateLateral, maxMoment };
  },
  "short-pile-sand": (given) => {
    const { ultimateLateral, maxMoment } = shortPileSand(
      given.number("frictionAngle"),
      given.number("unitWeight"),
      given.number("diameter"),
      given.number("embedment"),
      given.number("eccentricity"),
    );
    return { ultimateLateral, maxMoment };
  },
  "eccentric-footing": (given) => ({
    ...eccentricPressure(
      given.number("verticalLoad"),
      given.number("moment"),
      given.number("width"),
      given.number("length"),
    ),
  }),
  "uplift-pyramid": (given) => ({
    soilVolume: upliftPrism(
      given.number("length"),
      given.number("width"),
      given.number("depth"),
      given.number("angle"),
    ),
  }),
  "ground-reflection": (given) => {
    const antenna = {
      height: given.number("height"),
      frequency: given.number("frequency"),
      polarisation: given.oneOf("polarisation", ["horizontal", "vertical"]),
      ground: {
        relativePermittivity: given.number("relativePermittivity"),
        conductivity: given.number("conductivity"),
      },
    };
    return { fieldFactor: fieldFactor(antenna, radians(given.number("elevation"))) };
  },
};

/** Breaking strength (N) and weight (N/m) of a strand by nominal diameter ("3/16") and grade ("EHS"). */
type StrandLookup = (
  diameter: string,
  grade: string,
) => { readonly breakingStrength: number; readonly weightPerLength: number } | undefined;

/** The kind "strand" answered from a catalog. */
export function strandKind(strands: StrandLookup): ClosedFormKind {
  return (given) => {
    const diameter = given.text("diameter");
    const grade = given.text("grade");
    const row = strands(diameter, grade);
    if (!row)
      throw new RangeError(
        `strand: found ${diameter} in. ${grade}, expected a row of the catalog's strand table`,
      );
    return { breakingStrength: row.breakingStrength, weightPerLength: row.weightPerLength };
  };
}

/**
 * Puts one case to the project's own functions. A refusal becomes `error`, with the reason.
 * @param more kinds answered elsewhere: the catenary, the strand of a catalog
 */
export function closedFormCase(
  outside: ClosedFormCase,
  more: Readonly<Record<string, ClosedFormKind>> = {},
): ClosedFormResult {
  const { id, kind, input } = outside;
  const known = { ...kinds, ...more };
  if (!Object.hasOwn(known, kind))
    return { id, kind, error: `kind: found "${kind}", expected one of ${Object.keys(known).join(", ")}` };
  try {
    return { id, kind, computed: known[kind](new GivenReader(input)) };
  } catch (refusal) {
    if (refusal instanceof RangeError) return { id, kind, error: refusal.message };
    throw refusal;
  }
}
