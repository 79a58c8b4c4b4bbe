import { expect, test } from "vitest";
import { type Paper, readPaper } from "../../src/app/state/book.ts";
import { begin } from "../../src/app/state/history.ts";
import { readFragment, writeFragment } from "../../src/app/state/link.ts";
import { asKept, readParcel, standalone, writeParcel, writeStudy } from "../../src/app/state/parcel.ts";
import { withValue } from "../../src/app/state/path.ts";
import { readerComes } from "../../src/app/state/reader.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import { design as pastureDesign } from "../checks/support/pasture.ts";

await readerComes();

const paper: Paper = { study: startingStudies[0].file, catalog: defaultCatalog };
const dearer: Paper = { ...paper, catalog: withValue(defaultCatalog, ["prices", "permit"], "$999") };
const shorter: Paper = {
  ...paper,
  catalog: { ...defaultCatalog, antennas: defaultCatalog.antennas.slice(0, -1) },
};
const inSi = (one: Paper) => {
  const read = readPaper(one);
  if (Array.isArray(read)) throw new Error(read[0].message);
  return read as Exclude<typeof read, readonly unknown[]>;
};
const study = (id: string, one: Paper) => ({
  id,
  revision: 3,
  at: 7,
  deletedAt: null,
  history: begin(one),
});

test("standalone() puts what differs from the starting catalog into the study, and reads as the same", () => {
  expect(standalone(paper)).toBe(paper.study);
  const alone = standalone(dearer)!;
  const read = parseStudy(alone, { catalog: defaultCatalog });
  if (!read.ok) throw new Error(read.errors[0].message);
  expect(read.catalog).toEqual(inSi(dearer).catalog);
  const wall: Paper = {
    ...paper,
    catalog: withValue(defaultCatalog, ["sections", 0, "measuredWall"], "0.060 in"),
  };
  expect(standalone(wall)?.catalog?.sections).toHaveLength(1);
});

test("standalone() gives up where a row was taken out, and the file then holds the whole catalog", () => {
  expect(standalone(shorter)).toBeNull();
  const back = readParcel(writeStudy(shorter));
  expect(back.refused).toEqual([]);
  expect(back.studies[0].paper).toEqual(shorter);
});

test("everything written to one file is read back, shared catalogs once, the deleted left out", () => {
  const text = writeParcel({
    studies: [study("a", paper), study("b", dearer), { ...study("c", paper), deletedAt: 9 }],
    versions: [{ id: "v", study: "a", name: "before the beam", at: 5, paper: shorter }],
    books: [{ id: "k", name: "spring prices", at: 4, catalog: dearer.catalog }],
    designs: [{ id: "d", name: "the tall one", at: 6, paper: dearer, design: pastureDesign() }],
  });
  expect(JSON.parse(text).catalogs).toHaveLength(3);
  const back = readParcel(text);
  expect(back.refused).toEqual([]);
  expect(back.studies.map((one) => one.paper)).toEqual([paper, dearer]);
  expect(back.studies[0].versions).toEqual([{ name: "before the beam", at: 5, paper: shorter }]);
  expect(back.books).toEqual([{ name: "spring prices", at: 4, catalog: dearer.catalog }]);
  expect(back.designs).toEqual([{ name: "the tall one", at: 6, paper: dearer, design: pastureDesign() }]);
  const kept = asKept(back);
  expect(kept.versions[0].study).toBe(kept.studies[0].id);
  expect(
    new Set([...kept.studies, ...kept.versions, ...kept.books, ...kept.designs].map((one) => one.id)).size,
  ).toBe(5);
});

test("readParcel() takes what can be read of a file and names the place of what can't", () => {
  const bad: Paper = { ...paper, study: withValue(paper.study, ["site", "wind", "speed"], "fast") };
  const back = readParcel(
    writeParcel({ studies: [study("a", paper), study("b", bad)], versions: [], books: [], designs: [] }),
  );
  expect(back.studies).toHaveLength(1);
  expect(back.refused).toHaveLength(1);
  expect(back.refused[0].where).toMatch(/^study 2, “/);
  expect(back.refused[0].why).toMatch(/site\.wind\.speed.*fast/);
});

test("readParcel() refuses a kept design that is none, by its place, and reads a file of before that kept none", () => {
  const whole = JSON.parse(
    writeParcel({ studies: [study("a", paper)], versions: [], books: [], designs: [] }),
  );
  const { designs: _, ...before } = whole;
  expect(readParcel(JSON.stringify(before))).toMatchObject({ designs: [], refused: [] });
  const bad = {
    name: "broken",
    at: 1,
    study: whole.studies[0].study,
    catalog: 0,
    design: { height: "tall" },
  };
  const back = readParcel(JSON.stringify({ ...whole, designs: [bad] }));
  expect(back.studies).toHaveLength(1);
  expect(back.designs).toEqual([]);
  expect(back.refused[0]).toMatchObject({ where: "design 1, “broken”" });
});

test("readParcel() says in words why a file is none of ours", () => {
  expect(() => readParcel("{")).toThrow(/isn’t JSON/);
  for (const text of ["7", "null", "[]"]) expect(() => readParcel(text)).toThrow(/holds no study/);
  expect(() => readParcel('{"parcel": 99}')).toThrow(/newer version/);
  expect(() => readParcel('{"parcel": 1, "studies": 5}')).toThrow(/at catalogs/);
  expect(readParcel('{"mastwright": 1}').refused[0].why).not.toBe("");
});

test("a link brings back the study it was made of, with its own prices, and stays short", async () => {
  const plain = await writeFragment(paper);
  expect(plain).toMatch(/^#\/study\/[\w-]+$/);
  expect(plain.length).toBeLessThan(2500);
  expect((await readFragment(plain)).studies[0].paper).toEqual(paper);
  const [read] = (await readFragment(await writeFragment(dearer))).studies;
  expect(inSi(read.paper).catalog).toEqual(inSi(dearer).catalog);
});

test("a link that was cut, changed, made up or packed too full is refused in words", async () => {
  const whole = await writeFragment(paper);
  await expect(readFragment(whole.slice(0, -9))).rejects.toThrow(/cut short or changed/);
  await expect(readFragment("#/study/<script>")).rejects.toThrow(/characters that no link/);
  await expect(readFragment("#/study/AAAA")).rejects.toThrow(/cut short or changed/);
  const bomb = new Blob([new Uint8Array(6_000_000)])
    .stream()
    .pipeThrough(new CompressionStream("deflate-raw"));
  const packed = Buffer.from(await new Response(bomb).arrayBuffer()).toString("base64url");
  await expect(readFragment(`#/study/${packed}`)).rejects.toThrow(/more than 5 MB/);
});
