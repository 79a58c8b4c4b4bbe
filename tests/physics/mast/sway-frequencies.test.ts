import { expect, test } from "vitest";
import { Mast } from "../../../src/physics/mast/solver.ts";
import { checkValue } from "../../support/check-values.ts";
import { roller, segment, star, wind } from "./support/masts.ts";

const HEIGHT = 20;
const EI = 4e5;
const MASS = 15;
const G = 9.80665;

/** A bar whose own weight bends it no softer: stiff against its weight by 1e4. */
const bar = (base: "pinned" | "fixed", rollers: readonly number[]) => {
  const stiff = 1e4;
  const mast = new Mast({
    segments: [segment(0, HEIGHT, { ei: EI * stiff, ea: 1e14, weight: MASS * G })],
    base,
    pointWeights: [],
    levels: rollers.map((z) => ({ ...roller(z), ea: 1e14, weight: 1e-6, tension: 1000 })),
    elementsPerSpan: 24,
  });
  mast.solve(wind());
  return mast.swayFrequencies(3).map((frequency) => frequency / Math.sqrt(stiff));
};

const closed = (subject: string, computed: readonly number[], roots: readonly number[]) =>
  roots.forEach((root, i) => {
    checkValue({
      subject: `mast: sway frequency ${i + 1} of ${subject}`,
      source: `Blevins 1979, table 8-1: lambda = ${root}`,
      tag: "from memory",
      expected: (root ** 2 / (2 * Math.PI)) * Math.sqrt(EI / (MASS * HEIGHT ** 4)),
      computed: computed[i],
      // the bar's weight and the mesh take 2e-5
      tolerance: 5e-5,
      unit: "Hz",
    });
  });

test("swayFrequencies(3) of a cantilever are those of the closed form", () => {
  closed("a cantilever", bar("fixed", []), [1.87510407, 4.69409113, 7.85475744]);
});

test("swayFrequencies(3) of a bar pinned at both ends are n2 pi / 2 L2 sqrt(EI / m)", () => {
  closed("a bar pinned at both ends", bar("pinned", [HEIGHT]), [Math.PI, 2 * Math.PI, 3 * Math.PI]);
});

test("swayFrequencies(3) of a bar fixed below and pinned above are those of the closed form", () => {
  closed("a bar fixed below and pinned above", bar("fixed", [HEIGHT]), [3.92660231, 7.06858275, 10.21017612]);
});

const guyed = (planar: boolean, anchors = star(3, 14)) => {
  const mast = new Mast({
    segments: [segment(0, 30, { ei: 5e5, ea: 8e7, ga: 5e6, weight: 150 })],
    base: "pinned",
    pointWeights: [{ z: 30, weight: 600, arm: 1.5 }],
    levels: [15, 28].map((z) => ({ z, anchors, ea: 4e6, weight: 1.8, tension: 3000 })),
  });
  expect(mast.solve({ ...wind(), planar })).toBe(true);
  return mast;
};

test("swayFrequencies begins with swayFrequency, and in a plane says the same as in space", () => {
  const plane = guyed(true);
  const three = plane.swayFrequencies(3);
  expect(three).toHaveLength(3);
  expect(three[0]).toBeCloseTo(plane.swayFrequency(), 9);
  guyed(false)
    .swayFrequencies(3)
    .forEach((frequency, i) => {
      expect(frequency / three[i]).toBeCloseTo(1, 8);
    });
});

test("swayFrequencies of a star that is stiffer one way finds the modes of both planes", () => {
  const oval = star(4, 14).map(({ x, y, z }) => ({ x, y: 0.6 * y, z }));
  const plane = guyed(true, oval).swayFrequencies(3);
  const space = guyed(false, oval).swayFrequencies(3);
  expect(plane[1] / plane[0]).toBeGreaterThan(1.001);
  plane.forEach((frequency, i) => {
    expect(space[i] / frequency).toBeCloseTo(1, 8);
  });
});
