import { test } from "vitest";
import { type EnHill, orographicLocation, orography } from "../../../src/physics/wind/orography-en.ts";
import { type AsceHill, type HillShape, speedUp, topography } from "../../../src/physics/wind/topography.ts";
import { checkValue } from "../../support/check-values.ts";

const FOOT = 0.3048;
const FIGURE = "ASCE 7-16 figure 26.8-1, table of multipliers for exposure C, from memory";

const hill = (shape: HillShape, slope: number, change: Partial<AsceHill> = {}): AsceHill => ({
  shape,
  height: 100 * slope,
  halfLength: 100,
  distance: 0,
  side: "downwind",
  ...change,
});
const row = (what: string, expected: number, computed: number) =>
  checkValue({
    subject: `wind: topographic multiplier ${what}`,
    source: FIGURE,
    tag: "from memory",
    expected,
    computed,
    // two printed digits
    tolerance: 0.0051,
    absolute: true,
    unit: "",
  });

const k1: Record<HillShape, number[]> = {
  ridge: [0.29, 0.36, 0.43, 0.51, 0.58, 0.65, 0.72],
  escarpment: [0.17, 0.21, 0.26, 0.3, 0.34, 0.38, 0.43],
  axisymmetric: [0.21, 0.26, 0.32, 0.37, 0.42, 0.47, 0.53],
};
const k3: Record<HillShape, number[]> = {
  ridge: [1, 0.74, 0.55, 0.41, 0.3, 0.22, 0.17, 0.12, 0.09, 0.07, 0.05, 0.01, 0],
  escarpment: [1, 0.78, 0.61, 0.47, 0.37, 0.29, 0.22, 0.17, 0.14, 0.11, 0.08, 0.02, 0.01],
  axisymmetric: [1, 0.67, 0.45, 0.3, 0.2, 0.14, 0.09, 0.06, 0.04, 0.03, 0.02, 0, 0],
};
const k3Heights = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.5, 2];

for (const shape of ["ridge", "escarpment", "axisymmetric"] as const)
  test(`speedUp(${shape}) gives the printed K1 by steepness and K3 by height`, () => {
    [0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5].forEach((slope, i) => {
      row(`K1, ${shape}, H/Lh ${slope}`, k1[shape][i], speedUp(hill(shape, slope), "C", 0)[0]);
    });
    k3Heights.forEach((z, i) => {
      row(`K3, ${shape}, z/Lh ${z}`, k3[shape][i], speedUp(hill(shape, 0.3), "C", 100 * z)[2]);
    });
  });

test("speedUp(x) gives the printed K2: a cliff's lee reaches four lengths, all else one and a half", () => {
  const lee = [1, 0.88, 0.75, 0.63, 0.5, 0.38, 0.25, 0.13, 0];
  const other = [1, 0.67, 0.33, 0, 0, 0, 0, 0, 0];
  lee.forEach((expected, i) => {
    const at = (shape: HillShape, side: AsceHill["side"]) =>
      speedUp(hill(shape, 0.3, { distance: 50 * i, side }), "C", 0)[1];
    row(`K2, lee of an escarpment, x/Lh ${i / 2}`, expected, at("escarpment", "downwind"));
    row(`K2, up an escarpment, x/Lh ${i / 2}`, other[i], at("escarpment", "upwind"));
    row(`K2, ridge, x/Lh ${i / 2}`, other[i], at("ridge", "downwind"));
  });
});

test("topography(steeper than a half) counts as a half, its length as twice the height", () => {
  const steep = { ...hill("ridge", 0.8), height: 60 * FOOT, halfLength: 75 * FOOT };
  checkValue({
    subject: "wind: Kzt of a ridge of 60 ft, H/Lh 0.8, exposure C, 30 ft up",
    source: "ASCE 7-16 figure 26.8-1, note 2, from memory",
    tag: "arithmetic",
    // (1 + 0.725 x exp(-3 x 30/120))2
    expected: (1 + 0.725 * Math.exp(-0.75)) ** 2,
    computed: topography(steep, "C").factor(30 * FOOT),
    tolerance: 1e-9,
    unit: "",
  });
});

const slope = (change: Partial<EnHill> = {}): EnHill => ({
  shape: "hill",
  height: 20,
  upwindLength: 100,
  downwindLength: 100,
  distance: 0,
  side: "upwind",
  ...change,
});

test("orographicLocation follows the formulas of annex A.3 on both sides of hills and behind cliffs", () => {
  // worked apart from the program, z/Le of 0, 0.1, 0.5, 1 and 2
  const heights = [0, 10, 50, 100, 200];
  const upwind = {
    100: [0.0718, 0.0659, 0.0455, 0.0304, 0.0094],
    50: [0.2697, 0.2351, 0.1369, 0.0802, 0.0249],
  };
  const crest = [1.0124, 0.8385, 0.4125, 0.2119, 0.0658];
  const downhill = { 50: [0.4192, 0.3648, 0.2122, 0.1255, 0.041], 200: [0.0297, 0.03, 0.0289, 0.026, 0.01] };
  const cliff = {
    50: [0.5101, 0.5101, 0.4258, 0.1882, 0.0626],
    200: [0.1962, 0.1962, 0.2275, 0.1186, 0.0244],
  };
  const check = (what: string, given: EnHill, expected: readonly number[]) =>
    heights.forEach((z, i) => {
      checkValue({
        subject: `wind: orographic location factor s, ${what}, z/Le ${z / 100}`,
        source: "EN 1991-1-4 annex A.3 equations A.4 to A.7, constants from memory",
        tag: "arithmetic",
        expected: expected[i],
        computed: orographicLocation(given, z),
        tolerance: 0.00006,
        absolute: true,
        unit: "",
      });
    });
  check("crest", slope(), crest);
  for (const distance of [50, 100] as const)
    check(`upwind, X/Lu ${-distance / 100}`, slope({ distance }), upwind[distance]);
  for (const distance of [50, 200] as const) {
    check(`down a hill, X/Ld ${distance / 100}`, slope({ distance, side: "downwind" }), downhill[distance]);
    check(
      `behind a cliff, X/Le ${distance / 100}`,
      slope({ distance, side: "downwind", shape: "escarpment", downwindLength: undefined }),
      cliff[distance],
    );
  }
});

test("orography(hill) is 1 + 2 s slope on moderate slopes and 1 + 0.6 s on steep ones", () => {
  const row = (what: string, given: EnHill, expected: number) =>
    checkValue({
      subject: `wind: orography factor at the crest, ${what}, at the ground`,
      source: "EN 1991-1-4 equations A.1 to A.3, from memory",
      tag: "arithmetic",
      expected,
      computed: orography(given).factor(0),
      tolerance: 1e-9,
      unit: "",
    });
  row("slope 0.2", slope(), 1 + 2 * 0.2 * 1.0124);
  row("slope 0.5", slope({ height: 50 }), 1 + 0.6 * 1.0124);
});
