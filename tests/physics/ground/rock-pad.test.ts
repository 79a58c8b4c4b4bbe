import fc from "fast-check";
import { expect, test } from "vitest";
import {
  dowelPlaces,
  dowelStrength,
  type RockPadGeometry,
  rockPadAnswers,
} from "../../../src/physics/ground/rock-pad.ts";

const rules = { concreteUnitWeight: 23_500, upliftAngle: 30 };
const rock = { bearing: 2e5, lateralPerDepth: 6e4, unitWeight: 22e3, friction: 0.35, groutBond: 7e5 };
/** 1 m square, half a metre thick, four dowels of 3/4 in. and 60 ksi in sockets of a metre. */
const small: RockPadGeometry = {
  width: 1,
  depth: 0.5,
  dowels: 4,
  socket: 1,
  bar: 0.019,
  yield: 413.7e6,
  hole: 0.038,
  edge: 0.15,
};
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const pad: fc.Arbitrary<RockPadGeometry> = fc
  .record({
    width: size(0.6, 2),
    depth: size(0.3, 0.8),
    dowels: fc.constantFrom(4, 8, 12),
    socket: size(0.5, 1.5),
  })
  .map((sizes) => ({ ...small, ...sizes }));
const load = fc.record({
  compression: size(0, 5e4),
  shear: size(0, 5e3),
  moment: size(0, 6e4),
});

test("dowelPlaces stand in a square ring: as many on each side, their middle in the middle", () => {
  fc.assert(
    fc.property(pad, (one) => {
      const places = dowelPlaces(one);
      const half = one.width / 2 - one.edge;
      expect(places).toHaveLength(one.dowels);
      expect(new Set(places.map(([x, y]) => `${x.toFixed(6)} ${y.toFixed(6)}`)).size).toBe(one.dowels);
      for (const [x, y] of places) expect(Math.max(Math.abs(x), Math.abs(y))).toBeCloseTo(half, 9);
      expect(places.reduce((sum, [x, y]) => sum + x + 2 * y, 0)).toBeCloseTo(0, 9);
    }),
    { seed: 98 },
  );
});

// by hand: 1 m square, 0.5 m thick, four dowels 0.35 m off the middle: own weight 11 750 N; 8 250 N of mast make
// 20 000; 20 000 N m about the strip's middle at 0.375: 20 000 - 7 500 = 12 500 over two dowels at 0.725 and two at
// 0.025: (2 x 0.725^2 + 2 x 0.025^2)/0.725 = 1.45172, 8 610 N. In the corner: pivot 0.35355, dowels at 0.84853,
// 0.35355 twice: (0.72 + 0.25)/0.84853 = 1.14316; 20 000 - 7 071 = 12 929, 11 310 N; on the rock 20 000 + 11 310 x
// (0.84853 + 0.70711)/0.84853 = 40 735 N over a quarter of a square metre
test("rockPadAnswers(a moment) shares it among dowels as by hand, square to a face and into a corner", () => {
  const answer = rockPadAnswers(small, rock, rules)({ compression: 8250, shear: 0, moment: 20_000 });
  expect(answer.pull / 11_310).toBeCloseTo(1, 3);
  expect(answer.bearing.demand / (4 * 40_735)).toBeCloseTo(1, 3);
  expect(answer.pressed / 40_735).toBeCloseTo(1, 3);
});

// a dowel of 3/4 in. and 60 ksi, hole 1 1/2 in., socket 1 m: pi/4 x 0.019^2 x 413.7e6 = 117.3 kN; pi x 0.038 x 7e5 =
// 83.57 kN; cone of 30 degrees: pi/3 x tan2 30 x 22 kN = 7.679 kN, alone in its corner of a wide pad
test("dowelStrength is steel, bond and cone by hand; close dowels share their rock", () => {
  const one = { ...small, width: 4 };
  const { steel, bond, cone } = dowelStrength(one, rock, rules);
  expect(steel / 117_300).toBeCloseTo(1, 3);
  expect(bond / 83_570).toBeCloseTo(1, 3);
  expect(cone / 7679).toBeCloseTo(1, 3);
  // 0.1 m apart: (0.349 + 2 x 0.1 x 0.577 + 0.01) / 4 of a cubic metre each
  expect(dowelStrength({ ...one, width: 0.4 }, rock, rules).cone / (22e3 * 0.1186)).toBeCloseTo(1, 2);
  expect(dowelStrength(one, { ...rock, groutBond: undefined }, rules).bond).toBe(0);
  expect(() => dowelStrength({ ...one, hole: 0.01 }, rock, rules)).toThrow(/a hole wider than the bar/);
  // six holes of 38 mm have no room in a row of 200 mm
  expect(() => dowelStrength({ ...one, width: 0.5, dowels: 24 }, rock, rules)).toThrow(
    /24 dowels, .*do not meet/,
  );
});

test("more moment never asks less of a rock pad, a longer socket never holds less, thrust alone pulls nothing", () => {
  fc.assert(
    fc.property(pad, load, size(1, 2), (one, loads, more) => {
      const answers = rockPadAnswers(one, rock, rules);
      const [once, twice] = [answers(loads), answers({ ...loads, moment: more * loads.moment })];
      expect(twice.pull).toBeGreaterThanOrEqual(once.pull);
      expect(twice.bearing.demand).toBeGreaterThanOrEqual(once.bearing.demand * (1 - 1e-12));
      expect(twice.overturning.capacity).toBe(once.overturning.capacity);
      const long = rockPadAnswers({ ...one, socket: more * one.socket }, rock, rules)(loads);
      expect(long.overturning.capacity).toBeGreaterThanOrEqual(once.overturning.capacity * (1 - 1e-12));
      expect(answers({ ...loads, shear: 0, moment: 0 }).pull).toBe(0);
      // as much as the dowels let it hold, and no more, is when the weakest is full
      const { steel, bond, cone } = dowelStrength(one, rock, rules);
      const held = once.overturning.capacity - loads.shear * one.depth;
      if (held > 0)
        expect(answers({ ...loads, moment: held }).pull).toBeCloseTo(Math.min(steel, bond, cone), 3);
    }),
    { seed: 99 },
  );
});

test("a rock pad that is pulled up hangs on all its dowels", () => {
  const one = { ...small, dowels: 8 };
  const { pull, bearing } = rockPadAnswers(one, rock, rules)({ compression: -27_750, shear: 0, moment: 0 });
  expect(pull).toBeCloseTo(16_000 / 8, 6);
  expect(bearing.demand).toBe(0);
});
