import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type AnchorBlock,
  beamStrengths,
  bendingUse,
  momentLevel,
  momentUp,
  stoutArm,
} from "../../../src/physics/concrete/anchor-beam.ts";
import { bars, EARTH_COVER, footingBars, PSI } from "../../../src/physics/concrete/bars.ts";
import { heldAtEnds } from "../../../src/physics/ground/deadman.ts";
import { liftedWeight } from "../../../src/physics/ground/lifted-soil.ts";

const INCH = 0.0254;
const [STRENGTH, YIELD] = [3000 * PSI, 60_000 * PSI];
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const block = fc.record({
  length: size(0.6, 3),
  height: size(0.31, 0.62),
  width: size(0.31, 0.62),
  bar: fc.constantFrom(...footingBars),
  ends: size(0, 1),
});

/**
 * Moments that a barred section bears about both axes when its neutral axis is turned, by strain compatibility in cells:
 * an arithmetic of its own. Returns design moments, the factor of table 21.2.2 in them.
 */
function inCells(
  { height, width }: AnchorBlock,
  rows: { height: number; width: number },
  area: number,
  angle: number,
) {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const out = (y: number, z: number) => y * cos + z * sin;
  const far = (height / 2) * Math.abs(cos) + (width / 2) * Math.abs(sin);
  const n = 60;
  const cells: [number, number][] = [];
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) cells.push([((i + 0.5) / n - 0.5) * height, ((j + 0.5) / n - 0.5) * width]);
  const corners: [number, number][] = [-1, 1].flatMap((a) =>
    [-1, 1].map((b): [number, number] => [a * rows.height, b * rows.width]),
  );
  const state = (c: number) => {
    let [force, up, level, tension] = [0, 0, 0, 0];
    const put = (f: number, y: number, z: number) => {
      force += f;
      up += f * y;
      level += f * z;
    };
    for (const [y, z] of cells)
      if (far - out(y, z) < 0.85 * c) put((0.85 * STRENGTH * height * width) / n ** 2, y, z);
    for (const [y, z] of corners) {
      const from = far - out(y, z);
      const strain = 0.003 * (1 - from / c);
      tension = Math.max(tension, -strain);
      const stress = Math.max(-YIELD, Math.min(YIELD, 200e9 * strain));
      put(area * (stress - (from < 0.85 * c ? 0.85 * STRENGTH : 0)), y, z);
    }
    return { force, up, level, tension };
  };
  let [low, high] = [1e-3 * far, 2 * far];
  for (let i = 0; i < 40; i++) {
    const c = (low + high) / 2;
    if (state(c).force < 0) low = c;
    else high = c;
  }
  const { up, level, tension } = state(high);
  const factor = Math.min(0.9, Math.max(0.65, 0.65 + (0.25 * (tension - YIELD / 200e9)) / 0.003));
  return { up: factor * up, level: factor * level };
}

test("bendingUse(barred, bent both ways) never says less than sections in cells whose neutral axis is turned", () => {
  let both = 0;
  fc.assert(
    fc.property(block, size(0.1, Math.PI / 2 - 0.1), (beam, angle) => {
      const { cage, ways } = beamStrengths(beam, STRENGTH, YIELD);
      const barred = ways.find(({ sort }) => sort === "barred");
      if (!cage || !barred || beam.length < 2.8) return;
      const exact = inCells(beam, cage.rows, beam.bar.area, angle);
      if (exact.up < 0.1 * exact.level || exact.level < 0.1 * exact.up) return;
      both++;
      const up = (8 * exact.up) / (beam.length * (1 + beam.ends));
      const level = (8 * exact.level) / beam.length;
      const used = bendingUse(beam, barred, up, level);
      expect(used).toBeGreaterThan(0.995);
    }),
    { numRuns: 1200, seed: 71 },
  );
  expect(both).toBeGreaterThan(30);
});

