import { describe, expect, it } from "vitest";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import { compile } from "../../src/problem/compile.ts";
import { audit } from "../../src/search/audit.ts";
import { Search, SearchDefect } from "../../src/search/search.ts";

const problemAt = (id: string) => {
  const read = parseStudy(startingStudies.find((s) => s.id === id)?.file, { catalog: defaultCatalog });
  if (!read.ok) throw new Error(read.errors[0].message);
  return compile(read.study, read.catalog);
};

describe("the audit", () => {
  it("audit(problem, answer) finds nothing that beats the answers of the starting studies", () => {
    for (const { id } of startingStudies) {
      const problem = problemAt(id);
      const search = new Search(problem);
      while (!search.step(1000)) {}
      const { verified } = audit(problem, search.best, 400);
      expect(verified, id).toBeGreaterThan(50);
    }
  });

  it("audit(problem, answer) fails loudly when a dearer design is passed off as the answer", () => {
    const problem = problemAt("used-stack");
    const search = new Search(problem);
    while (!search.step(1000)) {}
    const { best } = search;
    if (!best) throw new Error("expected a safe design");
    expect(() => audit(problem, { ...best, objective: best.objective * 1.6 }, 3000)).toThrow(SearchDefect);
  });

  it("audit(problem, null) fails loudly when a study with safe designs is said to have none", () => {
    expect(() => audit(problemAt("used-stack"), null, 6000)).toThrow(SearchDefect);
  });
});
