import { expect, test } from "vitest";
import { catenaryState, solveCatenary } from "../../../src/physics/guy/catenary.ts";
import { Mast } from "../../../src/physics/mast/solver.ts";
import type { Guy } from "../../../src/physics/mast/state.ts";
import { Twist } from "../../../src/physics/mast/twist.ts";
import type { LoadCase, MastInput } from "../../../src/physics/mast/types.ts";
import { checkValue } from "../../support/check-values.ts";
import { segment, star, wind } from "./support/masts.ts";

const HEIGHT = 24;
const GUYED = 20;
const GJ = 3e4;
const TORQUE = 500;

const guyed: MastInput = {
  segments: [segment(0, HEIGHT, { ei: 5e5, ea: 8e7, ga: 5e6, weight: 150 })],
  base: "pinned",
  pointWeights: [{ z: HEIGHT, weight: 600, arm: 0 }],
  levels: [{ z: GUYED, anchors: star(3, 14), ea: 4e6, weight: 1.8, tension: 3000 }],
};
const post: MastInput = { ...guyed, base: "fixed", levels: [] };

const blow = (more: Partial<LoadCase> = {}): LoadCase => ({
  ...wind({ line: () => 30, guyWind: [2], planar: false }),
  ...more,
});

/** Heads of the guys, each `along` toward its anchor and `aside` to its left. */
const heads = (mast: Mast, along: number, aside = 0): Float64Array =>
  Float64Array.from(
    mast.guys.flatMap(({ x, y }) => {
      const r = Math.hypot(x, y);
      return [(along * x - aside * y) / r, (along * y + aside * x) / r];
    }),
  );

function twisted(
  input: MastInput,
  load: LoadCase,
  z: number,
  { along = 0, aside = 0, polar = 0, stiffness = GJ } = {},
) {
  const mast = new Mast(input);
  expect(mast.solve(load)).toBe(true);
  const sections = Array.from({ length: mast.elements }, () => ({ stiffness, polar }));
  const twist = new Twist(mast, sections, heads(mast, along, aside));
  const held = twist.solve(load.toward, [{ z, torque: TORQUE }]);
  return { mast, twist, held };
}

test("Twist of a free-standing shaft is T L / GJ, and the base takes the torque", () => {
  const { mast, twist } = twisted(post, blow(), HEIGHT);
  checkValue({
    subject: "mast: twist of a shaft held at its foot",
    source: "Saint-Venant: T L / GJ",
    tag: "arithmetic",
    expected: (TORQUE * HEIGHT) / GJ,
    computed: twist.turn[mast.nodes - 1],
    tolerance: 1e-9,
    unit: "rad",
  });
  expect(twist.baseTorque).toBeCloseTo(TORQUE, 6);
});

test("Twist with guys on the axis is that of the shaft alone: they hold nothing", () => {
  const { mast, twist } = twisted(guyed, blow(), HEIGHT);
  expect(twist.turn[mast.nodes - 1]).toBeCloseTo((TORQUE * HEIGHT) / GJ, 9);
  expect([...twist.guyTension].every((added) => added === 0)).toBe(true);
});

/** A guy of the solved mast whose head is moved by a little square to the leaning axis, beside where the case left it. */
function moved(mast: Mast, { node, ax, ay, z, length, ea, qx, qy, qz }: Guy, dx: number, dy: number) {
  const o = node * mast.perNode;
  const state = catenaryState();
  solveCatenary(
    mast.d[o + 1] - ax + dx,
    mast.d[o + 3] - ay + dy,
    mast.z[node] + mast.d[o] - mast.d[o + 2] * dx - mast.d[o + 4] * dy - z,
    length,
    ea,
    qx,
    qy,
    qz,
    state,
  );
  return state;
}

/** Torque of all guys about the axis where their heads have turned by psi, the exact catenaries asked anew. */
function guyTorque(mast: Mast, at: Float64Array, [cx, cy]: readonly [number, number], psi: number): number {
  let sum = 0;
  mast.guys.forEach((guy, g) => {
    const x = cx * at[2 * g] + cy * at[2 * g + 1];
    const y = -cy * at[2 * g] + cx * at[2 * g + 1];
    const rx = x * Math.cos(psi) - y * Math.sin(psi);
    const ry = x * Math.sin(psi) + y * Math.cos(psi);
    const state = moved(mast, guy, rx - x, ry - y);
    const o = guy.node * mast.perNode;
    sum += rx * state.fy - ry * state.fx + (mast.d[o + 2] * ry - mast.d[o + 4] * rx) * state.fz;
  });
  return sum;
}

