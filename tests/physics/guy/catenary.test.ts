import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type CatenaryState,
  catenaryState,
  riggedLength,
  solveCatenary,
} from "../../../src/physics/guy/catenary.ts";
import { checkValue } from "../../support/check-values.ts";
import { FOOT, POUND } from "../../support/us-units.ts";

const IRVINE = "Irvine, Cable Structures, 1981, chapter 1; quarter-inch strand of ASTM A475, EA 809 274 lb";
const check = (
  what: string,
  expected: number,
  computed: number,
  tolerance: number,
  unit: string,
  source = IRVINE,
  absolute = false,
) =>
  checkValue({
    absolute,
    subject: `guys: ${what}`,
    source,
    tag: "arithmetic",
    expected,
    computed,
    tolerance,
    unit,
  });

/** The values are given to three decimals. */
const PRINTED = 6e-4;

// anchor at the origin, mast at 80 ft out and 60 ft up, 665 lb at the anchor
const EA = 809_274.27 * POUND;
const W = (0.121 * POUND) / FOOT;
const SPAN = 80 * FOOT;
const RISE = 60 * FOOT;
const rigged = riggedLength(SPAN, RISE, 665 * POUND, EA, W);

function guy(
  dx: number,
  dy: number,
  dz: number,
  length: number,
  q: readonly [number, number, number],
): CatenaryState {
  const state = catenaryState();
  solveCatenary(dx, dy, dz, length, EA, q[0], q[1], q[2], state);
  if (!state.converged) throw new Error(`no equilibrium at ${dx}, ${dy}, ${dz} m with ${length} m`);
  return state;
}

test("riggedLength, solveCatenary: the guy of quarter-inch strand rigged to 10 %", () => {
  check("unstressed length", 99.9183203, rigged / FOOT, 1e-9, "ft");
  const state = guy(SPAN, 0, RISE, rigged, [0, 0, -W]);
  check("horizontal force", 534.88237, state.h / POUND, 1e-7, "lb");
  check("vertical force at the anchor", 395.12764, state.sigma / POUND, 1e-7, "lb");
  check("vertical force at the mast", 407.21776, -state.fz / POUND, 1e-7, "lb");
  check("tension at the anchor", 665, state.tensionAnchor / POUND, 1e-8, "lb");
  check("tension at the mast", 672.25401, state.tensionMast / POUND, 1e-8, "lb");
});

for (const [inches, expected] of [
  [0.5, 931.552],
  [1, 1200.175],
  [2, 1739.297],
  [-1, 196.709],
  [-2, 76.084],
] as const)
  test(`solveCatenary: the mast moves ${inches} in away from the anchor`, () => {
    const state = guy(SPAN + (inches / 12) * FOOT, 0, RISE, rigged, [0, 0, -W]);
    check(
      `tension at the anchor, mast ${inches} in further out`,
      expected,
      state.tensionAnchor / POUND,
      PRINTED,
      "lb",
      IRVINE,
      true,
    );
  });

for (const [degrees, fixed, warm] of [
  [-60, 977.211, 864.377],
  [-30, 820.55, 764.391],
  [30, 511.917, 566.595],
  [60, 365.394, 469.958],
] as const)
  test(`solveCatenary: ${degrees} degrees F stretch or shrink the unstressed length`, () => {
    const stretch = 1 + 6.5e-6 * degrees;
    const tension = (rise: number) => guy(SPAN, 0, rise, rigged * stretch, [0, 0, -W]).tensionAnchor / POUND;
    // five digits: the sixth of these values follows no rule of ours; pieces added up below speak for the solver
    check(`tension at the anchor, ${degrees} F, mast point fixed`, fixed, tension(RISE), 1e-5, "lb");
    check(
      `tension at the anchor, ${degrees} F, mast as warm as the guy`,
      warm,
      tension(RISE * stretch),
      1e-5,
      "lb",
    );
  });

test("solveCatenary: a guy at 45 degrees loses 82 lb in 30 degrees F, as an amateur published", () => {
  // quarter-inch strand at 665 lb at 60 F, mast as warm as the guy. The page states no modulus: practice is 23 000
  // to 24 000 ksi, and its figures fit the upper end
  const stiff = (EA * 24) / 23;
  const span = 50 * FOOT;
  const length = riggedLength(span, span, 665 * POUND, stiff, W);
  const stretch = 1 + 6.5e-6 * 30;
  const state = catenaryState();
  solveCatenary(span, 0, span * stretch, length * stretch, stiff, 0, 0, -W, state);
  checkValue({
    subject: "guys: tension lost in 30 F at 45 degrees, mast as warm as the guy",
    source:
      "table of guy tension by temperature for quarter-inch strand, an amateur mailing list, December 1996",
    tag: "published",
    expected: 82,
    computed: 665 - state.tensionAnchor / POUND,
    tolerance: 0.02,
    unit: "lb",
  });
});

