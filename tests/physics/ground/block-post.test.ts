import { expect, test } from "vitest";
import { blockResistance } from "../../../src/physics/ground/block.ts";
import { blockBeside } from "../../../src/physics/ground/block-post.ts";
import { pierAsPost } from "../../../src/physics/ground/pier.ts";
import { FOOT } from "../../support/us-units.ts";

const POUND = 4.4482216152605;
const soil = {
  bearing: 1e5,
  lateralPerDepth: (266 * POUND) / FOOT ** 3,
  unitWeight: 17000,
  friction: 0.25,
};
const rules = { concreteUnitWeight: 23563, upliftAngle: 30 };
const loads = { compression: 2000, shear: 510 * POUND, moment: 510 * POUND * 4 * FOOT };

// Christy, Engineering with the Spreadsheet, ASCE 2006, Fig. 16-1: 266 psf/ft, 510 lb at 4.0 ft, b 1.00 ft: 5.02 ft
test("blockBeside(block) needs 5.02 ft of the post whose diagonal is 1.00 ft", () => {
  const beside = blockBeside({ width: FOOT / Math.SQRT2, depth: 5 * FOOT }, loads, soil, rules);
  expect((beside?.postDepth ?? 0) / FOOT).toBeCloseTo(5.02, 2);
});

test("blockBeside(block) needs a deeper post where the soil caps its lateral bearing, as a pier there does", () => {
  const capped = { ...soil, lateralCap: 3000 };
  const beside = blockBeside({ width: 1, depth: 2 }, loads, capped, rules);
  const depth = beside?.postDepth ?? 0;
  expect(depth).toBeGreaterThan(
    1.1 * (blockBeside({ width: 1, depth: 2 }, loads, soil, rules)?.postDepth ?? 9),
  );
  // a pier that wide and deep is held to the last of its capacity
  const held = pierAsPost({ diameter: Math.SQRT2, depth }, capped, rules)?.of(loads);
  expect((held?.demand ?? 0) / (held?.capacity ?? 1)).toBeCloseTo(1, 3);
  expect(blockBeside({ width: 1, depth: 2 }, loads, { ...soil, lateralCap: 0 }, rules)).toBeNull();
});

test("blockBeside(block) balanced is never above the toe's factor, and is it where friction holds the push", () => {
  const block = { width: 1, depth: 1.5 };
  const factor = (friction: number) => {
    const here = { ...soil, friction };
    const { overturning } = blockResistance(block, loads, here, rules);
    return [
      blockBeside(block, loads, here, rules)?.balancedFactor ?? 0,
      overturning.capacity / overturning.demand,
    ];
  };
  const [slips, toe] = factor(0.05);
  expect(slips).toBeLessThan(toe);
  const [holds, same] = factor(50);
  expect(holds).toBeCloseTo(same, 9);
});

test("blockBeside(block) says nothing where nothing pushes, or nothing holds", () => {
  expect(blockBeside({ width: 1, depth: 1 }, { ...loads, shear: 0 }, soil, rules)).toBeNull();
  // ground as light as water holds nothing below it
  const afloat = { ...soil, unitWeight: 9000 };
  expect(blockBeside({ width: 1, depth: 1 }, loads, afloat, { ...rules, waterTable: 0.5 })).toBeNull();
});
