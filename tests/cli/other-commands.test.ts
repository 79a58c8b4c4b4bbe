import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import usedStack from "../../catalog/studies/used-stack.json" with { type: "json" };
import { readArguments, UsageError } from "../../src/cli/arguments.ts";
import { reference } from "../../src/cli/commands.ts";
import { openStudy } from "../../src/cli/files.ts";
import { mastwright } from "./mastwright.ts";

const USED_STACK = "catalog/studies/used-stack.json";

const folder = mkdtempSync(join(tmpdir(), "mastwright-other-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const write = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

describe("mastwright verify", () => {
  let answer = "";
  beforeAll(async () => {
    answer = (await mastwright("find", USED_STACK, "--json")).stdout;
  });

  it("verify passes the answer of find, alone or inside what find printed, and exits 0", async () => {
    const { design, bill } = JSON.parse(answer);
    const [alone, inside] = await Promise.all([
      mastwright("verify", USED_STACK, write("design.json", JSON.stringify(design)), "--json"),
      mastwright("verify", USED_STACK, write("answer.json", answer), "--json"),
    ]);
    expect(alone.code).toBe(0);
    expect(alone.stderr).toBe("");
    const verdict = JSON.parse(alone.stdout);
    expect(verdict.passes).toBe(true);
    expect(verdict.bill).toEqual(bill);
    expect(JSON.parse(inside.stdout)).toEqual(verdict);
  });

  it("verify fails a design whose guys stand too near, says which check, and exits 1", async () => {
    const { design } = JSON.parse(answer);
    const near = { ...design, guys: { ...design.guys, radius: 3 } };
    const path = write("near.json", JSON.stringify(near));
    const [data, text] = await Promise.all([
      mastwright("verify", USED_STACK, path, "--json"),
      mastwright("verify", USED_STACK, path),
    ]);
    expect([data.code, text.code]).toEqual([1, 1]);
    const { passes, checks } = JSON.parse(data.stdout);
    expect(passes).toBe(false);
    expect(checks[0].passes).toBe(false);
    expect(text.stdout).toMatch(/NOT SAFE/);
  });

  it("verify refuses a design that names what the study does not have, and exits 2", async () => {
    const { design } = JSON.parse(answer);
    const odd = { ...design, stack: [{ ...design.stack[0], section: "3leg-99" }] };
    const { code, stdout, stderr } = await mastwright(
      "verify",
      USED_STACK,
      write("odd.json", JSON.stringify(odd)),
      "--json",
    );
    expect([code, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/stack\[0\]\.section: found "3leg-99", expected/);
  });
});

describe("mastwright reference and schema", () => {
  it("reference CASE.json ... --json prints one array in the order of the files", async () => {
    const { code, stdout, stderr } = await mastwright(
      "reference",
      "tests/reference/cases/closed-form.json",
      "tests/reference/cases/guyed-mast-P1.json",
      "--json",
    );
    expect([code, stderr]).toEqual([0, ""]);
    const results = JSON.parse(stdout);
    expect(Array.isArray(results)).toBe(true);
    expect(results.length).toBeGreaterThan(10);
    for (const result of results)
      expect(Object.keys(result)).toEqual(expect.arrayContaining(["id", "kind", "computed"]));
    expect(results.at(-1).kind).toBe("guyed-mast");
  });

  it("reference CASE.json prints the largest difference of every group as text", async () => {
    const { code, stdout } = await mastwright("reference", "tests/reference/cases/closed-form.json");
    expect(code).toBe(0);
    expect(stdout).toMatch(/^swing-tension-1 +tension +\d/m);
  });

  it("schema prints JSON Schemas of study, design and catalog", async () => {
    const { code, stdout } = await mastwright("schema", "--json");
    expect(code).toBe(0);
    const schemas = JSON.parse(stdout);
    expect(Object.keys(schemas)).toEqual(["study", "design", "catalog"]);
    for (const schema of Object.values<{ type: string }>(schemas)) expect(schema.type).toBe("object");
  });
});

/** What a call complains of; a call that does not is a failed test. */
const complaintOf = (call: () => unknown): string => {
  try {
    call();
  } catch (error) {
    expect(error).toBeInstanceOf(UsageError);
    return (error as Error).message;
  }
  throw new Error("expected a UsageError; nothing was thrown");
};

describe("mastwright and bad input", () => {
  const study = (change: (value: typeof usedStack) => unknown) =>
    JSON.stringify(change(structuredClone(usedStack)));
  const bad: readonly (readonly [string, () => string, RegExp])[] = [
    [
      "a wrong unit",
      () => study((s) => ({ ...s, wishes: { ...s.wishes, height: "60 psf" } })),
      /wishes\.height: "psf" is a unit of pressure, not of length/,
    ],
    [
      "a negative size",
      () => study((s) => ({ ...s, wishes: { ...s.wishes, height: "-60 ft" } })),
      /wishes\.height: found "-60 ft", expected a length of/,
    ],
    [
      "an unknown section",
      () => study((s) => ({ ...s, parts: { ...s.parts, sections: ["3leg-99"] } })),
      /parts\.sections\[0\]: found "3leg-99", expected a section of the catalog/,
    ],
    [
      "a lot whose edges cross",
      () =>
        study((s) => ({
          ...s,
          lot: {
            ...s.lot,
            corners: [
              ["0 ft", "0 ft"],
              ["110 ft", "110 ft"],
              ["110 ft", "0 ft"],
              ["0 ft", "110 ft"],
            ],
          },
        })),
      /lot\.corners: found edge 1 .* meets edge 3/,
    ],
    [
      "a version of the future",
      () => study((s) => ({ ...s, mastwright: 99 })),
      /mastwright: found version 99, this program reads up to 1/,
    ],
    [
      "sections that no clause covers",
      () =>
        study((s) => ({
          ...s,
          parts: { ...s.parts, sections: ["wiry"] },
          catalog: {
            sections: [
              {
                ...s.catalog.sections[0],
                id: "wiry",
                bracing: { pattern: "single", member: { diameter: "1/8 in" } },
              },
            ],
          },
        })),
      /parts\.sections: found none that can be computed; bracing in compression, KL\/r: found \d+/,
    ],
    [
      "a catalog key given twice",
      () => study((s) => ({ ...s, catalog: { sections: [s.catalog.sections[0], s.catalog.sections[0]] } })),
      /catalog\.sections\[1\]\.id: found "3leg-10\.5-offered" a second time/,
    ],
    [
      "a JSON key given twice",
      () => study((s) => s).replace('"aim":', '"aim": "cost", "aim":'),
      /found key "aim" a second time \(line 1, column \d+\)/,
    ],
    ["JSON that breaks off", () => '{"mastwright": 1,', /found the end of the file \(line 1, column 18\)/],
    [
      "a file of 50 MB",
      () => " ".repeat(50 * 1024 * 1024),
      /found 50\.0 MB, expected a file of at most 5 MB/,
    ],
    ["an empty file", () => "", /expected/],
    ["an array", () => "[]", /expected/],
  ];

  it.each(bad)("openStudy(path) refuses %s in one line: path, place, found, expected", (name, text, said) => {
    const path = write(`${name.replaceAll(" ", "-")}.json`, text());
    const complaint = complaintOf(() => openStudy(path));
    expect(complaint).toMatch(said);
    expect(complaint.startsWith(path)).toBe(true);
    expect(complaint.trim().split("\n")).toHaveLength(1);
  });

  it("find puts a complaint on stderr and nothing on stdout, and exits 2", async () => {
    const [text] = bad.filter(([name]) => name === "an unknown section").map(([, make]) => make());
    const path = write("unknown.json", text);
    const { code, stdout, stderr } = await mastwright("find", path, "--json");
    expect([code, stdout]).toEqual([2, ""]);
    expect(stderr).toBe(
      `${path}: parts.sections[0]: found "3leg-99", expected a section of the catalog; the nearest is "3leg-9"\n`,
    );
  });

  const usages: readonly (readonly [string, () => unknown, RegExp])[] = [
    ["an unknown option", () => readArguments(["find", "--nope"], 2), /--nope/],
    [
      "half a worker",
      () => readArguments(["find", "--workers", "0.5"], 2),
      /--workers: found "0\.5", expected a/,
    ],
    [
      "a negative time",
      () => readArguments(["find", "--time-limit=-1"], 2),
      /--time-limit: found "-1", expect/,
    ],
    [
      "a file that is not there",
      () => openStudy("nowhere.json"),
      /^nowhere\.json: found no such file; expected a/,
    ],
    ["a folder", () => openStudy("catalog"), /^catalog: .*expected a study/],
    ["no file at all", () => openStudy(undefined), /expected a study file/],
    [
      "a reference that is no JSON",
      () => reference(readArguments(["reference", "LICENSE"], 2)),
      /LICENSE: .*expected/,
    ],
  ];

  it.each(usages)("the command line refuses %s", (_, call, said) => {
    expect(complaintOf(call)).toMatch(said);
  });

  it("an unknown command, and axes that the map does not have, exit 2 without a stack trace", async () => {
    const [command, axes] = await Promise.all([
      mastwright("nope"),
      mastwright("front", USED_STACK, "--map", "height,width"),
    ]);
    expect([command.code, command.stdout]).toEqual([2, ""]);
    expect(command.stderr).toMatch(/found command "nope", expected one of find/);
    expect([axes.code, axes.stdout]).toEqual([2, ""]);
    expect(axes.stderr).toMatch(/--map: found "height,width", expected height,antennaArea/);
    expect(command.stderr + axes.stderr).not.toMatch(/ {4}at /);
  });

  it("mastwright alone says what it can do", async () => {
    const { code, stdout } = await mastwright();
    expect(code).toBe(0);
    expect(stdout).toMatch(/find STUDY\.json/);
  });
});
