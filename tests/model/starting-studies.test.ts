import { expect, test } from "vitest";
import { axisValues } from "../../src/model/axis.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";

const read = (id: string) => {
  const study = parseStudy(startingStudies.find((one) => one.id === id)!.file, { catalog: defaultCatalog });
  if (!study.ok) throw new Error(JSON.stringify(study.errors, null, 2));
  return study;
};

test.each(startingStudies)("$id reads without an error and says that it is invented", ({ id }) => {
  expect(read(id).study.story).toContain("invented");
});

test("one starts from each question: bigger or taller, the used stack, least concrete", () => {
  expect(startingStudies.map(({ id }) => id)).toEqual(["upper-pasture", "used-stack", "hard-ground"]);
  expect(read("hard-ground").study.aim).toBe("concrete");
  expect(read("used-stack").catalog.sections.some(({ id }) => id === "3leg-10.5-offered")).toBe(true);
});

test("the demo spans more than 10^10 designs", () => {
  const { study, catalog } = read("upper-pasture");
  const { parts } = study;
  const levels = axisValues(parts.levelHeights).length;
  const strands = parts.strands.length;
  const choose = (n: number, k: number): number => (k === 0 ? 1 : (n * choose(n - 1, k - 1)) / k);
  const guyed = parts.levelCounts.reduce((sum, count) => sum + choose(levels, count) * strands ** count, 0);
  const structures =
    catalog.sections.length * guyed * axisValues(parts.radius).length * parts.tensions.length;
  expect(
    structures * axisValues(parts.rotation).length * catalog.anchors.length * catalog.footings.length,
  ).toBeGreaterThan(1e10);
});

test("the mast of each study has room for its least anchor radius on the lot", () => {
  for (const { id } of startingStudies) {
    const { lot, parts } = read(id).study;
    const [east, north] = lot.mast;
    const nearest = Math.min(
      ...lot.corners.map(([x, y], index) => {
        const [nextX, nextY] = lot.corners[(index + 1) % lot.corners.length];
        const [dx, dy] = [nextX - x, nextY - y];
        return Math.abs(dx * (y - north) - (x - east) * dy) / Math.hypot(dx, dy);
      }),
    );
    expect(nearest - lot.setback).toBeGreaterThan(Math.min(...axisValues(parts.radius)));
  }
});
