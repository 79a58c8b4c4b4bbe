import fc from "fast-check";
import { expect, test } from "vitest";
import { formatPrice, type Per, parsePrice, writePrice } from "../../src/quantity/price.ts";

const accepted: [string, Per, number][] = [
  ["$218", "each", 218],
  ["$1,250", "each", 1250],
  ["218", "each", 218],
  ["$5 each", "each", 5],
  ["$0.62/ft", "length", 0.62 / 0.3048],
  ["$0.62 per foot", "length", 0.62 / 0.3048],
  ["€5/m", "length", 5],
  ["$3.40/ft2", "area", 3.4 / 0.3048 ** 2],
  ["$185/yd3", "volume", 185 / (27 * 0.3048 ** 3)],
  ["$1.10/lb", "mass", 1.1 / 0.45359237],
  ["2.5", "mass", 2.5],
];
test.each(accepted)("parsePrice(%j, per %s) gives %d per SI unit", (text, per, value) => {
  const parsed = parsePrice(text, per);
  expect(parsed.ok && Math.abs(parsed.value / value - 1)).toBeLessThan(1e-14);
});

const refused: [string, Per, string][] = [
  ["$0.62", "length", '"$0.62" doesn\'t say per what; write a price per length, as "$0.62/ft"'],
  ["$1/ft2", "length", '"ft2" is a unit of area, not of length; write a price per length, as "$0.62/ft"'],
  [
    "$1/furlong",
    "length",
    '"/furlong" isn\'t understood after the amount; write a price per length, as "$0.62/ft"',
  ],
  ["dear", "each", '"dear" isn\'t a price; write a price for one, as "$218"'],
];
test.each(refused)("parsePrice(%j, per %s) is refused with the remedy", (text, per, message) => {
  expect(parsePrice(text, per)).toMatchObject({ ok: false, message, found: JSON.stringify(text) });
});

test("parsePrice wants a stroke before the unit", () => {
  expect(parsePrice("$5 ft", "length")).toMatchObject({
    ok: false,
    message: '"ft" isn\'t understood after the amount; write a price per length, as "$0.62/ft"',
  });
});

test("formatPrice gives the amount and the unit of the system", () => {
  expect(formatPrice(185 / (27 * 0.3048 ** 3), "volume", "us")).toEqual({ value: "185.00", unit: "$/yd³" });
  expect(formatPrice(1250, "each", "us")).toEqual({ value: "1,250", unit: "$" });
});

test("parsePrice(writePrice(x)) is x within 1e-12", () => {
  const per = fc.constantFrom<Per>("each", "length", "area", "volume", "mass");
  fc.assert(
    fc.property(
      per,
      fc.double({ min: 1e-4, max: 1e7, noNaN: true }),
      fc.constantFrom("us" as const, "si" as const),
      (of, value, system) => {
        const parsed = parsePrice(writePrice(value, of, system), of);
        expect(parsed.ok && Math.abs(parsed.value - value)).toBeLessThanOrEqual(1e-12 * value);
      },
    ),
    { numRuns: 1000, seed: 4 },
  );
});
