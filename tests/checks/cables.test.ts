import { expect, test } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { checkValue } from "../support/check-values.ts";
import { FOOT, POUND } from "../support/us-units.ts";
import { check, design, freeStanding, pasture } from "./support/pasture.ts";

const heavy = (study: StudyFile) => {
  study.wishes.packages[0].runWeight = "2.5 lbf/ft";
};

test("verify(cables that weigh) presses the base by all of them, and hangs them where they hang", () => {
  const thrust = (problem: ReturnType<typeof pasture>) =>
    verify(problem, freeStanding()).cases.find((c) => c.windToward === null)?.base.compression ?? 0;
  checkValue({
    subject: "mast: thrust on the base from cables and ladder of 2.5 lb/ft on 40 ft",
    source: "statics: weight per height x height",
    tag: "arithmetic",
    expected: 2.5 * 40 * POUND,
    computed: thrust(pasture(heavy)) - thrust(pasture()),
    tolerance: 1e-9,
    unit: "N",
  });
  const guyed = verify(pasture(heavy), design()).cases[0];
  const bare = verify(pasture(), design()).cases[0];
  const half = guyed.z.findIndex((z) => z > 35 * FOOT);
  // at the same station half of it is above, but for what the guys do otherwise
  const above = guyed.compression[half] - bare.compression[half];
  expect(above / (2.5 * POUND * (70 - guyed.z[half] / FOOT))).toBeCloseTo(1, 1);
});

test("verify(cables whose weight is not stated) says so", () => {
  const said = (problem: ReturnType<typeof pasture>) =>
    verify(problem, design()).assumptions.some((line) => line.startsWith("Cables and ladder catch the wind"));
  expect(said(pasture())).toBe(true);
  expect(said(pasture(heavy))).toBe(false);
  expect(check(verify(pasture(heavy), design()), "leg-compression").demand).toBeGreaterThan(
    check(verify(pasture(), design()), "leg-compression").demand,
  );
});
