import { test } from "vitest";
import { deadmanCapacity } from "../../../src/physics/ground/deadman.ts";
import { rockRodCapacity } from "../../../src/physics/ground/rock-rod.ts";
import { upliftRounded } from "../../../src/physics/ground/uplift-pyramid.ts";
import { checkValue } from "../../support/check-values.ts";
import { FOOT, INCH, KSI, PCF, POUND, PSF } from "../../support/us-units.ts";

const rules = { concreteUnitWeight: 150 * PCF, upliftAngle: 30 };
const sand = { bearing: 0, lateralPerDepth: 0, unitWeight: 110 * PCF, frictionAngle: 30 };

test("deadmanCapacity bears Rankine's pressure over its own height", () => {
  const full = { length: 4 * FOOT, height: 5 * FOOT, width: FOOT, depth: 5 * FOOT };
  for (const [what, deadman, expected] of [
    ["5 ft high to grade", full, 14_666.67],
    ["3 ft high, top at 2 ft", { ...full, height: 3 * FOOT }, 12_320],
  ] as const)
    checkValue({
      subject: `anchors: lateral hold of a deadman 4 ft long, ${what}, 30 degrees, 110 pcf`,
      source: "Rankine passive less active over the face; Teng 1962 without its end wedges",
      tag: "arithmetic",
      expected,
      computed: deadmanCapacity(deadman, sand, rules).lateral / POUND,
      tolerance: 1e-6,
      unit: "lb",
    });
});

test("deadmanCapacity by lateral bearing takes the pressure of the soil table over the face", () => {
  const { lateral } = deadmanCapacity(
    { length: 4 * FOOT, height: 2 * FOOT, width: FOOT, depth: 5 * FOOT },
    { bearing: 0, lateralPerDepth: 400 * PCF, lateralCap: 4000 * PSF, unitWeight: 100 * PCF },
    rules,
  );
  checkValue({
    subject: "anchors: lateral hold of a deadman 4 x 2 ft, bottom at 5 ft, 400 psf/ft",
    source: "lateral bearing of the soil row over the face: 400 x 4 x 4 x 2",
    tag: "arithmetic",
    expected: 12_800,
    computed: lateral / POUND,
    tolerance: 1e-9,
    unit: "lb",
  });
});

test("deadmanCapacity lifts the pyramid of soil less the block, and the block", () => {
  const deadman = { length: 4 * FOOT, height: FOOT, width: 3 * FOOT, depth: 5 * FOOT };
  checkValue({
    subject: "anchors: uplift of a deadman 4 x 3 x 1 ft, bottom at 5 ft, 100 pcf soil, 30 degrees",
    source: "prismatoid of 216.5919 ft3, 12 ft3 of it concrete at 150 pcf",
    tag: "arithmetic",
    expected: 12 * 150 + (216.5919 - 12) * 100,
    computed: deadmanCapacity(deadman, { ...sand, unitWeight: 100 * PCF }, rules).uplift / POUND,
    tolerance: 1e-6,
    unit: "lb",
  });
});

test("deadmanCapacity by cones from its edges, dry and under water, by hand", () => {
  const deadman = {
    length: 4 * FOOT,
    height: FOOT,
    width: 3 * FOOT,
    depth: 5 * FOOT,
    shape: "cone" as const,
  };
  const soil = { ...sand, unitWeight: 100 * PCF };
  // area at h: 12 + 14 h tan30 + pi (h tan30)2
  const volume = (h: number) => 12 * h + (14 * h ** 2) / 2 / Math.sqrt(3) + (Math.PI / 9) * h ** 3;
  for (const [what, source, expected, waterTable] of [
    ["dry", "prisms and corner cones, integrated", 12 * 150 + (volume(5) - 12) * 100, undefined],
    [
      "water at 2 ft",
      "the same, less 62.43 pcf on what stands below the water",
      12 * 150 + (volume(5) - 12) * 100 - volume(3) * 62.428,
      2 * FOOT,
    ],
  ] as const)
    checkValue({
      subject: `anchors: uplift of a deadman 4 x 3 x 1 ft, bottom at 5 ft, 100 pcf, 30 degree cones, ${what}`,
      source,
      tag: "arithmetic",
      expected,
      computed: deadmanCapacity(deadman, soil, { ...rules, waterTable }).uplift / POUND,
      tolerance: 1e-5,
      unit: "lb",
    });
  checkValue({
    subject: "anchors: cones from the edges of a point 6 ft down are one cone",
    source: "pi/3 (6 tan 30)2 6",
    tag: "arithmetic",
    expected: 75.398,
    computed: upliftRounded(0, 0, 6, 30),
    tolerance: 1e-5,
    unit: "ft3",
  });
});

test("rockRodCapacity is the least of steel, bond and cone", () => {
  const rod = rockRodCapacity(
    { bar: INCH, yield: 60 * KSI, hole: 2 * INCH, socket: 6 * FOOT },
    { bearing: 0, lateralPerDepth: 0, unitWeight: 160 * PCF, groutBond: 150 * 144 * PSF },
    rules,
  );
  for (const [what, source, expected, computed] of [
    ["steel", "60 ksi x pi/4 in2", 47_123.9, rod.steel],
    ["bond", "pi x 2 in x 72 in x 150 psi", 67_858.4, rod.bond],
    ["cone", "160 pcf x pi/3 (6 tan 30)2 6 ft3", 12_063.7, rod.cone],
    ["pull", "the least of the three", 12_063.7, rod.axial],
  ] as const)
    checkValue({
      subject: `anchors: rock rod of 1 in. in 2 in. x 6 ft, ${what}`,
      source,
      tag: "arithmetic",
      expected,
      computed: computed / POUND,
      tolerance: 1e-5,
      unit: "lb",
    });
});

test("half of Rankine's net pressure is the allowable lateral bearing of the code's table", () => {
  // unit weights and friction angles typical of the class, from memory
  const classes = [
    ["3, sandy gravel", 125, 34, 200],
    ["4, sand", 110, 30, 150],
    ["5, clay and silt", 110, 25, 100],
  ] as const;
  for (const [name, weight, frictionAngle, expected] of classes) {
    const face = { length: FOOT, height: FOOT, width: FOOT, depth: FOOT };
    const soil = { ...sand, unitWeight: weight * PCF, frictionAngle };
    checkValue({
      subject: `anchors: lateral bearing of IBC class ${name}, as half of Rankine's`,
      source: "IBC table 1806.2; unit weight and friction angle typical, from memory",
      tag: "published",
      expected,
      computed: deadmanCapacity(face, soil, rules).lateral / POUND,
      tolerance: 0.15,
      unit: "psf/ft",
    });
  }
});
