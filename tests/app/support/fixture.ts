import type { Catalog } from "../../../src/model/catalog.ts";
import type { Design } from "../../../src/model/design.ts";
import type { Study } from "../../../src/model/study.ts";
import type { CaseResponse, Check, Verdict } from "../../../src/model/verdict.ts";
import type { Judged, Proof } from "../../../src/search/types.ts";

/** Invented figures that only have the shape of an answer: none is a check value. */
const ft = 0.3048;
const inch = 0.0254;
const lbf = 4.4482216152605;

const section = (id: string, face: number, leg: number, wall: number, price: number) => ({
  id,
  family: id,
  legs: 3 as const,
  face: face * inch,
  leg: { diameter: leg * inch, wall: wall * inch },
  bracing: { pattern: "single" as const, member: { diameter: 0.375 * inch } },
  panel: 15 * inch,
  yield: 250e6,
  modulus: 200e9,
  tubing: "cold-formed" as const,
  extraWeight: 0.08,
  pieces: [{ length: 10 * ft, price }],
  used: false,
  invented: true,
});

const factor = { required: 1, source: "invented" };
const catalog: Catalog = {
  insulators: [],
  torqueArms: [],
  sections: [
    section("3leg-9", 9, 7 / 8, 0.083, 218),
    section("3leg-10.5", 10.5, 1, 0.083, 261),
    {
      ...section("3leg-10.5-used", 10.5, 1, 0.083, 118),
      family: "3leg-10.5",
      measuredWall: 0.066 * inch,
      used: true,
      pieces: [{ length: 10 * ft, price: 118, have: 8 }],
    },
    section("3leg-13", 13, 1.125, 0.083, 302),
  ],
  strand: [
    {
      id: "ehs-3-16",
      diameter: (3 / 16) * inch,
      grade: "EHS",
      wire: 0.062 * inch,
      breakingStrength: 3990 * lbf,
      weight: 1.07,
      modulus: 160e9,
      price: 0.8,
      fittings: 21,
      efficiency: 1,
      source: "invented",
    },
  ],
  anchors: [
    {
      id: "deadman",
      kind: "deadman",
      name: "Buried concrete block",
      length: 3 * ft,
      height: 1.5 * ft,
      width: 1.5 * ft,
      depth: 4.3 * ft,
      lifts: "prism",
      rod: 38,
      invented: true,
    },
  ],
  footings: [
    { id: "block", kind: "block", name: "Square block", width: 2.5 * ft, depth: 4 * ft, invented: true },
  ],
  soils: [
    {
      id: "clay",
      name: "Stiff clay",
      bearing: 71820,
      lateralPerDepth: 15700,
      cohesion: 6200,
      unitWeight: 17280,
      digging: "firm",
      values: "allowable",
      source: "invented",
    },
  ],
  antennas: [
    {
      id: "beam-5el",
      name: "beam",
      area: 12 * 0.0929,
      areaKind: "effective",
      weight: 60 * lbf,
      boom: 22 * ft,
      elements: 4,
      span: 36 * ft,
      bands: "14 MHz",
      gain: 8,
      price: 640,
      invented: true,
    },
    {
      id: "beam-6m",
      name: "beam",
      area: 3 * 0.0929,
      areaKind: "effective",
      weight: 15 * lbf,
      boom: 10 * ft,
      elements: 6,
      span: 6 * ft,
      bands: "144 MHz",
      price: 210,
      invented: true,
    },
  ],
  pipes: [
    {
      id: "pipe-11",
      name: "1 7/8 in pipe",
      diameter: 1.875 * inch,
      wall: 0.148 * inch,
      yield: 300e6,
      length: 11 * ft,
      price: 74,
      invented: true,
    },
  ],
  rules: [
    {
      id: "asd",
      name: "ASCE 7-16, allowable stress",
      windFactor: { uniform: 1, "asce7-16": 0.6, source: "invented" },
      leg: factor,
      legTension: factor,
      bracing: factor,
      stability: factor,
      guy: factor,
      pipe: factor,
      uplift: factor,
      anchorLateral: factor,
      screw: factor,
      rockRod: factor,
      bearing: factor,
      overturning: factor,
      sliding: factor,
      baseCompression: factor,
      tension: { least: 0.08, most: 0.15, source: "invented" },
      tilt: { most: 2, source: "invented" },
      upliftAngle: { degrees: 30, source: "invented" },
      concrete: { strength: 20e6, unitWeight: 23500, source: "invented" },
      doubleLateral: false,
    } as unknown as Catalog["rules"][number],
  ],
  prices: {
    currency: "$",
    concrete: 200,
    concreteWaste: 0.1,
    forms: 20,
    rebar: 2,
    rebarPerVolume: 40,
    digging: { easy: 40, firm: 60, hard: 90, rock: 300 },
    baseHardware: 60,
    guyBracket: 30,
    raising: 8,
    termination: 1,
    permit: 90,
    work: {
      setUp: 28_800,
      digging: { easy: 7e3, firm: 12e3, hard: 24e3, rock: 66e3 },
      pouring: 14e3,
      anchor: 5400,
      guy: 3600,
      raising: 1770,
      antennas: 21_600,
      curing: 604_800,
    },
    invented: true,
  },
};