test("solveCatenary: the level cable of 200 ft span and 25 ft sag", () => {
  // inextensible: EA so high that it does not count
  const length = 208.1037 * FOOT;
  const state = catenaryState();
  const q = (10 * POUND) / FOOT;
  solveCatenary(200 * FOOT, 0, 0, length, 1e14, 0, 0, -q, state);
  const source = "inextensible catenary, a = 204.0357 ft";
  check("horizontal force of a level cable, H = w a", 2040.36, state.h / POUND, 1e-5, "lb", source);
  check("tension at its ends", 2290.36, state.tensionMast / POUND, 1e-5, "lb", source);
});

test("solveCatenary: hanging lines are those of a mooring library's own tests", () => {
  // span, rise, unstressed length, m; EA, N; weight, N/m (the last one floats). Level and vertical pull at the lower end, N
  const lines = [
    [400, 200, 500, 7.51e12, 200, 43694.580989249596, -22365.599350216216],
    [89.9, 59.2, 130, 7.51e8, 881.05, 31373.229006023103, -26650.341270116318],
    [
      37.96888656874307, 20.49078283711694, 100, 7.51e8, -881.0549577007893, 6428.437434537766,
      53178.729367882406,
    ],
  ] as const;
  for (const [span, rise, length, ea, weight, level, vertical] of lines) {
    const state = catenaryState();
    solveCatenary(span, 0, rise, length, ea, 0, 0, -weight, state);
    expect(state.converged).toBe(true);
    for (const [what, expected, computed] of [
      ["level", level, state.ax],
      ["vertical", vertical, state.az],
    ] as const)
      checkValue({
        subject: `guys: ${what} pull of a line of ${length} m hung over ${span.toFixed(1)} m`,
        source: "MoorPy (open source, NREL), tests/test_catenary.py: expected forces of catenary()",
        tag: "published",
        expected,
        computed,
        // its own iteration ends at a millionth
        tolerance: 1e-6,
        unit: "N",
      });
  }
});