test("momentUp() and momentLevel() are those of strips of an even load and of what hangs on the ends, about the middle", () => {
  fc.assert(
    fc.property(block, size(1, 9e4), (beam, pull) => {
      const strips = 2000;
      const about = (even: number, atEnd: number) => {
        let moment = (atEnd * beam.length) / 2;
        for (let i = 0; i < strips; i++)
          moment += (even / strips) * ((((i + 0.5) / strips) * beam.length) / 2);
        return moment;
      };
      const up = about((pull * (1 - beam.ends)) / 2, (pull * beam.ends) / 2);
      expect(momentUp(beam, pull) / up).toBeCloseTo(1, 6);
      expect(momentLevel(beam, pull) / about(pull / 2, 0)).toBeCloseTo(1, 6);
    }),
    { numRuns: 100, seed: 72 },
  );
});

test("heldAtEnds() is never less than what lies beyond the ends of all that a block lifts, in layers and in water", () => {
  const soil = fc.record({ unitWeight: size(13e3, 22e3), second: size(13e3, 22e3), from: size(0.3, 1.5) });
  fc.assert(
    fc.property(
      block,
      soil,
      size(0.7, 2.2),
      fc.constantFrom("prism" as const, "cone" as const),
      fc.option(size(0.1, 2), { nil: undefined }),
      ({ length, height, width }, { unitWeight, second, from }, depth, shape, waterTable) => {
        const layer = { bearing: 1e5, lateralPerDepth: 2e4 };
        const ground = { ...layer, unitWeight, layers: [{ ...layer, unitWeight: second, from }] };
        const rules = { concreteUnitWeight: 22.8e3, upliftAngle: 30, waterTable };
        const deadman = { length, height: Math.min(height, depth), width, depth, shape };
        // what a block without length would lift is what lies beyond the ends of one with length
        const beyond = liftedWeight({ ...deadman, length: 0 }, ground, rules);
        const share = beyond / liftedWeight(deadman, ground, rules);
        expect(heldAtEnds(deadman, rules)).toBeGreaterThanOrEqual(share);
        expect(share).toBeGreaterThan(0.05);
      },
    ),
    { numRuns: 2000, seed: 73 },
  );
});

test("beamStrengths(longer bars) develops no less, fewer bars than the least bear three quarters, and none stand without cover", () => {
  const four = bars[1];
  const beam = { height: 18 * INCH, width: 12 * INCH, bar: four, ends: 0 };
  const at = (length: number) => beamStrengths({ ...beam, length: length * INCH }, STRENGTH, YIELD).ways[1];
  // from 2 x (3 + 1.3 x 21.91) in. bars with 15 in. of concrete below them yield
  expect(at(62.97).up.moment).toBeCloseTo(at(90).up.moment, 0);
  expect(at(55).up.moment).toBeLessThan(at(62.9).up.moment);
  // 200/60000 x 12 x 14.375 in. = 0.575 in2 of 0.4: three quarters. Both rows yield, a = 48/(0.85 x 3 x 12) = 1.5686 in.:
  // 0.9 x 24 (14.375 + 3.625 - 1.5686) kip in.
  const inchPounds = 4.4482216152605 * INCH;
  expect(at(90).up.moment / (0.75 * 0.9 * 24_000 * (18 - 1.5686) * inchPounds)).toBeCloseTo(1, 4);
  const narrow = beamStrengths({ ...beam, width: 8 * INCH, length: 1.5 }, STRENGTH, YIELD);
  expect(narrow.cage).toBeNull();
  expect(narrow.ways.map(({ sort }) => sort)).toEqual(["plain"]);
  const tall = beamStrengths({ ...beam, height: 30 * INCH, length: 1.5 }, STRENGTH, YIELD);
  expect(tall.cage).toBeNull();
  for (const run of beamStrengths({ ...beam, length: 1.5 }, STRENGTH, YIELD).cage?.runs ?? [])
    expect(run.length).toBeLessThan(run.count === 4 ? 1.5 - 2 * EARTH_COVER + 1e-9 : 1.6);
});

test("stoutArm() is 1 for a slender block, 3/4 as long as deep, and falls as it shortens", () => {
  expect(stoutArm(2, 1)).toBe(1);
  expect(stoutArm(5, 1)).toBe(1);
  expect(stoutArm(1, 1)).toBeCloseTo(0.75, 12);
  expect(stoutArm(0.5, 1)).toBeCloseTo(0.375, 12);
});
