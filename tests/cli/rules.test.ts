import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { readArguments } from "../../src/cli/arguments.ts";
import { rulesCommand } from "../../src/cli/commands.ts";
import { design, withGuys } from "../checks/support/pasture.ts";

const folder = mkdtempSync(join(tmpdir(), "mastwright-rules-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const said = (of: object) => {
  const path = join(folder, "design.json");
  writeFileSync(path, JSON.stringify(of));
  return rulesCommand(readArguments(["rules", "catalog/studies/upper-pasture.json", path], 1));
};

it("rules STUDY DESIGN sets every rule set side by side, with factor and clause, and exits by the study's own", () => {
  const { text, data, exit } = said(design());
  const [, head, ...lines] = text.split("\n");
  expect(head).toMatch(/used \(required factor\) +practice +asce7-asd \* +asce7-lrfd +en$/);
  const leg = lines.find((line) => line.trim().startsWith("Leg compression"));
  expect(leg).toMatch(/\d\.\d\d \(x 1\.67\).*\(x 1\.67\).*\(x 1\.11\).*\(x 1\.00\)/);
  // one limit state in two places is told apart
  expect(text).toMatch(/Frost depth, anchors/);
  expect(text).toMatch(/Frost depth, base/);
  expect(text).toMatch(/Guy strength, x 2\.00: gamma_Mg 2\.0/);
  expect(text).toMatch(/licensed engineer decide/);
  const columns = data as { id: string; own: boolean; passes: boolean }[];
  expect(columns).toHaveLength(4);
  expect(exit).toBe(columns.find(({ own }) => own)?.passes ? 0 : 1);
});

it("rules says NOT SAFE and exits 1 where the study's own rule set fails the design", () => {
  const { text, exit } = said(withGuys({ radius: 3 }));
  expect(text).toMatch(/NOT SAFE/);
  expect(text).toMatch(/\(x \d\.\d\d\) fails/);
  expect(exit).toBe(1);
});
