import { expect, test } from "vitest";
import { book, changeStudy, knowPaper, readFirst, readPaper, takeBack } from "../../src/app/state/book.ts";
import { knowCatalog, readerComes, theReader } from "../../src/app/state/reader.ts";
import { parseCatalog, parseStudy } from "../../src/model/parse.ts";

test("until the parser has come a paper is known that another thread has read, and edits wait for it", async () => {
  const { present } = book.get().history;
  const wait = [{ path: "", message: "The page is still coming: try once more." }];
  expect(theReader()).toBeNull();
  expect(readPaper(present)).toEqual(wait);

  const elsewhere = parseStudy(present.study, { catalog: present.catalog });
  const base = parseCatalog(present.catalog);
  if (!elsewhere.ok || !base.ok) throw new Error("the demo does not parse");
  knowCatalog(present.catalog, base.catalog);
  knowPaper(present, elsewhere);
  readFirst();
  expect(book.get().reading?.study).toBe(elsewhere.study);
  const named = (name: string) => changeStudy(["name"], name, `named it ${name}`);
  expect([named("once"), named("twice"), changeStudy(["site", "soil"], "mud", "another soil")]).toEqual([
    [],
    [],
    [],
  ]);
  expect(book.get().history.present).toBe(present);

  await readerComes();
  await Promise.resolve();
  expect(book.get().history.past.map(({ did }) => did)).toEqual(["named it once", "named it twice"]);
  expect(book.get().history.present.study.name).toBe("twice");
  expect(book.get().notice).toMatch(/mud/);
  // what was read elsewhere is not read again
  expect(book.get().reading?.catalog.sections[0]).toBe(base.catalog.sections[0]);
  takeBack();
  takeBack();
  expect(book.get().history.present).toBe(present);
  expect(book.get().reading?.study).toBe(elsewhere.study);
});
