import { test } from "vitest";
import { deadmanCapacity } from "../../../src/physics/ground/deadman.ts";
import {
  bearingUnder,
  lateralForce,
  lateralMoment,
  type SoilGivens,
} from "../../../src/physics/ground/soil.ts";
import { checkValue } from "../../support/check-values.ts";
import { FOOT, PCF, POUND, PSF } from "../../support/us-units.ts";

/** Clay over sandy gravel from 4 ft, classes 5 and 3 of IBC table 1806.2. */
const soil: SoilGivens = {
  bearing: 1500 * PSF,
  lateralPerDepth: 100 * PCF,
  unitWeight: 110 * PCF,
  frictionAngle: 25,
  layers: [
    {
      from: 4 * FOOT,
      bearing: 3000 * PSF,
      lateralPerDepth: 200 * PCF,
      unitWeight: 125 * PCF,
      frictionAngle: 34,
    },
  ],
};
const rules = { concreteUnitWeight: 150 * PCF, upliftAngle: 30 };

test("lateral bearing of 100 psf/ft over 200 psf/ft from 4 ft, by hand", () => {
  for (const [what, source, expected, computed, unit] of [
    // 0 to 4 ft: 100 x 8; 4 to 6 ft: 200 x (36 - 16) / 2
    ["force to 6 ft", "800 + 2000", 2800, lateralForce(soil, 0, 6 * FOOT) / (POUND / FOOT), "lb/ft"],
    // 800 at 6 - 8/3; 800 x 2 x 1 + 400 x 2 / 2 x 2 / 3
    [
      "moment about 6 ft",
      "800 (6 - 8/3) + 1600 x 1 + 400 x 2/3",
      2666.667 + 1600 + 266.667,
      lateralMoment(soil, 6 * FOOT) / POUND,
      "lb-ft/ft",
    ],
  ] as const)
    checkValue({
      subject: `layers: lateral bearing, ${what}`,
      source: `areas of the pressure diagram: ${source}`,
      tag: "arithmetic",
      expected,
      computed,
      tolerance: 1e-6,
      unit,
    });
});

test("bearing over a weaker layer by the load spread at 2 down to 1 out", () => {
  const crust: SoilGivens = {
    bearing: 3000 * PSF,
    lateralPerDepth: 0,
    unitWeight: 1,
    layers: [{ from: 6 * FOOT, bearing: 1000 * PSF, lateralPerDepth: 0, unitWeight: 1 }],
  };
  checkValue({
    subject: "layers: bearing of a 4 ft base at 4 ft, 3000 psf over 1000 psf from 6 ft",
    source: "2 : 1 method, from memory: 1000 (4 + 2)2 / 42",
    tag: "arithmetic",
    expected: 2250,
    computed: bearingUnder(crust, 4 * FOOT, 4 * FOOT) / PSF,
    tolerance: 1e-9,
    unit: "psf",
  });
});

test("a deadman across two layers, by hand", () => {
  const deadman = { length: 4 * FOOT, height: 2 * FOOT, width: 3 * FOOT, depth: 5 * FOOT };
  const { uplift, lateral } = deadmanCapacity(deadman, soil, rules);
  const tan = Math.tan(Math.PI / 6);
  const prism = (h: number) =>
    (h / 6) * (12 + 4 * (4 + h * tan) * (3 + h * tan) + (4 + 2 * h * tan) * (3 + 2 * h * tan));
  checkValue({
    subject: "layers: uplift of a deadman 4 x 3 x 2 ft, bottom at 5 ft, gravel below 4 ft",
    source:
      "prismatoid to 1 ft above the bottom at 125 pcf, the rest at 110 pcf, 24 ft3 of concrete at 150 pcf",
    tag: "arithmetic",
    expected: 24 * 150 + (prism(1) - 12) * 125 + (prism(5) - prism(1) - 12) * 110,
    computed: uplift / POUND,
    tolerance: 1e-9,
    unit: "lb",
  });
  // 25 degrees: Kp - Ka = 2.0580, 3 to 4 ft at 330 to 440 psf; 34 degrees: 3.2544, 4 to 5 ft at 440 to 565 psf
  checkValue({
    subject: "layers: lateral hold of a deadman 4 x 2 ft, 25 degrees to 4 ft and 34 below",
    source: "Rankine with the stress of both layers: 4 (2.0580 x 385 + 3.2544 x 502.5)",
    tag: "arithmetic",
    expected: 4 * (2.058 * 385 + 3.2544 * 502.5),
    computed: lateral / POUND,
    tolerance: 1e-4,
    unit: "lb",
  });
});
