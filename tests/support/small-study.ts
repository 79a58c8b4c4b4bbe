import fc from "fast-check";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { compile } from "../../src/problem/compile.ts";
import type { Problem } from "../../src/problem/types.ts";

/** Parses and makes ready; a study of the tests that does not parse is a broken test. */
export function problemOf(file: StudyFile): Problem {
  const read = parseStudy(file, { catalog: defaultCatalog });
  if (!read.ok) throw new Error(read.errors.map((error) => error.message).join("; "));
  return compile(read.study, read.catalog);
}

const subset = <T>(values: readonly T[], most: number) =>
  fc.subarray([...values], { minLength: 1, maxLength: Math.min(most, values.length) });

const feet = (value: number) => `${value} ft`;

/** Beside the mast: big and light, heavy and slim, on the axis or off it, at a guy level or between. */
const sideAntenna = fc.record({
  area: fc.constantFrom(0, 1, 3, 8),
  kind: fc.constantFrom("flat" as const, "round" as const, "effective" as const),
  weight: fc.constantFrom(0, 40, 150, 600),
  offset: fc.constantFrom(0, 0, 1, 3),
  fromTop: fc.boolean(),
  feet: fc.constantFrom(4, 10, 15, 20, 22, 25),
});

/**
 * Studies small enough to enumerate, wide enough to meet every rule: safe and unsafe, guyed and free-standing,
 * mixed stacks, used stock, lots that bar some stars, soils of every kind, both aims, margins and caps.
 */
