import { expect, test } from "vitest";
import { analyse } from "../../src/checks/analysis.ts";
import { sidePatterns } from "../../src/checks/further-cases.ts";
import { loadCase } from "../../src/checks/loads.ts";
import { pipeBending } from "../../src/checks/pipe.ts";
import { resolve } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import { windCases } from "../../src/checks/wind-cases.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { sideHeight } from "../../src/problem/types.ts";
import { problemAt } from "../../src/search/map.ts";
import { Tree } from "../../src/search/tree.ts";
import { POUND } from "../support/us-units.ts";
import { check, design, freeStanding, pasture } from "./support/pasture.ts";

const FOOT = 0.3048;

type Item = StudyFile["wishes"]["packages"][number]["items"][number];
const panel = (place: Partial<Item> = {}): Item => ({
  area: "4 ft2",
  areaKind: "flat",
  weight: "100 lbf",
  at: "50 ft",
  ...place,
});
const withItem = (item: Item, ice = false) =>
  pasture((study) => {
    study.wishes.packages[0].items.push(item);
    if (ice) study.site.ice = { thickness: "0.5 in", speed: "40 mph" };
  });

test("loadCase(antenna beside the mast) has its wind at its height, its weight off the axis, and its twist", () => {
  const problem = withItem(panel({ offset: "2 ft" }));
  const { model } = resolve(problem, design());
  const [toward] = windCases(problem, model.guys);
  const { points, torques } = loadCase(problem, model, toward);
  const force = problem.pressure(50 * FOOT) * 4 * FOOT ** 2 * 2;
  const here = points.filter(({ z }) => Math.abs(z - 50 * FOOT) < 1e-9);
  expect(here.reduce((sum, p) => sum + p.force, 0)).toBeCloseTo(force, 6);
  expect(here.reduce((sum, p) => sum + p.moment, 0)).toBeCloseTo(100 * POUND * 2 * FOOT, 6);
  expect(torques).toHaveLength(1);
  expect(torques?.[0].z).toBeCloseTo(50 * FOOT, 9);
  expect(torques?.[0].torque).toBeCloseTo(force * 2 * FOOT, 6);
});

test("loadCase(still air) keeps the weight of what hangs off the axis and nothing of the wind", () => {
  const problem = withItem(panel({ offset: "2 ft" }));
  const { model } = resolve(problem, design());
  const still = windCases(problem, model.guys).find(({ toward }) => toward === null);
  if (!still) throw new Error("no case in still air");
  const { points, torques } = loadCase(problem, model, still);
  expect(torques).toBeUndefined();
  expect(points.map(({ force }) => force)).toEqual([0]);
  expect(points[0].moment).toBeCloseTo(100 * POUND * 2 * FOOT, 6);
});

test("verify(free-standing) overturns by the force times the height of an antenna beside the mast, and its weight", () => {
  const moment = (item?: Item) => {
    const problem = item ? withItem(item) : pasture();
    const { model } = resolve(problem, freeStanding());
    const result = analyse(problem, model);
    if (result.status !== "complete") throw new Error("it should stand");
    return { problem, base: result.cases[0].base };
  };
  const bare = moment();
  const on = moment(panel({ at: "30 ft", offset: "3 ft" }));
  const force = on.problem.pressure(30 * FOOT) * 4 * FOOT ** 2 * 2;
  // a node more moves the points where the wind on the mast is summed: a part in two thousand of it
  expect(Math.abs(on.base.shear - bare.base.shear - force)).toBeLessThan(5e-4 * bare.base.shear);
  expect(on.base.compression - bare.base.compression).toBeCloseTo(100 * POUND, 3);
  const first = force * 30 * FOOT + 100 * POUND * 3 * FOOT;
  const more = on.base.moment - bare.base.moment;
  // what the sway of all weights adds is small and never less than nothing
  expect(more).toBeGreaterThan(first - 5e-4 * bare.base.moment);
  expect(more).toBeLessThan(1.1 * first);
});

