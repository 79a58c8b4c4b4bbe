import fc from "fast-check";
import { expect, test } from "vitest";
import { checkFigure } from "../../src/app/wording/check.ts";
import { formulaOf, formulas } from "../../src/app/wording/formulas.ts";
import { glossary, glossedPieces } from "../../src/app/wording/glossary.ts";
import { lettersFound } from "../../src/app/wording/letters-found.ts";
import { verify } from "../../src/checks/verify.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import type { Verdict } from "../../src/model/verdict.ts";
import type { Problem } from "../../src/problem/types.ts";
import { designOf } from "../support/random-design.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

/** Verdicts of designs drawn from a study's grid; what has no guy to rig at a drawn place is left out. */
const verdictsOf = (problem: Problem, count: number, seed: number): Verdict[] =>
  fc
    .sample(fc.array(fc.nat(9999), { minLength: 12, maxLength: 12 }), { numRuns: count, seed })
    .flatMap((at) => {
      const design = designOf(problem, at);
      return design ? [verify(problem, design)] : [];
    });

const verdicts = [
  ...startingStudies.flatMap(({ file }, i) => verdictsOf(problemOf(file), 12, i)),
  ...fc.sample(smallStudy, { numRuns: 60, seed: 5 }).flatMap((file, i) => verdictsOf(problemOf(file), 2, i)),
];

test("formulas hold every limit state that verify() gives, in studies of every kind", () => {
  const given = new Set(verdicts.flatMap(({ checks }) => checks.map((check) => check.limitState)));
  expect([...given].filter((id) => !formulaOf(id))).toEqual([]);
  expect(given.size).toBeGreaterThan(35);
});

test("every letter that a formula explains stands in its sum, and each has words", () => {
  for (const [id, { asks, holds, letters }] of Object.entries(formulas))
    for (const [letter, words] of letters)
      for (const one of letter.split(", ")) {
        expect(words, id).not.toBe("");
        if (!["shaft", "N", "U", "H", "M", "V", "D", "B", "P", "n"].includes(one))
          expect(`${asks} ${holds}`, `${id}: ${one}`).toContain(one);
      }
});

test("lettersFound() of an anchor's lift is the demand of its check, and of a leg stands in its load case", () => {
  let anchors = 0;
  let legs = 0;
  for (const verdict of verdicts)
    for (const check of verdict.checks) {
      const formula = formulaOf(check.limitState);
      if (!formula?.found) continue;
      const found = lettersFound(formula, check, verdict, "si");
      if (check.limitState === "anchor-uplift" && found.U && check.demand > 0) {
        expect(found.U).toBe(checkFigure(check.demand, "force", "si"));
        anchors++;
      }
      if (check.limitState === "leg-compression" && found.M) legs++;
    }
  expect(anchors).toBeGreaterThan(5);
  expect(legs).toBeGreaterThan(20);
});

test("glossedPieces() marks each word of the trade once and leaves the text as it was", () => {
  const text = "Guys of EHS strand; the guys pull on a deadman, the sectional view does not.";
  const pieces = glossedPieces(text);
  expect(pieces.map((piece) => piece.text).join("")).toBe(text);
  expect(pieces.filter((piece) => piece.line).map((piece) => piece.text)).toEqual([
    "Guys",
    "EHS",
    "strand",
    "deadman",
  ]);
});

test("the glossary is in order, names no word twice, and says each in one line", () => {
  const words = glossary.map(({ word }) => word.toLowerCase());
  expect(words).toEqual([...new Set(words)].sort((a, b) => a.localeCompare(b, "en")));
  for (const { word, line } of glossary) {
    expect(line.length, word).toBeLessThan(110);
    expect(line, word).toMatch(/\.$/);
  }
});
