import { expect, test } from "vitest";
import { Mast } from "../../../src/physics/mast/solver.ts";
import type { MastInput } from "../../../src/physics/mast/types.ts";
import { flexibleGustFactor, rigidGustFactor } from "../../../src/physics/wind/asce7-gust.ts";
import { checkValue } from "../../support/check-values.ts";

const HEIGHT = 15;
const EI = 9e5;
const MASS = 12;
const G = 9.80665;

const post = (points: MastInput["pointWeights"], perSpan: number): Mast => {
  const mast = new Mast({
    segments: [{ from: 0, to: HEIGHT, ei: EI, ea: 1e9, ga: Number.POSITIVE_INFINITY, weight: MASS * G }],
    base: "fixed",
    pointWeights: points,
    levels: [],
    elementsPerSpan: perSpan,
  });
  mast.solve({ toward: [1, 0], line: () => 0, points: [], guyWind: [], planar: true });
  return mast;
};

test("swayFrequency of a heavy cantilever is 3.516 / 2 pi sqrt(EI / m L4), less what its weight takes", () => {
  const expected = (3.51602 / (2 * Math.PI)) * Math.sqrt(EI / (MASS * HEIGHT ** 4));
  // the weight of the mast presses on itself: 1 - q L3 / 7.837 EI of the stiffness is left, nearly (Southwell)
  const left = Math.sqrt(1 - (MASS * G * HEIGHT ** 3) / (7.8373 * EI));
  checkValue({
    subject: "mast: sway frequency of a cantilever under its own weight",
    source: "Blevins 1979, table 8-1 (3.51602), with Southwell's estimate of what compression takes",
    tag: "from memory",
    expected: expected * left,
    computed: post([], 12).swayFrequency(),
    tolerance: 0.003,
    unit: "Hz",
  });
});

test("swayFrequency with a mass on top that dwarfs the mast is sqrt(3 EI / L3 m) / 2 pi, less what it presses", () => {
  const tip = 400;
  const stiffness = (3 * EI) / HEIGHT ** 3;
  // 33/140 of the mast's own mass sways with the tip; P / Pe is taken by the compression
  const moving = tip + (33 / 140) * MASS * HEIGHT;
  const critical = (Math.PI ** 2 * EI) / (4 * HEIGHT ** 2);
  const pressing = 1 - (tip * G) / critical - (MASS * G * HEIGHT ** 3) / (7.8373 * EI);
  checkValue({
    subject: "mast: sway frequency of a light cantilever under a heavy top",
    source: "Rayleigh's quotient, 33/140 of the beam's mass (Timoshenko, Vibration Problems in Engineering)",
    tag: "from memory",
    expected: Math.sqrt((stiffness * pressing) / moving) / (2 * Math.PI),
    computed: post([{ z: HEIGHT, weight: tip * G, arm: 0 }], 12).swayFrequency(),
    tolerance: 0.01,
    unit: "Hz",
  });
});

test("swayFrequency under ice is that of a mast with the ice's mass on it, on its top, its pipe and its guys", () => {
  const bare = { toward: [1, 0], line: () => 0, points: [], guyWind: [], planar: true } as const;
  const ice = { z: HEIGHT, weight: 400 * G, arm: 1.5 };
  const iced = post([{ z: HEIGHT, weight: 50 * G, arm: 1 }], 12);
  iced.solve({ ...bare, addedPoints: [ice] });
  const heavy = post([{ z: HEIGHT, weight: 50 * G, arm: 1 }, ice], 12);
  // heights are as erected: the ice presses the one down by 0.4 mm, the other was levelled under it
  expect(iced.swayFrequency() / heavy.swayFrequency()).toBeCloseTo(1, 6);
  expect(iced.swayFrequencies(2)[1] / heavy.swayFrequencies(2)[1]).toBeCloseTo(1, 6);
  const found = heavy.swayFrequency();
  expect(iced.swaysFasterThan(0.999 * found)).toBe(true);
  expect(iced.swaysFasterThan(1.001 * found)).toBe(false);

  // springs that ice hardly slackens: three taut guys on a post on a pin
  const guyed = (added: number, extra: number): number => {
    const anchors = [0, 1, 2].map((i) => ({
      x: 10 * Math.cos((2 * Math.PI * i) / 3),
      y: 10 * Math.sin((2 * Math.PI * i) / 3),
      z: 0,
    }));
    const mast = new Mast({
      segments: [{ from: 0, to: HEIGHT, ei: EI, ea: 1e9, ga: Number.POSITIVE_INFINITY, weight: G }],
      base: "pinned",
      pointWeights: [{ z: HEIGHT, weight: 5 * G + extra, arm: 0 }],
      levels: [{ z: HEIGHT, anchors, ea: 2e5, weight: 0.5, tension: 2000 }],
    });
    mast.solve({ ...bare, guyAdded: [added] });
    return mast.swayFrequency();
  };
  const length = Math.hypot(10, HEIGHT);
  expect(guyed(2, 0) / guyed(0, (3 * 2 * length) / 3)).toBeCloseTo(1, 2);
  expect(guyed(2, 0) / guyed(0, 0)).toBeLessThan(0.9);
});

test("swayFrequency settles with the mesh of the verdict to 0.1 %", () => {
  const weights = [{ z: HEIGHT, weight: 500, arm: 1 }];
  expect(post(weights, 3).swayFrequency() / post(weights, 24).swayFrequency()).toBeCloseTo(1, 3);
});

test("flexibleGustFactor grows as the mast sways slower, and is above the rigid one", () => {
  const slow = [0.9, 0.6, 0.3].map((n) => flexibleGustFactor("7-16", "C", 50, 30, 0.5, n));
  expect(slow[0]).toBeGreaterThan(rigidGustFactor("C", 30, 0.5));
  expect(slow[1]).toBeGreaterThan(slow[0]);
  expect(slow[2]).toBeGreaterThan(slow[1]);
});

test("flexibleGustFactor of each edition is section 26.11.5 with its own hourly speeds, by a script of its own", () => {
  // 110 mph, 100 ft high, 2 ft wide, 0.5 Hz
  const expected = { "7-16": [1.4783, 1.4799, 1.4459], "7-22": [1.4961, 1.4896, 1.4374] };
  for (const edition of ["7-16", "7-22"] as const)
    (["B", "C", "D"] as const).forEach((exposure, i) => {
      const found = flexibleGustFactor(edition, exposure, 110 * 0.44704, 30.48, 0.6096, 0.5);
      expect(found, `${edition} ${exposure}`).toBeCloseTo(expected[edition][i], 4);
    });
});
