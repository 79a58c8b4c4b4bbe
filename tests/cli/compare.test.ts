import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { readArguments } from "../../src/cli/arguments.ts";
import { compareCommand } from "../../src/cli/compare.ts";
import type { Comparison } from "../../src/report/comparison.ts";
import { design, withGuys } from "../checks/support/pasture.ts";

const folder = mkdtempSync(join(tmpdir(), "mastwright-compare-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const file = (name: string, of: object): string => {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(of));
  return path;
};
const pasture = "catalog/studies/upper-pasture.json";
const said = (...files: string[]) => compareCommand(readArguments(["compare", ...files], 1));

it("compare STUDY DESIGN DESIGN STUDY sets designs beside a study's own answer, with differences, and defers", async () => {
  const { text, data, exit } = await said(
    pasture,
    file("a.json", design()),
    file("b.json", withGuys({ radius: 3 })),
    "catalog/studies/hard-ground.json",
  );
  const { columns, figures } = data as Comparison;
  expect(columns).toHaveLength(3);
  expect(columns[1].passes).toBe(false);
  expect(columns[2].passes).toBe(true);
  expect(exit).toBe(1);
  expect(figures.find(({ what }) => what === "work")?.values.every((hands) => (hands ?? 0) > 0)).toBe(true);
  expect(text).toMatch(/NOT SAFE: don't build this/);
  expect(text).toMatch(/cost .*\$\d+\.\d\d .*\([+-]\$\d+\.\d\d\)/);
  expect(text).toMatch(/work, one pair of hands/);
  expect(text).toMatch(/B: .*FAILS/);
  // names, as page and sheets have them, and no keys of the catalog
  expect(text).toMatch(/anchors +A +buried concrete anchors [\d.]+ × /);
  expect(text).toMatch(/guys +A +3 a level: 3\/16 in EHS strand at/);
  expect(text).not.toMatch(/ehs-\d|3leg-|deadman/);
  expect(text).toMatch(/licensed engineer decide/);
}, 60_000);

it("compare refuses a design before any study, and nothing at all", async () => {
  await expect(said(file("a.json", design()))).rejects.toThrow(/expected the study that it belongs to first/);
  await expect(said()).rejects.toThrow(/expected studies and their designs/);
});