test("verify(guyed) asks both sides for antennas off the axis: upwind of it one strains guys and bracing more", () => {
  const [low, high] = [
    panel({ weight: "300 lbf", offset: "3 ft", at: "20 ft" }),
    panel({ weight: "300 lbf", offset: "3 ft" }),
  ];
  const problem = pasture((study) => study.wishes.packages[0].items.push(low, high));
  const { model } = resolve(problem, design());
  const cases = windCases(problem, model.guys);
  expect(cases.filter(({ toward }) => toward !== null)).toHaveLength(16);
  const verdict = verify(problem, design());
  for (const upwind of [undefined, 3, 1, 2]) {
    const [wind] = cases;
    const load = loadCase(problem, model, { ...wind, upwind });
    const signs = load.points
      .filter(({ force, moment }) => force === 0 && moment !== 0)
      .map(({ moment }) => Math.sign(moment));
    expect(signs).toEqual(
      [
        [1, 1],
        [-1, 1],
        [1, -1],
        [-1, -1],
      ][upwind ?? 0],
    );
  }
  const alone = (item: Item) => check(verify(withItem(item), design()), "guy-strength/1");
  expect(alone(high).loadCase).toMatch(/antennas beside it upwind/);
  expect(check(verdict, "bracing-shear").loadCase).toMatch(/upwind/);
  expect(windCases(problem, null).some(({ id }) => id.includes("upwind"))).toBe(false);
});

test("verify(guyed) asks every pattern of sides for antennas at three heights, and takes those at one height together", () => {
  const at = (...places: string[]) =>
    pasture((study) =>
      study.wishes.packages[0].items.push(...places.map((place) => panel({ offset: "3 ft", at: place }))),
    );
  const patterns = (problem: ReturnType<typeof pasture>) => {
    const { model } = resolve(problem, design());
    const cases = windCases(problem, model.guys).filter(({ toward }) => toward === 0);
    return cases.map((wind) =>
      loadCase(problem, model, wind)
        .points.filter(({ force, moment }) => force === 0 && moment !== 0)
        .map(({ moment }) => (moment > 0 ? "+" : "-"))
        .join(""),
    );
  };
  expect(patterns(at("20 ft", "35 ft", "50 ft")).sort()).toEqual(
    ["+++", "++-", "+-+", "+--", "-++", "-+-", "--+", "---"].sort(),
  );
  expect(patterns(at("20 ft", "50 ft", "50 ft")).sort()).toEqual(["+++", "+--", "-++", "---"].sort());
});

test("verify(antennas at three heights) finds the lowest guys pulled a fifth harder than with every other antenna upwind", () => {
  const problem = pasture((study) =>
    study.wishes.packages[0].items.push(
      panel({ area: "2 ft2", weight: "332 lbf", offset: "6 ft", at: "9 ft" }),
      panel({ area: "2 ft2", weight: "514 lbf", offset: "2 ft", at: "36 ft" }),
      panel({ area: "2 ft2", weight: "415 lbf", offset: "5 ft", at: "60 ft" }),
    ),
  );
  const { model } = resolve(problem, design());
  const cases = windCases(problem, model.guys);
  let byTurns = 0;
  analyse(problem, model, {
    // none, all, the first and third, the second
    cases: cases.filter(({ upwind = 0 }) => [0, 7, 5, 2].includes(upwind)),
    visit: (_, measures) => {
      for (const { limitState, level, demand } of measures)
        if (limitState === "guy-strength" && level === 0) byTurns = Math.max(byTurns, demand);
    },
  });
  expect(byTurns).toBeGreaterThan(0);
  expect(check(verify(problem, design()), "guy-strength/1").demand / byTurns).toBeGreaterThan(1.2);
});

test("sidePatterns(heights) are all there are to four heights, and beyond it grow by two a height", () => {
  expect([0, 1, 2, 3, 4].map((n) => sidePatterns(n).length)).toEqual([0, 1, 3, 7, 15]);
  for (const n of [1, 2, 3, 4, 5, 9]) {
    const patterns = sidePatterns(n);
    expect(new Set(patterns).size).toBe(patterns.length);
    for (const one of patterns) expect(one > 0 && one < 2 ** n).toBe(true);
  }
  expect([...sidePatterns(5)].sort((a, b) => a - b)).toEqual([1, 3, 7, 10, 15, 16, 21, 24, 28, 30, 31]);
});

test("an antenna below the top hangs from the top, whatever the height", () => {
  const at = (place: Partial<Item>) =>
    verify(withItem({ ...panel(), at: undefined, ...place }), design()).checks.map(({ demand }) => demand);
  const over = at({ at: "50 ft" });
  const under = at({ below: "20 ft" });
  expect(under).toHaveLength(over.length);
  under.forEach((demand, i) => {
    expect(demand / over[i]).toBeCloseTo(1, 9);
  });
});

