import fc from "fast-check";
import { expect, test } from "vitest";
import { PSI } from "../../../src/physics/concrete/bars.ts";
import {
  atStrength,
  bottomDemand,
  punchingDemand,
  type Slab,
  type SlabLoads,
  shearDemand,
  slabStrength,
  topDemand,
} from "../../../src/physics/concrete/slab.ts";

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const slab: fc.Arbitrary<Slab> = fc
  .record({
    width: size(1, 4),
    share: size(0.15, 0.5),
    thickness: size(0.25, 0.8),
    // of the section to the bars: 1.8 times as much is still tension-controlled
    steel: size(0.002, 0.0074),
  })
  .map(({ width, share, thickness, steel }) => ({
    width,
    thickness,
    pedestal: share * width,
    barDepth: thickness - 0.1,
    bottomArea: steel * width * (thickness - 0.1),
    topArea: steel * width * (thickness - 0.1),
    strength: 20.7e6,
    barYield: 413.7e6,
  }));
const loaded = (width: number, normal: number, off: number): SlabLoads => ({
  compression: 0.3 * normal,
  moment: normal * off * width,
  normal,
  eccentricity: off * width,
  counted: (0.6 * normal) / width ** 2,
  weight: (0.65 * normal) / width ** 2,
});

/** Moment and shear of one side by strips of a plane pressure without tension, its plane sought by trial. */
function byStrips(given: Slab, loads: SlabLoads) {
  const strips = 6000;
  const dx = given.width / strips;
  const at = (i: number) => (i + 0.5) * dx;
  /** Pressure of shape max(0, a - x), or 1 + a (half - x) where all touches. */
  const carried = (shape: (x: number) => number) => {
    let force = 0;
    let moment = 0;
    for (let i = 0; i < strips; i++) {
      const p = Math.max(0, shape(at(i))) * dx * given.width;
      force += p;
      moment += p * (given.width / 2 - at(i));
    }
    return { force, off: moment / force };
  };
  let low = 1e-3 * given.width;
  let high = 400 * given.width;
  for (let step = 0; step < 70; step++) {
    const a = Math.sqrt(low * high);
    if (carried((x) => a - x).off > loads.eccentricity) low = a;
    else high = a;
  }
  const scale = loads.normal / carried((x) => high - x).force;
  const q = (x: number) => scale * Math.max(0, high - x);
  const out = (given.width - given.pedestal) / 2;
  let bottom = 0;
  let shear = 0;
  let top = 0;
  for (let i = 0; i < strips; i++) {
    const x = at(i);
    const y = given.width - x;
    if (x < out) bottom += (q(x) - loads.counted) * (out - x) * dx * given.width;
    if (x < out - given.barDepth) shear += (q(x) - loads.counted) * dx * given.width;
    const lifts = high < given.width;
    if (y < out) top += ((lifts ? loads.weight : loads.counted) - q(x)) * (out - y) * dx * given.width;
  }
  return { bottom, shear, top };
}

test("bottomDemand, topDemand and shearDemand are the strips of a plane pressure that balances the load", () => {
  let lifted = 0;
  fc.assert(
    fc.property(slab, size(2e4, 6e5), size(0.01, 0.42), (given, normal, off) => {
      const loads = loaded(given.width, normal, off);
      const strips = byStrips(given, loads);
      if (off > 1 / 6) lifted++;
      const scale = normal * given.width;
      expect(Math.abs(bottomDemand(given, loads) - Math.max(0, strips.bottom))).toBeLessThan(2e-3 * scale);
      expect(Math.abs(topDemand(given, loads) - Math.max(0, strips.top))).toBeLessThan(2e-3 * scale);
      const weight = loads.weight * given.width * ((given.width - given.pedestal) / 2 - given.barDepth);
      expect(Math.abs(shearDemand(given, loads) - Math.max(0, weight, strips.shear))).toBeLessThan(
        2e-3 * normal,
      );
    }),
    { numRuns: 60, seed: 71 },
  );
  expect(lifted).toBeGreaterThan(15);
});

