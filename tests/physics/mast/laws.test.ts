import fc from "fast-check";
import { expect, test } from "vitest";
import { Forces, recoverForces } from "../../../src/physics/mast/recover.ts";
import { Mast } from "../../../src/physics/mast/solver.ts";
import type { LoadCase, MastInput } from "../../../src/physics/mast/types.ts";
import { segment, star } from "./support/masts.ts";

/** What a random guyed mast is drawn from: sizes of the trade, sound enough to stand. */
const drawn = fc.record({
  height: fc.double({ min: 9, max: 40, noNaN: true }),
  levels: fc.integer({ min: 1, max: 4 }),
  guys: fc.constantFrom(3, 4),
  spread: fc.double({ min: 0.4, max: 0.9, noNaN: true }),
  tension: fc.double({ min: 1200, max: 5000, noNaN: true }),
  ei: fc.double({ min: 4e5, max: 3e6, noNaN: true }),
  soft: fc.boolean(),
  wind: fc.double({ min: 5, max: 180, noNaN: true }),
  top: fc.double({ min: 0, max: 900, noNaN: true }),
  guyWind: fc.double({ min: 0, max: 8, noNaN: true }),
  azimuth: fc.double({ min: 0, max: 360, noNaN: true }),
  slope: fc.double({ min: -0.15, max: 0.15, noNaN: true }),
  fixed: fc.boolean(),
  arm: fc.double({ min: 0, max: 2.5, noNaN: true }),
});
type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

function mastOf(d: Drawn, turned = 0): MastInput {
  const joint = d.height * 0.55;
  const ga = d.soft ? 8e5 : Number.POSITIVE_INFINITY;
  return {
    segments: [
      segment(0, joint, { ei: d.ei, ea: 2.4e7, ga, weight: 95 }),
      segment(joint, d.height, { ei: 0.8 * d.ei, ea: 2e7, ga, weight: 70 }),
    ],
    base: d.fixed ? "fixed" : "pinned",
    pointWeights: [{ z: d.height, weight: 250, arm: d.arm }],
    levels: Array.from({ length: d.levels }, (_, i) => {
      const z = (d.height * 0.95 * (i + 1)) / d.levels;
      // ground that falls away along x: the stars are no longer alike
      const radius = d.spread * d.height;
      const anchors = star(d.guys, radius, turned);
      return {
        z,
        anchors: anchors.map((a) => {
          const alongSlope = a.x * Math.cos(turned) + a.y * Math.sin(turned);
          return { ...a, z: d.slope * alongSlope };
        }),
        ea: 3.6e6,
        weight: 1.77,
        tension: d.tension,
      };
    }),
  };
}

const loadOf = (d: Drawn, azimuth: number, planar = false): LoadCase => ({
  toward: [Math.cos(azimuth), Math.sin(azimuth)],
  line: (z) => d.wind * (0.6 + (0.4 * z) / d.height),
  points: [{ z: d.height, force: d.top, moment: d.top * d.arm }],
  guyWind: Array.from({ length: d.levels }, () => d.guyWind),
  planar,
});

const radians = (degrees: number) => (degrees * Math.PI) / 180;

function answer(input: MastInput, load: LoadCase) {
  const mast = new Mast(input);
  if (!mast.solve(load) || !mast.stable()) return null;
  const forces = new Forces(mast.elements);
  recoverForces(mast, forces);
  return { mast, forces };
}

