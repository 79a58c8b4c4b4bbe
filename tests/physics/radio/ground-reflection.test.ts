import fc from "fast-check";
import { expect, test } from "vitest";
import { meanPowerGain } from "../../../src/physics/radio/figure-of-merit.ts";
import {
  fieldFactor,
  firstLobeAngle,
  reflectionCoefficient,
} from "../../../src/physics/radio/ground-reflection.ts";
import { checkValue } from "../../support/check-values.ts";

const average = { relativePermittivity: 13, conductivity: 0.005 };
const metal = { relativePermittivity: 1, conductivity: 1e9 };
const degrees = Math.PI / 180;
const beam = { height: 20, frequency: 14.2e6, ground: average, polarisation: "horizontal" } as const;

test("fieldFactor over perfect ground is twice at asin(wavelength/4h)", () => {
  const angle = firstLobeAngle(20, 14.2e6);
  checkValue({
    subject: "radio: elevation of the first lobe, 20 m at 14.2 MHz",
    source: "asin(wavelength/4h), wavelength 21.1121 m",
    tag: "arithmetic",
    expected: 15.3017,
    computed: angle / degrees,
    tolerance: 1e-5,
    unit: "degrees",
  });
  checkValue({
    subject: "radio: field in the first lobe over perfect ground",
    source: "two equal waves in step",
    tag: "arithmetic",
    expected: 2,
    computed: fieldFactor({ ...beam, ground: metal }, angle),
    tolerance: 1e-4,
    unit: "",
  });
});

test("reflectionCoefficient at grazing is -1 for both polarisations, and alike upright but for sign", () => {
  for (const polarisation of ["horizontal", "vertical"] as const) {
    const { re, im } = reflectionCoefficient(average, 14.2e6, 1e-7, polarisation);
    expect(re).toBeCloseTo(-1, 5);
    expect(im).toBeCloseTo(0, 5);
  }
  const flat = reflectionCoefficient(average, 14.2e6, Math.PI / 2, "horizontal");
  const upright = reflectionCoefficient(average, 14.2e6, Math.PI / 2, "vertical");
  expect(flat.re).toBeCloseTo(-upright.re, 9);
  expect(flat.im).toBeCloseTo(-upright.im, 9);
});

test("fieldFactor lies between nothing and twice", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: Math.PI / 2, noNaN: true }),
      fc.double({ min: 2, max: 60, noNaN: true }),
      fc.constantFrom("horizontal" as const, "vertical" as const),
      (angle, height, polarisation) => {
        const factor = fieldFactor({ ...beam, height, polarisation }, angle);
        expect(factor).toBeGreaterThanOrEqual(0);
        expect(factor).toBeLessThanOrEqual(2);
      },
    ),
    { seed: 106 },
  );
});

test("fieldFactor(slope) lowers the lobes by the fall of the ground", () => {
  expect(fieldFactor({ ...beam, slope: 5 * degrees }, 10 * degrees)).toBeCloseTo(
    fieldFactor(beam, 15 * degrees),
    12,
  );
});

test("meanPowerGain: height pays at low angles, and the sum has converged", () => {
  const low = { from: 3 * degrees, to: 15 * degrees };
  expect(meanPowerGain({ ...beam, height: 25 }, low)).toBeGreaterThan(
    meanPowerGain({ ...beam, height: 12 }, low),
  );
  let sum = 0;
  const cells = 20_000;
  for (let cell = 0; cell < cells; cell++)
    sum += fieldFactor(beam, low.from + ((cell + 0.5) / cells) * (low.to - low.from)) ** 2;
  expect(meanPowerGain(beam, low)).toBeCloseTo(10 * Math.log10(sum / cells), 5);
});

test("radio refuses angles below the ground, low antennas and empty windows", () => {
  expect(() => fieldFactor(beam, -0.1)).toThrow(/above the ground/);
  expect(() => firstLobeAngle(3, 7e6)).toThrow(/quarter wavelength/);
  expect(() => meanPowerGain(beam, { from: 0.2, to: 0.2 })).toThrow(/from below to/);
});
