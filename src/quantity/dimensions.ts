/** How one system writes a dimension: the unit, as it is shown and as `units.ts` reads it, and usual decimals. */
interface Shown {
  readonly unit: string;
  readonly decimals: number;
}

interface DimensionEntry {
  /** With its article: "a speed". */
  readonly name: string;
  /** Without: "speed". */
  readonly noun: string;
  /** Coherent SI unit: what a bare number means. */
  readonly base: string;
  /** Units to suggest when a unit is wrong. More are read. */
  readonly write: readonly string[];
  readonly example: string;
  readonly us: Shown;
  readonly si: Shown;
}

/**
 * Everything measured. Several entries may share one physical dimension and differ only in what is usual to
 * write: a mast's height is shown in feet, a leg's diameter ("size") in inches.
 */
export const dimensions = {
  length: {
    name: "a length",
    noun: "length",
    base: "m",
    write: ["ft", "in", "m", "mm"],
    example: "18 ft 6 in",
    us: { unit: "ft", decimals: 1 },
    si: { unit: "m", decimals: 2 },
  },
  size: {
    name: "a length",
    noun: "length",
    base: "m",
    write: ["in", "ft", "mm", "m"],
    example: "7/8 in",
    us: { unit: "in", decimals: 3 },
    si: { unit: "mm", decimals: 1 },
  },
  area: {
    name: "an area",
    noun: "area",
    base: "m²",
    write: ["ft²", "in²", "m²", "mm²"],
    example: "9 ft2",
    us: { unit: "ft²", decimals: 1 },
    si: { unit: "m²", decimals: 2 },
  },
  sectionArea: {
    name: "an area",
    noun: "area",
    base: "m²",
    write: ["in²", "mm²", "m²"],
    example: "0.194 in2",
    us: { unit: "in²", decimals: 3 },
    si: { unit: "mm²", decimals: 0 },
  },
  sectionModulus: {
    name: "a section modulus",
    noun: "section modulus",
    base: "m³",
    write: ["in³", "mm³", "m³"],
    example: "4.05 in3",
    us: { unit: "in³", decimals: 2 },
    si: { unit: "mm³", decimals: 0 },
  },
  volume: {
    name: "a volume",
    noun: "volume",
    base: "m³",
    write: ["yd³", "ft³", "m³"],
    example: "2 yd3",
    us: { unit: "yd³", decimals: 2 },
    si: { unit: "m³", decimals: 2 },
  },
  force: {
    name: "a force",
    noun: "force",
    base: "N",
    write: ["lbf", "kip", "N", "kN"],
    example: "3,990 lbf",
    us: { unit: "lbf", decimals: 0 },
    si: { unit: "N", decimals: 0 },
  },
  lineForce: {
    name: "a force per length",
    noun: "force per length",
    base: "N/m",
    write: ["lbf/ft", "plf", "N/m"],
    example: "0.121 lbf/ft",
    us: { unit: "lbf/ft", decimals: 3 },
    si: { unit: "N/m", decimals: 2 },
  },
  pressure: {
    name: "a pressure",
    noun: "pressure",
    base: "Pa",
    write: ["psf", "psi", "ksi", "Pa", "kPa", "MPa"],
    example: "1,500 psf",
    us: { unit: "psf", decimals: 0 },
    si: { unit: "kPa", decimals: 2 },
  },
  stress: {
    name: "a stress",
    noun: "stress",
    base: "Pa",
    write: ["ksi", "psi", "MPa", "GPa"],
    example: "50 ksi",
    us: { unit: "ksi", decimals: 1 },
    si: { unit: "MPa", decimals: 0 },
  },
  unitWeight: {
    name: "a unit weight",
    noun: "unit weight",
    base: "N/m³",
    write: ["pcf", "kN/m³"],
    example: "110 pcf",
    us: { unit: "pcf", decimals: 0 },
    si: { unit: "kN/m³", decimals: 1 },
  },
  pressurePerDepth: {
    name: "a pressure per depth",
    noun: "pressure per depth",
    base: "Pa/m",
    write: ["psf/ft", "kPa/m"],
    example: "400 psf/ft",
    us: { unit: "psf/ft", decimals: 0 },
    si: { unit: "kPa/m", decimals: 1 },
  },
  speed: {
    name: "a speed",
    noun: "speed",
    base: "m/s",
    write: ["mph", "km/h", "m/s", "kn"],
    example: "105 mph",
    us: { unit: "mph", decimals: 0 },
    si: { unit: "m/s", decimals: 1 },
  },
  angle: {
    name: "an angle",
    noun: "angle",
    base: "rad",
    write: ["deg", "rad"],
    example: "30 deg",
    us: { unit: "°", decimals: 1 },
    si: { unit: "°", decimals: 1 },
  },
  moment: {
    name: "a moment",
    noun: "moment",
    base: "N m",
    write: ["lbf ft", "kip ft", "N m", "kN m"],
    example: "3,236 lbf ft",
    us: { unit: "lbf ft", decimals: 0 },
    si: { unit: "N m", decimals: 0 },
  },
  mass: {
    name: "a mass",
    noun: "mass",
    base: "kg",
    write: ["lb", "kg"],
    example: "42 lb",
    us: { unit: "lb", decimals: 0 },
    si: { unit: "kg", decimals: 1 },
  },
  density: {
    name: "a mass per volume",
    noun: "mass per volume",
    base: "kg/m³",
    write: ["lb/yd³", "lb/ft³", "kg/m³"],
    example: "100 lb/yd3",
    us: { unit: "lb/yd³", decimals: 0 },
    si: { unit: "kg/m³", decimals: 0 },
  },
  time: {
    name: "a time",
    noun: "time",
    base: "s",
    write: ["s", "min", "h"],
    example: "8.81 s",
    us: { unit: "s", decimals: 2 },
    si: { unit: "s", decimals: 2 },
  },
  work: {
    name: "a time of work",
    noun: "time of work",
    base: "s",
    write: ["h", "min"],
    example: "2.5 h",
    us: { unit: "h", decimals: 1 },
    si: { unit: "h", decimals: 1 },
  },
  workPerVolume: {
    name: "a time of work per volume",
    noun: "time of work per volume",
    base: "s/m³",
    write: ["h/yd³", "h/ft³", "h/m³"],
    example: "2.5 h/yd3",
    us: { unit: "h/yd³", decimals: 1 },
    si: { unit: "h/m³", decimals: 1 },
  },
  workPerLength: {
    name: "a time of work per length",
    noun: "time of work per length",
    base: "s/m",
    write: ["min/ft", "h/ft", "min/m", "h/m"],
    example: "9 min/ft",
    us: { unit: "min/ft", decimals: 1 },
    si: { unit: "min/m", decimals: 1 },
  },
} as const satisfies Record<string, DimensionEntry>;

export type Dimension = keyof typeof dimensions;
export type UnitSystem = "us" | "si";

/** `["mph", "km/h", "kn"]` as "mph, km/h or kn". */
const orList = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;

/** `mph, km/h, m/s or kn, as "105 mph"`: the remedy that every message of a dimension ends with. */
export const howToWrite = (dimension: Dimension): string =>
  `${orList(dimensions[dimension].write)}, as ${JSON.stringify(dimensions[dimension].example)}`;

/** `a speed (mph, km/h, m/s or kn), as "105 mph"`: what a field expects. */
export const whatToWrite = (dimension: Dimension): string => {
  const { name, write, example } = dimensions[dimension];
  return `${name} (${orList(write)}), as ${JSON.stringify(example)}`;
};