test("base and anchors together push back exactly what wind and weight push", () => {
  const tried = new Set<string>();
  fc.assert(
    fc.property(drawn, (d) => {
      const load = loadOf(d, radians(d.azimuth));
      const s = answer(mastOf(d), load);
      fc.pre(s !== null);
      tried.add(JSON.stringify(d));
      const { mast } = s as NonNullable<typeof s>;
      let [x, y, z] = [d.top, 0, -mast.deadWeight];
      for (let e = 0; e < mast.elements; e++) x += mast.lineMean[e] * mast.length[e];
      let size = Math.abs(x) + mast.deadWeight;
      for (const guy of mast.guys) {
        x += guy.qx * guy.length - guy.state.ax;
        y += guy.qy * guy.length - guy.state.ay;
        z += guy.qz * guy.length - guy.state.az;
        size += guy.state.tensionAnchor;
      }
      expect(Math.abs(x + mast.baseReaction[1]) / size).toBeLessThan(1e-8);
      expect(Math.abs(y + mast.baseReaction[3]) / size).toBeLessThan(1e-8);
      expect(Math.abs(z + mast.baseReaction[0]) / size).toBeLessThan(1e-8);
    }),
    { numRuns: 150, seed: 11 },
  );
  expect(tried.size).toBeGreaterThanOrEqual(150);
});

test("moments about the base balance in the deformed shape, to the second order of the turn", () => {
  let tried = 0;
  fc.assert(
    fc.property(drawn, (d) => {
      const s = answer(mastOf({ ...d, slope: 0 }), loadOf(d, radians(d.azimuth)));
      fc.pre(s !== null);
      tried++;
      const { mast, forces } = s as NonNullable<typeof s>;
      // about the y axis through the base: forces along the wind at their heights, weights at their drift
      let moment = d.top * (d.height + d.arm);
      let size = moment;
      for (let e = 0; e < mast.elements; e++) {
        const f = mast.lineMean[e] * mast.length[e];
        const at = e * 5;
        moment += f * 0.5 * (mast.z[e] + mast.z[e + 1]);
        moment += mast.weight[e] * mast.length[e] * 0.5 * (mast.d[at + 1] + mast.d[at + 6]);
        size += Math.abs(f) * mast.z[e + 1];
      }
      const top = (mast.nodes - 1) * 5;
      moment += 250 * (mast.d[top + 1] + d.arm * mast.d[top + 2]);
      for (const { node, state } of mast.guys) {
        moment += state.fx * (mast.z[node] + mast.d[node * 5]) - state.fz * mast.d[node * 5 + 1];
        size += Math.abs(state.fx) * mast.z[node];
      }
      const base = d.fixed ? forces.along[0] : 0;
      // the load's rise within an element and bending between nodes are left out above
      expect(Math.abs(moment - base) / size).toBeLessThan(3e-3);
    }),
    { numRuns: 120, seed: 12 },
  );
  expect(tried).toBeGreaterThanOrEqual(120);
});

test("solve(planar: false) gives a plane state what solve(planar: true) gives it", () => {
  const tried = new Set<string>();
  fc.assert(
    fc.property(drawn, fc.constantFrom(0, 180), (d, azimuth) => {
      const input = mastOf(d);
      const flat = answer(input, loadOf(d, radians(azimuth), true));
      const full = answer(input, loadOf(d, radians(azimuth), false));
      expect(flat === null).toBe(full === null);
      fc.pre(flat !== null && full !== null);
      tried.add(JSON.stringify([d, azimuth]));
      const [a, b] = [flat, full] as [NonNullable<typeof flat>, NonNullable<typeof full>];
      const most = Math.max(...a.forces.moment);
      for (let i = 0; i < a.forces.count; i++) {
        expect(Math.abs(a.forces.moment[i] - b.forces.moment[i])).toBeLessThan(1e-5 * most);
        expect(Math.abs(b.forces.across[i])).toBeLessThan(1e-5 * most);
      }
      a.mast.guys.forEach((guy, i) => {
        expect(Math.abs(guy.state.tensionMast - b.mast.guys[i].state.tensionMast)).toBeLessThan(
          1e-5 * guy.state.tensionMast + 1e-4,
        );
      });
      const [fa, fb] = [a.mast.bucklingFactor(), b.mast.bucklingFactor()];
      if (Number.isFinite(fa)) expect(Math.abs(fa / fb - 1)).toBeLessThan(1e-5);
    }),
    { numRuns: 60, seed: 13 },
  );
  expect(tried.size).toBeGreaterThanOrEqual(60);
});

