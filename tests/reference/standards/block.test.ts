import { test } from "vitest";
import { blockResistance } from "../../../src/physics/ground/block.ts";
import { blockOverturning } from "../../../src/physics/ground/block-overturning.ts";
import { balancedSoilMoment } from "../../../src/physics/ground/block-pivot.ts";
import { checkValue } from "../../support/check-values.ts";
import { FOOT, FOOT_POUND, PCF, POUND } from "../../support/us-units.ts";

/** A block of 3 x 3 x 4 ft in soil of 400 psf per foot, under a mast of 420 lb that brings 17200 ft-lb. */
const ways = blockOverturning({
  width: 3 * FOOT,
  breadth: 3 * FOOT,
  depth: 4 * FOOT,
  concreteUnitWeight: 150 * PCF,
  soil: { bearing: 0, unitWeight: 0, lateralPerDepth: 400 * PCF },
  lateralMultiplier: 1,
  verticalLoad: 420 * POUND,
  momentAtGround: 17_200 * FOOT_POUND,
  shearAtGround: 0,
  layerThickness: FOOT,
});

const practice = { tag: "common practice, no source", tolerance: 1e-9 } as const;
const statics = { source: "statics about the toe, integrated", tag: "arithmetic", tolerance: 1e-9 } as const;
const byHand = { ...practice, source: "the hand way, by layers of 1 ft at the pressure of their bottom" };

test("blockOverturning shows the hand way of a 3 x 3 x 4 ft block, number for number", () => {
  for (const [what, expected, computed, unit] of [
    ["weight", 5400, ways.deadMoment / (1.5 * FOOT) / POUND, "lb"],
    ["restoring moment of the block", 8100, ways.deadMoment / FOOT_POUND, "ft-lb"],
    ["restoring moment of a mast of 420 lb", 630, ways.mastMoment / FOOT_POUND, "ft-lb"],
    ["soil by layers, 4200 + 6000 + 5400 + 2400", 18_000, ways.soilMomentHand / FOOT_POUND, "ft-lb"],
    [
      "restoring moment in all",
      26_730,
      (ways.deadMoment + ways.mastMoment + ways.soilMomentHand) / FOOT_POUND,
      "ft-lb",
    ],
    ["factor against 17200 ft-lb, 1.55 as rounded", 26_730 / 17_200, ways.factorHand, ""],
  ] as const)
    checkValue({ subject: `block: 3 x 3 x 4 ft by hand, ${what}`, ...byHand, expected, computed, unit });
});

test("blockOverturning integrates the same soil to 12800 ft-lb and a factor of 1.25", () => {
  for (const [what, expected, computed, unit] of [
    ["soil", 12_800, ways.soilMomentExact / FOOT_POUND, "ft-lb"],
    ["factor, 1.25 as rounded", 21_530 / 17_200, ways.factorExact, ""],
  ] as const)
    checkValue({ subject: `block: 3 x 3 x 4 ft exactly, ${what}`, ...statics, expected, computed, unit });
});

test("blockResistance judges by the exact way, the shear's arm to the toe included", () => {
  const shear = 430 * POUND;
  const { overturning } = blockResistance(
    { width: 3 * FOOT, depth: 4 * FOOT },
    { compression: 420 * POUND, shear, moment: 17_200 * FOOT_POUND },
    { bearing: 1e6, lateralPerDepth: 400 * PCF, unitWeight: 1 },
    { concreteUnitWeight: 150 * PCF, upliftAngle: 30 },
  );
  for (const [what, expected, computed] of [
    ["overturning M + V D", 17_200 + 430 * 4, overturning.demand / FOOT_POUND],
    ["restoring", 21_530, overturning.capacity / FOOT_POUND],
  ] as const)
    checkValue({
      subject: `block: 3 x 3 x 4 ft as judged with 430 lb of shear, ${what}`,
      ...statics,
      expected,
      computed,
      unit: "ft-lb",
    });
});

test("balancedSoilMoment gives up the soil that nothing holds back", () => {
  // 600 (2 z2 - 16) 2 = 430 + 2037 lb gives z; soil 12800 less twice 1200 (2 u2 - u3/3), u = 4 - z
  const z = Math.sqrt((2467 / 600 + 16) / 2);
  const u = 4 - z;
  const soil = { bearing: 0, lateralPerDepth: 400 * PCF, unitWeight: 0 };
  const { pivotDepth, moment } = balancedSoilMoment(3 * FOOT, 4 * FOOT, soil, 2467 * POUND);
  for (const [what, expected, computed, unit] of [
    ["depth of the pivot", z, pivotDepth / FOOT, "ft"],
    ["soil", 12_800 - 2 * 1200 * (2 * u ** 2 - u ** 3 / 3), moment / FOOT_POUND, "ft-lb"],
  ] as const)
    checkValue({
      subject: `block: 3 x 3 x 4 ft with horizontal forces in balance, ${what}`,
      source: "statics, pressures of equal slope on both sides",
      tag: "arithmetic",
      expected,
      computed,
      tolerance: 1e-9,
      unit,
    });
  const firm = balancedSoilMoment(3 * FOOT, 4 * FOOT, soil, 9600 * POUND);
  checkValue({
    subject: "block: 3 x 3 x 4 ft, soil where base and wind hold all of its push",
    ...statics,
    expected: 12_800,
    computed: firm.moment / FOOT_POUND,
    unit: "ft-lb",
  });
});

test("a 3.5 x 3.5 x 5 ft block by both ways", () => {
  const deeper = blockOverturning({
    width: 3.5 * FOOT,
    breadth: 3.5 * FOOT,
    depth: 5 * FOOT,
    concreteUnitWeight: 150 * PCF,
    soil: { bearing: 0, unitWeight: 0, lateralPerDepth: 300 * PCF },
    lateralMultiplier: 1,
    verticalLoad: 380 * POUND,
    momentAtGround: 29_600 * FOOT_POUND,
    shearAtGround: 740 * POUND,
    layerThickness: FOOT,
  });
  for (const [what, expected, computed, row] of [
    ["soil by layers", 28_875, deeper.soilMomentHand / FOOT_POUND, byHand],
    ["soil integrated", 21_875, deeper.soilMomentExact / FOOT_POUND, statics],
    ["overturning about the toe", 33_300, deeper.overturningExact / FOOT_POUND, statics],
  ] as const)
    checkValue({ subject: `block: 3.5 x 3.5 x 5 ft, ${what}`, ...row, expected, computed, unit: "ft-lb" });
  for (const [what, expected, computed, row] of [
    ["factor by hand", 1.54, deeper.factorHand, byHand],
    ["factor exactly", 1.16, deeper.factorExact, statics],
  ] as const)
    checkValue({
      subject: `block: 3.5 x 3.5 x 5 ft, ${what}`,
      ...row,
      expected,
      computed,
      tolerance: 0.005,
      absolute: true,
      unit: "",
    });
});
