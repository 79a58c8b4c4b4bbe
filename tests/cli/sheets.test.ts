import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { findBrowser } from "../../src/cli/browser.ts";
import { mastwright } from "./mastwright.ts";

const STUDY = "catalog/studies/used-stack.json";
const PAGES = ["buy.html", "calculation.html", "dig.html", "raise.html", "tension.html"];

const folder = mkdtempSync(join(tmpdir(), "mastwright-sheets-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const found = join(folder, "answer.json");

beforeAll(async () => {
  writeFileSync(found, (await mastwright("find", STUDY, "--json")).stdout);
});

describe("mastwright sheets", () => {
  it("writes five pages of what find printed, and a PDF where a browser is found", async () => {
    const out = join(folder, "deep", "sheets");
    const { code, stdout, stderr } = await mastwright("sheets", STUDY, found, "--out", out, "--json");
    const printed = findBrowser() !== undefined && !stderr.includes("no sheets.pdf");
    expect(code).toBe(0);
    expect(readdirSync(out).sort()).toEqual(printed ? [...PAGES, "sheets.pdf"].sort() : PAGES);
    expect(JSON.parse(stdout).files.map((file: string) => statSync(file).size > 1000)).not.toContain(false);
    expect(JSON.parse(stdout).files).toHaveLength(printed ? 6 : 5);
    for (const page of PAGES) expect(readFileSync(join(out, page), "utf8")).toMatch(/learning tool/);
    if (printed) expect(readFileSync(join(out, "sheets.pdf")).subarray(0, 5).toString()).toBe("%PDF-");
    // nothing half-written is left beside it
    expect(readdirSync(join(folder, "deep"))).toEqual(["sheets"]);
  });

  it("writes nothing for a design that fails, names the check, and exits 1", async () => {
    const { design } = JSON.parse(readFileSync(found, "utf8"));
    const near = join(folder, "near.json");
    writeFileSync(near, JSON.stringify({ ...design, guys: { ...design.guys, radius: 3 } }));
    const out = join(folder, "none");
    const { code, stdout } = await mastwright("sheets", STUDY, near, "--out", out);
    expect(code).toBe(1);
    expect(stdout).toMatch(/Not safe: don't build this\. .* fails/);
    expect(existsSync(out)).toBe(false);
  });

  it("refuses a missing --out, and one that is a file, with exit 2", async () => {
    const [missing, file] = await Promise.all([
      mastwright("sheets", STUDY, found),
      mastwright("sheets", STUDY, found, "--out", found),
    ]);
    expect([missing.code, missing.stdout, file.code, file.stdout]).toEqual([2, "", 2, ""]);
    expect(missing.stderr).toMatch(/found no --out, expected --out DIR/);
    expect(file.stderr).toMatch(/expected a folder/);
  });

  it("finds no browser on an empty path", () => {
    expect(findBrowser("")).toBeUndefined();
  });
});