test("turning guys and wind together turns the answer and changes nothing else", () => {
  const tried = new Set<string>();
  fc.assert(
    fc.property(drawn, fc.double({ min: 0.1, max: 6, noNaN: true }), (d, turned) => {
      const one = answer(mastOf(d), loadOf(d, radians(d.azimuth)));
      const two = answer(mastOf(d, turned), loadOf(d, radians(d.azimuth) + turned));
      expect(one === null).toBe(two === null);
      fc.pre(one !== null && two !== null);
      tried.add(JSON.stringify([d, turned]));
      const [a, b] = [one, two] as [NonNullable<typeof one>, NonNullable<typeof two>];
      const most = Math.max(...a.forces.moment);
      for (let i = 0; i < a.forces.count; i++)
        expect(Math.abs(a.forces.moment[i] - b.forces.moment[i])).toBeLessThan(1e-5 * most);
      a.mast.guys.forEach(({ state }, i) => {
        expect(Math.abs(state.tensionAnchor - b.mast.guys[i].state.tensionAnchor)).toBeLessThan(
          1e-5 * state.tensionAnchor + 1e-4,
        );
      });
    }),
    { numRuns: 80, seed: 14 },
  );
  expect(tried.size).toBeGreaterThanOrEqual(80);
});

test("a mirrored wind gives the mirrored answer", () => {
  let tried = 0;
  fc.assert(
    fc.property(drawn, (d) => {
      const input = mastOf(d);
      const one = answer(input, loadOf(d, radians(d.azimuth)));
      const two = answer(input, loadOf(d, -radians(d.azimuth)));
      expect(one === null).toBe(two === null);
      fc.pre(one !== null && two !== null);
      tried++;
      const [a, b] = [one, two] as [NonNullable<typeof one>, NonNullable<typeof two>];
      const top = (a.mast.nodes - 1) * 5;
      const size = Math.hypot(a.mast.d[top + 1], a.mast.d[top + 3]) + 1e-4;
      expect(Math.abs(a.mast.d[top + 1] - b.mast.d[top + 1]) / size).toBeLessThan(1e-4);
      expect(Math.abs(a.mast.d[top + 3] + b.mast.d[top + 3]) / size).toBeLessThan(1e-4);
    }),
    { numRuns: 60, seed: 15 },
  );
  expect(tried).toBeGreaterThanOrEqual(60);
});

test("the answer does not depend on what was asked before", () => {
  fc.assert(
    fc.property(drawn, fc.double({ min: 0, max: 360, noNaN: true }), (d, other) => {
      const mast = new Mast(mastOf(d));
      const load = loadOf(d, radians(d.azimuth));
      const first = mast.solve(load);
      const before = mast.d.slice();
      const factor = first ? mast.bucklingFactor() : 0;
      mast.solve(loadOf(d, radians(other)));
      expect(mast.solve(load)).toBe(first);
      if (!first) return;
      expect(mast.d).toEqual(before);
      expect(mast.bucklingFactor()).toBe(factor);
    }),
    { numRuns: 60, seed: 16 },
  );
});

test("in still air on level ground the mast stands plumb at its heights, every guy at its tension", () => {
  fc.assert(
    fc.property(drawn, (drawnMast) => {
      const d = { ...drawnMast, slope: 0 };
      const s = answer(mastOf(d), { ...loadOf({ ...d, wind: 0, top: 0, guyWind: 0 }, 0) });
      fc.pre(s !== null);
      const { mast } = s as NonNullable<typeof s>;
      for (const u of mast.d.subarray(0, mast.nodes * 5)) expect(Math.abs(u)).toBeLessThan(1e-7);
      for (const { state } of mast.guys) expect(state.tensionAnchor / d.tension).toBeCloseTo(1, 6);
      expect(mast.baseReaction[0] / mast.riggedCompression).toBeCloseTo(1, 8);
    }),
    { numRuns: 80, seed: 17 },
  );
});
