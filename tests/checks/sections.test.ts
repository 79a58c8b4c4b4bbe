import { describe, expect, test } from "vitest";
import { DesignError } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { Uncovered } from "../../src/problem/compile.ts";
import { FOOT } from "../support/us-units.ts";
import { check, design, pasture } from "./support/pasture.ts";

type Row = (typeof defaultCatalog.sections)[number];
const row = (id: string): Row => defaultCatalog.sections.find((one) => one.id === id) as Row;
/** As 3leg-13, but its bracing is a wire: far beyond what a column formula covers. */
const wiry: Row = {
  ...row("3leg-13"),
  id: "wiry",
  bracing: { pattern: "single", member: { diameter: "1/8 in" } },
};
const stack = (section: string) => design({ stack: [{ section, length: 70 * FOOT }] });

describe("a section outside what the rule set's steel covers", () => {
  test("is left out of the search, and every verdict says so with the reason", () => {
    const problem = pasture((study) => (study.catalog = { sections: [wiry] }));
    const chosen = problem.stacks.flat().flatMap(({ parts }) => parts.map(({ section }) => section.row.id));
    expect(chosen).not.toContain("wiry");
    expect(chosen).toContain("3leg-13");
    expect(problem.assumptions.join(" ")).toMatch(
      /Section wiry is left out, .*bracing in compression, KL\/r: found 497, expected at most 200/,
    );
  });

  test("is not judged where a design names it, with the reason", () => {
    const problem = pasture((study) => (study.catalog = { sections: [wiry] }));
    expect(() => verify(problem, stack("wiry"))).toThrow(DesignError);
    expect(() => verify(problem, stack("wiry"))).toThrow(
      /stack\[0\]\.section: found "wiry", .*KL\/r: found 497/,
    );
  });

  test("alone in a study leaves nothing to compute, which is said", () => {
    const alone = () =>
      pasture((study) => {
        study.catalog = { sections: [wiry] };
        study.parts = { ...study.parts, sections: ["wiry"] };
      });
    expect(alone).toThrow(Uncovered);
    expect(alone).toThrow(/parts\.sections: found none that can be computed; .*KL\/r/);
  });
});

describe("verify(a rated section)", () => {
  const rated = (more: object): Row => ({ ...row("3leg-13"), id: "rated", ...more }) as Row;
  const judged = (more: object) =>
    verify(
      pasture((study) => (study.catalog = { sections: [rated(more)] })),
      stack("rated"),
    );

  test("takes the seller's moment and shear for capacities, and says whose they are", () => {
    const rating = { moment: "9000 lbf ft", shear: "900 lbf", source: "data sheet of the tests" };
    const verdict = judged({ rated: rating });
    const leg = check(verdict, "leg-compression");
    // 13 in triangle: arm 0.866 x 13 in
    expect(leg.capacity / 4.4482216152605).toBeCloseTo((9000 * 12) / (Math.sqrt(0.75) * 13), 6);
    expect(leg.note).toBe("capacity as rated, not computed: data sheet of the tests");
    expect(check(verdict, "bracing-shear").capacity / 4.4482216152605).toBeCloseTo(900, 9);
    expect(check(verdict, "bracing-shear").note).toContain("as rated");
    expect(check(judged({}), "leg-compression").note).toBeUndefined();
  });

  test("a measured wall lowers the rating as it lowers what is computed", () => {
    const rating = { axial: "30000 lbf", source: "data sheet of the tests" };
    const of = (more: object) => check(judged(more), "leg-compression").capacity;
    const worn = { measuredWall: "0.060 in" };
    expect(of({ rated: rating, ...worn }) / of({ rated: rating })).toBeCloseTo(of(worn) / of({}), 9);
    expect(of(worn)).toBeLessThan(of({}));
  });
});

test("a mast of angles catches the wind of flats: no reduction for round members", () => {
  const problem = pasture();
  const angle = problem.sections.get("4leg-24-angle");
  const round = problem.sections.get("4leg-21");
  if (!angle || !round) throw new Error("the catalog lacks a section of this test");
  const { faceArea, solidity } = angle.lattice;
  // ASCE 7-16 figure 29.4-3, square, flat members, diagonal wind
  const cf = 4 * solidity ** 2 - 5.9 * solidity + 4;
  expect(angle.lattice.roundShare).toBe(0);
  expect(angle.dragWidth).toBeCloseTo(faceArea * cf * Math.min(1.2, 1 + 0.75 * solidity), 9);
  expect(round.lattice.roundShare).toBe(1);
  const e = round.lattice.solidity;
  expect(round.dragWidth).toBeCloseTo(
    round.lattice.faceArea *
      (4 * e ** 2 - 5.9 * e + 4) *
      Math.min(1, 0.51 * e ** 2 + 0.57) *
      Math.min(1.2, 1 + 0.75 * e),
    9,
  );
});
