import { expect, test } from "vitest";
import { z } from "zod";
import { dimensioned, priced } from "../../src/quantity/schema.ts";

const depth = dimensioned("length", { min: 0, max: 10 });

test("dimensioned takes text with a unit, or a number of SI, and gives SI", () => {
  expect(depth.parse("18 ft 6 in")).toBe(5.6388);
  expect(depth.parse(2.5)).toBe(2.5);
});

test.each([
  ["-3 ft", 'found "-3 ft", expected a length of 0 or more'],
  [-3, "found -3, expected a length of 0 or more"],
  ["40 ft", 'found "40 ft", expected a length of 10 m or less'],
  [true, 'found true, expected a length (ft, in, m or mm), as "18 ft 6 in"'],
  [undefined, 'found nothing, expected a length (ft, in, m or mm), as "18 ft 6 in"'],
])("dimensioned with limits refuses %j in words", (input, message) => {
  expect(depth.safeParse(input).error?.issues[0].message).toBe(message);
});

test("dimensioned with `above` refuses the bound itself", () => {
  const schema = dimensioned("size", { above: 0 });
  expect(schema.safeParse("0 in").error?.issues[0].message).toBe('found "0 in", expected a length above 0');
});

test("priced refuses a price below 0", () => {
  expect(priced("each").safeParse("-$3").error?.issues[0].message).toBe(
    'found "-$3", expected a price of 0 or more',
  );
  expect(priced("length").parse("$0.3048/ft")).toBe(1);
});

test("z.toJSONSchema describes the text that is written, and what it measures", () => {
  expect(z.toJSONSchema(z.strictObject({ depth, price: priced("length") }), { io: "input" })).toMatchObject({
    properties: {
      depth: {
        type: ["string", "number"],
        "x-dimension": "length",
        description: expect.stringContaining("18 ft 6 in"),
      },
      price: { type: ["string", "number"], "x-per": "length" },
    },
  });
});

test("z.input is text or number, z.output a number", () => {
  const input: z.input<typeof depth> = "3 ft";
  const output: z.output<typeof depth> = depth.parse(input);
  expect(output).toBeCloseTo(0.9144, 12);
});
