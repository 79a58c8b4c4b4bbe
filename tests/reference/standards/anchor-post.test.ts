import { test } from "vitest";
import { anchorPostCapacity, postOverturning, sideShear } from "../../../src/physics/ground/anchor-post.ts";
import { deadmanCapacity } from "../../../src/physics/ground/deadman.ts";
import { postStrength } from "../../../src/physics/steel/post.ts";
import { checkValue } from "../../support/check-values.ts";
import { FOOT, FOOT_POUND, INCH, KSI, PCF, POUND, PSF } from "../../support/us-units.ts";

const rules = { concreteUnitWeight: 150 * PCF, upliftAngle: 30 };
const sand = { bearing: 0, lateralPerDepth: 150 * PCF, unitWeight: 110 * PCF, frictionAngle: 30 };
const post = { width: 3 * FOOT, depth: 5 * FOOT, height: 2 * FOOT };

test("postStrength of a pipe and of a W shape is that of the manual's tables", () => {
  // AISC Manual, from memory: 6.625 x 0.280 in. by its nominal wall: A 5.58 in2 and Z 11.28 in3
  const pipe = postStrength({ diameter: 6.625 * INCH, wall: 0.28 * INCH }, 35 * KSI, FOOT);
  const shape = postStrength(
    {
      plasticModulus: 10.8 * INCH ** 3,
      area: 4.43 * INCH ** 2,
      shearArea: 5.99 * 0.23 * INCH ** 2,
      leastRadius: 1.45 * INCH,
    },
    50 * KSI,
    3 * FOOT,
  );
  const inchPound = FOOT_POUND / 12;
  for (const [what, source, expected, computed, unit, tolerance] of [
    [
      "pipe 6.625 x 0.280 in., 35 ksi, bending",
      "Z 11.28 in3 x 35 ksi, AISC 360-16 F8",
      394_800,
      pipe.moment / inchPound,
      "lb-in",
      5e-4,
    ],
    [
      "pipe 6.625 x 0.280 in., 35 ksi, shear",
      "0.6 x 35 ksi x 5.58 in2 / 2, AISC 360-16 G5",
      58_600,
      pipe.shear / POUND,
      "lb",
      1e-3,
    ],
    [
      "W6x15, 50 ksi, bending",
      "Mp = 540 kip-in., AISC Manual Z 10.8 in3, from memory",
      540_000,
      shape.moment / inchPound,
      "lb-in",
      1e-9,
    ],
    [
      "W6x15, 50 ksi, shear",
      "Vn = 0.6 x 50 x 5.99 x 0.230 = 41.3 kip, AISC 360-16 G2, from memory",
      41_300,
      shape.shear / POUND,
      "lb",
      1e-3,
    ],
  ] as const)
    checkValue({
      subject: `anchor post: ${what}`,
      source,
      tag: "published",
      expected,
      computed,
      tolerance,
      unit,
    });
});

test("anchorPostCapacity of a 3 x 3 x 5 ft block pulled 2 ft above grade, by hand", () => {
  const { uplift, lateral, overturning } = anchorPostCapacity(post, sand, rules);
  // K0 tan 30 = 0.5 x 0.57735; perimeter 12 ft; 110 x 25 / 2
  const shear = 12 * 0.5 * 0.57735 * 1375;
  for (const [what, source, expected, computed, unit] of [
    [
      "shear on its sides",
      "12 ft x K0 tan(phi) x 110 x 52 / 2, K0 0.5",
      shear,
      sideShear(sand, 12 * FOOT, 5 * FOOT, 99) / POUND,
      "lb",
    ],
    ["uplift", "45 ft3 at 150 pcf and the shear on its sides", 6750 + shear, uplift / POUND, "lb"],
    // 150 x 5/3 = 250 psf; b 4.2426 ft
    [
      "lateral",
      "IBC 1807.3.2.1: 250 psf x 4.2426 ft x 25 / 2.34 / (5 + 1.09 x 2)",
      1578.25,
      lateral / POUND,
      "lb",
    ],
    ["overturning", "6750 x 1.5 + 150 x 3 x 125 / 6", 10_125 + 9375, overturning / FOOT_POUND, "ft-lb"],
    [
      "moment of 4000 lb up and 3000 lb across",
      "3000 x 7 + 4000 x 1.5",
      27_000,
      postOverturning(post, 4000 * POUND, 3000 * POUND) / FOOT_POUND,
      "ft-lb",
    ],
  ] as const)
    checkValue({
      subject: `anchor post: 3 x 3 x 5 ft, pulled 2 ft above grade, 30 degrees, 110 pcf, 150 psf/ft: ${what}`,
      source,
      tag: "arithmetic",
      expected,
      computed,
      tolerance: 1e-5,
      unit,
    });
});

test("an anchor post whose block stands in water from 2 ft down, by hand", () => {
  const wet = anchorPostCapacity(post, sand, { ...rules, waterTable: 2 * FOOT });
  const dry = anchorPostCapacity(post, sand, rules);
  // stress 0 to 220 psf, then to 220 + 3 x 47.572
  const shear = 12 * 0.5 * 0.57735 * (220 + 3 * (220 + 0.5 * 3 * (110 - 62.428)));
  for (const [what, source, expected, computed] of [
    [
      "uplift",
      "45 ft3 at 150 pcf, 27 ft3 of it lifted by 62.43 pcf, and the shear of effective stress",
      6750 - 27 * 62.428 + shear,
      wet.uplift / POUND,
    ],
    [
      "what water takes off the moment",
      "27 x 62.43 lb x 1.5 ft, and 62.43/110 of the 9375 ft-lb of lateral bearing",
      27 * 62.428 * 1.5 + (62.428 / 110) * 9375,
      (dry.overturning - wet.overturning) / FOOT_POUND,
    ],
  ] as const)
    checkValue({
      subject: `anchor post: 3 x 3 x 5 ft, water at 2 ft: ${what}`,
      source,
      tag: "arithmetic",
      expected,
      computed,
      tolerance: 1e-5,
      unit: what === "uplift" ? "lb" : "ft-lb",
    });
});

test("the shear on a block's sides holds less than the prism that a buried anchor lifts", () => {
  const buried = { length: post.width, width: post.width, height: post.depth, depth: post.depth };
  const soilOf = (uplift: number) => uplift / POUND - 45 * 150;
  checkValue({
    subject: "anchor post: 3 x 3 x 5 ft, 30 degrees: soil of the prism over shear on the sides",
    source: "prismatoid of 187.158 ft3 less 45 ft3, at 110 pcf, over 4763.14 lb",
    tag: "arithmetic",
    expected: (142.158 * 110) / 4763.14,
    computed:
      soilOf(deadmanCapacity(buried, sand, rules).uplift) /
      soilOf(anchorPostCapacity(post, sand, rules).uplift),
    tolerance: 1e-5,
    unit: "",
  });
  const clay = { ...sand, frictionAngle: undefined, cohesion: 130 * PSF };
  checkValue({
    subject: "anchor post: 3 x 3 x 5 ft in clay of 130 psf",
    source: "45 ft3 at 150 pcf and 60 ft2 at 130 psf, cohesion of IBC table 1806.2",
    tag: "arithmetic",
    expected: 6750 + 60 * 130,
    computed: anchorPostCapacity(post, clay, rules).uplift / POUND,
    tolerance: 1e-6,
    unit: "lb",
  });
});