test("atStrength(a demand) is no less than that of 0.9 and of 1.2 of the dead weight under 1.6 of the wind, by strips", () => {
  let scaledWasLess = 0;
  fc.assert(
    fc.property(slab, size(2e4, 6e5), size(0.02, 0.33), (given, normal, off) => {
      const loads = loaded(given.width, normal, off);
      const scale = normal * given.width;
      for (const dead of [0.9, 1.2]) {
        const grown = (1.6 / dead) * off;
        if (grown >= 0.45) continue;
        const state = {
          ...loads,
          normal: dead * normal,
          eccentricity: grown * given.width,
          counted: dead * loads.counted,
          weight: dead * loads.weight,
        };
        const { bottom, top } = byStrips(given, state);
        expect(atStrength(bottomDemand, given, loads, 1.6)).toBeGreaterThan(bottom - 2e-3 * scale);
        expect(atStrength(topDemand, given, loads, 1.6)).toBeGreaterThan(top - 2e-3 * scale);
        if (1.6 * bottomDemand(given, loads) < 0.9 * bottom) scaledWasLess++;
      }
      // a pad that tips at strength level presses with its edge: all it weighs at nine tenths of its half
      const tips = atStrength(bottomDemand, given, loaded(given.width, normal, 0.33), 1.6);
      const { bottom } = byStrips(given, { ...loaded(given.width, 1.2 * normal, 0.44) });
      expect(tips).toBeGreaterThan(bottom - 2e-3 * scale);
      for (const demand of [bottomDemand, topDemand, shearDemand]) {
        expect(atStrength(demand, given, loads, 1)).toBe(demand(given, loads));
        expect(atStrength(demand, given, loads, 1.6)).toBeGreaterThanOrEqual(1.6 * demand(given, loads));
      }
    }),
    { numRuns: 40, seed: 74 },
  );
  expect(scaledWasLess).toBeGreaterThan(5);
});

test("atStrength(a demand) never falls as the wind grows, up to where the pad tips and beyond", () => {
  fc.assert(
    fc.property(slab, size(2e4, 6e5), size(0.01, 0.48), size(1.0001, 1.5), (given, normal, off, more) => {
      const [less, greater] = [off, Math.min(0.49, more * off)].map((e) => loaded(given.width, normal, e));
      for (const demand of [bottomDemand, topDemand, shearDemand])
        expect(atStrength(demand, given, greater, 1.67)).toBeGreaterThanOrEqual(
          atStrength(demand, given, less, 1.67) * (1 - 1e-9),
        );
    }),
    { numRuns: 400, seed: 75 },
  );
});

/** Moment about the face of all pressure beyond it, load on the diagonal, by cells of k (a - x - y). */
function diagonalMoment(given: Slab, normal: number, eccentricity: number): number {
  const cells = 160;
  const { width } = given;
  const centre = 0.5 - eccentricity / width / Math.SQRT2;
  const out = (width - given.pedestal) / 2 / width;
  const plane = (a: number) => {
    let [volume, moment, beyond] = [0, 0, 0];
    for (let i = 0; i < cells; i++)
      for (let j = 0; j < cells; j++) {
        const [x, y] = [(i + 0.5) / cells, (j + 0.5) / cells];
        const p = Math.max(0, a - x - y);
        volume += p;
        moment += p * x;
        beyond += p * Math.max(0, out - x);
      }
    return { centroid: moment / volume, beyond: beyond / volume };
  };
  let [low, high] = [0.05, 300];
  for (let step = 0; step < 40; step++) {
    const a = Math.sqrt(low * high);
    if (plane(a).centroid < centre) low = a;
    else high = a;
  }
  return plane(low).beyond * normal * width;
}

test("wind on the diagonal never bends the loaded side more than wind square to a face", () => {
  fc.assert(
    fc.property(slab, size(0.02, 0.35), (given, off) => {
      const loads = { ...loaded(given.width, 1e5, off), counted: 0 };
      expect(diagonalMoment(given, 1e5, off * given.width)).toBeLessThanOrEqual(
        bottomDemand(given, loads) * 1.01,
      );
    }),
    { numRuns: 40, seed: 72 },
  );
});

