import { expect, test } from "vitest";
import { padBars } from "../../../src/parts/footings/pad-bars.ts";
import {
  bars,
  developed,
  developmentLength,
  fewestBars,
  hookLength,
  PSI,
} from "../../../src/physics/concrete/bars.ts";
import { squareCage } from "../../../src/physics/concrete/cage.ts";
import { rectangleMoment } from "../../../src/physics/concrete/section-strength.ts";
import { slabStrength } from "../../../src/physics/concrete/slab.ts";

const INCH = 0.0254;
const KSI = 1000 * PSI;
const [, , , , , eight] = bars;

test("hookLength(bars nearer than 6 diameters) is 1.6 times that of bars apart (ACI 318-19 25.4.3.2, from memory)", () => {
  // 60 000 x (3000/15 000 + 0.6)/(55 sqrt(3000)) x 1 in.
  const apart = hookLength(eight, 3 * KSI, 60 * KSI, 6 * INCH);
  expect(apart / INCH).toBeCloseTo(15.93, 2);
  expect(hookLength(eight, 3 * KSI, 60 * KSI, 5.9 * INCH)).toBeCloseTo(1.6 * apart, 9);
  // such a cage is drawn: two per cent of a pedestal of two feet
  const cage = squareCage(24 * INCH, 48 * INCH, 0.02, () => true);
  expect((8 * (cage?.ring ?? 1)) / (cage?.count ?? 1)).toBeLessThan(6 * (cage?.bar.diameter ?? 0));
});

test("padBars(a slab too thin for its hooks) takes smaller bars whose hooks it has room for, and where there are none counts none (ACI 318-19 25.4.10.2 (d))", () => {
  const pad = {
    width: 96 * INCH,
    depth: 48 * INCH,
    pedestal: 18 * INCH,
    steel: 0.0018,
    mats: 1,
  };
  const cageOf = (thickness: number, cage: number) => {
    const { pedestalMoment, runs } = padBars(
      { ...pad, thickness: thickness * INCH },
      cage,
      3 * KSI,
      60 * KSI,
    );
    const upright = runs.find(({ where }) => where.startsWith("upright"));
    return { pedestalMoment, bars: `${upright?.count} ${upright?.bar.name}` };
  };
  // 1.62 in2: four #6, hooked in 15.93 x 0.75^1.5 = 10.35 in.; a thin slab with bars of 3/4 in. has 7.5 in.
  const thick = cageOf(15, 0.005);
  expect(thick.bars).toBe("4 #6");
  const thin = cageOf(12, 0.005);
  expect(thin.bars).toBe("12 #4");
  const ring = (9 - 3 - 0.375 - 0.25) * INCH;
  expect(thin.pedestalMoment).toBeCloseTo(
    rectangleMoment({ depth: 18 * INCH, breadth: 18 * INCH }, ring, 4, 0.2 * INCH ** 2, 3 * KSI, 60 * KSI),
    6,
  );
  // room for 4 in. of hook, where the code asks 6 at least
  expect(cageOf(8, 0.005).pedestalMoment).toBe(0);
});

test("developed(room) is in proportion from 12 in. on, and nothing in less (ACI 318-19 25.4.2.1 (b), 25.4.10.1)", () => {
  expect(developed(11.9 * INCH, 24 * INCH)).toBe(0);
  expect(developed(12 * INCH, 24 * INCH)).toBeCloseTo(0.5, 12);
  expect(developed(30 * INCH, 24 * INCH)).toBe(1);
  // a pad whose bars end 11 in. beyond the pedestal's face bends as plain concrete; two inches more and they count
  const bends = (width: number, thickness = 18) => {
    const pad = { width: width * INCH, thickness: thickness * INCH, depth: 1.2, pedestal: 18 * INCH };
    const { slab, words } = padBars({ ...pad, steel: 0.0018, mats: 1 }, 0.005, 3 * KSI, 60 * KSI);
    return { ...slabStrength(slab), words, area: slab.bottomArea };
  };
  const plain = bends(46);
  expect(plain.area).toBe(0);
  expect(plain.words).toMatch(/as plain concrete/);
  // 0.6 x 5 sqrt 3000 x 46 x 16^2/6 lb in., 0.6 x 4/3 sqrt 3000 x 46 x 16 lb, 0.6 x 8/3 sqrt 3000 psi
  const POUND = 4.4482216152605;
  expect(plain.bottomMoment / (322_499 * POUND * INCH)).toBeCloseTo(1, 4);
  expect(plain.topMoment).toBe(plain.bottomMoment);
  expect(plain.shear / (32_249.9 * POUND)).toBeCloseTo(1, 4);
  expect(plain.punching / (87.636 * PSI)).toBeCloseTo(1, 4);
  expect(bends(46, 7).bottomMoment).toBe(0);
  const barred = bends(50);
  expect(barred.area).toBeGreaterThan(0);
  expect(barred.words).not.toMatch(/plain/);
});

test("fewestBars(a dense mat) keeps two bars clear between bars: the development of 25.4.2.3 is that of such", () => {
  let dense = 0;
  for (let area = 1; area < 20; area += 0.1) {
    const picked = fewestBars(area * INCH ** 2, 36 * INCH, 18 * INCH, () => true);
    if (!picked) continue;
    const { bar, count } = picked;
    const clear = (30 * INCH - count * bar.diameter) / (count - 1);
    expect(clear).toBeGreaterThanOrEqual(2 * bar.diameter);
    if (clear < 3 * bar.diameter) dense++;
  }
  expect(dense).toBeGreaterThan(3);
});

test("strengths that go with the root of f'c stop growing at 10 000 psi (ACI 318-19 22.5.3.1, 25.4.1.4, from memory)", () => {
  const slab = (strength: number) =>
    slabStrength({
      width: 2,
      thickness: 0.5,
      pedestal: 0.5,
      barDepth: 0.4,
      bottomArea: 4e-3,
      topArea: 0,
      strength,
      barYield: 60 * KSI,
    });
  expect(slab(14 * KSI).shear).toBeCloseTo(slab(10 * KSI).shear, 3);
  expect(slab(14 * KSI).punching).toBeCloseTo(slab(10 * KSI).punching, 3);
  const straight = (strength: number) => developmentLength(eight, strength, 60 * KSI, false);
  expect(straight(14 * KSI)).toBeCloseTo(straight(10 * KSI), 12);
  const hook = (strength: number) => hookLength(eight, strength, 60 * KSI, 1);
  expect(hook(14 * KSI)).toBeCloseTo(hook(10 * KSI), 12);
});
