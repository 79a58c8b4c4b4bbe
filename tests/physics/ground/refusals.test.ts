import { expect, test } from "vitest";
import { blockOverturning } from "../../../src/physics/ground/block-overturning.ts";
import { shortPileClay, shortPileSand } from "../../../src/physics/ground/broms.ts";
import { unrestrainedDepth } from "../../../src/physics/ground/embedded-post.ts";
import { passiveCoefficient } from "../../../src/physics/ground/rankine.ts";
import { upliftPrism } from "../../../src/physics/ground/uplift-pyramid.ts";

test("the ground refuses what its methods do not cover, by name and value", () => {
  const post = {
    lateralForce: 1,
    forceHeight: 1,
    width: 0,
    lateralBearingPerDepth: 1,
    multiplier: 1,
  };
  expect(() => unrestrainedDepth(post)).toThrow(/width 0 m/);
  expect(() => passiveCoefficient(60)).toThrow(/found 60 degrees/);
  expect(() => shortPileClay(1e5, 1, 1.5, 0)).toThrow(/above 1.5 diameters/);
  expect(() => shortPileSand(30, 0, 1, 4, 0)).toThrow(/unit weight 0/);
  expect(() => upliftPrism(1, 1, -1, 30)).toThrow(/depth -1/);
  expect(() =>
    blockOverturning({
      width: 1,
      breadth: 1,
      depth: 1,
      concreteUnitWeight: 1,
      soil: { bearing: 1, unitWeight: 1, lateralPerDepth: 1 },
      lateralMultiplier: 1,
      verticalLoad: 0,
      momentAtGround: 1,
      shearAtGround: 0,
      layerThickness: 0,
    }),
  ).toThrow(/layer 0/);
});

test("unrestrainedDepth(no force) is no depth", () => {
  expect(
    unrestrainedDepth({
      lateralForce: 0,
      forceHeight: 1,
      width: 1,
      lateralBearingPerDepth: 1,
      multiplier: 1,
    }),
  ).toBe(0);
});