const study: Study = {
  mastwright: 1,
  name: "Upper pasture, first mast",
  story: "An invented lot.",
  aim: "cost",
  site: {
    wind: {
      basis: "asce7-16",
      speed: 120 * 0.44704,
      exposure: "C",
      topographicFactor: 1,
      groundElevation: 0,
      gustFactor: 0.85,
    },
    soil: "clay",
    frostDepth: 2.5 * ft,
    pourBelowWater: false,
    greatestDig: 3,
  },
  lot: {
    corners: [
      [0, 0],
      [92 * ft, 0],
      [92 * ft, 126 * ft],
      [0, 126 * ft],
    ],
    mast: [46 * ft, 62 * ft],
    setback: 10 * ft,
    powerLines: [
      {
        name: "power line",
        points: [
          [134 * ft, -20 * ft],
          [134 * ft, 150 * ft],
        ],
      },
    ],
  },
  wishes: {
    height: 70 * ft,
    packages: [
      {
        id: "beam-and-6m",
        name: "two beams",
        pipe: "pipe-11",
        items: [
          { antenna: "beam-5el", offset: 0, above: 2 * ft },
          { antenna: "beam-6m", offset: 0, above: 5.5 * ft },
        ],
        cableWidth: 0.03,
        ladder: 0,
        runWeight: 0,
      },
    ],
    margin: 0,
    serviceWind: 1,
    lossOfOneGuy: false,
    insulatedBase: false,
  },
  rules: { set: "asd" },
  parts: {
    sections: "all",
    mixedStacks: true,
    supports: ["guyed", "freestanding"],
    guysPerLevel: [3],
    levelCounts: [1, 2, 3],
    levelHeights: { from: 4.572, to: 60.96, step: 1.524 },
    strands: "all",
    tensionEachLevel: false,
    drawnIn: false,
    tensions: [0.1],
    radius: { from: 6.096, to: 24.384, step: 0.6096 },
    rotation: { from: 0, to: 110, step: 10 },
    footings: "all",
    anchors: "all",
    insulators: "all",
  },
  catalog: {},
};

const design: Design = {
  package: "beam-and-6m",
  height: 70 * ft,
  stack: [{ section: "3leg-9", length: 70 * ft }],
  guys: {
    perLevel: 3,
    radius: 28 * ft,
    rotation: 17,
    tension: 0.1,
    levels: [
      { height: 33 * ft, strand: "ehs-3-16" },
      { height: 64 * ft, strand: "ehs-3-16" },
    ],
    anchor: {
      kind: "deadman",
      row: "deadman",
      length: 3 * ft,
      height: 1.5 * ft,
      width: 1.5 * ft,
      depth: 4.3 * ft,
    },
  },
  footing: { kind: "block", row: "block", width: 2.5 * ft, depth: 4 * ft },
};

const nodes = Array.from({ length: 71 }, (_, i) => i * ft);
const momentAt = (feet: number): number => {
  if (feet > 64) return ((70 - feet) / 6) * 1400 + 800 + ((70 - feet) / 6) * 400;
  if (feet > 33) return 859 + ((feet - 33) / 31) * 1741 - 4 * 700 * ((feet - 33) / 31) * ((64 - feet) / 31);
  return (feet / 33) * 859 - 4 * 800 * (feet / 33) * ((33 - feet) / 33);
};
const load: CaseResponse = {
  id: "wind-180",
  title: "Wind away from anchor 1",
  windToward: 180,
  stable: true,
  bucklingFactor: 2.1,
  z: nodes,
  along: nodes.map((z) => 5.5 * inch * (z / (70 * ft)) ** 2.2 + 0.2 * inch * Math.sin(z)),
  across: nodes.map(() => 0),
  moment: nodes.map((z) => momentAt(z / ft) * 1.3558),
  shear: nodes.map(() => 900),
  compression: nodes.map((z) => 14000 - 300 * z),
  guys: [0, 1].flatMap((level) =>
    [0, 1, 2].map((anchor) => {
      const pull = anchor === 0 ? [586, 1235][level] : [60, 20][level];
      return {
        level: level + 1,
        anchor: anchor + 1,
        tensionAnchor: pull * lbf,
        tensionMast: pull * lbf,
        unstressedLength: 20,
      };
    }),
  ),
  anchors: [
    { uplift: 1578 * lbf, lateral: 874 * lbf },
    { uplift: 40 * lbf, lateral: 20 * lbf },
    { uplift: 40 * lbf, lateral: 20 * lbf },
  ],
  base: { compression: 3140 * lbf, shear: 100 * lbf, moment: 0 },
  pressure: Array.from({ length: 16 }, (_, i) => ({
    z: i * 5 * ft,
    q: 909 * Math.max(0.74, (i / 15) ** 0.22),
  })),
};

