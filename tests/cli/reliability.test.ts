import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { readArguments } from "../../src/cli/arguments.ts";
import { reliabilityCommand } from "../../src/cli/commands.ts";
import { design, withGuys } from "../checks/support/pasture.ts";

const folder = mkdtempSync(join(tmpdir(), "mastwright-reliability-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const pasture = JSON.parse(readFileSync("catalog/studies/upper-pasture.json", "utf8"));

const said = (uncertain: unknown, of: object) => {
  const [study, built] = ["study.json", "design.json"].map((name) => join(folder, name));
  writeFileSync(study, JSON.stringify({ ...pasture, ...(uncertain ? { uncertain } : {}) }));
  writeFileSync(built, JSON.stringify(of));
  return reliabilityCommand(readArguments(["reliability", study, built], 1));
};

it("reliability STUDY DESIGN gives a probability, an index and the importance of each variable, and defers", () => {
  const { text, data, exit } = said(
    { windSpeed: { mean: "66 mph", deviation: "10 mph" }, years: 50 },
    design(),
  );
  expect(text).toMatch(/probability of .* in 50 years, to first order/);
  expect(text).toMatch(/not that the mast falls/);
  expect(text).toMatch(/Leg compression, mast; importance wind 100 %; most probably at \d+ mph/);
  expect(text).toMatch(/licensed engineer decide/);
  const { passes, checks } = data as { passes: boolean; checks: { id: string; beta: number }[] };
  expect(exit).toBe(passes ? 0 : 1);
  expect(checks.length).toBeGreaterThan(5);
  expect(checks.every(({ beta }, i) => i === 0 || beta >= checks[i - 1].beta - 1e-9)).toBe(true);
});

it("reliability says that a design fails as stated, and refuses a study that states nothing uncertain", () => {
  const { text, exit } = said({ soilStrength: { mean: 1, deviation: 0.2 } }, withGuys({ radius: 3 }));
  expect(text).toMatch(/^The design fails its study as stated/);
  expect(exit).toBe(1);
  expect(() => said(undefined, design())).toThrow(/uncertain: found nothing/);
});
