import { expect, it } from "vitest";
import { verify } from "../../../src/checks/verify.ts";
import { itemWords } from "../../../src/report/sheets/buy.ts";
import { givenOf } from "../../../src/report/sheets/given.ts";
import { strandSize, tape } from "../../../src/report/sheets/words.ts";
import { design, pasture } from "../../checks/support/pasture.ts";

const problem = pasture((study) => {
  study.parts = { ...study.parts, wholeReels: true };
});

it("itemWords(given, a reel of the bill) asks for strand and reel by their sizes, as a buyer does", () => {
  const given = givenOf(problem, design(), verify(problem, design()));
  const reels = given.verdict.bill.lines.filter(({ item }) => item.startsWith("reel of"));
  expect(reels.length).toBeGreaterThan(0);
  const words = reels.map((line) => itemWords(given, line));
  const sold = problem.catalog.strand.flatMap((row) =>
    (row.reels ?? []).map(({ length }) => `Reel of strand ${strandSize(row)}, ${tape(length)}`),
  );
  for (const said of words) expect(sold).toContain(said);
});
