import { expect, test } from "vitest";
import { resolve } from "../../src/checks/resolve.ts";
import { ropeOf } from "../../src/checks/rigging.ts";
import { mastInput } from "../../src/checks/structure.ts";
import { verify } from "../../src/checks/verify.ts";
import { tensionFromSwings } from "../../src/physics/guy/swings.ts";
import { givenOf } from "../../src/report/sheets/given.ts";
import { swung } from "../../src/report/sheets/tension.ts";
import { checkValue } from "../support/check-values.ts";
import { FOOT, POUND } from "../support/us-units.ts";
import { design, pasture } from "./support/pasture.ts";

const WEIGHT = 12 * POUND;
const LENGTH = 4 * FOOT;
const plain = pasture();
const hung = pasture((study) => {
  study.parts ??= {};
  study.parts.guyHardware = { weight: "12 lbf", length: "4 ft", price: "$9.25" };
});

test("ropeOf(a guy with hardware) smears its weight and stretches in its strand alone", () => {
  const [level] = resolve(hung, design()).model.guys?.levels ?? [];
  const chord = 20;
  const bare = ropeOf({ strand: level.strand }, chord);
  const rope = ropeOf(level, chord);
  checkValue({
    subject: "guy: weight with hardware smeared over it",
    source: "statics: (w (c - a) + W) / c",
    tag: "arithmetic",
    expected: (level.strand.weight * (chord - LENGTH) + WEIGHT) / chord,
    computed: rope.weight,
    tolerance: 1e-12,
    unit: "N/m",
  });
  // a pull stretches as much strand as is there
  expect(chord / rope.ea).toBeCloseTo((chord - LENGTH) / bare.ea, 15);
  expect(() => ropeOf(level, 0.9 * LENGTH)).toThrow(/found hardware of 1\.2192 m in a guy of/);
});

test("mastInput(a study with hardware) hangs it in every guy of its chord", () => {
  const { model } = resolve(hung, design());
  for (const { z, weight, anchors } of mastInput(model).levels) {
    const chord = Math.hypot(z, anchors[0].x, anchors[0].y);
    const { strand } = model.guys?.levels.find(({ height }) => height === z) ?? {};
    expect(weight * chord).toBeCloseTo((strand?.weight ?? 0) * (chord - LENGTH) + WEIGHT, 9);
  }
});

test("bill(a study with hardware) buys it and less strand", () => {
  const lines = (problem: typeof hung) =>
    verify(problem, design()).bill.lines.filter((l) => l.group === "guys");
  const hardware = lines(hung).filter((line) => line.item === "insulators and hardware");
  expect(hardware.map((line) => line.amount)).toEqual([3 * 925, 3 * 925]);
  const strand = (problem: typeof hung) =>
    lines(problem)
      .filter((line) => line.unit === "m")
      .map((line) => line.quantity);
  strand(hung).forEach((metres, i) => {
    expect(strand(plain)[i] - metres).toBeCloseTo(3 * LENGTH, 9);
  });
});

test("sheets(a study with hardware) cut less strand and count its weight in the swings", () => {
  const given = (problem: typeof hung) => givenOf(problem, design(), verify(problem, design()));
  const [bare] = given(plain).rigs;
  const [rig] = given(hung).rigs;
  expect(bare.cut - rig.cut).toBeCloseTo(LENGTH, 2);
  expect(swung(rig).guyWeight - swung(bare).guyWeight).toBeCloseTo(WEIGHT - rig.strand.weight * LENGTH, 1);
  // as heavy a guy swings slower at the same tension
  expect(tensionFromSwings(swung(rig), 20, 10).tension).toBeGreaterThan(
    tensionFromSwings(swung(bare), 20, 10).tension,
  );
});

test("verify(hardware longer than a guy) can't be rigged", () => {
  const long = pasture((study) => {
    study.parts ??= {};
    study.parts.guyHardware = { weight: "12 lbf", length: "60 ft" };
  });
  const verdict = verify(long, design());
  expect(verdict.passes).toBe(false);
  expect(verdict.checks.some((c) => c.id === "rigging" && !c.passes)).toBe(true);
});
