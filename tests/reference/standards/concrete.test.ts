import { expect, test } from "vitest";
import { beamStrengths, momentLevel, momentUp } from "../../../src/physics/concrete/anchor-beam.ts";
import { bars, developmentLength, fewestBars } from "../../../src/physics/concrete/bars.ts";
import { bottomDemand, shearDemand, slabStrength } from "../../../src/physics/concrete/slab.ts";
import { checkValue } from "../../support/check-values.ts";
import { FOOT, INCH, KSI, POUND } from "../../support/us-units.ts";

const KIP = 1000 * POUND;
const KIP_FOOT = KIP * FOOT;
const bar = (name: string) => {
  const found = bars.find((one) => one.name === name);
  if (!found) throw new Error(`no bar ${name}`);
  return found;
};

// Wight and MacGregor, Reinforced Concrete, example 15-2 (square spread footing): 912 kips factored on a column of
// 18 in., footing 11 ft 2 in. square, 32 in. thick, d 28 in., f'c 3000 psi, 11 bars #8
const footing = {
  width: 134 * INCH,
  thickness: 32 * INCH,
  pedestal: 18 * INCH,
  barDepth: 28 * INCH,
  bottomArea: 8.69 * INCH ** 2,
  topArea: 0,
  strength: 3 * KSI,
  barYield: 60 * KSI,
};
const net = { compression: 912 * KIP, moment: 0, normal: 912 * KIP, eccentricity: 0, counted: 0, weight: 0 };

test("a square footing's demands are those of a textbook's example", () => {
  const source = "Wight and MacGregor, Reinforced Concrete, example 15-2";
  for (const [what, expected, computed, unit] of [
    ["factored moment at the column's face", 954, bottomDemand(footing, net) / KIP_FOOT, "kip ft"],
    ["factored shear at d from the face", 204, shearDemand(footing, net) / KIP, "kip"],
  ] as const)
    checkValue({
      subject: `concrete: square footing, ${what}`,
      source,
      tag: "from memory",
      expected,
      computed,
      // three printed digits
      tolerance: 0.5,
      absolute: true,
      unit,
    });
});

test("a square footing's moment and one-way shear are those of a printed example", () => {
  // 1.2 x 200 + 1.6 x 160 = 496 kips on a column of 16 in., footing 9 ft square, 24 in. thick, d 19.5 in.
  const printed = {
    ...footing,
    width: 108 * INCH,
    thickness: 24 * INCH,
    pedestal: 16 * INCH,
    barDepth: 19.5 * INCH,
  };
  const load = { ...net, compression: 496 * KIP, normal: 496 * KIP };
  // Its punching shear is not taken over: it leaves 2.96 ft2 out of 81, which is the side of the punched square,
  // 35.5 in. in feet, where the area is 8.75 ft2.
  for (const [what, expected, computed, unit, tolerance] of [
    // the book goes on with 6.12 ksf of 6.123, and with 3.83 ft of 3.833
    ["factored moment at the column's face", 404, bottomDemand(printed, load) / KIP_FOOT, "kip ft", 0.003],
    ["factored shear at d from the face", 121.62, shearDemand(printed, load) / KIP, "kip", 0.001],
  ] as const)
    checkValue({
      subject: `concrete: nine-foot footing, ${what}`,
      source: "McCormac and Brown, Design of Reinforced Concrete, 9th edition, example 12.2",
      tag: "published",
      expected,
      computed,
      tolerance,
      unit,
    });
});

