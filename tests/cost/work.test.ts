import { describe, expect, it } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import { compile } from "../../src/problem/compile.ts";
import { design } from "../checks/support/pasture.ts";

const HOUR = 3600;

const problemOf = (work: object) => {
  const file = {
    ...startingStudies[0].file,
    catalog: { prices: { ...defaultCatalog.prices, work: { ...defaultCatalog.prices.work, ...work } } },
  };
  const read = parseStudy(file, { catalog: defaultCatalog });
  if (!read.ok) throw new Error(read.errors[0].message);
  return compile(read.study, read.catalog);
};

describe("the work of building", () => {
  it("verify(design).work adds up hours of digging, pouring, anchors, guys, raising and once", () => {
    const built = design();
    const problem = problemOf({});
    const { work, dugVolume, concreteVolume } = verify(problem, built);
    const of = (what: string) => work.lines.find((line) => line.what === what)?.hands;
    const yards = (volume: number) => volume / 0.9144 ** 3;
    const guys = built.guys!;
    // 5 h a cubic yard of hard ground
    expect(problem.soil.digging).toBe("firm");
    expect(of("digging")).toBeCloseTo(2.5 * HOUR * yards(dugVolume), 6);
    expect(of("pouring")).toBeCloseTo(3 * HOUR * yards(concreteVolume), 6);
    expect(of("anchors")).toBeCloseTo(1.5 * HOUR * guys.perLevel, 9);
    expect(of("guys")).toBeCloseTo(HOUR * guys.perLevel * guys.levels.length, 9);
    expect(of("raising")).toBeCloseTo(((9 * 60) / 0.3048) * built.height, 6);
    expect(of("setting up")).toBe(8 * HOUR);
    expect(work.hands).toBeCloseTo(
      work.lines.reduce((sum, { hands }) => sum + hands, 0),
      9,
    );
    expect(work.curing).toBe(168 * HOUR);
  });

  it("verify(design).work follows the price book, and what is worth nothing has no line", () => {
    const { work } = verify(problemOf({ guy: "2 h", antennas: 0, curing: "72 h" }), design());
    const before = verify(problemOf({}), design()).work;
    const guys = (of: typeof work) => of.lines.find((line) => line.what === "guys")?.hands ?? 0;
    expect(guys(work)).toBeCloseTo(2 * guys(before), 9);
    expect(work.lines.some(({ what }) => what === "antennas")).toBe(false);
    expect(work.curing).toBe(72 * HOUR);
  });
});
