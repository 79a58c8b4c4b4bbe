import "fake-indexeddb/auto";
import { deleteDB } from "idb";
import { beforeEach, expect, test } from "vitest";
import type { Paper } from "../../src/app/state/book.ts";
import * as cupboard from "../../src/app/state/cupboard.ts";
import { begin, edit, type History, undo } from "../../src/app/state/history.ts";
import { withValue } from "../../src/app/state/path.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";

const paper: Paper = { study: startingStudies[0].file, catalog: defaultCatalog };
const named = (name: string): Paper => ({ ...paper, study: { ...paper.study, name } });

beforeEach(() => deleteDB("mastwright"));

test("write() refuses to write over a revision that the writer has not seen, and hands it back", async () => {
  const first = await cupboard.write("a", 0, begin(named("first")));
  expect(first).toMatchObject({ ok: true, kept: { revision: 1 } });
  expect(await cupboard.write("a", 1, begin(named("second")))).toMatchObject({ ok: true });
  const late = await cupboard.write("a", 1, begin(named("late")));
  expect(late.ok).toBe(false);
  expect(late.ok ? "" : late.theirs.history.present.study.name).toBe("second");
  expect((await cupboard.study("a"))?.history.present.study.name).toBe("second");
});

test("of two writers of one revision at once, one is told", async () => {
  await cupboard.write("a", 0, begin(named("there")));
  const both = await Promise.all(["one", "two"].map((name) => cupboard.write("a", 1, begin(named(name)))));
  expect(both.map((done) => done.ok).sort()).toEqual([false, true]);
});

test("a kept history comes back with its steps, and steps still share what they did not change", async () => {
  const history: History<Paper> = edit(
    begin(paper),
    { ...paper, study: withValue(paper.study, ["name"], "renamed") },
    "renamed it",
  );
  await cupboard.write("a", 0, history);
  const back = (await cupboard.study("a"))!.history;
  expect(back).toEqual(history);
  expect(undo(back).present.study.name).toBe(paper.study.name);
  expect(back.past[0].was.catalog).toBe(back.present.catalog);
});

test("setDeleted() is a change that other tabs see, and destroy() takes the versions along", async () => {
  await cupboard.write("a", 0, begin(paper));
  await cupboard.putVersion({ id: "v", study: "a", name: "before", at: 1, paper });
  await cupboard.putVersion({ id: "w", study: "b", name: "another's", at: 1, paper });
  await cupboard.setDeleted("a", 5);
  expect(await cupboard.study("a")).toMatchObject({ deletedAt: 5, revision: 2 });
  expect((await cupboard.write("a", 1, begin(paper))).ok).toBe(false);
  await cupboard.setDeleted("a", null);
  expect(await cupboard.study("a")).toMatchObject({ deletedAt: null });
  await cupboard.destroy("a");
  expect(await cupboard.study("a")).toBeUndefined();
  expect((await cupboard.versions()).map((version) => version.id)).toEqual(["w"]);
});

test("putAll() keeps all of a file or nothing of it", async () => {
  const study = { id: "a", revision: 1, at: 1, deletedAt: null, history: begin(paper) };
  await cupboard.putBook({ id: "taken", name: "there", at: 1, catalog: defaultCatalog });
  await expect(
    cupboard.putAll({
      studies: [study],
      versions: [],
      designs: [],
      books: [{ id: "taken", name: "again", at: 1, catalog: defaultCatalog }],
    }),
  ).rejects.toThrow();
  expect(await cupboard.studies()).toEqual([]);
});