export const smallStudy: fc.Arbitrary<StudyFile> = fc
  .record({
    wind: fc.oneof(
      fc.record({
        basis: fc.constant("uniform" as const),
        pressure: fc.integer({ min: 6, max: 30 }).map((p) => `${p} psf`),
      }),
      fc.record({
        basis: fc.constantFrom("asce7-16" as const, "asce7-22" as const),
        speed: fc.integer({ min: 60, max: 125 }).map((v) => `${v} mph`),
        exposure: fc.constantFrom("B" as const, "C" as const, "D" as const),
        hill: fc.constantFrom(
          undefined,
          undefined,
          { shape: "ridge" as const, height: "60 ft", halfLength: "150 ft" },
          { shape: "escarpment" as const, height: "80 ft", halfLength: "100 ft", distance: "40 ft" },
        ),
        gustFactor: fc.constantFrom(0.85, 0.85, "computed" as const),
      }),
      fc.record({
        basis: fc.constant("en1991" as const),
        basicSpeed: fc.integer({ min: 15, max: 35 }).map((v) => `${v} m/s`),
        terrain: fc.constantFrom("0" as const, "II" as const, "IV" as const),
        structuralFactor: fc.constantFrom("computed" as const, 1.4),
        hill: fc.constantFrom(undefined, {
          shape: "hill" as const,
          height: "12 m",
          upwindLength: "60 m",
          downwindLength: "50 m",
        }),
      }),
    ),
    ice: fc.constantFrom(
      undefined,
      undefined,
      undefined,
      { inches: 0.25, light: true },
      { inches: 0.75, light: false },
    ),
    air: fc.constantFrom(
      ...Array.from({ length: 8 }, () => undefined),
      { installed: 15, coldest: -30, hottest: 40 },
      { installed: 0, coldest: 0, hottest: 35, iced: -5 },
    ),
    service: fc.constantFrom(
      ...Array.from({ length: 6 }, () => ({})),
      { swayLimit: 1.5, serviceWind: 0.4 },
      { twistLimit: 2 },
    ),
    hardware: fc.constantFrom(
      undefined,
      undefined,
      { weight: "6 lbf" },
      { weight: "40 lbf", length: "3 ft", price: "$11.50" },
    ),
    baseStiffness: fc.constantFrom(undefined, undefined, undefined, undefined, 3e5, 5e6),
    lossOfOneGuy: fc.constantFrom(...Array.from({ length: 7 }, () => false), true),
    soil: fc.constantFrom("ibc-2", "ibc-3", "ibc-4", "ibc-5", "clay-over-gravel"),
    rules: fc.constantFrom("practice", "practice", "asce7-asd", "asce7-asd", "asce7-lrfd", "en"),
    lifts: fc.constantFrom("prism" as const, "cone" as const),
    aim: fc.constantFrom("cost" as const, "cost" as const, "concrete" as const),
    heights: subset([30, 40, 50, 60, 70], 2),
    antenna: fc.record({
      area: fc.integer({ min: 1, max: 12 }),
      weight: fc.integer({ min: 20, max: 150 }),
      above: fc.integer({ min: 1, max: 4 }),
    }),
    sides: fc.oneof(fc.array(sideAntenna, { maxLength: 0 }), fc.array(sideAntenna, { maxLength: 2 })),
    ladder: fc.constantFrom("0 in", "0 in", "2 in"),
    margin: fc.constantFrom(0, 0, 0, 0.1, 0.3),
    sections: fc.constantFrom(
      ["3leg-7.5"],
      ["3leg-9", "3leg-9-used"],
      ["3leg-10.5", "4leg-11"],
      ["3leg-13", "3leg-13-used"],
      ["3leg-20-used", "3leg-20"],
      ["4leg-21", "3leg-26"],
      ["3leg-31"],
      ["3leg-18-z", "4leg-24-angle"],
      ["rated"],
    ),
    supports: fc.constantFrom(
      ["guyed" as const],
      ["guyed" as const],
      ["guyed" as const, "freestanding" as const],
      ["freestanding" as const],
    ),
    perLevel: fc.constantFrom([3 as const], [3 as const], [4 as const], [3 as const, 4 as const]),
    levelCounts: fc.constantFrom([1], [2], [1, 2], [1, 2, 3]),
    levelHeights: subset([15, 20, 25, 30, 35, 40, 50, 60, 70], 3),
    strands: subset(["ehs-3-16", "hs-3-16", "ehs-1-4", "ehs-5-16", "cm-1-4"], 2),
    tensions: subset([0.08, 0.1, 0.12, 0.15, 0.2], 3),
    radii: subset([12, 16, 20, 24, 30, 40], 3),
    rotations: subset([0, 15, 40, 70, 100], 2),
    width: fc.integer({ min: 50, max: 110 }),
    deadman: fc.record({ length: subset([2, 4, 6], 2), depth: subset([3, 4, 5], 2) }),
    anchors: subset(["deadman", "screw-7", "screw-9", "rock-rod", "post", "low-post"], 3),
    block: fc.record({ width: subset([2, 3, 5], 2), depth: subset([3, 5], 2) }),
    cap: fc.constantFrom(undefined, undefined, undefined, undefined, "0.8 yd3", "2 yd3"),
    mixed: fc.boolean(),
    // where there is rock to bond to
    rockPad: fc.constantFrom("none", "beside", "alone"),
    water: fc.constantFrom(
      {},
      {},
      {},
      {},
      {},
      {},
      { waterTable: "4 ft" },
      { waterTable: "2 ft 6 in", pourBelowWater: true },
    ),
    footings: fc.constantFrom<string[]>(
      ["block"],
      ["block"],
      ["pier"],
      ["block", "pier"],
      ["pad"],
      ["pad", "block"],
    ),
    each: fc.constantFrom(false, false, false, true),
    drawnIn: fc.constantFrom(false, false, false, true),
    slope: fc.constantFrom(
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
      { toward: 30, fall: 0.05 },
      { toward: 200, fall: 0.2 },
      { toward: 310, fall: 0.4 },
    ),
    // drawn last, so that what came before keeps its draws
    insulators: fc.constantFrom<string[]>(...Array.from({ length: 15 }, () => []), [
      "insulator-7",
      "insulator-9",
    ]),
    arms: fc.constantFrom<string[]>(...Array.from({ length: 11 }, () => []), ["arm-28"]),
    deadmanBars: fc.constantFrom(...Array.from({ length: 9 }, () => "#4" as const), undefined),
  })
  .map((g): StudyFile => {
    const known = new Set(defaultCatalog.strand.map((row) => row.id));
    const strands = g.strands.filter((id) => known.has(id));
    const armed =
      g.arms.length > 0 &&
      g.perLevel.every((count) => count === 3) &&
      !(g.slope || g.drawnIn || g.lossOfOneGuy || g.insulators.length > 0);
    const insulated = g.insulators.length > 0 && g.supports.some((one) => one === "guyed");
    return {
      mastwright: 1,
      name: "small",
      aim: g.aim,
      site: {
        wind: g.wind,
        ice: g.ice && {
          thickness: `${g.ice.inches} in`,
          ...(g.wind.basis === "uniform"
            ? { pressure: g.ice.light ? "2 psf" : "8 psf" }
            : { speed: g.ice.light ? "30 mph" : "60 mph" }),
        },
        temperature: g.air,
        // a base on a spring asks the soil for a modulus
        baseStiffness: g.baseStiffness,
        soil: g.soil,
        frostDepth: "2 ft",
        greatestDig: "5 ft",
        ...g.water,
      },
      lot: {
        corners: [
          ["0 ft", "0 ft"],
          [feet(g.width), "0 ft"],
          [feet(g.width), "100 ft"],
          ["0 ft", "90 ft"],
        ],
        mast: [feet(g.width / 2), "45 ft"],
        setback: "2 ft",
        slope: g.slope,
      },
      wishes: {
        height: g.heights.map(feet),
        margin: g.margin,
        concreteCap: g.cap,
        ...g.service,
        lossOfOneGuy: g.lossOfOneGuy,
        insulatedBase: insulated,
        packages: [
          {
            id: "one",
            name: "one antenna",
            pipe: "pipe-17",
            items: [
              {
                area: `${g.antenna.area} ft2`,
                areaKind: "round",
                weight: `${g.antenna.weight} lbf`,
                above: feet(g.antenna.above),
              },
              ...g.sides.map((side) => ({
                area: `${side.area} ft2`,
                areaKind: side.kind,
                weight: `${side.weight} lbf`,
                offset: feet(insulated ? 0 : side.offset),
                ...(side.fromTop ? { below: feet(side.feet) } : { at: feet(side.feet) }),
              })),
            ],
            cableWidth: "1 in",
            ladder: g.ladder,
            runWeight: g.ladder === "0 in" ? 0 : "3 lbf/ft",
          },
        ],
      },
      rules: { set: g.rules },
      parts: {
        sections: [...g.sections],
        mixedStacks: g.mixed,
        supports: insulated ? ["guyed"] : [...g.supports],
        guysPerLevel: [...g.perLevel],
        levelCounts: [...g.levelCounts],
        levelHeights: g.levelHeights.map(feet),
        strands: strands.length > 0 ? strands : ["ehs-3-16"],
        tensions: g.tensions,
        tensionEachLevel: g.each,
        drawnIn: g.drawnIn,
        radius: g.radii.map(feet),
        rotation: g.rotations,
        footings:
          g.soil !== "ibc-2" || g.rockPad === "none"
            ? g.footings
            : g.rockPad === "alone"
              ? ["rock-pad"]
              : [...g.footings, "rock-pad"],
        anchors: g.anchors,
        guyHardware: insulated
          ? { weight: "3 lbf", ...g.hardware, breakingStrength: "5200 lbf" }
          : g.hardware,
        insulators: insulated ? g.insulators : "all",
        ...(armed ? { torqueArms: g.arms } : {}),
      },
      catalog: {
        sections: [
          {
            id: "rated",
            family: "rated",
            legs: 4,
            face: "14 in",
            leg: { diameter: "1 1/8 in", wall: "0.095 in" },
            measuredWall: "0.08 in",
            bracing: {
              pattern: "x",
              member: { diameter: "5/16 in" },
              horizontal: { diameter: "5/8 in", wall: "0.065 in" },
            },
            panel: "15 in",
            yield: "50 ksi",
            rated: { moment: "11000 lbf ft", axial: "26000 lbf", source: "invented for the tests" },
            pieces: [{ length: "10 ft", price: "$390" }],
            invented: true,
          },
        ],
        anchors: [
          {
            id: "deadman",
            kind: "deadman",
            name: "Deadman of the tests",
            length: g.deadman.length.map(feet),
            height: "1 ft",
            width: "1 ft",
            depth: g.deadman.depth.map(feet),
            lifts: g.lifts,
            bars: g.deadmanBars,
            rod: "$38",
            invented: true,
          },
          {
            id: "post",
            kind: "post",
            name: "Post of the tests",
            width: ["2 ft", "3 ft"],
            depth: "4 ft",
            height: "3 ft",
            section: {
              plasticModulus: "10.8 in3",
              area: "4.43 in2",
              shearArea: "1.38 in2",
              leastRadius: "1.45 in",
            },
            yield: "50 ksi",
            post: "$20/ft",
            price: "$40",
            invented: true,
          },
          {
            id: "low-post",
            kind: "post",
            name: "Low post of the tests",
            width: "3 ft",
            depth: "3 ft",
            height: "1 ft",
            section: { diameter: "6 in", wall: "0.3 in" },
            yield: "42 ksi",
            post: "$16/ft",
            price: "$40",
            invented: true,
          },
          {
            id: "rock-rod",
            kind: "rock-rod",
            name: "Rock rod of the tests",
            bar: "7/8 in",
            yield: "60 ksi",
            hole: "1 3/4 in",
            socket: ["2 ft", "4 ft"],
            drilling: "$22/ft",
            price: "$64",
            invented: true,
          },
        ],
        soils: defaultCatalog.soils
          .filter((row) => row.id === g.soil)
          .map((row) => ({ ...row, subgradeModulus: 3e7 })),
        footings: [
          {
            id: "block",
            kind: "block",
            name: "Block of the tests",
            width: g.block.width.map(feet),
            depth: g.block.depth.map(feet),
            invented: true,
          },
          {
            id: "pier",
            kind: "pier",
            name: "Pier of the tests",
            diameter: ["2 ft", "3 ft"],
            depth: g.block.depth.map(feet),
            invented: true,
          },
          {
            id: "rock-pad",
            kind: "rock-pad",
            name: "Rock pad of the tests",
            width: ["2 ft", "4 ft"],
            depth: "1 ft 6 in",
            dowels: [4],
            socket: ["2 ft", "4 ft"],
            bar: "3/4 in",
            yield: "60 ksi",
            hole: "1 1/2 in",
            edge: "6 in",
            drilling: "$22/ft",
            price: "$36",
            invented: true,
          },
          {
            id: "pad",
            kind: "pad",
            name: "Pad of the tests",
            width: ["4 ft", "6 ft"],
            thickness: "1 ft",
            depth: ["3 ft", "4 ft"],
            pedestal: "18 in",
            invented: true,
          },
        ],
      },
    };
  });

/** The same studies, each with torque arms where a study may have any, and some with an antenna that asks for them. */
export const armedStudy: fc.Arbitrary<StudyFile> = fc
  .record({ study: smallStudy, turned: fc.constantFrom(false, true, true) })
  .filter(
    ({ study: { lot, parts, wishes } }) =>
      lot.slope === undefined &&
      !parts?.drawnIn &&
      !wishes.lossOfOneGuy &&
      !wishes.insulatedBase &&
      parts?.guysPerLevel?.[0] === 3 &&
      (parts?.supports ?? []).includes("guyed"),
  )
  .map(({ study, turned }) => ({
    ...study,
    wishes: {
      ...study.wishes,
      ...(turned ? { twistLimit: 0.3, serviceWind: 0.6 } : {}),
      packages: study.wishes.packages.map((set) => ({
        ...set,
        items: turned
          ? [
              ...set.items,
              { area: "2 ft2", areaKind: "flat" as const, weight: "30 lbf", offset: "4 ft", below: "6 ft" },
            ]
          : set.items,
      })),
    },
    parts: { ...study.parts, guysPerLevel: [3], torqueArms: ["arm-16", "arm-28"] },
  }));
