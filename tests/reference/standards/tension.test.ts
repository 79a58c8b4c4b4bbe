import { test } from "vitest";
import { secondsForSwings, swingsForTension, tensionFromSwings } from "../../../src/physics/guy/swings.ts";
import { thrustShare } from "../../../src/physics/guy/thrust-share.ts";
import { checkValue } from "../../support/check-values.ts";
import { FOOT, FOOT_POUND, POUND } from "../../support/us-units.ts";

const rows = [
  [399, 70, 0.073, 2.99536, 6.677],
  [665, 100, 0.121, 2.10252, 9.5124],
  [1120, 120, 0.205, 1.74692, 11.4487],
  [1540, 150, 0.273, 1.42007, 14.0838],
].map(([tension, length, weight, frequency, seconds]) => ({
  name: `${length} ft of strand of ${weight} lb/ft at ${tension} lb`,
  guy: { guyWeight: weight * length * POUND, guyLength: length * FOOT },
  tension,
  frequency,
  seconds,
}));

test("swings and tension follow the vibrating string, in both directions", () => {
  for (const { name, guy, tension, frequency, seconds } of rows)
    for (const [what, expected, computed, unit] of [
      ["swings a second", frequency, swingsForTension(guy, tension * POUND, 1), "1/s"],
      ["seconds for 20 swings", seconds, secondsForSwings(guy, tension * POUND, 20), "s"],
      ["tension from 20 swings", tension, tensionFromSwings(guy, 20, seconds).tension / POUND, "lb"],
    ] as const)
      checkValue({
        subject: `tension: ${name}, ${what}`,
        source: "vibrating string, f = sqrt(T/m)/2L",
        tag: "arithmetic",
        expected,
        computed,
        tolerance: 2e-5,
        unit,
      });
});

test("tensionFromSwings agrees with W L N2/(8.05 t2) as far as 8.05 rounds g/4", () => {
  const guy = { guyWeight: 12.1 * POUND, guyLength: 100 * FOOT };
  checkValue({
    subject: "tension: 12.1 lb and 100 ft of guy, 20 swings in 9.5 s",
    source: "W L N2/(8.05 t2), pounds and feet",
    tag: "common practice, no source",
    expected: (12.1 * 100 * 400) / (8.05 * 9.5 ** 2),
    computed: tensionFromSwings(guy, 20, 9.5).tension / POUND,
    // 8.05 for g/4 = 8.0435 ft/s2
    tolerance: 0.001,
    unit: "lb",
  });
});

test("thrustShare shares the moment of the mast without guys by hand", () => {
  const practice = { source: "the hand method", tag: "common practice, no source" } as const;
  const invented = { source: "the hand method, invented numbers", tag: "arithmetic" } as const;
  for (const [what, expected, thrusts, row] of [
    [
      "24062 ft-lb, one level at 40 ft",
      [601.55],
      thrustShare(24_062 * FOOT_POUND, [40 * FOOT], [1]),
      practice,
    ],
    [
      "24062 ft-lb, levels at 40 and 20 ft, 2 to 1",
      [481.24, 240.62],
      thrustShare(24_062 * FOOT_POUND, [40 * FOOT, 20 * FOOT], [2, 1]),
      practice,
    ],
    ["31500 ft-lb, one level at 45 ft", [700], thrustShare(31_500 * FOOT_POUND, [45 * FOOT], [1]), invented],
    [
      "31500 ft-lb, levels at 45 and 22.5 ft, 2 to 1",
      [560, 280],
      thrustShare(31_500 * FOOT_POUND, [45 * FOOT, 22.5 * FOOT], [2, 1]),
      invented,
    ],
  ] as const) {
    const total = (list: readonly number[]) => list.reduce((sum, thrust) => sum + thrust, 0);
    for (const [name, wanted, computed] of [
      ...expected.map((thrust, level) => [`level ${level + 1}`, thrust, thrusts[level]] as const),
      ["together", total(expected), total(thrusts)] as const,
    ])
      checkValue({
        subject: `tension: thrust from ${what}, ${name}`,
        ...row,
        expected: wanted,
        computed: computed / POUND,
        tolerance: 1e-6,
        unit: "lb",
      });
  }
});