const strength = (title: string, where: string, utilisation: number, at?: number): Check => ({
  id: `${title} ${where}`.toLowerCase().replaceAll(" ", "-"),
  limitState: title.toLowerCase().replaceAll(" ", "-"),
  title,
  kind: "strength",
  where,
  at: at === undefined ? undefined : at * ft,
  loadCase: "wind-180",
  unit: "force",
  demand: 4982 * lbf * utilisation,
  capacity: 4982 * lbf,
  required: 1,
  utilisation,
  passes: utilisation <= 1,
  source: "invented for a demonstration",
});
const limit = (title: string, where: string): Check => ({
  ...strength(title, where, 0.5),
  kind: "limit",
  unit: "ratio",
  demand: 0.1,
  capacity: 0.15,
});

const verdictOf = (worst: number): Verdict => ({
  passes: worst <= 1,
  smallestMargin: 1 / worst - 1,
  checks: [
    strength("Leg compression", "under the upper guys", worst, 64),
    strength("Anchor uplift", "anchor toward 17°", 0.94),
    strength("Anchor lateral", "anchor toward 17°", 0.86),
    strength("Whole-mast stability", "between guys", 0.74, 50),
    strength("Guy strength", "upper guys", 0.62, 64),
    strength("Base bearing", "block, stiff clay", 0.61),
    strength("Bracing shear", "top section", 0.58, 65),
    strength("Antenna pipe bending", "at the mast top", 0.55, 70),
    strength("Leg tension", "splice", 0.43, 60),
    strength("Guy strength", "lower guys", 0.29, 33),
    strength("Base sliding", "block", 0.21),
    limit("Initial tension", "10 % of breaking strength; window 8 to 15 %"),
    { ...limit("Fall zone", "power line 88 ft away, mast reaches 77 ft"), kind: "warning" },
  ],
  bill: {
    total: 3360,
    lines: [
      {
        group: "sections",
        item: "9 in three-leg, 10 ft",
        quantity: 7,
        unit: "each",
        price: 218,
        amount: 1526,
      },
      { group: "footing", item: "Concrete", quantity: 1.3, unit: "m3", price: 200, amount: 382 },
      { group: "anchors", item: "Concrete and rods", quantity: 3, unit: "each", price: 90, amount: 270 },
      { group: "guys", item: "3/16 in EHS", quantity: 104, unit: "m", price: 2.6, amount: 438 },
      { group: "other", item: "Permit, base plate", quantity: 1, unit: "each", price: 319, amount: 319 },
      { group: "digging", item: "Firm ground", quantity: 4, unit: "m3", price: 60, amount: 245 },
      { group: "raising", item: "Raising", quantity: 21.3, unit: "m", price: 8.4, amount: 180 },
    ],
  },
  concreteVolume: 1.68 * 0.764555,
  dugVolume: 3.4,
  work: { hands: 90_000, lines: [{ what: "raising", hands: 90_000 }], curing: 604_800 },
  assumptions: ["No ice was stated, so none is carried."],
  cases: [load],
});

const proof: Proof = {
  gridSize: 1.3e11,
  decided: 1.3e11,
  structures: 4.1e6,
  analysed: 2914,
  pruned: {
    "cantilever above the top guys": 5.2e10,
    "priced above the answer": 7.7e10,
    "anchors outside the lot": 8e8,
  },
  bound: 3360,
  gap: 0,
  seconds: 1.1,
  workers: 2,
};

const judged = (worst = 0.97): Judged => ({ design, verdict: verdictOf(worst) });

export const fixture = { study, catalog, design, proof, judged };
