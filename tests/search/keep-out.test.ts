import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { anchorPoints } from "../../src/problem/star.ts";
import { changedStudies } from "../support/changed-studies.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

const STUDIES = 16;

/** No anchors in the north-east: from 2 m off the mast on. */
const clearOfNorthEast = (file: StudyFile): StudyFile => {
  const [east, north] = problemOf(file).study.lot.mast;
  const corners = [
    [east + 2, north + 2],
    [east + 100, north + 2],
    [east + 100, north + 100],
    [east + 2, north + 100],
  ] as [number, number][];
  return { ...file, lot: { ...file.lot, keepOut: [{ name: "north-east", corners }] } };
};

describe("plots where no anchor may stand", () => {
  it(`Search(study) and enumeration agree on ${STUDIES} random studies, and no anchor stands there`, () => {
    let tried = 0;
    let moved = 0;
    let guyed = 0;
    for (const changed of changedStudies(clearOfNorthEast, { studies: STUDIES, seed: 77 })) {
      const { name, problem, before, best } = changed;
      tried++;
      if (best?.key !== before.key) moved++;
      const guys = best?.design.guys;
      if (!best || !guys) continue;
      guyed++;
      const [east, north] = problem.study.lot.mast;
      for (const [e, n] of anchorPoints([east, north], guys))
        expect(Math.min(e - east, n - north), name).toBeLessThan(2 + 1e-5);
      // and the one judge fails whatever stands there
      const verdict = verify(problem, before.design);
      if (best.key !== before.key && best.objective > before.objective)
        expect(verdict.checks.find(({ limitState }) => limitState === "lot")?.passes, name).toBe(false);
    }
    console.log(`${tried} studies, ${moved} answers moved, ${guyed} still on guys`);
    expect(tried).toBe(STUDIES);
    expect(moved).toBeGreaterThan(3);
    expect(guyed).toBeGreaterThan(3);
  }, 240_000);

  it("a plot whose edges cross is refused by its place", () => {
    const [plain] = fc.sample(smallStudy, { numRuns: 1, seed: 1 });
    const corners = [
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ] as [number, number][];
    const read = parseStudy(
      { ...plain, lot: { ...plain.lot, keepOut: [{ name: "drive", corners }] } },
      { catalog: defaultCatalog },
    );
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.errors[0].path).toBe("lot.keepOut[0].corners");
  });
});
