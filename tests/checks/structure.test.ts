import { describe, expect, test } from "vitest";
import { guyWind, lineLoad, loadCase, topForce } from "../../src/checks/loads.ts";
import { resolve } from "../../src/checks/resolve.ts";
import { ropeOf } from "../../src/checks/rigging.ts";
import { mastInput, sectionAt } from "../../src/checks/structure.ts";
import { verify } from "../../src/checks/verify.ts";
import { windCases } from "../../src/checks/wind-cases.ts";
import { starOf } from "../../src/problem/star.ts";
import { checkValue } from "../support/check-values.ts";
import { FOOT, INCH, KSI, POUND, PSF } from "../support/us-units.ts";
import { check, design, freeStanding, pasture, withGuys } from "./support/pasture.ts";

/** A pressure of 20 psf on flats over the whole height: everything can be worked out on paper. */
const flat = pasture((s) => {
  s.site.wind = { basis: "uniform", pressure: "20 psf" };
});
const { model } = resolve(flat, design());

describe("windCases", () => {
  test("three guys: toward one, away, across, aslant, still air; four: along and between; none: one wind", () => {
    const ids = (d: typeof model.guys) => windCases(flat, d).map((c) => c.id);
    expect(ids(model.guys)).toEqual(["toward", "away", "across", "aslant", "still"]);
    expect(
      ids(
        model.guys && {
          ...model.guys,
          star: starOf(flat.study.lot, { perLevel: 4, radius: 10, rotation: 0 }),
        },
      ),
    ).toEqual(["along", "between", "still"]);
    expect(ids(null)).toEqual(["wind-1", "wind-0.6", "still"]);
  });

  test("load and resistance factors count dead weight 1.2 and 0.9 times in wind, as it is in still air", () => {
    const lrfd = pasture((s) => (s.rules.set = "asce7-lrfd"));
    const cases = windCases(lrfd, model.guys);
    expect(cases.map((c) => [c.id, c.dead])).toEqual([
      ["toward-1.2", 1.2],
      ["away-1.2", 1.2],
      ["across-1.2", 1.2],
      ["aslant-1.2", 1.2],
      ["toward-0.9", 0.9],
      ["away-0.9", 0.9],
      ["across-0.9", 0.9],
      ["aslant-0.9", 0.9],
      ["still", 1],
    ]);
  });

  test("ice comes with its own wind, in every azimuth and in still air", () => {
    const icy = pasture((s) => {
      s.site.ice = { thickness: "0.5 in", speed: "40 mph" };
    });
    const iced = windCases(icy, model.guys).filter((c) => c.weather === "iced");
    expect(iced.map((c) => c.id)).toEqual([
      "toward-iced",
      "away-iced",
      "across-iced",
      "aslant-iced",
      "still-iced",
    ]);
  });
});

describe("loads of a pressure of 20 psf, by hand", () => {
  const byHand = (what: string, expected: number, computed: number, unit: string) =>
    checkValue({
      subject: `loads: ${what}`,
      source: "20 psf on flats, cylinders two thirds: docs/theory/wind.md",
      tag: "arithmetic",
      expected,
      computed,
      tolerance: 1e-6,
      unit,
    });

  test("on a lattice of round members, with its cable", () => {
    const { lattice } = model.stack.parts[0].section;
    // triangular mast: 1.5 p on one face, round members two thirds of that; the cable a cylinder of 1 1/4 in
    const expected = 20 * PSF * (1.5 * (2 / 3) * lattice.faceArea + 1.25 * INCH * (2 / 3));
    byHand("mast of 13 in face with a cable, N/m", expected, lineLoad(flat, model)(10), "N/m");
  });

  test("on guys: two thirds of the pressure on three wires", () => {
    const [low] = model.guys?.levels ?? [];
    const star = starOf(flat.study.lot, { perLevel: 3, radius: 10, rotation: 0 });
    byHand(
      "guy of 3/16 in strand",
      20 * PSF * (2 / 3) * 3 * 0.062 * INCH,
      guyWind(flat, star, 10, low.strand),
      "N/m",
    );
    byHand(
      "stiffness of its seven wires",
      7 * (Math.PI / 4) * (0.062 * INCH) ** 2 * 23_000 * KSI,
      ropeOf({ strand: low.strand }, 10).ea,
      "N",
    );
  });

  test("on antennas and pipe: force and moment about the mast top", () => {
    const { package: pack } = model;
    const pipe = pack.pipe.diameter * 6 * FOOT * (2 / 3);
    const areas = pack.antennas.map((a) => a.dragArea);
    const force = 20 * PSF * (areas[0] + areas[1] + pipe);
    const moment = 20 * PSF * (areas[0] * 2 + areas[1] * 5.5 + pipe * 3) * FOOT;
    const top = topForce(flat, pack, model.stack.height);
    byHand("force on antennas and pipe", force, top.force, "N");
    byHand("their moment on the mast top", moment, top.moment, "N m");
  });

  test("strength-level wind of the same study is six tenths under allowable stress, whole under factors", () => {
    const q = (set: string) => pasture((s) => (s.rules.set = set)).pressure(10);
    expect(q("asce7-asd") / q("asce7-lrfd")).toBeCloseTo(0.6, 9);
    expect(q("practice")).toBeCloseTo(q("asce7-asd"), 9);
  });
});

