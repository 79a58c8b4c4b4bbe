import { expect, it } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { changedStudies } from "../support/changed-studies.ts";
import { problemOf } from "../support/small-study.ts";

const STUDIES = 12;
const CLEARANCE = 3;

/** A line that runs past the mast, 8 m off: guys toward it come too near. */
const besideALine = (file: StudyFile): StudyFile => {
  const [east, north] = problemOf(file).study.lot.mast;
  const points = [
    [east + 8, north - 60],
    [east + 8, north + 60],
  ] as [number, number][];
  return {
    ...file,
    lot: {
      ...file.lot,
      powerLines: [{ name: "Line", points }],
      lineClearance: CLEARANCE,
      linesWithinFall: true,
    },
  };
};

it(`Search(a study with a power line) and enumeration agree on ${STUDIES} random studies, and guys keep clear`, () => {
  let tried = 0;
  let moved = 0;
  let guyed = 0;
  for (const { name, problem, before, best } of changedStudies(besideALine, { studies: STUDIES, seed: 78 })) {
    tried++;
    if (best?.key !== before.key) moved++;
    // and the one judge fails what stood nearer
    const clear = (of: typeof before.design) =>
      verify(problem, of).checks.find(({ limitState }) => limitState === "line-clearance");
    if (best && best.key !== before.key && best.objective > before.objective)
      expect(clear(before.design)?.passes, name).toBe(false);
    if (!best?.design.guys) continue;
    guyed++;
    expect(clear(best.design)?.capacity, name).toBeGreaterThan(CLEARANCE - 1e-5);
  }
  console.log(`${tried} studies, ${moved} answers moved, ${guyed} still on guys`);
  expect(tried).toBe(STUDIES);
  expect(moved).toBeGreaterThan(3);
  expect(guyed).toBeGreaterThan(2);
}, 240_000);

/** A line 16 m off: with 3 m of clearance a mast of 30 ft and its antennas may stand, one of 50 ft may not. */
const withinFall = (file: StudyFile): StudyFile => {
  const [east, north] = problemOf(file).study.lot.mast;
  const points = [
    [east + 16, north - 60],
    [east + 16, north + 60],
  ] as [number, number][];
  return {
    ...file,
    lot: { ...file.lot, powerLines: [{ name: "Line", points }], lineClearance: CLEARANCE },
  };
};

it("Search(a line within reach of tall masts) and enumeration agree on 12 random studies, and no mast falls on it", () => {
  let tried = 0;
  let moved = 0;
  let standing = 0;
  for (const { name, problem, before, best } of changedStudies(withinFall, { studies: 12, seed: 79 })) {
    tried++;
    if (best?.key !== before.key) moved++;
    const clear = (of: typeof before.design) =>
      verify(problem, of).checks.filter(
        ({ limitState }) => limitState === "fall-zone" || limitState === "line-clearance",
      );
    if (best?.key !== before.key && (best?.objective ?? Number.POSITIVE_INFINITY) > before.objective)
      expect(
        clear(before.design).every(({ passes }) => passes),
        name,
      ).toBe(false);
    if (!best) continue;
    standing++;
    expect(best.design.height, name).toBeLessThan(13);
  }
  console.log(`${tried} studies, ${moved} answers moved, ${standing} still stand`);
  expect(tried).toBe(12);
  expect(moved).toBeGreaterThan(2);
  expect(standing).toBeGreaterThan(1);
}, 240_000);
