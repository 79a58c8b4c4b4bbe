import { describe, expect, it } from "vitest";
import { Forces, recoverForces } from "../../../src/physics/mast/recover.ts";
import { Mast } from "../../../src/physics/mast/solver.ts";
import { Twist } from "../../../src/physics/mast/twist.ts";
import type { GuyLevel, MastInput } from "../../../src/physics/mast/types.ts";
import { checkValue } from "../../support/check-values.ts";
import { chainPull } from "./support/chain.ts";
import { segment, wind } from "./support/masts.ts";

const RISE = 20;

interface Sized {
  readonly arm: number;
  readonly radius: number;
  readonly ea: number;
  readonly weight: number;
  readonly tension: number;
}

/** Three anchors, two guys each to the tips 60 degrees to either side. */
const level = ({ arm, radius, ea, weight, tension }: Sized): GuyLevel => ({
  z: RISE,
  anchors: [0, 1, 2].flatMap((i) => {
    const out = (2 * Math.PI * i) / 3;
    return [-1, 1].map((side) => {
      const to = out + (side * Math.PI) / 3;
      return {
        x: radius * Math.cos(out),
        y: radius * Math.sin(out),
        z: 0,
        anchor: i,
        head: { x: arm * Math.cos(to), y: arm * Math.sin(to) },
      };
    });
  }),
  ea,
  weight,
  tension,
});

const mastOn = (guys: GuyLevel): MastInput => ({
  segments: [segment(0, RISE, { ei: 8e5, ea: 8e7, ga: 5e6, weight: 120 })],
  base: "pinned",
  pointWeights: [{ z: RISE, weight: 500, arm: 0 }],
  levels: [guys],
});

/** A shaft so limp that the guys alone resist: turn, stiffness and what it does to the guys. */
function turned(sized: Sized, torque: number, load = wind({ line: () => 0, guyWind: [0], planar: false })) {
  const mast = new Mast(mastOn(level(sized)));
  expect(mast.solve(load) && mast.stable()).toBe(true);
  const twist = new Twist(
    mast,
    Array.from({ length: mast.elements }, () => ({ stiffness: 1e-3, polar: 0 })),
    Float64Array.from(mast.guys.flatMap(({ headX, headY }) => [headX, headY])),
  );
  expect(twist.solve(load.toward, [{ z: RISE, torque }])).toBe(true);
  const turn = twist.turn[mast.nodes - 1];
  const share = Math.max(
    ...mast.guys.map(({ state }, g) => twist.guyTension[g] / Math.hypot(state.fx, state.fy, state.fz)),
  );
  // wind turns the mast by itself: what the torque adds is known by doubling it
  twist.solve(load.toward, [{ z: RISE, torque: 2 * torque }]);
  return { mast, turn, stiffness: torque / (twist.turn[mast.nodes - 1] - turn), share };
}

/** Torque of all guys as chains of bars on a mast whose level is turned by so much, N m. */
function chainTorque(mast: Mast, turn: number): number {
  let torque = 0;
  const node = mast.nodes - 1;
  const [u, v, w] = [mast.d[node * 5 + 1], mast.d[node * 5 + 3], mast.d[node * 5]];
  const [theta, phi] = [mast.d[node * 5 + 2], mast.d[node * 5 + 4]];
  for (const guy of mast.guys) {
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    const x = cos * guy.hx - sin * guy.hy;
    const y = sin * guy.hx + cos * guy.hy;
    const pull = chainPull(
      { ea: guy.ea, length: guy.length * guy.stretch, load: [guy.qx, guy.qy, guy.qz] },
      [guy.ax + guy.hx, guy.ay + guy.hy, guy.z],
      [u + x, v + y, RISE + w - theta * x - phi * y],
    );
    // about the axis of the mast, which leans
    torque += x * pull[1] - y * pull[0] + (theta * y - phi * x) * pull[2];
  }
  return torque;
}

const usual: Sized = { arm: 0.7, radius: 14, ea: 2.2e6, weight: 1.07, tension: 1770 };

