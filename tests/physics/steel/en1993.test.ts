import fc from "fast-check";
import { expect, test } from "vitest";
import { steelCodes } from "../../../src/physics/steel/codes.ts";
import {
  bucklingReduction,
  compressionEn,
  curveOf,
  pipeMomentEn,
} from "../../../src/physics/steel/en1993.ts";
import { roundProperties } from "../../../src/physics/steel/round.ts";

test("bucklingReduction is 1 up to 0.2 and falls from there, the higher curve above the lower", () => {
  const slenderness = fc.double({ min: 0, max: 4, noNaN: true });
  fc.assert(
    fc.property(slenderness, slenderness, (a, b) => {
      const [less, more] = [Math.min(a, b), Math.max(a, b)];
      for (const curve of ["a0", "a", "b", "c", "d"] as const)
        expect(bucklingReduction(curve, more)).toBeLessThanOrEqual(bucklingReduction(curve, less));
      expect(bucklingReduction("a", a)).toBeGreaterThanOrEqual(bucklingReduction("b", a));
      expect(bucklingReduction("c", a)).toBeLessThanOrEqual(bucklingReduction("b", a));
      // never above Euler's
      expect(bucklingReduction("a0", a) * a ** 2).toBeLessThanOrEqual(1);
    }),
    { seed: 3 },
  );
  expect(bucklingReduction("d", 0.2)).toBe(1);
  expect(() => bucklingReduction("a", Number.NaN)).toThrow(/NaN/);
});

test("curveOf: hot-finished tubes a, cold-formed tubes and solid rods c, angles b", () => {
  const tube = { diameter: 0.04, wall: 0.003 };
  expect(curveOf(tube, "hot-finished")).toBe("a");
  expect(curveOf(tube, "cold-formed")).toBe("c");
  expect(curveOf({ diameter: 0.04 }, "hot-finished")).toBe("c");
  expect(curveOf({ angle: 0.04, thickness: 0.004 }, "hot-finished")).toBe("b");
});

test("compressionEn refuses class 4 with what it found", () => {
  const at = (wall: number) => compressionEn({ diameter: 0.1, wall }, 1, 235e6, 210e9, "cold-formed", "ends");
  expect(at(0.1 / 89)).toBeGreaterThan(0);
  expect(() => at(0.1 / 91)).toThrow(/d\/t: found 91, expected at most 90 .*table 5\.2/);

  expect(() =>
    compressionEn({ angle: 0.06, thickness: 0.005 }, 1, 235e6, 210e9, "cold-formed", "ends"),
  ).toThrow(/b\/t: found 12, expected at most 11\.5/);
});

test("pipeMomentEn is plastic to class 2, elastic in class 3, refused in class 4", () => {
  const pipe = (ratio: number) => ({ diameter: 0.1, wall: 0.1 / ratio });
  const of = (ratio: number) => pipeMomentEn(pipe(ratio), 235e6);
  expect(of(69.9)).toBeCloseTo(235e6 * roundProperties(pipe(69.9)).plasticModulus, 6);
  expect(of(70.1)).toBeCloseTo(235e6 * roundProperties(pipe(70.1)).elasticModulus, 6);
  expect(() => of(90.1)).toThrow(/EN 1993-1-6/);
});

test("steelCodes.en1993 counts a steel stronger than S460 as S460, pressed, pulled and bent", () => {
  const { compression, bending, countedYield } = steelCodes.en1993;
  const strut = {
    member: { diameter: 0.04 },
    length: 0.5,
    modulus: 210e9,
    tubing: "cold-formed",
    use: "leg",
  } as const;
  const pressed = (fy: number) => compression({ ...strut, yield: fy });
  const bent = (fy: number) => bending({ diameter: 0.05, wall: 0.005 }, fy, 210e9);
  for (const of of [pressed, bent, countedYield]) {
    expect(of(500e6)).toBe(of(460e6));
    expect(of(460e6)).toBeGreaterThan(of(455e6));
  }
});
