import { test } from "vitest";
import { shortPileClay, shortPileSand } from "../../../src/physics/ground/broms.ts";
import { eccentricPressure } from "../../../src/physics/ground/eccentric.ts";
import {
  type DepthLimit,
  restrainedDepth,
  unrestrainedDepth,
} from "../../../src/physics/ground/embedded-post.ts";
import { activeCoefficient, passiveCoefficient } from "../../../src/physics/ground/rankine.ts";
import { upliftCone, upliftPrism } from "../../../src/physics/ground/uplift-pyramid.ts";
import { checkValue } from "../../support/check-values.ts";
import { FOOT, FOOT_POUND, PCF, POUND, PSF } from "../../support/us-units.ts";

test("Rankine's coefficients follow tan2(45 +- phi/2)", () => {
  const rows = [
    [25, 2.4639, 0.4059],
    [28, 2.7698, 0.361],
    [30, 3, 0.3333],
    [32, 3.2546, 0.3073],
    [34, 3.5371, 0.2827],
    [35, 3.6902, 0.271],
    [36, 3.8518, 0.2596],
    [38, 4.2037, 0.2379],
    [40, 4.5989, 0.2174],
  ];
  for (const [angle, passive, active] of rows)
    for (const [what, expected, computed] of [
      ["passive", passive, passiveCoefficient(angle)],
      ["active", active, activeCoefficient(angle)],
    ] as const)
      checkValue({
        subject: `soil: ${what} coefficient, friction angle ${angle} degrees`,
        source: "Rankine 1857, in any textbook of soil mechanics",
        tag: "arithmetic",
        expected,
        computed,
        tolerance: 0.00006,
        absolute: true,
        unit: "",
      });
});

const post = (force: number, height: number, width: number, bearing: number, multiplier = 1) => ({
  lateralForce: force * POUND,
  forceHeight: height * FOOT,
  width: width * FOOT,
  lateralBearingPerDepth: bearing * PCF,
  multiplier,
});

test("embedded posts agree with the worked example of the spreadsheet book", () => {
  const example = post(510, 4, 1, 266);
  for (const [what, expected, computed] of [
    ["free at grade", 5.02, unrestrainedDepth(example)],
    ["held at grade", 3.19, restrainedDepth(example)],
  ] as const)
    checkValue({
      subject: `soil: depth of a post ${what}, 510 lb at 4 ft, 1 ft wide, 266 psf/ft`,
      source: "Christy, Engineering with the Spreadsheet, ASCE Press 2006, figure 16-1; IBC 1807.3.2",
      tag: "published",
      expected,
      computed: computed / FOOT,
      // two printed decimals
      tolerance: 0.005,
      absolute: true,
      unit: "ft",
    });
});

test("embedded posts follow IBC 1807.3.2 over its range", () => {
  const rows = [
    [1000, 10, 2, 100, 1, 8.8504, 5.9674],
    [1000, 10, 2, 100, 2, 6.7685, 4.7363],
    [1000, 10, 2, 150, 1, 7.5592, 5.213],
    [1000, 10, 2, 150, 2, 5.8031, 4.1376],
    [2000, 30, 3, 200, 2, 7.7959, 5.9674],
    [500, 20, 1.5, 100, 2, 6.955, 5.213],
  ];
  for (const [force, height, width, bearing, multiplier, free, held] of rows) {
    const given = post(force, height, width, bearing, multiplier);
    for (const [what, expected, computed] of [
      ["free", free, unrestrainedDepth(given)],
      ["held", held, restrainedDepth(given)],
    ] as const)
      checkValue({
        subject: `soil: depth of a post ${what} at grade, ${force} lb at ${height} ft, ${width} ft wide, ${multiplier} x ${bearing} psf/ft`,
        source: "IBC 1807.3.2.1 and 1807.3.2.2",
        tag: "arithmetic",
        expected,
        computed: computed / FOOT,
        tolerance: 0.00006,
        absolute: true,
        unit: "ft",
      });
  }
});

test("unrestrainedDepth(post, limit) keeps both readings of the 12 ft limit", () => {
  const deep = post(6000, 40, 3, 150);
  const readings: [DepthLimit, number][] = [
    ["literal", 17.92],
    ["conservative", 22.75],
    ["none", 17.92],
  ];
  for (const [limit, expected] of readings)
    checkValue({
      subject: `soil: depth of a post, 6000 lb at 40 ft, 12 ft limit read as ${limit}`,
      source: "IBC 1807.3.2.1",
      tag: "arithmetic",
      expected,
      computed: unrestrainedDepth(deep, limit) / FOOT,
      tolerance: 0.006,
      absolute: true,
      unit: "ft",
    });
});

