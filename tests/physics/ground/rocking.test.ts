import fc from "fast-check";
import { expect, test } from "vitest";
import { blockRocking, contactShare, padRocking, pierRocking } from "../../../src/physics/ground/rocking.ts";

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const soil = { bearing: 1e5, lateralPerDepth: 2e4, unitWeight: 18e3, subgradeModulus: 2e7 };

/** Springs in strips under a base that is pressed and turned: the turn is sought that gives the load back. */
function springs(width: number, modulus: number, turn: number, normal: number) {
  const strips = 4000;
  const dx = width / strips;
  const sums = (sink: number) => {
    let [force, moment] = [0, 0];
    for (let i = 0; i < strips; i++) {
      const x = (i + 0.5) * dx - width / 2;
      const pressed = Math.max(0, sink + turn * x) * modulus * width * dx;
      force += pressed;
      moment += pressed * x;
    }
    return { force, moment };
  };
  let [low, high] = [-turn * width, turn * width + (2 * normal) / (modulus * width ** 2)];
  for (let i = 0; i < 70; i++) {
    const middle = (low + high) / 2;
    if (sums(middle).force < normal) low = middle;
    else high = middle;
  }
  return sums(high).moment;
}

test("padRocking(a moment) is the turn of strips on springs, whole or partly lifted", () => {
  let lifted = 0;
  fc.assert(
    fc.property(size(1, 3), size(2e4, 4e5), size(1e-5, 2e-2), (width, normal, turn) => {
      const moment = springs(width, soil.subgradeModulus, turn, normal);
      const e = moment / normal;
      fc.pre(e < 0.45 * width);
      if (e > width / 6) lifted++;
      const hold = padRocking(soil, width, 1)?.under({ compression: normal, shear: 0, moment }, normal) ?? 0;
      expect(moment / hold / turn).toBeCloseTo(1, 2);
    }),
    { numRuns: 80, seed: 81 },
  );
  expect(lifted).toBeGreaterThan(15);
});

test("contactShare falls from 1 at the kern to 0 at the edge, without a step", () => {
  expect(contactShare(2, 1 / 3)).toBe(1);
  expect(contactShare(2, 1 / 3 + 1e-9)).toBeCloseTo(1, 7);
  expect(contactShare(2, 1)).toBe(0);
  fc.assert(
    fc.property(size(0, 1), size(0, 0.2), (off, more) => {
      expect(contactShare(2, off + more)).toBeLessThanOrEqual(contactShare(2, off) + 1e-12);
    }),
    { seed: 101 },
  );
});

test("a shear makes every footing turn more than its moment alone; no modulus, no stiffness", () => {
  const load = { compression: 1e5, shear: 1e3, moment: 1e4 };
  const bare = { ...soil, subgradeModulus: undefined };
  for (const rocking of [padRocking, blockRocking, pierRocking]) {
    const hold = rocking(soil, 1.5, 1.8);
    const pushed = hold?.under(load, 2e5) ?? Number.NaN;
    expect(pushed).toBeLessThan(hold?.under({ ...load, shear: 0 }, 2e5) ?? Number.NaN);
    expect(pushed).toBeGreaterThan(0);
    expect(rocking(bare, 1.5, 1.8)).toBeUndefined();
  }
  // k B4/12, k (B4 + B D3)/12, k d L3/12 by hand
  expect(padRocking(soil, 2, 1)?.stiffness).toBeCloseTo((2e7 * 16) / 12, 3);
  expect(blockRocking(soil, 2, 1)?.stiffness).toBeCloseTo((2e7 * (16 + 2)) / 12, 3);
  expect(pierRocking(soil, 0.5, 2)?.stiffness).toBeCloseTo((2e7 * 0.5 * 8) / 12, 3);
});
