import fc from "fast-check";
import { expect, test } from "vitest";
import { columnStress } from "../../../src/physics/steel/column.ts";
import {
  type LatticeGeometry,
  latticeProperties,
  STEEL_UNIT_WEIGHT,
} from "../../../src/physics/steel/lattice.ts";
import { memberShape, thinned } from "../../../src/physics/steel/member.ts";
import { type RoundMember, roundProperties } from "../../../src/physics/steel/round.ts";

const leg: RoundMember = { diameter: 0.032, wall: 0.002 };
const section: LatticeGeometry = {
  legs: 3,
  face: 0.3,
  leg,
  bracing: { pattern: "single", member: { diameter: 0.01 } },
  panel: 0.4,
  yield: 250e6,
  modulus: 200e9,
  extraWeight: 0,
};
const area = roundProperties(leg).area;

test("latticeProperties: three legs A b2/2, four legs A b2, the same in every direction", () => {
  const at = (legs: 3 | 4) => latticeProperties({ ...section, legs });
  expect(at(3).bendingStiffness).toBeCloseTo((200e9 * area * 0.3 ** 2) / 2, 3);
  expect(at(4).bendingStiffness).toBeCloseTo(200e9 * area * 0.3 ** 2, 3);
  expect(at(3).axialStiffness).toBeCloseTo(200e9 * 3 * area, 3);
  // sum of leg distances squared, the section turned by any angle
  for (const legs of [3, 4] as const)
    for (const turn of [0, 0.2, 0.9]) {
      const radius = 0.3 / (2 * Math.sin(Math.PI / legs));
      let sum = 0;
      for (let leg = 0; leg < legs; leg++)
        sum += area * (radius * Math.cos(turn + (2 * Math.PI * leg) / legs)) ** 2;
      expect(at(legs).bendingStiffness / (200e9 * sum)).toBeCloseTo(1, 12);
    }
});

test("latticeProperties.momentArm gives the greatest leg force over all directions", () => {
  for (const legs of [3, 4] as const) {
    const radius = 0.3 / (2 * Math.sin(Math.PI / legs));
    const inertia = (legs * radius ** 2) / 2;
    // at the worst direction one leg stands at the full radius: force M r / sum r2
    expect(latticeProperties({ ...section, legs }).momentArm).toBeCloseTo(inertia / radius, 12);
  }
});

test("latticeProperties.shearStiffness follows from the stretch of one diagonal", () => {
  const rod = roundProperties({ diameter: 0.01 });
  const length = Math.hypot(0.3, 0.2);
  const shear = 1000;
  const stretch = ((shear * length) / 0.3 / (200e9 * rod.area)) * length;
  const angle = (stretch * (length / 0.3)) / 0.2;
  expect(latticeProperties(section).shearStiffness / 1.5).toBeCloseTo(shear / angle, 3);
});

test("latticeProperties(thinned wall) derates by area and radius of gyration", () => {
  const worn = latticeProperties({ ...section, measuredWall: 0.0015 });
  const left = roundProperties({ diameter: 0.031, wall: 0.0015 });
  expect(worn.legSlenderness).toBeCloseTo(0.4 / left.radiusOfGyration, 9);
  expect(worn.legCompression).toBeCloseTo(
    columnStress(250e6, 200e9, 0.4 / left.radiusOfGyration) * left.area,
    3,
  );
  expect(worn.legTension).toBeCloseTo(250e6 * left.area, 3);
  expect(worn.weightPerLength).toBe(latticeProperties(section).weightPerLength);
  expect(worn.faceArea).toBe(latticeProperties(section).faceArea);
});

test("latticeProperties: weight and solidity of a face that can be done by hand", () => {
  const rod = roundProperties({ diameter: 0.01 }).area;
  const diagonals = (2 * Math.hypot(0.3, 0.2)) / 0.4;
  const { weightPerLength, faceArea, solidity, outerWidth } = latticeProperties(section);
  expect(weightPerLength).toBeCloseTo(3 * (area + rod * diagonals) * STEEL_UNIT_WEIGHT, 6);
  expect(faceArea).toBeCloseTo(2 * 0.032 + diagonals * (0.268 / 0.3) * 0.01, 9);
  expect(outerWidth).toBeCloseTo(0.332, 12);
  expect(solidity).toBeCloseTo(faceArea / 0.332, 12);
});

test("latticeProperties(splice) caps the pull of a leg", () => {
  expect(latticeProperties({ ...section, splice: 10_000 }).legTension).toBe(10_000);
});

test("a thinner wall never strengthens and never stiffens", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.0008, max: 0.002, noNaN: true }),
      fc.double({ min: 0.0008, max: 0.002, noNaN: true }),
      (a, b) => {
        const thin = latticeProperties({ ...section, measuredWall: Math.min(a, b) });
        const thick = latticeProperties({ ...section, measuredWall: Math.max(a, b) });
        for (const name of ["legCompression", "legTension", "bendingStiffness", "axialStiffness"] as const)
          expect(thin[name]).toBeLessThanOrEqual(thick[name]);
      },
    ),
    { seed: 102 },
  );
});

test("loss from the outside leaves less than the same loss from the bore", () => {
  const outside = memberShape(thinned({ diameter: 0.032, wall: 0.003 }, 0.002));
  const inside = roundProperties({ diameter: 0.032, wall: 0.002 });
  expect(outside.area).toBeLessThan(inside.area);
  expect(outside.radiusOfGyration).toBeLessThan(inside.radiusOfGyration);
});

test("latticeProperties refuses what is no lattice", () => {
  expect(() => latticeProperties({ ...section, face: 0.03 })).toThrow(/face 0.03 m/);
  expect(() => latticeProperties({ ...section, leg: { diameter: 0.032, wall: 0.02 } })).toThrow(/wall/);
  expect(() => latticeProperties({ ...section, leg: { diameter: 0.03 }, measuredWall: 0.002 })).toThrow(
    /solid bar/,
  );
  expect(() => latticeProperties({ ...section, leg: { diameter: 0.2, wall: 0.0004 } })).toThrow(/E7.2/);
});
