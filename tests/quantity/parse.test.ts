import { describe, expect, test } from "vitest";
import { type Dimension, dimensions } from "../../src/quantity/dimensions.ts";
import { parseQuantity } from "../../src/quantity/parse.ts";

// exact by definition: inch 0.0254 m, pound 0.45359237 kg, standard gravity 9.80665 m/s², mile 5280 ft, knot 1852 m/h
const LBF = 0.45359237 * 9.80665;
const FT = 0.3048;
const IN = 0.0254;

const accepted: [string, Dimension, number][] = [
  ["70 ft", "length", 70 * FT],
  ["18 ft 6 in", "length", 18.5 * FT],
  [`5' 6"`, "length", 5.5 * FT],
  [`5'-6 1/2"`, "length", 66.5 * IN],
  ["5′ 6″", "length", 5.5 * FT],
  ["-5 ft 6 in", "length", -5.5 * FT],
  ["5 m 30 cm", "length", 5.3],
  ["3/16 in", "length", 0.1875 * IN],
  ["1 1/8 in", "size", 1.125 * IN],
  ["1-1/8 in", "size", 1.125 * IN],
  ["1½ in", "size", 1.5 * IN],
  ["25.4mm", "size", 0.0254],
  ["12 FT", "length", 12 * FT],
  ["3 feet", "length", 3 * FT],
  ["\u22123 ft", "length", -3 * FT],
  ["1,250 ft", "length", 1250 * FT],
  ["2\u2009914 m", "length", 2914],
  ["1.2e-3 m", "length", 0.0012],
  [".5 in", "length", 0.5 * IN],
  ["3.5", "length", 3.5],
  ["9 ft2", "area", 9 * FT ** 2],
  ["9 ft^2", "area", 9 * FT ** 2],
  ["9 ft²", "area", 9 * FT ** 2],
  ["9 sq ft", "area", 9 * FT ** 2],
  ["2 yd3", "volume", 54 * FT ** 3],
  ["2 cu yd", "volume", 54 * FT ** 3],
  ["3,990 lb", "force", 3990 * LBF],
  ["3990 lbf", "force", 3990 * LBF],
  ["1 kip", "force", 1000 * LBF],
  ["2 kN", "force", 2000],
  ["10 kg", "force", 98.0665],
  ["0.121 lb/ft", "lineForce", (0.121 * LBF) / FT],
  ["1500 psf", "pressure", (1500 * LBF) / FT ** 2],
  ["50 ksi", "stress", (50_000 * LBF) / IN ** 2],
  ["200 GPa", "stress", 200e9],
  ["110 pcf", "unitWeight", (110 * LBF) / FT ** 3],
  ["400 psf/ft", "pressurePerDepth", (400 * LBF) / FT ** 3],
  ["400 psf per foot", "unitWeight", (400 * LBF) / FT ** 3],
  ["400 lb/ft2/ft", "unitWeight", (400 * LBF) / FT ** 3],
  ["105 mph", "speed", (105 * 5280 * FT) / 3600],
  ["90 km/h", "speed", 25],
  ["10 kn", "speed", 18520 / 3600],
  ["180°", "angle", Math.PI],
  ["31,500 ft-lb", "moment", 31_500 * FT * LBF],
  ["2 kN·m", "moment", 2000],
  ["10 lb", "mass", 4.5359237],
  ["60 lb/yd3", "density", (60 * 0.45359237) / (27 * FT ** 3)],
];

test.each(accepted)("parseQuantity(%j, %j) gives %d in SI", (text, dimension, si) => {
  const parsed = parseQuantity(text, dimension);
  expect(parsed.ok && Math.abs(parsed.value / si - 1)).toBeLessThan(1e-14);
});

test("parseQuantity gives one number for one length, however it is written", () => {
  const ways = ["18 ft 6 in", "222 in", "18.5 ft", "18 1/2 ft", `18' 6"`, "5.6388 m", "5638.8 mm"];
  expect(new Set(ways.map((text) => JSON.stringify(parseQuantity(text, "length")))).size).toBe(1);
});

const refused: [string, Dimension, string][] = [
  ["105 mhp", "speed", '"mhp" isn\'t a unit of speed; write mph, km/h, m/s or kn, as "105 mph"'],
  ["12 kN", "speed", '"kN" is a unit of force, not of speed; write mph, km/h, m/s or kn, as "105 mph"'],
  ["5 ft2", "length", '"ft2" is a unit of area, not of length; write ft, in, m or mm, as "18 ft 6 in"'],
  ["5 1/m", "length", '"1/m" isn\'t a unit of length; write ft, in, m or mm, as "18 ft 6 in"'],
  ["20 ft 6", "length", '"ft 6" isn\'t a unit of length; write ft, in, m or mm, as "18 ft 6 in"'],
  ["", "length", 'found nothing, expected a length (ft, in, m or mm), as "18 ft 6 in"'],
  [
    "tall",
    "length",
    '"tall" doesn\'t start with a number; write a length (ft, in, m or mm), as "18 ft 6 in"',
  ],
  [
    "0,101 in",
    "length",
    '"0,101 in" isn\'t a number with a unit; write a decimal point and no comma, ft, in, m or mm, as "18 ft 6 in"',
  ],
];

test.each(refused)("parseQuantity(%j, %j) is refused with the remedy", (text, dimension, message) => {
  const parsed = parseQuantity(text, dimension);
  expect(parsed).toMatchObject({ ok: false, message, found: JSON.stringify(text) });
});

test.each([
  "1,2345 ft",
  "1..2 ft",
  "5 in 6 ft",
  "5 ft 6 kg",
  "1/0 ft",
  "NaN ft",
  "Infinity m",
  "9e999 m",
  "5 cups",
])("parseQuantity(%j) is no length", (text) => {
  expect(parseQuantity(text, "length").ok).toBe(false);
});

test("parseQuantity refuses text too long to be a quantity without reading it", () => {
  const parsed = parseQuantity("1".repeat(100_000), "length");
  expect(parsed).toMatchObject({ ok: false, message: expect.stringContaining("100000 characters") });
  expect(!parsed.ok && parsed.found.length).toBeLessThan(100);
});

describe.each(Object.keys(dimensions) as Dimension[])("dimension %s", (dimension) => {
  const { write, example, base, us, si } = dimensions[dimension];
  test("reads its own example, its base as 1, and every unit it suggests or shows", () => {
    expect(parseQuantity(example, dimension).ok).toBe(true);
    expect(parseQuantity(`1 ${base}`, dimension)).toEqual({ ok: true, value: 1 });
    for (const unit of [...write, us.unit, si.unit])
      expect(parseQuantity(`1 ${unit}`, dimension).ok, unit).toBe(true);
  });
});
