import { existsSync, readFileSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import { expect, test } from "vitest";

const IMPORT = /^(?:import|export)\s+(?:(type\s)?([^;"]*?)\sfrom\s+)?"([^"]+)"/gm;

/** What a file's imports run: types vanish, and what is imported later is not run now. */
const runs = (text: string): string[] =>
  [...text.matchAll(IMPORT)]
    .filter(([, type, names = "a"]) => {
      const inBraces = /^\{([^}]*)\}$/
        .exec(names.trim())?.[1]
        .split(",")
        .filter((name) => name.trim());
      return !type && !inBraces?.every((name) => name.trim().startsWith("type "));
    })
    .map(([, , , from]) => from);

/** Every file and library that is run before the first line of `entry`. */
const closure = (entry: string): Set<string> => {
  const found = new Set<string>();
  const visit = (path: string) => {
    if (found.has(path)) return;
    found.add(path);
    if (!/\.tsx?$/.test(path)) return;
    for (const from of runs(readFileSync(path, "utf8")))
      if (from.startsWith(".")) visit(relative(".", resolve(dirname(path), from)));
      else found.add(from);
  };
  visit(entry);
  return found;
};

test("runs(text) leaves types out and finds what is run, over several lines too", () => {
  expect(runs('import type { A } from "a";\nimport { type B } from "b";\nimport "c.css";\n')).toEqual([
    "c.css",
  ]);
  expect(runs('import {\n  type D,\n  e,\n} from "d";\nexport * from "f";\n')).toEqual(["d", "f"]);
});

test("the program's first page runs no schema and no search: the parser comes in pieces, the search is the worker's", () => {
  const first = closure("src/app/main.tsx");
  expect([...first].filter((path) => path.startsWith("src")).every(existsSync)).toBe(true);
  expect(first.size).toBeGreaterThan(100);
  expect(first).toContain("react");
  expect(first).not.toContain("zod");
  for (const path of ["javascript-lp-solver", "src/search/tree.ts", "src/checks/verify.ts"])
    expect(first).not.toContain(path);
  expect(closure("workers/share-worker.ts")).toContain("src/search/tree.ts");
  expect(closure("src/model/parse.ts")).toContain("zod");
});

test("nothing of the program is run before the first words are drawn", () => {
  expect([...closure("src/app/start.ts")].filter((path) => !path.endsWith(".css"))).toEqual([
    "src/app/start.ts",
    "workers/early.ts",
  ]);
});
