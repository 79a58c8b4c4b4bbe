import { expect, test } from "vitest";
import { verdictText } from "../../src/cli/text.ts";
import type { Verdict } from "../../src/model/verdict.ts";

test("verdictText(verdict) rounds no margin up to what it is not", () => {
  const verdict = (smallestMargin: number) =>
    ({
      passes: true,
      smallestMargin,
      checks: [],
      bill: { total: 100, lines: [] },
      concreteVolume: 0,
      dugVolume: 0,
      assumptions: [],
    }) as unknown as Verdict;
  expect(verdictText(verdict(0.0999))).toContain("the smallest margin is 9 %.");
  expect(verdictText(verdict(0.1))).toContain("the smallest margin is 10 %.");
});