for (const [name, along, aside] of [
  ["at the legs", 0.2, 0],
  ["on arms toward the anchors", 0.6, 0],
  ["on arms between the anchors", 0.4, 0.7],
] as const)
  for (const toward of [0, 90, 195])
    test(`Twist with guys ${name}, wind toward ${toward} degrees: the exact guys resist as their tangents say`, () => {
      const way = (toward * Math.PI) / 180;
      const load = blow({ toward: [Math.cos(way), Math.sin(way)] });
      const { mast, twist } = twisted(guyed, load, HEIGHT, { along, aside });
      const at = heads(mast, along, aside);
      const small = 1e-4;
      const stiffness =
        (guyTorque(mast, at, load.toward, -small) - guyTorque(mast, at, load.toward, small)) / (2 * small);
      const resting = Math.abs(guyTorque(mast, at, load.toward, 0));
      // a shaft from the foot to the guys with their spring on it, and a free end above
      const turn = (TORQUE + resting) / (GJ / GUYED + stiffness);
      const guys = mast.nodeAt(GUYED);
      checkValue({
        subject: `mast: twist at guys ${name}, wind toward ${toward} degrees`,
        source: "shaft with a spring at its end, T / (GJ/L + K), K by turning exact catenaries",
        tag: "arithmetic",
        expected: turn,
        computed: twist.turn[guys],
        tolerance: 1e-5,
        unit: "rad",
      });
      expect(twist.turn[mast.nodes - 1]).toBeCloseTo(turn + (TORQUE * (HEIGHT - GUYED)) / GJ, 6);
      expect(twist.baseTorque).toBeCloseTo((turn * GJ) / GUYED, 3);
    });

test("Twist adds to each guy the tension that turning its head does", () => {
  const load = blow();
  const { mast, twist } = twisted(guyed, load, HEIGHT, { along: 0.4, aside: 0.7 });
  const at = heads(mast, 0.4, 0.7);
  const node = mast.nodeAt(GUYED);
  mast.guys.forEach((guy, g) => {
    const psi = 1e-5;
    const state = moved(mast, guy, -psi * at[2 * g + 1], psi * at[2 * g]);
    const slope = Math.abs(state.tensionMast - guy.state.tensionMast) / psi;
    expect(twist.guyTension[g] / twist.turn[node] / slope).toBeCloseTo(1, 2);
  });
});

test("Twist of two antennas is that of the worse of alike and opposite senses, piece by piece of the mast", () => {
  const BESIDE = 10;
  const input = { ...guyed, pointWeights: [...guyed.pointWeights, { z: BESIDE, weight: 100, arm: 0 }] };
  const load = blow({ guyWind: [0], line: () => 0 });
  const alone = (z: number) => twisted(input, load, z, { along: 0.6 });
  const [above, beside] = [alone(HEIGHT), alone(BESIDE)];
  const { mast } = above;
  const both = new Twist(
    mast,
    Array.from({ length: mast.elements }, () => ({ stiffness: GJ, polar: 0 })),
    heads(mast, 0.6),
  );
  expect(mast.solve(load)).toBe(true);
  both.solve(load.toward, [
    { z: HEIGHT, torque: TORQUE },
    { z: BESIDE, torque: TORQUE },
  ]);
  let opposed = 0;
  for (let e = 0; e < mast.elements; e++) {
    const piece = ({ twist }: typeof above) => (GJ * (twist.turn[e + 1] - twist.turn[e])) / mast.length[e];
    const alike = Math.abs(piece(above) + piece(beside));
    const opposite = Math.abs(piece(above) - piece(beside));
    if (opposite > 1.2 * alike) opposed++;
    expect(both.torque[e]).toBeCloseTo(Math.max(alike, opposite), 6);
    expect(both.turn[e]).toBeCloseTo(above.twist.turn[e] + beside.twist.turn[e], 9);
  }
  // between the lower antenna and the arms what they hold of it turns against what comes from above
  expect(opposed).toBeGreaterThan(0);
});

test("Twist with two guys a direction on arms between the anchors is held ten times better than on single arms", () => {
  const single = twisted(guyed, blow(), HEIGHT, { along: 0.8 });
  const [level] = guyed.levels;
  const six = { ...level, anchors: [...level.anchors, ...level.anchors], ea: level.ea / 2, tension: 1500 };
  const mast = new Mast({ ...guyed, levels: [{ ...six, weight: level.weight / 2 }] });
  const load = blow({ guyWind: [1] });
  expect(mast.solve(load)).toBe(true);
  const at = heads(mast, 0.4, 0.7).map((r, i) => (i < 6 ? r : heads(mast, 0.4, -0.7)[i]));
  const sections = Array.from({ length: mast.elements }, () => ({ stiffness: GJ, polar: 0 }));
  const twist = new Twist(mast, sections, at);
  expect(twist.solve(load.toward, [{ z: HEIGHT, torque: TORQUE }])).toBe(true);
  const node = mast.nodeAt(GUYED);
  expect(single.twist.turn[node]).toBeLessThan((TORQUE * GUYED) / GJ);
  expect(twist.turn[node]).toBeLessThan(0.1 * single.twist.turn[node]);
});

test("Twist is softened by compression as N r2 says, and refused where nothing is left", () => {
  const tip = 5e4;
  const pressed: MastInput = {
    ...post,
    segments: [segment(0, HEIGHT, { ei: 5e9 })],
    pointWeights: [{ z: HEIGHT, weight: tip, arm: 0 }],
  };
  const polar = 0.1;
  const { mast, twist } = twisted(pressed, blow({ guyWind: [] }), HEIGHT, { polar });
  checkValue({
    subject: "mast: twist of a shaft whose legs carry a thrust",
    source: "Wagner: GJ - N r2 (Timoshenko and Gere, Theory of Elastic Stability, 5.2)",
    tag: "from memory",
    expected: (TORQUE * HEIGHT) / (GJ - tip * polar),
    computed: twist.turn[mast.nodes - 1],
    tolerance: 1e-6,
    unit: "rad",
  });
  expect(twisted(pressed, blow({ guyWind: [] }), HEIGHT, { polar: 1.01 * (GJ / tip) }).held).toBe(false);
});
