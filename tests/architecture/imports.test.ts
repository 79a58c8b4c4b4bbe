import { spawnSync } from "node:child_process";
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";

/** Low to high: a folder imports only what stands before it. */
const FOLDERS = [
  "src/quantity",
  "src/model",
  "src/physics",
  "src/reliability",
  "src/purchase",
  "src/parts",
  "src/problem",
  "src/cost",
  "src/checks",
  "src/search",
  "src/report",
  "workers",
  "src/cli",
  "src/app",
] as const;
const CORE = FOLDERS.slice(2, 10);
const BIOME = resolve("node_modules/.bin/biome");

interface Diagnostic {
  readonly category: string;
  readonly message: string;
  readonly location: { readonly path: string };
}

let root = "";
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "mastwright-imports-"));
  for (const file of ["biome.json", ".gitignore"]) copyFileSync(file, join(root, file));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

function plant(path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

/** What the project's own lint says of planted files, by path. */
function linted(): Map<string, Diagnostic[]> {
  const { stdout, stderr } = spawnSync(
    BIOME,
    ["lint", "--reporter=json", "--max-diagnostics=none", "--only=style/noRestrictedImports", "."],
    { cwd: root, encoding: "utf8" },
  );
  const at = stdout.indexOf("{");
  expect(at, `biome printed no report: ${stderr}`).toBeGreaterThanOrEqual(0);
  const byPath = new Map<string, Diagnostic[]>();
  for (const diagnostic of JSON.parse(stdout.slice(at)).diagnostics as Diagnostic[])
    byPath.set(diagnostic.location.path, [...(byPath.get(diagnostic.location.path) ?? []), diagnostic]);
  return byPath;
}

const up = (from: string) => "../".repeat(from.split("/").length);
const use = (specifier: string) => `import { a } from "${specifier}";\nexport const b = a;\n`;

describe("the direction of imports", () => {
  it("lint(folder) refuses an import of any folder that stands above it, and says why", () => {
    let planted = 0;
    for (const [i, low] of FOLDERS.entries())
      for (const [k, high] of FOLDERS.entries()) {
        // the two shells stand side by side: neither knows the other
        if (!(k > i || (low === "src/app" && high === "src/cli"))) continue;
        plant(`${low}/planted-${k}.ts`, use(`${up(low)}${high}/thing.ts`));
        planted++;
      }
    expect(planted).toBe(92);
    const found = linted();
    const missed: string[] = [];
    for (const [i, low] of FOLDERS.entries())
      for (const [k, high] of FOLDERS.entries()) {
        if (!(k > i || (low === "src/app" && high === "src/cli"))) continue;
        const [first] = found.get(`${low}/planted-${k}.ts`) ?? [];
        if (!first?.message.startsWith(low)) missed.push(`${low} -> ${high}: ${first?.message}`);
      }
    expect(missed).toEqual([]);
  });

  it("lint(folder) sees through type imports, deep folders and imports at run time", () => {
    plant("src/physics/mast/type.ts", 'import type { A } from "../../search/a.ts";\nexport type B = A;\n');
    plant("src/physics/mast/late.ts", 'export const a = await import("../../search/a.ts");\n');
    plant("src/physics/mast/again.ts", 'export * from "../../search/a.ts";\n');
    const found = linted();
    for (const file of ["type", "late", "again"])
      expect(found.get(`src/physics/mast/${file}.ts`)?.[0]?.message, file).toMatch(/^src\/physics is pure/);
  });

  it("lint(core) refuses screens, workers, files and schemas, and says why", () => {
    const libraries = ["react", "react-dom/client", "recharts", "comlink", "zod", "node:fs", "node:crypto"];
    for (const folder of CORE)
      for (const [i, library] of libraries.entries()) plant(`${folder}/planted-${i}.ts`, use(library));
    const found = linted();
    for (const folder of CORE)
      for (const [i, library] of libraries.entries())
        expect(found.get(`${folder}/planted-${i}.ts`)?.[0]?.message, `${folder} -> ${library}`).toMatch(
          /^the core computes/,
        );
  });

  it("lint(folder) lets through what the order allows", () => {
    plant("src/physics/mast/one.ts", use("../guy/catenary.ts"));
    plant("src/parts/anchors/one.ts", use("../../physics/ground/deadman.ts"));
    plant("src/search/one.ts", use("../checks/verify.ts"));
    plant("src/search/two.ts", use("flatqueue"));
    plant("src/model/one.ts", use("zod"));
    plant("workers/one.ts", use("../src/search/search.ts"));
    plant("src/app/state/one.ts", use("../../../workers/client.ts"));
    plant("src/cli/one.ts", use("node:fs"));
    expect([...linted().keys()]).toEqual([]);
  });

  it("lint() refuses files that import each other in a ring", () => {
    plant("src/search/one.ts", use("./two.ts"));
    plant("src/search/two.ts", use("./one.ts"));
    const { stdout } = spawnSync(BIOME, ["lint", "--only=suspicious/noImportCycles", "."], {
      cwd: root,
      encoding: "utf8",
    });
    expect(stdout + spawnSync(BIOME, ["lint", "."], { cwd: root, encoding: "utf8" }).stderr).toMatch(
      /part of a cycle/,
    );
  });

  it("lint(core) refuses globals of a page or of Node", () => {
    plant("src/search/page.ts", "export const wide = window.innerWidth;\n");
    plant("src/checks/node.ts", "export const where = process.cwd();\n");
    const { stderr } = spawnSync(BIOME, ["lint", "--only=style/noRestrictedGlobals", "."], {
      cwd: root,
      encoding: "utf8",
    });
    expect(stderr).toMatch(/src\/search\/page\.ts/);
    expect(stderr).toMatch(/src\/checks\/node\.ts/);
    expect(stderr).toMatch(/asks none of them for anything/);
  });
});
