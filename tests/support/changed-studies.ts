import fc from "fast-check";
import { expect } from "vitest";
import type { StudyFile } from "../../src/model/study.ts";
import type { Problem } from "../../src/problem/types.ts";
import type { Candidate } from "../../src/search/candidate.ts";
import { enumerate } from "../../src/search/exhaustive.ts";
import { Grid } from "../../src/search/grid.ts";
import { Search } from "../../src/search/search.ts";
import { problemOf, smallStudy } from "./small-study.ts";

/** A small study with something changed on its lot, after search and enumeration have agreed on it. */
export interface ChangedStudy {
  /** The study as JSON, for the words of an assertion. */
  readonly name: string;
  readonly problem: Problem;
  /** The guyed answer before the change, and the one after it. */
  readonly before: Candidate;
  readonly best: Candidate | null;
}

/** Random studies whose answer is guyed, each unlike the others: search and enumeration must agree on every one, and count it whole. */
export function* changedStudies(
  change: (file: StudyFile) => StudyFile,
  { studies, seed }: { readonly studies: number; readonly seed: number },
): Generator<ChangedStudy> {
  let tried = 0;
  const seen = new Set<string>();
  for (const plain of fc.sample(smallStudy, { numRuns: 3000, seed })) {
    if (tried >= studies) break;
    const size = new Grid(problemOf(plain)).total().designs;
    const name = JSON.stringify(plain);
    if (size < 20 || size > 160 || seen.has(name)) continue;
    seen.add(name);
    const before = enumerate(problemOf(plain)).best;
    if (!before?.design.guys) continue;
    tried++;
    const problem = problemOf(change(plain));
    const search = new Search(problem);
    while (!search.step(1000)) {}
    const { best } = enumerate(problem);
    expect(search.best?.key, name).toBe(best?.key);
    expect(
      Object.values(search.tree.pruned).reduce((a, b) => a + b, 0),
      name,
    ).toBe(size);
    yield { name, problem, before, best };
  }
}
