import { expect, test } from "vitest";
import { Mast } from "../../../src/physics/mast/solver.ts";
import type { MastInput } from "../../../src/physics/mast/types.ts";
import { checkValue } from "../../support/check-values.ts";
import { along, momentAt, segment, solved, turn, wind } from "./support/masts.ts";

const HEIGHT = 15;
const EI = 9e5;
const FORCE = 800;
const STIFFNESS = 4e5;

const post = (more: Partial<MastInput> = {}): MastInput => ({
  segments: [segment(0, HEIGHT, { ei: EI })],
  base: "fixed",
  baseStiffness: STIFFNESS,
  pointWeights: [],
  levels: [],
  ...more,
});

test("solve(cantilever on a spring) adds the turn of the base to the deflection", () => {
  const s = solved(post(), wind({ at: [{ z: HEIGHT, force: FORCE, moment: 0 }] }));
  const source = "statics: F L3 / 3 EI + F L2 / k";
  checkValue({
    subject: "mast: top of a cantilever on a rotational spring",
    source,
    tag: "arithmetic",
    expected: (FORCE * HEIGHT ** 3) / (3 * EI) + (FORCE * HEIGHT ** 2) / STIFFNESS,
    computed: along(s, HEIGHT),
    tolerance: 1e-4,
    unit: "m",
  });
  expect(turn(s, 0)).toBeCloseTo((FORCE * HEIGHT) / STIFFNESS, 9);
  expect(Math.abs(momentAt(s, 0))).toBeCloseTo(FORCE * HEIGHT, 3);
  expect(s.mast.baseReaction[2]).toBeCloseTo(-FORCE * HEIGHT, 3);
});

/** Least root of x tan x = k L / EI: a cantilever on a spring under a thrust at its top. */
const root = (ratio: number): number => {
  let low = 1e-9;
  let high = Math.PI / 2 - 1e-9;
  for (let i = 0; i < 100; i++) {
    const x = 0.5 * (low + high);
    if (x * Math.tan(x) < ratio) low = x;
    else high = x;
  }
  return low;
};

test("bucklingFactor of a cantilever on a spring is that of x tan x = k L / EI", () => {
  const weight = 300;
  const ratio = (STIFFNESS * HEIGHT) / EI;
  for (const planar of [true, false]) {
    const mast = new Mast(post({ pointWeights: [{ z: HEIGHT, weight, arm: 0 }], elementsPerSpan: 6 }));
    expect(mast.solve({ ...wind(), planar })).toBe(true);
    checkValue({
      subject: `mast: buckling of a cantilever on a rotational spring, ${planar ? "in a plane" : "in space"}`,
      source: "Timoshenko and Gere, Theory of Elastic Stability, 2.1: x tan x = k L / EI, P = x2 EI / L2",
      tag: "from memory",
      expected: (root(ratio) ** 2 * EI) / (HEIGHT ** 2 * weight),
      computed: mast.bucklingFactor(),
      tolerance: 1e-4,
      unit: "ratio",
    });
    const factor = mast.bucklingFactor();
    expect(mast.standsAt(factor * 0.999)).toBe(true);
    expect(mast.standsAt(factor * 1.001)).toBe(false);
  }
});

test("swayFrequency of a stiff bar on a spring is sqrt(3 k / m L3) / 2 pi, less what its weight tips", () => {
  const mass = 12;
  const g = 9.80665;
  const mast = new Mast(post({ segments: [segment(0, HEIGHT, { ei: 1e12, weight: mass * g })] }));
  mast.solve(wind());
  checkValue({
    subject: "mast: sway frequency of a stiff bar on a rotational spring",
    source: "rigid body: I = m L3 / 3, stiffness k - m g L2 / 2",
    tag: "arithmetic",
    expected:
      Math.sqrt((STIFFNESS - (mass * g * HEIGHT ** 2) / 2) / ((mass * HEIGHT ** 3) / 3)) / (2 * Math.PI),
    computed: mast.swayFrequency(),
    tolerance: 1e-4,
    unit: "Hz",
  });
});

test("a base on a spring lies between the pin and the fixed base, and reaches the fixed one", () => {
  const top = (baseStiffness?: number) =>
    along(solved(post({ baseStiffness }), wind({ at: [{ z: HEIGHT, force: FORCE, moment: 0 }] })), HEIGHT);
  expect(top(1e5)).toBeGreaterThan(top(1e6));
  expect(top(1e6)).toBeGreaterThan(top());
  expect(top(1e13) / top()).toBeCloseTo(1, 6);
});

test("solve(a mast on a spring too soft for its weight) is unstable", () => {
  const mast = new Mast(post({ baseStiffness: 1000, pointWeights: [{ z: HEIGHT, weight: 500, arm: 0 }] }));
  expect(mast.solve(wind()) && mast.stable()).toBe(false);
});
