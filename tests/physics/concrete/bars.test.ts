import { expect, test } from "vitest";
import { padBars } from "../../../src/parts/footings/pad-bars.ts";
import { bars, developmentLength, fewestBars, hookLength, PSI } from "../../../src/physics/concrete/bars.ts";
import { squareCage } from "../../../src/physics/concrete/cage.ts";
import { squareMoment } from "../../../src/physics/concrete/section-strength.ts";
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
  const cage = squareCage(24 * INCH, 48 * INCH, 0.02);
  expect((8 * (cage?.ring ?? 1)) / (cage?.count ?? 1)).toBeLessThan(6 * (cage?.bar.diameter ?? 0));
});

test("padBars(a crowded cage in a slab too thin for its hooks) lets the bars bear what the longer hooks leave them", () => {
  const side = 24 * INCH;
  const pad = {
    width: 96 * INCH,
    thickness: 24 * INCH,
    depth: 48 * INCH,
    pedestal: side,
    steel: 0.0018,
    mats: 1,
  };
  const cage = squareCage(side, pad.depth, 0.02);
  if (!cage) throw new Error("no cage");
  const { pedestalMoment, slab } = padBars(pad, 0.02, 3 * KSI, 60 * KSI);
  // what is left over the mat, of 1.6 times 15.93 in. for bars of an inch
  expect(cage.bar).toBe(eight);
  const mat = (pad.thickness - 3 * INCH - slab.barDepth) / 1.5;
  const share = (pad.thickness - 3 * INCH - 2 * mat) / (1.6 * 15.93 * INCH);
  expect(share).toBeLessThan(0.85);
  const held = squareMoment(side, cage.ring, cage.count / 4 + 1, eight.area, 3 * KSI, share * 60 * KSI);
  expect(pedestalMoment / held).toBeCloseTo(1, 3);
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
