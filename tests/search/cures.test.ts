import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import type { Design } from "../../src/model/design.ts";
import type { Problem } from "../../src/problem/types.ts";
import { type Cure, cures } from "../../src/search/cures.ts";
import { helping } from "../../src/search/helping.ts";
import { nearestMiss } from "../../src/search/nearest.ts";
import { Search } from "../../src/search/search.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

const cheapest = (problem: Problem): Design | null => {
  const search = new Search(problem);
  while (!search.step(50));
  return search.best?.design ?? null;
};
const passes = ({ checks }: Cure) => checks.every((check) => check.passes);

describe("cures(problem, design): what one step of each part would do to the checks", () => {
  it("finds no step that is safe and cheaper than a proven answer, and some that gain on it", () => {
    const seen = new Map<string, number>();
    let answers = 0;
    let gaining = 0;
    for (const file of fc.sample(smallStudy, { numRuns: 220, seed: 17 })) {
      if (file.aim === "concrete" || file.aim === "digging") continue;
      const problem = problemOf(file);
      const design = cheapest(problem);
      if (!design) continue;
      answers++;
      const { checks } = verify(problem, design);
      const found = cures(problem, design);
      for (const cure of found) {
        seen.set(cure.change.what, (seen.get(cure.change.what) ?? 0) + 1);
        if (passes(cure)) expect(cure.costs, JSON.stringify(cure.change)).toBeGreaterThanOrEqual(0);
      }
      for (const check of checks) {
        const { steps, spoilt } = helping(check, checks, found);
        if (steps.length > 0) gaining++;
        for (const { cure, then } of steps) {
          expect(passes(cure)).toBe(true);
          expect(then.utilisation).toBeLessThan(check.utilisation);
        }
        // dearer ones gain more, or they would not be worth a line
        for (let i = 1; i < steps.length; i++) {
          expect(steps[i].cure.costs).toBeGreaterThanOrEqual(steps[i - 1].cure.costs);
          expect(steps[i].then.utilisation).toBeLessThan(steps[i - 1].then.utilisation);
        }
        if (spoilt) expect(spoilt.by.passes).toBe(false);
      }
    }
    console.log(`${answers} answers, ${gaining} checks with a gain, steps ${JSON.stringify([...seen])}`);
    expect(answers).toBeGreaterThan(20);
    expect(gaining).toBeGreaterThan(100);
    for (const what of ["section", "strand", "radius", "level", "tension", "anchor", "footing"])
      expect(seen.get(what), what).toBeGreaterThan(0);
  });

  it("changes one thing by one step: no value of the grid lies between", () => {
    let sizes = 0;
    for (const file of fc.sample(smallStudy, { numRuns: 150, seed: 5 })) {
      const problem = problemOf(file);
      const design = cheapest(problem);
      if (!design) continue;
      for (const { change } of cures(problem, design)) {
        const between = (values: readonly number[], from: number, to: number) =>
          values.filter((value) => (value - from) * (value - to) < -1e-12);
        if (change.what === "tension")
          expect(between(problem.study.parts.tensions, change.from, change.to)).toEqual([]);
        if (change.what === "level")
          expect(between(problem.levelHeights, change.from, change.to)).toEqual([]);
        if (change.what !== "footing") continue;
        const [was, now] = [change.was, change.now] as unknown as Record<string, unknown>[];
        const keys = Object.keys(now).filter((key) => now[key] !== was[key]);
        expect(keys).toHaveLength(1);
        const [key] = keys;
        if (typeof now[key] !== "number") continue;
        sizes++;
        const like = problem.footings
          .map(({ choice }) => choice as unknown as Record<string, unknown>)
          .filter((one) => Object.keys(one).every((k) => k === key || one[k] === was[k]))
          .map((one) => one[key] as number);
        expect(between(like, was[key] as number, now[key])).toEqual([]);
      }
    }
    expect(sizes).toBeGreaterThan(20);
  });

  it("tells which single steps make a failing check of a nearest miss pass", () => {
    let cured = 0;
    for (const file of fc.sample(smallStudy, { numRuns: 150, seed: 29 })) {
      const problem = problemOf(file);
      if (cheapest(problem)) continue;
      const miss = nearestMiss(problem);
      if (!miss) continue;
      const { checks } = miss.verdict;
      const found = cures(problem, miss.design);
      // nothing on this grid is safe, so no step can be
      expect(found.filter(passes)).toEqual([]);
      for (const check of checks.filter((one) => !one.passes))
        for (const { then, failing } of helping(check, checks, found).steps)
          if (then.passes) {
            cured++;
            expect(failing).toBeGreaterThan(0);
          }
    }
    console.log(`${cured} failing checks pass after one step, each with others that fail still`);
    expect(cured).toBeGreaterThan(0);
  });
});
