import { beforeEach, expect, test } from "vitest";
import { book, changeStudy, openStudy, takeBack } from "../../src/app/state/book.ts";
import { gridOf, nextOf, rawBeforeLock } from "../../src/app/state/locks.ts";
import { drag, freeStar, step } from "../../src/app/state/lot-edits.ts";
import { readerComes } from "../../src/app/state/reader.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";

await readerComes();

const ft = 0.3048;
const guys = { perLevel: 3, radius: 36 * ft, rotation: 0 } as const;
const edit = { system: "us", fine: false, gesture: "a drag" } as const;
const study = () => book.get().history.present.study;
const lot = () => book.get().reading!.study.lot;
const spot = (east: number, north: number) => [east * ft, north * ft] as const;

beforeEach(() => {
  openStudy(startingStudies.find(({ id }) => id === "upper-pasture")!.file);
});

test("drag() of a corner sets it out to the foot, with Shift to a quarter, one step for Undo", () => {
  const hold = { kind: "corner", index: 0 } as const;
  const steps = book.get().history.past.length;
  expect(drag(hold, spot(0, 0), spot(-1.6, 2.3), guys, edit)).toEqual([]);
  expect(study().lot.corners[0]).toEqual(["-2 ft", "2 ft"]);
  expect(drag(hold, spot(-2, 2), spot(-1.6, 2.3), guys, { ...edit, fine: true })).toEqual([]);
  expect(study().lot.corners[0]).toEqual(["-1.5 ft", "2.25 ft"]);
  expect(book.get().history.past).toHaveLength(steps + 1);
  takeBack();
  expect(study().lot.corners[0]).toEqual(["0 ft", "0 ft"]);
});

test("drag() refuses in words a lot that leaves the mast outside, and writes nothing", () => {
  const before = study();
  const faults = drag({ kind: "mast" }, spot(46, 62), spot(300, 62), guys, edit);
  expect(faults[0].message).toContain("a place inside the lot");
  expect(study()).toBe(before);
});

test("drag() of an anchor holds radius and turn to the values of the grid that come nearest", () => {
  // anchor 2 stands at 120 degrees; 31 ft out toward 133 degrees is nearest to 30 or 32 ft and a turn of 10
  const angle = (133 * Math.PI) / 180;
  const to = spot(46 + 31.2 * Math.sin(angle), 62 + 31.2 * Math.cos(angle));
  expect(drag({ kind: "anchor", index: 1 }, spot(77, 44), to, guys, edit)).toEqual([]);
  expect(study().parts).toMatchObject({ radius: "32 ft", rotation: 10 });
  // held, it still moves on the grid that it came from
  expect(gridOf(["parts", "radius"])).toHaveLength(14);
  expect(
    step({ kind: "anchor", index: 1 }, to, [0, 1], { ...guys, radius: 32 * ft, rotation: 10 }, edit),
  ).toEqual([]);
  expect(study().parts).toMatchObject({ radius: "34 ft", rotation: 10 });
  expect(freeStar()).toEqual([]);
  expect(study().parts).toMatchObject({
    radius: { from: "20 ft", to: "46 ft", step: "2 ft" },
    rotation: { from: 0, to: 110, step: 10 },
  });
});

test("drag() of a whole power line moves all its points, straight toward the mast or away", () => {
  const hold = { kind: "whole-line", line: 0 } as const;
  expect(drag(hold, spot(168, 62), spot(163.2, 80), guys, edit)).toEqual([]);
  expect(study().lot.powerLines![0].points).toEqual([
    ["163 ft", "-40 ft"],
    ["163 ft", "165 ft"],
  ]);
});

test("drag() of a plot's corner moves it alone, one step for Undo, and refuses edges that cross in words", () => {
  const corners = [
    ["10 ft", "10 ft"],
    ["20 ft", "10 ft"],
    ["20 ft", "30 ft"],
    ["10 ft", "30 ft"],
  ];
  expect(changeStudy(["lot", "keepOut"], [{ name: "Septic field", corners }], "a plot")).toEqual([]);
  const hold = { kind: "plot", plot: 0, index: 2 } as const;
  const plot = () => study().lot.keepOut![0].corners;
  const steps = book.get().history.past.length;
  expect(drag(hold, spot(20, 30), spot(22.3, 33.8), guys, edit)).toEqual([]);
  expect(step(hold, spot(22, 34), [0, 1], guys, edit)).toEqual([]);
  expect(plot()).toEqual([corners[0], corners[1], ["22 ft", "35 ft"], corners[3]]);
  expect(book.get().history.past).toHaveLength(steps + 1);
  const before = study();
  const faults = drag(hold, spot(22, 35), spot(15, -5), guys, edit);
  expect(faults[0].message).toContain("no edge meets another");
  expect(study()).toBe(before);
  takeBack();
  expect(plot()).toEqual(corners);
});

test("step() moves what is held by a foot or by a quarter of a metre", () => {
  expect(step({ kind: "mast" }, lot().mast, [1, 0], guys, edit)).toEqual([]);
  expect(study().lot.mast).toEqual(["47 ft", "62 ft"]);
  expect(step({ kind: "corner", index: 0 }, [0, 0], [-1, 0], guys, { ...edit, system: "si" })).toEqual([]);
  expect(study().lot.corners[0]).toEqual(["-0.25 m", "0 m"]);
});

test("rawBeforeLock() and nextOf() know the list that was, and its ends", () => {
  expect(rawBeforeLock(["parts", "rotation"])).toEqual({ from: 0, to: 110, step: 10 });
  expect(nextOf([1, 2, 3], 2, 1)).toBe(3);
  expect(nextOf([1, 2, 3], 3, 1)).toBe(3);
});