describe("six guys on torque arms", () => {
  it("Twist(light straight guys) is the closed form of pull and stretch", () => {
    const light = { ...usual, weight: 1e-3 };
    const { arm, radius, ea, tension } = light;
    const [toward, aside] = [arm / 2, (Math.sqrt(3) / 2) * arm];
    const chord = Math.hypot(radius - toward, aside, RISE);
    checkValue({
      subject: "torque arms: stiffness of six straight guys against twist",
      source: "statics: 6 R ((EA - T) b2 R/c3 + T r/c), derived in docs/theory/mast.md",
      tag: "arithmetic",
      expected:
        6 * radius * (((ea - tension) * aside ** 2 * radius) / chord ** 3 + (tension * toward) / chord),
      computed: turned(light, 100).stiffness,
      tolerance: 1e-3,
      unit: "N m/rad",
    });
  });

  it.each([
    { name: "still air", load: wind({ line: () => 0, guyWind: [0], planar: false }) },
    {
      name: "wind across a guy",
      load: { ...wind({ line: () => 60, guyWind: [4], planar: false }), toward: [0, 1] as const },
    },
  ])("Twist(a small turn, $name) is the net of bars, turned", ({ name, load }) => {
    const { mast, stiffness } = turned(usual, 40, load);
    const small = 1e-4;
    const exact = -(chainTorque(mast, small) - chainTorque(mast, -small)) / (2 * small);
    checkValue({
      subject: `torque arms: stiffness of six guys against twist, ${name}`,
      source: "the same net as chains of 24 bars, by a plain Newton of the tests' own",
      tag: "side by side",
      expected: exact,
      computed: stiffness,
      tolerance: 5e-3,
      unit: "N m/rad",
    });
  });

  it("Twist(0.3 of a guy's pull) stays beside the net of bars by 2 %, in still air and in wind", () => {
    const cases: Sized[] = [
      usual,
      { ...usual, arm: 0.4 },
      { ...usual, tension: 2600 },
      { ...usual, radius: 9 },
      { ...usual, arm: 1, ea: 6.2e6, weight: 3, tension: 4000 },
    ];
    let least = 1;
    let most = 1;
    for (const line of [0, 80])
      for (const azimuth of [0, 180, 195])
        for (const sized of cases) {
          const way = (azimuth * Math.PI) / 180;
          const load = {
            ...wind({ line: () => line, guyWind: [line / 15], planar: false }),
            toward: [Math.cos(way), Math.sin(way)] as const,
          };
          const rest = turned(sized, 1e-3, load);
          const one = turned(sized, 1, load);
          const torque = (0.3 - rest.share) / (one.share - rest.share);
          const turn = torque / one.stiffness;
          for (const sense of [1, -1]) {
            const exact = chainTorque(one.mast, sense * turn) - chainTorque(one.mast, 0);
            const ratio = (-sense * exact) / torque;
            least = Math.min(least, ratio);
            most = Math.max(most, ratio);
          }
        }
    for (const [name, ratio] of [
      ["least", least],
      ["most", most],
    ] as const)
      checkValue({
        subject: `torque arms: torque of the turned net over that of its tangent, ${name} of 30 nets and winds`,
        source: "the same net as chains of 24 bars, turned until twist takes 0.3 of a guy's pull",
        tag: "side by side",
        expected: 1,
        computed: ratio,
        tolerance: 0.02,
        unit: "",
      });
    // the nets are told apart from their tangents
    expect(most - least).toBeGreaterThan(0.005);
  });

  it("recoverForces(unlike guys) bends the mast by their pulls at the tips", () => {
    const input: MastInput = {
      ...mastOn(level(usual)),
      segments: [segment(0, RISE + 4, { ei: 8e5, ea: 8e7, ga: 5e6, weight: 120 })],
      pointWeights: [{ z: RISE + 4, weight: 500, arm: 0 }],
    };
    const load = wind({ line: () => 60, guyWind: [4], planar: true });
    const mast = new Mast(input);
    expect(mast.solve(load) && mast.stable()).toBe(true);
    const forces = new Forces(mast.elements);
    recoverForces(mast, forces);
    const node = mast.nodeAt(RISE);
    const theta = mast.d[node * mast.perNode + 2];
    const couple = mast.guys.reduce((sum, { hx, state }) => sum + hx * (state.fz + state.fx * theta), 0);
    expect(Math.abs(couple)).toBeGreaterThan(200);
    checkValue({
      subject: "torque arms: step of the moment at their level",
      source: "statics: sum of pull x distance of the tip from the axis",
      tag: "arithmetic",
      expected: couple,
      computed: forces.along[3 * node] - forces.along[3 * (node - 1) + 2],
      tolerance: 1e-6,
      unit: "N m",
    });
  });
});