describe("mastInput", () => {
  test("joins sections at their heights, the lower one at a joint", () => {
    const { model: mixed } = resolve(
      pasture(),
      design({
        stack: [
          { section: "3leg-13-used", length: 40 * FOOT },
          { section: "3leg-13", length: 30 * FOOT },
        ],
      }),
    );
    const input = mastInput(mixed);
    expect(input.segments.map((s) => [s.from, s.to].map((z) => Number((z / FOOT).toFixed(6))))).toEqual([
      [0, 40],
      [40, 70],
    ]);
    expect(sectionAt(mixed.stack, 40 * FOOT).row.id).toBe("3leg-13-used");
    expect(sectionAt(mixed.stack, 40.01 * FOOT).row.id).toBe("3leg-13");
    expect(sectionAt(mixed.stack, 99 * FOOT).row.id).toBe("3leg-13");
  });

  test("is pinned on guys and fixed without; antennas stand at their arms", () => {
    expect(mastInput(model).base).toBe("pinned");
    expect(mastInput(resolve(flat, freeStanding()).model).base).toBe("fixed");
    expect(mastInput(model).pointWeights.map(({ arm }) => Number((arm / FOOT).toFixed(6)))).toEqual([
      2, 5.5, 3,
    ]);
    expect(mastInput(model).levels.map(({ tension }) => Number((tension / POUND).toFixed(3)))).toEqual([
      399, 665,
    ]);
  });
});

test("loadCase(still air) has no wind anywhere", () => {
  const still = windCases(flat, model.guys).find((c) => c.id === "still");
  if (!still) throw new Error("no still air");
  const load = loadCase(flat, model, still);
  expect(load.line(10)).toBe(0);
  expect(load.points).toEqual([]);
  expect(load.guyWind.some((wind) => wind !== 0)).toBe(false);
});

test("ice makes every demand of the legs, guys and base no smaller", () => {
  const dry = verify(pasture(), design());
  const icy = verify(
    pasture((s) => {
      s.site.ice = { thickness: "1 in", speed: "60 mph" };
    }),
    design(),
  );
  for (const id of ["leg-compression", "guy-strength/1", "guy-strength/2", "base-compression", "stability"])
    expect(check(icy, id).utilisation, id).toBeGreaterThanOrEqual(check(dry, id).utilisation);
  expect(icy.cases.some((c) => c.title.startsWith("ice and wind"))).toBe(true);
});

test("more tension in the guys presses the base harder and slackens fewer guys", () => {
  const at = (tension: number) => verify(pasture(), withGuys({ tension }));
  const base = (tension: number) => check(at(tension), "base-compression").demand;
  expect(base(0.15)).toBeGreaterThan(base(0.1));
  const slackest = (tension: number) =>
    Math.min(...at(tension).cases.flatMap((c) => c.guys.map((g) => g.tensionAnchor)));
  expect(slackest(0.15)).toBeGreaterThan(slackest(0.08));
});