test("under ice an antenna beside the mast catches more and weighs more", () => {
  const weighed = withItem(panel({ offset: "1 ft" }), true);
  const { model } = resolve(weighed, design());
  const cases = windCases(weighed, model.guys);
  const iced = cases.find(({ weather, toward }) => weather === "iced" && toward !== null);
  if (!iced) throw new Error("no case with ice");
  const { addedPoints, torques } = loadCase(weighed, model, iced);
  const beside = addedPoints?.filter(({ z }) => Math.abs(z - 50 * FOOT) < 1e-9) ?? [];
  expect(beside).toHaveLength(1);
  expect(beside[0].weight).toBeGreaterThan(10);
  const wind = weighed.iced?.(model.stack.height);
  expect(torques?.[0].torque).toBeGreaterThan(
    (wind?.pressure(50 * FOOT) ?? 0) * 4 * FOOT ** 2 * 2 * FOOT * 1.2,
  );
});

test("an antenna off the axis of its pipe bends the pipe by its weight", () => {
  const demand = (offset: string) =>
    pipeBending(
      pasture(
        (study) => (study.wishes.packages[0].items = [panel({ at: undefined, above: "3 ft", offset })]),
      ),
      withItem(panel({ at: undefined, above: "3 ft", offset })).packages[0],
      70 * FOOT,
    ).demand;
  expect(demand("2 ft") - demand("0 ft")).toBeCloseTo(100 * POUND * 2 * FOOT, 6);
});

test("a package all of whose antennas hang beside the mast buys no pipe", () => {
  const problem = pasture((study) => (study.wishes.packages[0].items = [panel()]));
  const [pack] = problem.packages;
  expect(pack.exposed).toBe(0);
  expect(pack.pipeWeight).toBe(0);
  expect(pack.lines).toEqual([]);
  expect(check(verify(problem, design()), "pipe-bending").demand).toBe(0);
});

test("problemAt(a mast too low for it) stands an antenna at the end of the mast", () => {
  const { study, catalog } = pasture((one) => {
    one.wishes.packages[0].items.push(panel({ at: "50 ft" }), panel({ at: undefined, below: "40 ft" }));
  });
  const low = problemAt(study, catalog, 30 * FOOT, 3);
  const [pack] = low.packages;
  expect(pack.sides.map((side) => sideHeight(side, 30 * FOOT))).toEqual([30 * FOOT, 0]);
  const { model } = resolve(
    low,
    freeStanding({ height: 30 * FOOT, stack: [{ section: "3leg-26", length: 30 * FOOT }] }),
  );
  expect(analyse(low, model).status).toBe("complete");
  expect(() => [...new Tree(low).roots()]).not.toThrow();
});

test("cables are round and a ladder is flat to the wind", () => {
  const width = (cable: string, ladder: string) =>
    pasture((study) => {
      study.wishes.packages[0].cableWidth = cable;
      study.wishes.packages[0].ladder = ladder;
    }).packages[0].runDragWidth;
  expect(width("2 in", "0 in")).toBeCloseTo(2 * 0.0254 * 1.2, 12);
  expect(width("0 in", "2 in")).toBeCloseTo(2 * 0.0254 * 2, 12);
});

test.each([
  [{ at: "71 ft" }, "wishes.packages[0].items[2].at", /at most 21.3/],
  [{ at: undefined, below: "70 ft" }, "wishes.packages[0].items[2].below", /less than 21/],
  [{ at: undefined }, "wishes.packages[0].items[2]", /one of "above", "at" and "below"/],
  [{ above: "2 ft" }, "wishes.packages[0].items[2]", /found 2 of them/],
] as const)("parseStudy(antenna at %j) is refused at %s", (place, path, message) => {
  const study = JSON.parse(JSON.stringify(pastureFile()));
  study.wishes.packages[0].items.push(JSON.parse(JSON.stringify(panel(place))));
  const read = parseStudy(study, { catalog: defaultCatalog });
  if (read.ok) throw new Error("it should be refused");
  expect(read.errors.map((error) => error.path)).toEqual([path]);
  expect(read.errors[0].message).toMatch(message);
});

function pastureFile(): StudyFile {
  let kept: StudyFile | undefined;
  pasture((study) => (kept = study));
  return kept as StudyFile;
}
