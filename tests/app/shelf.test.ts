import { beforeEach, expect, test } from "vitest";
import { book, layOpen, type Paper, takeBackTo } from "../../src/app/state/book.ts";
import { begin } from "../../src/app/state/history.ts";
import { readerComes } from "../../src/app/state/reader.ts";
import {
  changePrices,
  differences,
  editRow,
  takeImport,
  writtenCatalog,
  writtenPrices,
} from "../../src/app/state/shelf.ts";
import { exportCsv, previewImport } from "../../src/model/csv.ts";
import { previewPrices } from "../../src/model/csv-prices.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";

await readerComes();

const bare: Paper = { study: startingStudies[0].file, catalog: defaultCatalog };
/** A study that brings a pipe of its own in place of the catalog's, and its own prices. */
const own: Paper = {
  ...bare,
  study: {
    ...bare.study,
    catalog: {
      pipes: [{ ...defaultCatalog.pipes[0], price: "$900" }],
      prices: { ...defaultCatalog.prices, permit: "$500" },
    },
  },
};
const lay = (paper: Paper) => expect(layOpen("test", begin(paper), null)).toEqual([]);
const paper = () => book.get().history.present;

beforeEach(() => lay(bare));

test("writtenCatalog() is the catalog with what the study brings in its place", () => {
  expect(writtenCatalog(bare)).toEqual(defaultCatalog);
  const whole = writtenCatalog(own);
  expect(whole.pipes.map((row) => row.price)).toEqual([
    "$900",
    ...defaultCatalog.pipes.slice(1).map((row) => row.price),
  ]);
  expect(whole.prices.permit).toBe("$500");
});

test("a price is changed where it is written: in the study that brings a book, else in the catalog", () => {
  expect(changePrices(["permit"], "$1", "permit $1")).toEqual([]);
  expect(paper().catalog.prices.permit).toBe("$1");
  lay(own);
  expect(changePrices(["permit"], "$2", "permit $2")).toEqual([]);
  expect(paper().study.catalog?.prices?.permit).toBe("$2");
  expect(writtenPrices(paper()).permit).toBe("$2");
  expect(paper().catalog).toBe(defaultCatalog);
  expect(book.get().reading?.catalog.prices.permit).toBe(2);
  expect(changePrices(["permit"], "much", "permit much")).not.toEqual([]);
  expect(writtenPrices(paper()).permit).toBe("$2");
});

test("rows from a file land where they are written, and what they changed is read", () => {
  lay(own);
  const [mine, other] = defaultCatalog.pipes;
  const file = `id,price\n${mine.id},$11\n${other.id},$12\n`;
  const preview = previewImport("pipes", file, writtenCatalog(paper()));
  expect(preview.changed.map(({ was }) => was)).toEqual(["$900", expect.any(String)]);
  expect(takeImport(preview)).toEqual([]);
  expect(paper().study.catalog?.pipes?.[0].price).toBe("$11");
  expect(paper().catalog.pipes[0]).toBe(mine);
  const read = book.get().reading!.catalog;
  expect(read.pipes.slice(0, 2).map((row) => row.price)).toEqual([11, 12]);
  const again = previewImport("pipes", exportCsv("pipes", read, "us"), writtenCatalog(paper()));
  expect(again).toMatchObject({ added: [], changed: [], refused: [] });
});

test("prices from a file are one step, and several steps are taken back at once", () => {
  const preview = previewPrices("for,price\npermit,$7\nforms,$9/ft2\n", "csv", writtenPrices(paper()));
  expect(takeImport(preview)).toEqual([]);
  expect(book.get().history.past).toHaveLength(1);
  editRow("pipes", defaultCatalog.pipes[0].id, ["price"], "$8", "a pipe");
  expect(book.get().history.past.map((step) => step.did)).toEqual(["took 2 prices from a file", "a pipe"]);
  takeBackTo(book.get().history.past[0]);
  expect(paper()).toEqual(bare);
  expect(book.get().history.future).toHaveLength(2);
});

test("differences() counts rows and prices that are not alike, also those that only one has", () => {
  expect(differences(defaultCatalog, structuredClone(defaultCatalog))).toEqual({ rows: 0, prices: 0 });
  const other = {
    ...defaultCatalog,
    pipes: [{ ...defaultCatalog.pipes[0], price: "$1" }, ...defaultCatalog.pipes.slice(2)],
    prices: { ...defaultCatalog.prices, permit: "$1", barStock: undefined },
  };
  expect(differences(defaultCatalog, other)).toEqual({ rows: 2, prices: 2 });
});
