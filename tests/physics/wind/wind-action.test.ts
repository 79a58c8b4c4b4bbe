import { expect, test } from "vitest";
import { velocityPressure } from "../../../src/physics/wind/asce7.ts";
import { windAction } from "../../../src/physics/wind/wind-action.ts";
import { asce7 } from "./support/asce7.ts";

const uniform = windAction({ basis: "uniform", pressure: 1000 });
const mapped = windAction({ basis: "asce7-16", ...asce7 });

test("windAction(uniform) is one service-level pressure on flats", () => {
  expect(uniform.level).toBe("service");
  expect(uniform.pressure(1)).toBe(1000);
  expect(uniform.pressure(60)).toBe(1000);
});

test("the same antenna stated as flat, round or flat-plate equivalent weighs on a uniform wind alike", () => {
  expect(6 * uniform.areaFactor.flat).toBeCloseTo(6, 12);
  expect(9 * uniform.areaFactor.round).toBeCloseTo(6, 12);
  expect(6 * uniform.areaFactor.effective).toBeCloseTo(6, 12);
});

test("the same antenna stated as round or as drag area weighs on a velocity pressure alike", () => {
  expect(9 * mapped.areaFactor.round).toBeCloseTo(10.8 * mapped.areaFactor.effective, 12);
  expect(6 * mapped.areaFactor.flat).toBeCloseTo(12, 12);
});

test("windAction(asce7) has gust and directionality once, whichever edition", () => {
  const given = { ...asce7, edition: "7-16", directionalityFactor: 0.85 } as const;
  expect(mapped.pressure(20)).toBeCloseTo(velocityPressure(given, 20) * 0.85, 9);
  const later = windAction({ basis: "asce7-22", ...asce7 });
  expect(later.pressure(20)).toBeCloseTo(
    velocityPressure({ ...given, edition: "7-22" }, 20) * 0.85 * 0.85,
    9,
  );
  expect(mapped.level).toBe("strength");
});

test("windAction(asce7) is level below 15 ft and grows above", () => {
  expect(mapped.pressure(0)).toBe(mapped.pressure(4.57));
  expect(mapped.pressure(30)).toBeGreaterThan(mapped.pressure(10));
});

test("windAction(uniform) takes two thirds on round masts and more for four legs", () => {
  const face = { solidity: 0.2, direction: "face" } as const;
  expect(uniform.latticeFactor({ ...face, legs: 3, members: "round" })).toBeCloseTo(1, 12);
  expect(uniform.latticeFactor({ ...face, legs: 4, members: "flat" })).toBeCloseTo(1.75, 12);
  expect(
    uniform.latticeFactor({ solidity: 0.2, legs: 4, members: "flat", direction: "diagonal" }),
  ).toBeCloseTo(1.75 * 1.15, 12);
});

test("a triangular mast has the same drag from every direction", () => {
  const face = { legs: 3, solidity: 0.2, members: "round" } as const;
  for (const wind of [uniform, mapped])
    expect(wind.latticeFactor({ ...face, direction: "diagonal" })).toBe(
      wind.latticeFactor({ ...face, direction: "face" }),
    );
});

test("windAction refuses heights and solidities outside its standard", () => {
  expect(() => mapped.pressure(300)).toThrow(/found height 300 m/);
  expect(() => mapped.latticeFactor({ legs: 3, solidity: 1.2, members: "round", direction: "face" })).toThrow(
    /1.2/,
  );
  const european = windAction({
    basis: "en1991",
    basicSpeed: 25,
    terrain: "II",
    orographyFactor: 1,
    airDensity: 1.25,
    structuralFactor: 1,
  });
  expect(european.pressure(20)).toBeGreaterThan(european.pressure(10));
  expect(() => european.pressure(201)).toThrow(/200 m/);
});
