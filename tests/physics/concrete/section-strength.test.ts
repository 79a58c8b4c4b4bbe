import fc from "fast-check";
import { expect, test } from "vitest";
import { PSI } from "../../../src/physics/concrete/bars.ts";
import { rectangleMoment, roundMoment, roundShear } from "../../../src/physics/concrete/section-strength.ts";

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** The same strains and stress block, summed over a thousand strips of the circle: an arithmetic of its own. */
function byStrips(diameter: number, ring: number, count: number, barArea: number, fc_: number, fy: number) {
  const turned = (start: number) => {
    const state = (c: number) => {
      let force = 0;
      let moment = 0;
      const strips = 4000;
      for (let i = 0; i < strips; i++) {
        const from = ((i + 0.5) / strips) * diameter;
        if (from > 0.85 * c) break;
        const y = diameter / 2 - from;
        const strip = 2 * Math.sqrt(diameter ** 2 / 4 - y ** 2) * (diameter / strips) * 0.85 * fc_;
        force += strip;
        moment += strip * y;
      }
      let tension = 0;
      for (let i = 0; i < count; i++) {
        const y = ring * Math.cos(start + (2 * Math.PI * i) / count);
        const from = diameter / 2 - y;
        const strain = 0.003 * (1 - from / c);
        tension = Math.max(tension, -strain);
        const stress = Math.max(-fy, Math.min(fy, 200e9 * strain)) - (from < 0.85 * c ? 0.85 * fc_ : 0);
        force += barArea * stress;
        moment += barArea * stress * y;
      }
      return { force, moment, tension };
    };
    let [low, high] = [1e-4 * diameter, diameter];
    for (let i = 0; i < 50; i++) {
      const c = (low + high) / 2;
      if (state(c).force < 0) low = c;
      else high = c;
    }
    const { moment, tension } = state(high);
    const factor = Math.min(0.9, Math.max(0.65, 0.65 + (0.25 * (tension - fy / 200e9)) / 0.003));
    return factor * moment;
  };
  return Math.min(turned(0), turned(Math.PI / count));
}

test("roundMoment(pier) agrees with the same circle summed in strips", () => {
  fc.assert(
    fc.property(size(0.4, 1.2), fc.integer({ min: 6, max: 14 }), size(1.2e-4, 5e-4), (d, count, area) => {
      const ring = d / 2 - 0.095;
      const exact = roundMoment(d, ring, count, area, 20.7e6, 413.7e6);
      expect(exact / byStrips(d, ring, count, area, 20.7e6, 413.7e6)).toBeCloseTo(1, 2);
    }),
    { numRuns: 25, seed: 7 },
  );
});

test("rectangleMoment of lightly barred concrete is 0.9 As fy (d - a/2), a little more where the far row helps", () => {
  const [side, row, area] = [0.5, 0.16, 4e-4];
  const a = (2 * area * 413.7e6) / (0.85 * 20.7e6 * side);
  const textbook = 0.9 * 2 * area * 413.7e6 * (side / 2 + row - a / 2);
  const exact = rectangleMoment({ depth: side, breadth: side }, row, 2, area, 20.7e6, 413.7e6);
  expect(exact).toBeGreaterThan(0.97 * textbook);
  expect(exact).toBeLessThan(1.15 * textbook);
});

test("roundMoment grows with the bars and with the diameter", () => {
  fc.assert(
    fc.property(size(0.4, 1.2), fc.integer({ min: 6, max: 12 }), size(1e-4, 3e-4), (d, count, area) => {
      const moment = (diameter: number, barArea: number) =>
        roundMoment(diameter, diameter / 2 - 0.095, count, barArea, 20.7e6, 413.7e6);
      expect(moment(d, 1.1 * area)).toBeGreaterThan(moment(d, area));
      expect(moment(1.1 * d, area)).toBeGreaterThan(moment(d, area));
    }),
    { numRuns: 60, seed: 8 },
  );
});

test("roundShear follows ACI 318-19 22.5 by hand, and counts no ties further apart than half of its depth", () => {
  const inch = 0.0254;
  const pier = (spacing: number) =>
    roundShear(24 * inch, 2.48 * inch ** 2, 0.22 * inch ** 2, spacing * inch, 3000 * PSI, 60_000 * PSI) /
    4.4482216152605;
  // depth 19.2 in., rho 1.24/460.8, size effect sqrt(2/2.92): 8 x 0.8276 x 0.13909 x sqrt 3000 x 460.8 x 0.75
  expect(pier(10) / 17_432).toBeCloseTo(1, 3);
  // Av over 50 x 24 x 9/60 000: 2 sqrt 3000 x 460.8 and 0.22 x 60 000 x 19.2/9
  expect(pier(9) / (0.75 * (50_478 + 28_160))).toBeCloseTo(1, 4);
});
