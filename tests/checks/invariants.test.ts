import fc from "fast-check";
import { expect, test } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import type { Design } from "../../src/model/design.ts";
import { designOf } from "../support/random-design.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

test("verify is total: every check has numbers, a source and a verdict that follows from them", () => {
  const tried = new Set<string>();
  let passing = 0;
  let unstable = 0;
  const limitStates = new Set<string>();
  fc.assert(
    fc.property(smallStudy, fc.array(fc.nat({ max: 9999 }), { minLength: 14, maxLength: 14 }), (file, at) => {
      const problem = problemOf(file);
      const design = designOf(problem, at);
      fc.pre(design !== null);
      const d = design as Design;
      tried.add(JSON.stringify([file.site, file.rules, file.wishes, d]));
      const verdict = verify(problem, d);
      for (const check of verdict.checks) {
        limitStates.add(check.limitState);
        expect(Number.isNaN(check.demand) || Number.isNaN(check.capacity), `${check.id}`).toBe(false);
        expect(check.utilisation, check.id).toBeGreaterThanOrEqual(0);
        expect(check.source.length, check.id).toBeGreaterThan(5);
        expect(check.title.length, check.id).toBeGreaterThan(3);
        if (check.kind === "strength")
          expect(check.passes, check.id).toBe(
            check.utilisation * (1 + problem.study.wishes.margin) <= 1 + 1e-12,
          );
      }
      expect(verdict.passes).toBe(verdict.checks.every((check) => check.passes));
      const failed = verdict.checks.find((check) => check.limitState === "stability");
      if (failed?.utilisation === Number.POSITIVE_INFINITY) {
        unstable++;
        expect(verdict.passes).toBe(false);
      }
      if (verdict.passes) {
        passing++;
        expect(verdict.smallestMargin).toBeGreaterThanOrEqual(problem.study.wishes.margin - 1e-9);
        expect(verdict.cases.every((c) => c.stable && c.bucklingFactor > 1)).toBe(true);
      }
      const cents = verdict.bill.lines.reduce((sum, { amount }) => sum + amount, 0);
      expect(Math.round(verdict.bill.total * 100)).toBe(cents);
      expect(verify(problem, d)).toEqual(verdict);
    }),
    { numRuns: 150, seed: 81 },
  );
  expect(tried.size).toBeGreaterThanOrEqual(145);
  expect(passing).toBeGreaterThan(3);
  expect(limitStates.size).toBeGreaterThanOrEqual(18);
  console.info(
    `verify: ${tried.size} designs, ${passing} pass, ${unstable} are unstable, ${limitStates.size} limit states`,
  );
});
