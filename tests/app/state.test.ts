import { expect, test } from "vitest";
import type { Reading } from "../../src/app/state/book.ts";
import { begin, edit, redo, undo } from "../../src/app/state/history.ts";
import { valueAt, withValue } from "../../src/app/state/path.ts";
import { freeId } from "../../src/app/state/shelf.ts";
import { answerOf, judgedOf } from "../../src/app/state/shown.ts";
import { givenIn, lockVariants, stepVariants, waysOut } from "../../src/app/state/steps.ts";
import { createStore } from "../../src/app/state/store.ts";
import type { Outcome } from "../../src/search/types.ts";
import { fixture } from "./support/fixture.ts";

const { study, catalog, proof, judged } = fixture;
const reading = { paper: { study, catalog }, study, catalog } as unknown as Reading;
const ended = (outcome: Outcome) => answerOf({ finding: { state: "ended", reading, outcome }, former: null });

test("answerOf() calls a proven design safe only where its verdict passes", () => {
  expect(ended({ status: "proven", best: judged(0.97), proof }).kind).toBe("proven");
  expect(ended({ status: "proven", best: judged(1.02), proof }).kind).toBe("unsafe");
  expect(ended({ status: "stopped", best: judged(1.02), proof }).kind).toBe("unsafe");
});

test("answerOf() while searching shows no failing design as the best so far", () => {
  const searching = answerOf({
    finding: { state: "searching", reading, progress: { proof, best: judged(1.2) } },
    former: null,
  });
  expect(searching).toMatchObject({ kind: "searching", best: null });
});

test("answerOf() keeps the former answer, marked so, until the first safe design of the new givens", () => {
  const former = {
    reading,
    outcome: { status: "proven", best: judged(), proof } as const,
  };
  const waiting = answerOf({ finding: { state: "searching", reading, progress: null }, former });
  expect(waiting).toMatchObject({ kind: "proven", former: true });
  const found = answerOf({
    finding: { state: "searching", reading, progress: { proof, best: judged(0.9) } },
    former,
  });
  expect(found).toMatchObject({ kind: "searching", former: false });
});

test("judgedOf() of nothing safe is the nearest miss, which does not pass", () => {
  const answer = ended({ status: "none-safe", nearest: judged(1.18), proof });
  expect(judgedOf(answer)?.verdict.passes).toBe(false);
});

test("undo() and redo() walk back and forth, and a new edit forgets what was undone", () => {
  const two = edit(edit(begin(1), 2, "two"), 3, "three");
  expect(undo(two).present).toBe(2);
  expect(redo(undo(two)).present).toBe(3);
  expect(edit(undo(two), 9, "nine").future).toEqual([]);
  expect(undo(begin(1)).present).toBe(1);
});

test("edit() of one gesture is one step, until another edit or an undo ends it", () => {
  const drag = edit(edit(edit(begin(1), 2, "to 2", "a"), 3, "to 3", "a"), 4, "to 4", "a");
  expect(drag.past).toEqual([{ was: 1, did: "to 4", gesture: "a" }]);
  expect(undo(drag).present).toBe(1);
  expect(redo(undo(drag)).present).toBe(4);
  expect(edit(drag, 5, "to 5", "b").past).toHaveLength(2);
  expect(edit(edit(drag, 5, "typed"), 6, "to 6", "a").past).toHaveLength(3);
  expect(edit(undo(drag), 7, "to 7", "a").past).toEqual([{ was: 1, did: "to 7", gesture: "a" }]);
});

test("withValue() replaces one value and shares the rest", () => {
  const whole = { a: { b: [1, 2] }, c: {} };
  const next = withValue(whole, ["a", "b", 1], 5);
  expect(next).toEqual({ a: { b: [1, 5] }, c: {} });
  expect(next.c).toBe(whole.c);
  expect(withValue(whole, ["c"], undefined)).not.toHaveProperty("c");
  expect(valueAt(next, ["a", "b", 1])).toBe(5);
});

test("a store tells its listeners, and a listener that left hears nothing", () => {
  const store = createStore({ n: 0 });
  const heard: number[] = [];
  const leave = store.subscribe(() => heard.push(store.get().n));
  store.set({ n: 1 });
  leave();
  store.set({ n: 2 });
  expect(heard).toEqual([1]);
});

test("stepVariants() moves one given each, always the harder way", () => {
  const variants = stepVariants(reading, "us");
  expect(variants.map((one) => one.id)).toEqual(
    expect.arrayContaining(["wind", "height", "margin", "frost", "setback"]),
  );
  const taller = variants.find((one) => one.id === "height");
  expect(taller?.paper.study.wishes.height).toBeCloseTo(80 * 0.3048);
  expect(taller?.paper.study.site).toBe(reading.paper.study.site);
});

test("lockVariants() gives back each choice that the study keeps, one at a time", () => {
  const { parts } = study;
  const kept = { ...study, parts: { ...parts, sections: ["3leg-9"], radius: [10], supports: ["guyed"] } };
  const own = { ...reading, study: kept, paper: { study: kept, catalog } } as unknown as Reading;
  const locks = lockVariants(own);
  expect(locks.map(({ id }) => id)).toEqual(
    expect.arrayContaining(["lock-sections", "lock-radius", "lock-supports"]),
  );
  const sections = locks.find(({ id }) => id === "lock-sections")?.paper.study.parts;
  expect(sections).toEqual({ ...kept.parts, sections: "all" });
  expect(locks.find(({ id }) => id === "lock-radius")?.paper.study.parts).not.toHaveProperty("radius");
});

test("waysOut() only ever asks for less", () => {
  for (const way of waysOut(reading, "us")) expect(way.label).toMatch(/less|nearer|allow|any/);
});

test("givenIn(paper, ways) gives in to all of them, and leaves the paper as it was", () => {
  const given = { ...study, wishes: { ...study.wishes, margin: 0.2 } };
  const own = { ...reading, study: given, paper: { study: given, catalog } } as unknown as Reading;
  const ways = waysOut(own, "us").filter(({ id }) => id === "margin" || id === "height-10");
  expect(ways.map(({ kind }) => kind).sort()).toEqual(["height", "margin"]);
  const { wishes } = givenIn(own.paper, ways).study;
  expect(wishes.margin).toBe(0);
  expect(wishes.height).toBeCloseTo((given.wishes.height as number) - 3.048, 9);
  expect(own.paper.study.wishes.margin).toBe(0.2);
});

test("freeId() finds a key that no row has", () => {
  expect(freeId(["a", "a-2"], "a")).toBe("a-3");
  expect(freeId(["a-2"], "a-2")).toBe("a-3");
});
