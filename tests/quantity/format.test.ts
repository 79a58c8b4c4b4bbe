import fc from "fast-check";
import { expect, test } from "vitest";
import { type Dimension, dimensions } from "../../src/quantity/dimensions.ts";
import { formatNumber, formatQuantity, inShownUnit, writeQuantity } from "../../src/quantity/format.ts";
import { parseQuantity } from "../../src/quantity/parse.ts";

test("formatQuantity(1.2845, 'volume', 'us') gives two decimals of yards", () => {
  expect(formatQuantity(1.2845, "volume", "us")).toEqual({ value: "1.68", unit: "yd³" });
});

test("formatQuantity groups with a comma in US units and with a thin space in SI", () => {
  expect(formatQuantity(2914 * 4.4482216152605, "force", "us")).toEqual({ value: "2,914", unit: "lbf" });
  expect(formatQuantity(2914, "force", "si")).toEqual({ value: "2\u2009914", unit: "N" });
  expect(formatNumber(1234567.891, "us", 2)).toBe("1,234,567.89");
});

test("formatQuantity writes a true minus, and none before a rounded zero", () => {
  expect(formatQuantity(-3, "length", "si", 1).value).toBe("\u22123.0");
  expect(formatQuantity(-0.01, "length", "si", 1).value).toBe("0.0");
});

test("formatNumber says where there is no number", () => {
  expect(formatNumber(Number.POSITIVE_INFINITY, "us", 1)).toBe("∞");
  expect(formatNumber(Number.NaN, "us", 1)).toBe("–");
});

test("inShownUnit gives the bare number for axes and fields", () => {
  expect(inShownUnit(21.336, "length", "us")).toEqual({ value: expect.closeTo(70, 12), unit: "ft" });
});

test("writeQuantity writes round lengths as they were meant", () => {
  expect(writeQuantity(21.336, "length", "us")).toBe("70 ft");
  expect(writeQuantity(0.022225, "size", "us")).toBe("0.875 in");
  expect(writeQuantity(46.9392, "speed", "us")).toBe("105 mph");
});

test("parseQuantity(writeQuantity(x)) is x within 1e-12, in every dimension and both systems", () => {
  const dimension = fc.constantFrom(...(Object.keys(dimensions) as Dimension[]));
  const si = fc.oneof(
    fc.double({ min: 1e-6, max: 1e12, noNaN: true }),
    fc.double({ min: -1e12, max: -1e-6, noNaN: true }),
    fc.constant(0),
  );
  let tried = 0;
  fc.assert(
    fc.property(dimension, si, fc.constantFrom("us" as const, "si" as const), (of, value, system) => {
      tried++;
      const parsed = parseQuantity(writeQuantity(value, of, system), of);
      expect(parsed.ok && Math.abs(parsed.value - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value));
    }),
    { numRuns: 2000, seed: 1 },
  );
  expect(tried).toBe(2000);
});

test("a quantity typed in a unit comes back as the same text's number after writing it twice", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 1_000_000 }),
      fc.constantFrom("ft", "in", "mm", "m"),
      (count, unit) => {
        const first = parseQuantity(`${count / 1000} ${unit}`, "length");
        if (!first.ok) throw new Error(first.message);
        for (const system of ["us", "si"] as const)
          expect(parseQuantity(writeQuantity(first.value, "length", system), "length")).toEqual(first);
      },
    ),
    { numRuns: 1000, seed: 2 },
  );
});

test("what formatQuantity shows can be typed back in", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e7, max: 1e7, noNaN: true }),
      fc.constantFrom("us" as const, "si" as const),
      (value, system) => {
        for (const of of Object.keys(dimensions) as Dimension[]) {
          const shown = formatQuantity(value, of, system);
          expect(parseQuantity(`${shown.value} ${shown.unit}`, of).ok, `${shown.value} ${shown.unit}`).toBe(
            true,
          );
        }
      },
    ),
    { numRuns: 200, seed: 3 },
  );
});