/** Greatest shear round the pedestal, its moment turned this far from square, by cells of the punched faces. */
function punchingByCells({ pedestal, barDepth }: Slab, { compression, moment }: SlabLoads, turn: number) {
  const cells = 400;
  const side = pedestal + barDepth;
  const step = side / cells;
  // faces square to the moment's axis feel its lever, those along it twist: 8.4.4.2 turns all of them together
  let polar = 2 * barDepth * side * (side / 2) ** 2;
  for (let i = 0; i < cells; i++)
    for (let j = 0; j < cells; j++) {
      const along = (i + 0.5) * step - side / 2;
      const up = ((j + 0.5) / cells - 0.5) * barDepth;
      polar += 2 * (along ** 2 + up ** 2) * step * (barDepth / cells);
    }
  let most = 0;
  for (const [x, y] of [
    [1, 1],
    [1, 0],
    [0, 1],
  ] as const)
    most = Math.max(most, x * Math.cos(turn) + y * Math.sin(turn));
  return compression / (4 * side * barDepth) + (0.4 * moment * most * side) / (2 * polar);
}

test("punchingDemand is the stress at the worst corner, from wherever the wind blows", () => {
  fc.assert(
    fc.property(slab, size(0.02, 0.35), size(0, 90), (given, off, degrees) => {
      const loads = loaded(given.width, 1e5, off);
      const demand = punchingDemand(given, loads);
      expect(punchingByCells(given, loads, (degrees * Math.PI) / 180)).toBeLessThanOrEqual(demand * 1.0001);
      expect(punchingByCells(given, loads, Math.PI / 4) / demand).toBeCloseTo(1, 4);
    }),
    { numRuns: 15, seed: 73 },
  );
});

test("a slab whose load is off its base fails, one that is pressed evenly lifts nowhere", () => {
  fc.assert(
    fc.property(slab, size(1e4, 1e6), (given, normal) => {
      const off = loaded(given.width, normal, 0.5);
      for (const demand of [bottomDemand, topDemand, shearDemand])
        expect(demand(given, off)).toBe(Number.POSITIVE_INFINITY);
      expect(topDemand(given, loaded(given.width, normal, 0))).toBe(0);
    }),
    { seed: 104 },
  );
});

test("slabStrength(so many bars that the concrete crushes first) bends nothing (ACI 318-19 8.3.3.1, from memory)", () => {
  // 3000 psi, 60 ksi: c/d = 0.003/(0.006 + 60/29 008) = 0.37182, rho = 0.85 x 0.85 x 3/60 x c/d = 0.013432
  const slab = (share: number) =>
    slabStrength({
      width: 2,
      thickness: 0.5,
      pedestal: 0.5,
      barDepth: 0.4,
      bottomArea: share * 2 * 0.4,
      topArea: share * 2 * 0.4,
      strength: 3000 * PSI,
      barYield: 60_000 * PSI,
    });
  // 0.9 rho fy B d2 (1 - 0.59 rho fy/f'c), the textbook's form
  const most = 0.9 * 0.01343 * 60_000 * PSI * 2 * 0.4 ** 2 * (1 - (0.01343 * 20) / 1.7);
  expect(slab(0.01343).bottomMoment / most).toBeCloseTo(1, 9);
  expect(slab(0.01343).topMoment / most).toBeCloseTo(1, 9);
  expect(slab(0.01344).bottomMoment).toBe(0);
  expect(slab(0.01344).topMoment).toBe(0);
});

test("more steel and more thickness never make slabStrength less, and thickness never the punching stress more", () => {
  fc.assert(
    fc.property(slab, size(1.01, 1.8), (given, more) => {
      const before = slabStrength(given);
      const steel = slabStrength({ ...given, bottomArea: more * given.bottomArea });
      const thick = slabStrength({ ...given, barDepth: more * given.barDepth });
      for (const key of ["bottomMoment", "shear", "punching"] as const)
        expect(steel[key]).toBeGreaterThanOrEqual(before[key]);
      for (const key of ["bottomMoment", "shear"] as const)
        expect(thick[key]).toBeGreaterThanOrEqual(before[key]);
      const loads = loaded(given.width, 1e5, 0.1);
      expect(punchingDemand({ ...given, barDepth: more * given.barDepth }, loads)).toBeLessThanOrEqual(
        punchingDemand(given, loads),
      );
    }),
    { seed: 105 },
  );
});
