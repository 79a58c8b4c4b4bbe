import fc from "fast-check";
import { expect, test } from "vitest";
import { blockResistance } from "../../../src/physics/ground/block.ts";
import { deadmanCapacity } from "../../../src/physics/ground/deadman.ts";
import { pierAsPost, pierInSand } from "../../../src/physics/ground/pier.ts";
import { activeCoefficient, fallShare, passiveCoefficient } from "../../../src/physics/ground/rankine.ts";

const RADIANS = Math.PI / 180;

/**
 * Thrust on an upright smooth face of unit height in soil of unit weight, from wedges of every slope: the least that a
 * passive one takes to push out, the most that an active one pushes with. Statics of the wedge, nothing of a formula.
 */
function byWedges(angle: number, fall: number, way: "passive" | "active"): number {
  const phi = angle * RADIANS;
  const slope = Math.atan(fall) * (way === "passive" ? -1 : 1);
  let best = way === "passive" ? Number.POSITIVE_INFINITY : 0;
  for (let t = 0.02; t < 89.98; t += 0.02) {
    const plane = t * RADIANS;
    // the plane from the foot meets the ground at x: x tan(plane) = 1 + x tan(slope)
    const rise = Math.tan(plane) - Math.tan(slope);
    if (rise <= 1e-6) continue;
    const weight = 0.5 / rise;
    const thrust = weight * Math.tan(way === "passive" ? plane + phi : plane - phi);
    if (way === "passive" && plane + phi < Math.PI / 2) best = Math.min(best, thrust);
    if (way === "active") best = Math.max(best, thrust);
  }
  return 2 * best;
}

test("passiveCoefficient(falling) and activeCoefficient(rising) are those of the worst wedge", () => {
  for (const angle of [20, 30, 38, 45])
    for (const fall of [0, 0.05, 0.2, 0.3]) {
      expect(
        passiveCoefficient(angle, fall) / byWedges(angle, fall, "passive"),
        `${angle} ${fall}`,
      ).toBeCloseTo(1, 3);
      expect(
        activeCoefficient(angle, fall) / byWedges(angle, fall, "active"),
        `${angle} ${fall}`,
      ).toBeCloseTo(1, 3);
    }
  // level: Rankine's 3 and a third
  expect(passiveCoefficient(30)).toBeCloseTo(3, 12);
  expect(activeCoefficient(30)).toBeCloseTo(1 / 3, 12);
  // steeper than the soil's own angle nothing holds
  expect(passiveCoefficient(20, 0.4)).toBe(0);
});

test("every hold sideways falls with the slope, and lateral bearing by no less than any soil to 45 degrees", () => {
  const soil = {
    bearing: 1e5,
    lateralPerDepth: 3e4,
    unitWeight: 18e3,
    friction: 0.3,
  };
  const rules = { concreteUnitWeight: 22.8e3, upliftAngle: 30 };
  const block = { length: 1.5, height: 0.5, width: 0.5, depth: 1.3 };
  fc.assert(
    fc.property(
      fc.double({ min: 25, max: 45, noNaN: true }),
      fc.double({ min: 0.02, max: 0.4, noNaN: true }),
      (frictionAngle, fall) => {
        const holds = (f: number | undefined) => {
          const at = { ...rules, fall: f };
          const load = { compression: 2e4, shear: 1e3, moment: 2e3 };
          return [
            deadmanCapacity(block, { ...soil, frictionAngle }, at).lateral,
            deadmanCapacity(block, soil, at).lateral,
            blockResistance({ width: 0.9, depth: 1.2 }, load, soil, at).overturning.capacity,
            blockResistance({ width: 0.9, depth: 1.2 }, load, soil, at).sliding.capacity,
            pierAsPost({ diameter: 0.6, depth: 2 }, soil, at)?.of(load).capacity ?? 0,
            pierInSand({ diameter: 0.6, depth: 2 }, { ...soil, frictionAngle }, at)?.of(load).capacity ?? 0,
          ];
        };
        const level = holds(undefined);
        holds(fall).forEach((hold, i) => {
          expect(hold, `${i}`).toBeLessThan(level[i]);
        });
        const left = passiveCoefficient(frictionAngle, fall) / passiveCoefficient(frictionAngle);
        if (Math.atan(fall) < 0.6 * frictionAngle * RADIANS)
          expect(fallShare(fall)).toBeLessThanOrEqual(left * (1 + 1e-12));
      },
    ),
    { numRuns: 300, seed: 91 },
  );
});
