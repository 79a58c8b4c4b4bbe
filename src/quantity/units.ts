import unitmath from "unitmath/dist/UnitMath.js";
import { type Dimension, dimensions } from "./dimensions.ts";

// The library's UMD build: its main entry needs a loader that plain Node 20 no longer runs.
// Its own vocabulary is left out: it takes "5 cups", calls a ton a mass, and its foot is a rounding away
// from 0.3048 m. Definitions are exact by international agreement (inch, pound, standard gravity, mile, knot).
const metric = { "": 1, m: 1e-3, c: 1e-2, k: 1e3, M: 1e6, G: 1e9 };
const vocabulary: Parameters<typeof unitmath.config>[0] = {
  definitions: {
    skipBuiltIns: true,
    quantities: { UNITLESS: "" },
    unitSystems: { si: {} },
    prefixes: {
      NONE: { "": 1 },
      METRE: { "": 1, m: 1e-3, c: 1e-2, k: 1e3 },
      GRAM: { "": 1, k: 1e3 },
      METRIC: metric,
    },
    units: {
      "": { quantity: "UNITLESS", value: 1 },
      m: { quantity: "LENGTH", prefixes: "METRE", value: 1 },
      metre: { value: "1 m", aliases: ["metres", "meter", "meters"] },
      in: { value: "0.0254 m", aliases: ["inch", "inches"] },
      ft: { value: "0.3048 m", aliases: ["foot", "feet"] },
      yd: { value: "0.9144 m", aliases: ["yard", "yards"] },
      mi: { value: "1609.344 m", aliases: ["mile", "miles"] },
      g: { quantity: "MASS", prefixes: "GRAM", value: 0.001 },
      t: { value: "1000 kg", aliases: ["tonne", "tonnes"] },
      lb: { value: "0.45359237 kg", aliases: ["lbs", "lbm", "pound", "pounds"] },
      s: { quantity: "TIME", value: 1, aliases: ["sec", "second", "seconds"] },
      min: { value: "60 s", aliases: ["minute", "minutes"] },
      h: { value: "3600 s", aliases: ["hr", "hour", "hours"] },
      rad: { quantity: "ANGLE", value: 1, aliases: ["radian", "radians"] },
      deg: { value: [Math.PI / 180, "rad"], aliases: ["degree", "degrees"] },
      N: { prefixes: "METRIC", value: "1 kg m/s^2" },
      kgf: { value: "9.80665 N" },
      lbf: { value: "4.4482216152605 N" },
      kip: { value: "4448.2216152605 N", aliases: ["kips", "klbf"] },
      Pa: { prefixes: "METRIC", value: "1 N/m^2" },
      psf: { value: "1 lbf/ft^2" },
      ksf: { value: "1 kip/ft^2" },
      psi: { value: "1 lbf/in^2" },
      ksi: { value: "1 kip/in^2" },
      pcf: { value: "1 lbf/ft^3" },
      plf: { value: "1 lbf/ft" },
      mph: { value: "1 mi/h" },
      kph: { value: "1000 m/h" },
      kn: { value: "1852 m/h", aliases: ["kt", "knot", "knots"] },
    },
  },
};

let reader: ReturnType<typeof unitmath.config> | undefined;
/** Made at the first text that is read: most of what the program loads comes before that, on a page that waits. */
const read = (value: number, text: string) => {
  reader ??= unitmath.config(vocabulary);
  return reader(value, text);
};

/** Powers of mass, length, time and angle as one word, to compare. */
type Signature = string;
interface Unit {
  readonly factor: number;
  readonly signature: Signature;
}

/** Typographers' and tradesmen's spellings, turned into the library's. */
const spelled = (text: string): string => {
  // ² becomes 2; a browser fetches its tables for that at the first call, and few units need them
  const simple = /^[\x20-\x7e]*$/.test(text) ? text : text.normalize("NFKC");
  const [over, ...under] = simple
    .replace(/°/g, "deg")
    .replace(/\b(?:sq|square)\.?\s*([a-z]+)/gi, "$1^2")
    .replace(/\b(?:cu|cubic)\.?\s*([a-z]+)/gi, "$1^3")
    .replace(/([a-z])\^?([234])\b/gi, "$1^$2")
    .replace(/\bper\b/gi, "/")
    .replace(/(?<=[a-z0-9])\s*[-·⋅*×]\s*(?=[a-z])/gi, " ")
    .split("/")
    .map((part) => part.trim());
  return under.length ? `${over}/${under.join(" ")}` : over;
};

const lookUp = (text: string): Unit | undefined => {
  try {
    const unit = read(1, text);
    const [mass, length, time] = unit.dimension;
    return {
      factor: unit.getNormalizedValue(),
      signature: [mass, length, time, unit.dimension[7]].join(" "),
    };
  } catch {
    return undefined;
  }
};

const known = new Map<string, Unit | undefined>();

/** What a unit's text means, in SI; undefined where it means nothing. "FT" and "PSF" are read as typed in haste. */
export const unitNamed = (text: string): Unit | undefined => {
  if (known.has(text)) return known.get(text);
  const plain = spelled(text);
  const shouted = /[A-Z]/.test(plain) && !/[a-z]/.test(plain);
  // no unit text can start a number of its own ("/ 3 ft"), and nobody types one this long
  const readable = /^[a-z]/i.test(plain) && plain.length <= 40;
  const unit = readable ? (lookUp(plain) ?? (shouted ? lookUp(plain.toLowerCase()) : undefined)) : undefined;
  if (known.size < 10_000) known.set(text, unit);
  return unit;
};

const signatureOf = (dimension: Dimension): Signature => unitNamed(dimensions[dimension].base)!.signature;

const GRAVITY = 9.80665; // m/s², standard, exact

/** "-1 0 1" + "0 1 -2": a weight is a mass times an acceleration. */
const timesAcceleration = (signature: Signature): Signature => {
  const [mass, length, time, angle] = signature.split(" ").map(Number);
  return [mass, length + 1, time - 2, angle].join(" ");
};

/**
 * SI per one of `text`, read as `dimension`; undefined where it measures something else. Where a force is
 * wanted a mass is read as its weight under standard gravity, as everybody writes it: "lb" is then lbf.
 */
export const factorOf = (text: string, dimension: Dimension): number | undefined => {
  const unit = unitNamed(text);
  const wanted = signatureOf(dimension);
  if (unit?.signature === wanted) return unit.factor;
  if (unit && timesAcceleration(unit.signature) === wanted) return unit.factor * GRAVITY;
  return undefined;
};

/**
 * A product rounded to 15 digits: 18 ft 6 in and 222 in are then the same number, and 3/16 in no
 * 0.004762499999999999 m.
 */
export const tidy = (value: number): number => Number(value.toPrecision(15));

/** What a unit does measure, for the message; undefined where nothing here. */
export const dimensionMeasuredBy = (text: string): Dimension | undefined => {
  const unit = unitNamed(text);
  const keys = Object.keys(dimensions) as Dimension[];
  return unit && keys.find((key) => signatureOf(key) === unit.signature);
};
