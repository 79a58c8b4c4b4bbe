import { afterEach, beforeEach, expect, test, vi } from "vitest";

beforeEach(() => vi.resetModules());
afterEach(() => vi.doUnmock("../../src/model/parse.ts"));

const page = async () => ({
  ...(await import("../../src/app/state/book.ts")),
  ...(await import("../../src/app/state/reader.ts")),
});

test("an edit and a step back that wait for the parser are done in their order", async () => {
  const { book, changeStudy, doAgain, readerComes, takeBack } = await page();
  changeStudy(["name"], "once", "named it once");
  changeStudy(["name"], "twice", "named it twice");
  takeBack();
  await readerComes();
  await vi.waitFor(() => expect(book.get().notice).toBe("Taken back: named it twice."));
  expect(book.get().history.past.map(({ did }) => did)).toEqual(["named it once"]);
  expect(book.get().history.present.study.name).toBe("once");
  doAgain();
  expect(book.get().history.present.study.name).toBe("twice");
});

test("an edit for which the parser does not come is told of, and the next one asks for it again", async () => {
  vi.doMock("../../src/model/parse.ts", () => {
    throw new Error("no network");
  });
  const { book, changeStudy } = await page();
  const { present } = book.get().history;
  changeStudy(["name"], "once", "named it once");
  await vi.waitFor(() => expect(book.get().notice).toMatch(/not done: load it anew/));
  expect(book.get().history.present).toBe(present);
  vi.doUnmock("../../src/model/parse.ts");
  changeStudy(["name"], "again", "named it again");
  await vi.waitFor(() => expect(book.get().history.present.study.name).toBe("again"));
});