test("slabStrength follows ACI 318-19 by hand", () => {
  const strength = slabStrength(footing);
  for (const [what, expected, computed, unit] of [
    // a = 8.69 x 60 / (0.85 x 3 x 134) = 1.5259 in.; 0.9 x 8.69 x 60 (28 - 0.763) / 12
    ["design moment, 8.69 in2 at 28 in.", 1065.09, strength.bottomMoment / KIP_FOOT, "kip ft"],
    // 8 (8.69 / 3752)^(1/3) = 1.0585; 0.75 x 1.0585 sqrt 3000 x 134 x 28
    ["one-way shear, without ties", 163.14, strength.shear / KIP, "kip"],
    // 8.6.1.2 allows 0.75 x 40 x 60000 x 8.69/134 / (5 x 184)
    ["two-way shear stress", 126.88, strength.punching / (KSI / 1000), "psi"],
  ] as const)
    checkValue({
      subject: `concrete: square footing, ${what}`,
      source: "ACI 318-19 22.3, 22.5.5.1 (c), 8.6.1.2, by hand",
      tag: "arithmetic",
      expected,
      computed,
      tolerance: 5e-5,
      unit,
    });
});

test("developmentLength is that of ACI 318-19 25.4.2.3", () => {
  const rows = [
    ["#4", 3, 21.91],
    ["#6", 3, 32.86],
    ["#7", 3, 47.93],
    ["#8", 3, 54.77],
    ["#5", 4, 23.72],
  ] as const;
  for (const [name, ksi, expected] of rows)
    checkValue({
      subject: `concrete: development of a straight ${name}, f'c ${ksi} ksi`,
      source: "ACI 318-19 25.4.2.3, grade 60",
      tag: "arithmetic",
      expected,
      computed: developmentLength(bar(name), ksi * KSI, 60 * KSI, false) / INCH,
      // two printed decimals
      tolerance: 0.0051,
      absolute: true,
      unit: "in",
    });
});

test("bars weigh what steel weighs, within the table's rounding", () => {
  for (const { area, mass } of bars) expect(mass / (area * 7850)).toBeCloseTo(1, 1);
});

test("fewestBars(8.0 in2 across 134 in.) takes 11 bars #8, as the textbook's example does", () => {
  const picked = fewestBars(8 * INCH ** 2, 134 * INCH, 18 * INCH, () => true);
  expect(picked?.bar.name).toBe("#8");
  expect(picked?.count).toBe(11);
});

test("beamStrengths(a buried block of 5 ft x 18 x 18 in.) follows ACI 318-19 chapters 14 and 22 by hand", () => {
  const side = 18 * INCH;
  const beam = { length: 60 * INCH, height: side, width: side, bar: bar("#6"), ends: 0.4 };
  const [plain, barred] = beamStrengths(beam, 3 * KSI, 60 * KSI).ways;
  const KIP_INCH = KIP * INCH;
  for (const [what, expected, computed, unit] of [
    // 0.6 x 5 sqrt 3000 x 16 x 16^2/6: two inches off each side
    ["plain, design moment", 112.1741, plain.level.moment / KIP_INCH, "kip in"],
    // 0.6 x 4/3 sqrt 3000 x 16 x 16
    ["plain, design shear", 11.21741, plain.level.shear / KIP, "kip"],
    // 0.6 x 8/3 sqrt 3000 x 4 x 15 x 15
    ["punching of its rod's plate", 78.8724, plain.punching / KIP, "kip"],
    // bars 14.25 in. down, ties at half of it, more than the least: 0.75 (2 sqrt 3000 x 18 x 14.25 + 0.22 x 60 000 x 2)
    ["barred, design shear", 40.873, barred.level.shear / KIP, "kip"],
    // 10 kips, 4 of them at the ends: 6 x 60/8 + 4 x 60/4
    [
      "moment of an upward pull of 10 kips, 0.4 at its ends",
      105,
      momentUp(beam, 10 * KIP) / KIP_INCH,
      "kip in",
    ],
    ["moment of a level pull of 10 kips", 75, momentLevel(beam, 10 * KIP) / KIP_INCH, "kip in"],
  ] as const)
    checkValue({
      subject: `concrete: buried block of 5 ft, ${what}`,
      source: "ACI 318-19 14.5.2.1, 14.5.5.1, 22.5.5.1, 22.5.8.5; statics, by hand",
      tag: "arithmetic",
      expected,
      computed,
      tolerance: 5e-5,
      unit,
    });
});
