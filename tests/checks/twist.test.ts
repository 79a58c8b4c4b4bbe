import { expect, test } from "vitest";
import { resolve } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { checkValue } from "../support/check-values.ts";
import { FOOT } from "../support/us-units.ts";
import { check, design, freeStanding, pasture } from "./support/pasture.ts";

type Item = StudyFile["wishes"]["packages"][number]["items"][number];
const panel = (offset: string, more: Partial<Item> = {}): Item => ({
  area: "4 ft2",
  areaKind: "flat",
  weight: "40 lbf",
  at: "30 ft",
  offset,
  ...more,
});
const withItem = (item: Item) => pasture((study) => study.wishes.packages[0].items.push(item));

test("verify(an antenna beside a free-standing mast) twists it as a shaft of the faces of its lattice", () => {
  const problem = withItem(panel("2 ft"));
  const { model } = resolve(problem, freeStanding());
  const { row, lattice } = model.stack.parts[0].section;
  const windy = verify(problem, freeStanding()).cases[0];
  const torque = problem.pressure(30 * FOOT) * 4 * FOOT ** 2 * 2 * 2 * FOOT;
  // one face's shear stiffness round a triangle of sides b: GJ = 4 A2 / (3 b / (k / b)), k = GA / 1.5
  const tube = (Math.sqrt(3) / 4) * row.face ** 2;
  const shaft = (4 * tube ** 2 * (lattice.shearStiffness / 1.5)) / (3 * row.face ** 2);
  const top = windy.twist?.at(-1) ?? 0;
  checkValue({
    subject: "twist of a free-standing lattice mast by an antenna beside it",
    source: "Bredt: 4 A2 / sum(b / G t); legs take less than a hundredth by their thrust (Wagner)",
    tag: "arithmetic",
    expected: (torque * 30 * FOOT) / shaft,
    computed: top,
    tolerance: 0.01,
    unit: "rad",
  });
  expect(windy.torque?.[0]).toBeCloseTo(torque, 6);
  expect(windy.torque?.at(-1)).toBeCloseTo(0, 6);
});

test("verify(an antenna beside the mast) adds its torque to the shear of the bracing's worst face", () => {
  const beside = withItem(panel("2 ft"));
  const onAxis = withItem(panel("0 ft"));
  const shear = (problem: typeof beside) => check(verify(problem, freeStanding()), "bracing-shear");
  const { row, lattice } = resolve(beside, freeStanding()).model.stack.parts[0].section;
  const torque = beside.pressure(30 * FOOT) * 4 * FOOT ** 2 * 2 * 2 * FOOT;
  // flow T / 2 A on a face of width b, of which the shear on the section gives 2/3 to the worst
  const face = (torque * row.face) / (2 * (Math.sqrt(3) / 4) * row.face ** 2);
  const added = shear(beside).demand - shear(onAxis).demand;
  // weight off the axis leans the mast by a little more as well
  expect(added / (1.5 * face)).toBeGreaterThan(1);
  expect(added / (1.5 * face)).toBeLessThan(1.02);
  expect(lattice.torsionStrength).toBeCloseTo(
    ((lattice.shearStrength / 1.5) * 2 * (Math.sqrt(3) / 4) * row.face ** 2) / row.face,
    6,
  );
});

test("verify(a mast that nothing twists) says nothing of twist", () => {
  const verdict = verify(pasture(), design());
  expect(verdict.cases.every((c) => c.twist === undefined && c.torque === undefined)).toBe(true);
  expect(verdict.checks.some((c) => c.limitState === "twist-range")).toBe(false);
});

test("verify(a mast twisted by more than 5 degrees) refuses it with what was found", () => {
  const verdict = verify(withItem(panel("30 ft", { area: "40 ft2" })), freeStanding());
  const range = check(verdict, "twist-range");
  expect(range.passes).toBe(false);
  expect(verdict.passes).toBe(false);
  expect(range.note).toMatch(/^found a twist of \d+\.\d degrees, expected at most 5/);
  expect(check(verify(withItem(panel("2 ft")), freeStanding()), "twist-range").passes).toBe(true);
});
