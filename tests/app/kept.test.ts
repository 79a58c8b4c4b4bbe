import "fake-indexeddb/auto";
import { deleteDB } from "idb";
import { beforeEach, expect, test, vi } from "vitest";
import type { Paper } from "../../src/app/state/book.ts";
import * as cupboard from "../../src/app/state/cupboard.ts";
import { keep, layOutKept, letGo, shelf } from "../../src/app/state/kept.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import { fixture } from "./support/fixture.ts";

const paper: Paper = { study: startingStudies[0].file, catalog: defaultCatalog };
const { design } = fixture;
const small = new Map<string, string>();
vi.stubGlobal("localStorage", {
  getItem: (key: string) => small.get(key) ?? null,
  removeItem: (key: string) => small.delete(key),
});
const names = (kept: readonly { readonly name: string }[]) => kept.map(({ name }) => name);

beforeEach(async () => {
  small.clear();
  shelf.set({ kept: [], trouble: null });
  await deleteDB("mastwright");
});

test("layOutKept() carries over what an earlier version kept, in its order, once", async () => {
  const old = ["first", "second"].map((name) => ({ name, paper, design }));
  small.set("mastwright.kept.1", JSON.stringify([...old, { name: "no design" }]));
  await layOutKept();
  expect(names(shelf.get().kept)).toEqual(["first", "second"]);
  expect(shelf.get().kept[0]).toMatchObject({ paper, design });
  expect(small.size).toBe(0);
  // the page comes back
  shelf.set({ kept: [] });
  await layOutKept();
  expect(names(shelf.get().kept)).toEqual(["first", "second"]);
  await letGo(shelf.get().kept[0]);
  expect(names(await cupboard.designs())).toEqual(["second"]);
});

test("keep() holds six at most, here and in the store, and lets the oldest go", async () => {
  for (let i = 1; i <= 8; i++) await keep({ name: `${i}`, paper, design });
  expect(names(shelf.get().kept)).toEqual(["3", "4", "5", "6", "7", "8"]);
  expect(names(await cupboard.designs()).sort()).toEqual(["3", "4", "5", "6", "7", "8"]);
});

test("a store of the first kind gains a place for designs and loses nothing", async () => {
  await new Promise<void>((done, fail) => {
    const asked = indexedDB.open("mastwright", 1);
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore("studies", { keyPath: "id" });
      asked.result.createObjectStore("versions", { keyPath: "id" }).createIndex("study", "study");
      asked.result.createObjectStore("books", { keyPath: "id" }).put({ id: "b", name: "old prices" });
    };
    asked.onsuccess = () => {
      asked.result.close();
      done();
    };
    asked.onerror = () => fail(asked.error);
  });
  await keep({ name: "one", paper, design });
  expect(shelf.get().trouble).toBeNull();
  expect(names(await cupboard.books())).toEqual(["old prices"]);
  expect(names(await cupboard.designs())).toEqual(["one"]);
});

test("where the store fails, what is kept stays in memory and words say so", async () => {
  const refused = vi.spyOn(indexedDB, "open").mockImplementation(() => {
    throw new DOMException("no", "SecurityError");
  });
  await keep({ name: "one", paper, design });
  expect(names(shelf.get().kept)).toEqual(["one"]);
  expect(shelf.get().trouble).toMatch(/Nothing is kept in this browser/);
  refused.mockRestore();
});