test("short piles agree with worked examples in print", () => {
  const clay = shortPileClay(47_900, 0.305, 2.44, 0.61);
  const sand = shortPileSand(35, 17_000, 0.4, 4.8, 0);
  const clayBook = "Reese and Van Impe, Single Piles and Pile Groups, appendix A (Broms 1964)";
  const sandSheet = "Broms 1964, a published pile worksheet (read from a chart)";
  for (const [what, source, expected, computed, tolerance, unit] of [
    ["clay, lateral load", clayBook, 59.4, clay.ultimateLateral / 1000, 0.003, "kN"],
    ["clay, greatest moment", clayBook, 76.9, clay.maxMoment / 1000, 0.003, "kN m"],
    ["sand, lateral load", sandSheet, 291.1, sand.ultimateLateral / 1000, 0.01, "kN"],
    ["sand, depth of the greatest moment", sandSheet, 2.8, sand.momentDepth, 0.02, "m"],
    ["sand, greatest moment", sandSheet, 542, sand.maxMoment / 1000, 0.02, "kN m"],
  ] as const)
    checkValue({
      subject: `soil: short pile, ${what}`,
      source,
      tag: "published",
      expected,
      computed,
      tolerance,
      unit,
    });
});

test("short piles follow Broms's equations", () => {
  const clays = [
    [1000, 2, 8, 10, 7211.46, 0.4006, 95193.6],
    [1000, 3, 8, 30, 2279.71, 0.0844, 78746.1],
    [2000, 1.5, 5, 15, 2737.05, 0.1014, 47352.8],
  ].map(([strength, d, depth, e, load, at, moment]) => ({
    name: `clay of ${strength} psf, ${d} ft by ${depth} ft, pushed at ${e} ft`,
    pile: shortPileClay(strength * PSF, d * FOOT, depth * FOOT, e * FOOT),
    load,
    at,
    moment,
  }));
  const sands = [
    [110, 2, 6, 10, 30, 4455.0, 2.1213, 50850.3],
    [110, 3, 6, 30, 30, 2970.0, Math.SQRT2, 91900.1],
    [120, 2, 8, 20, 32, 7141.5, 2.4689, 154584.1],
  ].map(([weight, d, depth, e, angle, load, at, moment]) => ({
    name: `sand of ${angle} degrees and ${weight} pcf, ${d} ft by ${depth} ft, pushed at ${e} ft`,
    pile: shortPileSand(angle, weight * PCF, d * FOOT, depth * FOOT, e * FOOT),
    load,
    at,
    moment,
  }));
  for (const { name, pile, load, at, moment } of [...clays, ...sands])
    for (const [what, expected, computed, unit, tolerance] of [
      ["lateral load", load, pile.ultimateLateral / POUND, "lb", 2e-5],
      ["depth of the greatest moment", at, pile.momentDepth / FOOT, "ft", 5e-4],
      ["greatest moment", moment, pile.maxMoment / FOOT_POUND, "ft-lb", 2e-5],
    ] as const)
      checkValue({
        subject: `soil: short pile in ${name}, ${what}`,
        source: "Broms 1964, J. Soil Mech. Found. Div. ASCE 90 SM2 and SM3",
        tag: "arithmetic",
        expected,
        computed,
        tolerance,
        unit,
      });
});

test("eccentricPressure follows the linear and the effective-width rule on a 6 ft square base under 20 kip", () => {
  const rows = [
    [10_000, 0.5, 833.33, 666.67],
    [20_000, 1, 1111.11, 833.33],
    [30_000, 1.5, 1481.48, 1111.11],
    [40_000, 2, 2222.22, 1666.67],
  ];
  for (const [moment, eccentricity, peak, effective] of rows) {
    const pressure = eccentricPressure(20_000 * POUND, moment * FOOT_POUND, 6 * FOOT, 6 * FOOT);
    for (const [what, source, expected, computed, unit] of [
      ["eccentricity", "statics", eccentricity, pressure.eccentricity / FOOT, "ft"],
      ["peak pressure", "statics, no tension", peak, pressure.peakPressure / PSF, "psf"],
      ["effective pressure", "Meyerhof 1953", effective, pressure.effectivePressure / PSF, "psf"],
    ] as const)
      checkValue({
        subject: `soil: 6 ft square base, 20 kip and ${moment} ft-lb, ${what}`,
        source,
        tag: "arithmetic",
        expected,
        computed,
        tolerance: 1e-5,
        unit,
      });
  }
});

test("volumes of lifted soil at 30 degrees follow the exact prismatoid and cone", () => {
  for (const [what, expected, computed] of [
    ["cone, radius 1, depth 5 ft", 104.6862, upliftCone(FOOT, 5 * FOOT, 30)],
    ["cone, radius 1.5, depth 4 ft", 94.1457, upliftCone(1.5 * FOOT, 4 * FOOT, 30)],
    ["pyramid, 3 x 3, depth 4 ft", 119.8701, upliftPrism(3 * FOOT, 3 * FOOT, 4 * FOOT, 30)],
    ["pyramid, 4 x 3, depth 5 ft", 216.5919, upliftPrism(4 * FOOT, 3 * FOOT, 5 * FOOT, 30)],
  ] as const)
    checkValue({
      subject: `soil: volume lifted, ${what}`,
      source: "solid geometry",
      tag: "arithmetic",
      expected,
      computed: computed / FOOT ** 3,
      tolerance: 1e-6,
      unit: "ft3",
    });
});