/** Positions along a guy by Simpson's rule from its anchor forces: no closed form in it. */
function hung(state: CatenaryState, length: number, ea: number, q: readonly [number, number, number]) {
  const n = 20_000;
  const sum = [0, 0, 0];
  for (let i = 0; i <= n; i++) {
    const s = (length * i) / n;
    // the guy pulls its anchor with a; its own tension at s is a less the load that hangs below
    const t = [state.ax - q[0] * s, state.ay - q[1] * s, state.az - q[2] * s];
    const tension = Math.hypot(t[0], t[1], t[2]);
    const weight = (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * (length / n / 3);
    for (let c = 0; c < 3; c++) sum[c] += weight * t[c] * (1 / tension + 1 / ea);
  }
  return sum;
}

const drawn = fc.record({
  span: fc.double({ min: 3, max: 60, noNaN: true }),
  rise: fc.double({ min: -5, max: 60, noNaN: true }),
  bearing: fc.double({ min: 0, max: 6.28, noNaN: true }),
  // unstressed length by the chord: taut to very slack
  ratio: fc.oneof(
    fc.double({ min: 0.996, max: 1.002, noNaN: true }),
    fc.double({ min: 1.002, max: 1.6, noNaN: true }),
  ),
  ea: fc.double({ min: 3e5, max: 1e7, noNaN: true }),
  weight: fc.double({ min: 0.3, max: 12, noNaN: true }),
  wind: fc.double({ min: 0, max: 40, noNaN: true }),
  toward: fc.double({ min: 0, max: 6.28, noNaN: true }),
});
type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

const placed = (d: Drawn) => {
  const to: [number, number, number] = [d.span * Math.cos(d.bearing), d.span * Math.sin(d.bearing), d.rise];
  const length = d.ratio * Math.hypot(...to);
  const q: [number, number, number] = [d.wind * Math.cos(d.toward), d.wind * Math.sin(d.toward), -d.weight];
  return { to, length, q };
};

test("solveCatenary: added up piece by piece from its anchor force, a guy ends at the mast", () => {
  const tried = new Set<string>();
  let slack = 0;
  fc.assert(
    fc.property(drawn, (d) => {
      tried.add(JSON.stringify(d));
      const { to, length, q } = placed(d);
      const state = catenaryState();
      solveCatenary(to[0], to[1], to[2], length, d.ea, q[0], q[1], q[2], state);
      expect(state.converged).toBe(true);
      if (d.ratio > 1.002) slack++;
      const end = hung(state, length, d.ea, q);
      for (let c = 0; c < 3; c++) expect(Math.abs(end[c] - to[c]) / length).toBeLessThan(1e-6);
      expect(state.tensionAnchor / Math.hypot(state.ax, state.ay, state.az)).toBeCloseTo(1, 10);
      expect(state.tensionMast / Math.hypot(state.fx, state.fy, state.fz)).toBeCloseTo(1, 10);
    }),
    { numRuns: 150, seed: 31 },
  );
  expect(tried.size).toBeGreaterThan(140);
  expect(slack).toBeGreaterThan(40);
});

test("solveCatenary: forces at both ends carry the load between them", () => {
  fc.assert(
    fc.property(drawn, (d) => {
      const { to, length, q } = placed(d);
      const s = catenaryState();
      solveCatenary(to[0], to[1], to[2], length, d.ea, q[0], q[1], q[2], s);
      const size = Math.hypot(...q) * length + s.tensionMast;
      expect(Math.abs(s.ax + s.fx - q[0] * length) / size).toBeLessThan(1e-12);
      expect(Math.abs(s.ay + s.fy - q[1] * length) / size).toBeLessThan(1e-12);
      expect(Math.abs(s.az + s.fz - q[2] * length) / size).toBeLessThan(1e-12);
    }),
    { numRuns: 300, seed: 32 },
  );
});

test("solveCatenary: its stiffness is the derivative of its force", () => {
  const tried = new Set<string>();
  fc.assert(
    fc.property(drawn, (d) => {
      tried.add(JSON.stringify(d));
      const { to, length, q } = placed(d);
      const at = (x: number, y: number, z: number) => {
        const s = catenaryState();
        solveCatenary(x, y, z, length, d.ea, q[0], q[1], q[2], s);
        return s;
      };
      const { k } = at(...to);
      const h = 1e-6 * length;
      const rows = [
        [k[0], k[1], k[2]],
        [k[1], k[3], k[4]],
        [k[2], k[4], k[5]],
      ];
      const size = Math.max(...k.map(Math.abs));
      for (let c = 0; c < 3; c++) {
        const step = [0, 1, 2].map((i) => (i === c ? h : 0));
        const up = at(to[0] + step[0], to[1] + step[1], to[2] + step[2]);
        const down = at(to[0] - step[0], to[1] - step[1], to[2] - step[2]);
        // the guy resists: its force on the mast falls as the mast moves along
        const slope = [up.fx - down.fx, up.fy - down.fy, up.fz - down.fz].map((f) => -f / (2 * h));
        for (let r = 0; r < 3; r++) expect(Math.abs(slope[r] - rows[r][c]) / size).toBeLessThan(2e-3);
      }
    }),
    { numRuns: 200, seed: 33 },
  );
  expect(tried.size).toBeGreaterThan(190);
});

test("solveCatenary: turning guy and load together turns the forces; no other start changes them", () => {
  fc.assert(
    fc.property(
      drawn,
      fc.double({ min: 0, max: 6, noNaN: true }),
      fc.double({ min: -2, max: 2, noNaN: true }),
      (d, turn, other) => {
        const { to, length, q } = placed(d);
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        const one = catenaryState();
        solveCatenary(to[0], to[1], to[2], length, d.ea, q[0], q[1], q[2], one);
        // about the x axis: the load is no longer vertical
        const two = catenaryState();
        two.h = 10 ** (2 + other);
        two.sigma = 300 * other;
        solveCatenary(
          to[0],
          c * to[1] - s * to[2],
          s * to[1] + c * to[2],
          length,
          d.ea,
          q[0],
          c * q[1] - s * q[2],
          s * q[1] + c * q[2],
          two,
        );
        expect(two.converged).toBe(true);
        const size = one.tensionMast;
        expect(Math.abs(two.fx - one.fx) / size).toBeLessThan(1e-6);
        expect(Math.abs(two.fy - (c * one.fy - s * one.fz)) / size).toBeLessThan(1e-6);
        expect(Math.abs(two.fz - (s * one.fy + c * one.fz)) / size).toBeLessThan(1e-6);
      },
    ),
    { numRuns: 300, seed: 34 },
  );
});

test("riggedLength: every guy of two decades of span, tension and stiffness is rigged to its tension", () => {
  let tried = 0;
  for (const span of [1.5, 3, 6, 10, 20, 40, 80])
    for (const rise of [-5, 0, 1, 3, 10, 30, 60, 100])
      for (const tension of [200, 500, 1500, 4000, 1e4, 5e4])
        for (const weight of [0.1, 0.5, 1.8, 5, 12])
          for (const ea of [2e5, 1e6, 4e6, 2e7]) {
            if (weight * Math.hypot(span, rise) > 0.5 * tension) continue;
            tried++;
            const length = riggedLength(span, rise, tension, ea, weight);
            const state = catenaryState();
            solveCatenary(span, 0, rise, length, ea, 0, 0, -weight, state);
            expect(state.converged).toBe(true);
            expect(state.tensionAnchor / tension).toBeCloseTo(1, 7);
          }
  expect(tried).toBeGreaterThan(6000);
});

test("riggedLength(a tension below what the guy's own weight needs) is refused with the numbers", () => {
  expect(() => riggedLength(30, 20, 5, 1e6, 1.8)).toThrow(/no guy of span 30 m and rise 20 m has 5 N/);
});
