import fc from "fast-check";
import { expect, test } from "vitest";
import { axisValues } from "../../src/model/axis.ts";

test("axisValues({from, to, step}) includes both ends where a step lands on the end", () => {
  expect(axisValues({ from: 0, to: 110, step: 10 })).toEqual([
    0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100, 110,
  ]);
  expect(axisValues({ from: 0.1, to: 0.3, step: 0.1 })).toEqual([0.1, 0.2, 0.3]);
});

test("axisValues({from, to, step}) never passes an end that no step lands on", () => {
  expect(axisValues({ from: 0, to: 25, step: 10 })).toEqual([0, 10, 20]);
});

test("axisValues of one value and of a list give rising values, each once", () => {
  expect(axisValues(7)).toEqual([7]);
  expect(axisValues([3, 1, 2, 1])).toEqual([1, 2, 3]);
  expect(axisValues({ from: 5, to: 5, step: 1 })).toEqual([5]);
});

test("axisValues of feet has the count of feet, whatever the rounding of metres", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 200 }),
      fc.integer({ min: 0, max: 500 }),
      fc.integer({ min: 1, max: 40 }),
      (from, steps, step) => {
        const inch = 0.0254;
        const values = axisValues({ from: from * inch, to: (from + steps * step) * inch, step: step * inch });
        expect(values.length).toBe(steps + 1);
        values.forEach((value, index) => {
          expect(Math.abs(value - (from + index * step) * inch)).toBeLessThan(1e-9);
        });
      },
    ),
    { numRuns: 1000, seed: 7 },
  );
});
