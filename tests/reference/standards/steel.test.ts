import { test } from "vitest";
import { concreteBearing } from "../../../src/physics/steel/bearing.ts";
import { columnStress } from "../../../src/physics/steel/column.ts";
import { latticeProperties } from "../../../src/physics/steel/lattice.ts";
import { pipeMoment } from "../../../src/physics/steel/pipe.ts";
import { roundProperties } from "../../../src/physics/steel/round.ts";
import { checkValue } from "../../support/check-values.ts";
import { INCH, KSI } from "../../support/us-units.ts";

const E = 29_000;
const stress = (yieldKsi: number, slenderness: number) =>
  columnStress(yieldKsi * KSI, E * KSI, slenderness) / KSI;

test("columnStress follows AISC 360 E3 on both sides of the transition", () => {
  const slenderness = [10, 20, 25, 40, 60, 80, 100, 113, 120, 140, 160, 200];
  const expected = {
    50: [49.636, 48.559, 47.767, 44.48, 38.429, 31.314, 24.067, 19.656, 17.432, 12.807, 9.805, 6.275],
    36: [35.811, 35.25, 34.835, 33.092, 29.785, 25.703, 21.265, 18.381, 16.868, 12.807, 9.805, 6.275],
  };
  for (const yieldKsi of [50, 36] as const)
    slenderness.forEach((ratio, index) => {
      checkValue({
        subject: `steel: critical stress, Fy ${yieldKsi} ksi, KL/r ${ratio}`,
        source: "AISC 360-16 equations E3-2 to E3-4",
        tag: "arithmetic",
        expected: expected[yieldKsi][index],
        computed: stress(yieldKsi, ratio),
        tolerance: 0.0006,
        absolute: true,
        unit: "ksi",
      });
    });
});

test("columnStress agrees with the printed column tables", () => {
  const rows = [
    [50, 10, 29.7, 44.7],
    [50, 20, 29.1, 43.7],
    [36, 25, 20.9, 31.4],
  ];
  for (const [yieldKsi, ratio, allowable, design] of rows)
    for (const [what, expected, computed] of [
      ["allowable", allowable, stress(yieldKsi, ratio) / 1.67],
      ["design", design, stress(yieldKsi, ratio) * 0.9],
    ] as const)
      checkValue({
        subject: `steel: ${what} column stress, Fy ${yieldKsi} ksi, KL/r ${ratio}`,
        source: "AISC Steel Construction Manual 14th ed., table 4-22",
        tag: "published",
        expected,
        computed,
        tolerance: 0.051,
        absolute: true,
        unit: "ksi",
      });
  const older = [
    [10, 30.44],
    [20, 29.96],
    [41, 28.01],
    [60, 25.32],
    [81, 21.66],
    [100, 18.08],
    [121, 14.16],
    [140, 10.89],
    [161, 8.23],
  ];
  for (const [ratio, expected] of older)
    checkValue({
      subject: `steel: design column stress with phi 0.85, Fy 36 ksi, KL/r ${ratio}`,
      source: "AISC LRFD Manual 2nd ed., table 3-36",
      tag: "published",
      expected,
      computed: 0.85 * stress(36, ratio),
      tolerance: 0.011,
      absolute: true,
      unit: "ksi",
    });
});

test("roundProperties of a 2 in. standard pipe agree with the pipe table", () => {
  // nominal size 2: 2.375 in. by 0.154 in.; ASME B36.10 and AISC Manual table 1-14 (as-made walls, before the 0.93 of the table)
  const pipe = roundProperties({ diameter: 2.375 * INCH, wall: 0.154 * INCH });
  for (const [what, expected, computed, unit] of [
    ["area", 1.075, pipe.area / INCH ** 2, "in2"],
    ["second moment of area", 0.666, pipe.secondMoment / INCH ** 4, "in4"],
    ["radius of gyration", 0.787, pipe.radiusOfGyration / INCH, "in"],
    ["section modulus", 0.561, pipe.elasticModulus / INCH ** 3, "in3"],
    ["plastic modulus", 0.761, pipe.plasticModulus / INCH ** 3, "in3"],
  ] as const)
    checkValue({
      subject: `steel: 2 in. standard pipe, ${what}`,
      source: "ASME B36.10 dimensions, properties of the standard pipe table",
      tag: "from memory",
      expected,
      computed,
      tolerance: 0.002,
      unit,
    });
});

test("pipeMoment is continuous through the limits of AISC 360 F8", () => {
  // 0.07 E/Fy at Fy 50 is D/t 40.6: below it the plastic moment
  checkValue({
    subject: "steel: bending strength of a compact pipe, 2 x 0.25 in., Fy 50 ksi",
    source: "AISC 360-16 equation F8-1: Fy Z, Z = (8 - 1.5^3)/6 in3",
    tag: "arithmetic",
    expected: (50 * (8 - 1.5 ** 3)) / 6,
    computed: pipeMoment({ diameter: 2 * INCH, wall: 0.25 * INCH }, 50 * KSI, E * KSI) / (KSI * INCH ** 3),
    tolerance: 1e-9,
    unit: "kip in",
  });
});

test("concreteBearing spreads to at most twice", () => {
  checkValue({
    subject: "steel: bearing on concrete, 8 x 8 in. plate on a 36 in. block, 3 ksi",
    source: "AISC 360-16 J8: 1.7 f'c A1",
    tag: "arithmetic",
    expected: 1.7 * 3 * 64,
    computed: concreteBearing(3 * KSI, 64 * INCH ** 2, 36 ** 2 * INCH ** 2) / (KSI * INCH ** 2),
    tolerance: 1e-9,
    unit: "kip",
  });
});

test("shearStiffness of zigzag lacing agrees with a worked built-up column", () => {
  // diagonals of 1920 mm2 at 1000 mm between chords and 1000 mm between nodes on one chord, two laced faces
  const side = Math.sqrt((4 * 0.00192) / Math.PI);
  const square = latticeProperties({
    legs: 4,
    face: 1,
    leg: { diameter: 0.05 },
    bracing: { pattern: "single", member: { diameter: side } },
    panel: 1,
    yield: 355e6,
    modulus: 210e9,
    extraWeight: 0,
  });
  checkValue({
    subject: "steel: shear stiffness of two faces of zigzag lacing, 1 m by 1 m, 1920 mm2",
    source: "SKILLS module M01E, design of built-up columns (panel read from the figure)",
    tag: "published",
    expected: 288_000,
    computed: square.shearStiffness / 1000,
    tolerance: 0.003,
    unit: "kN",
  });
});
