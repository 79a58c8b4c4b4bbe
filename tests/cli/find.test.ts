import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import usedStack from "../../catalog/studies/used-stack.json" with { type: "json" };
import { mastwright, type Ran } from "./mastwright.ts";

const USED_STACK = "catalog/studies/used-stack.json";

const folder = mkdtempSync(join(tmpdir(), "mastwright-find-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const file = (name: string, value: unknown): string => {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(value));
  return path;
};

/** The used stack on a grid small enough to enumerate. */
const small = {
  ...usedStack,
  parts: {
    ...usedStack.parts,
    sections: ["3leg-10.5-offered", "3leg-13-used"],
    mixedStacks: false,
    levelCounts: [1, 2],
    levelHeights: ["30 ft", "55 ft", "60 ft"],
    strands: ["ehs-3-16", "ehs-1-4"],
    radius: ["30 ft", "38 ft"],
    rotation: [0, 60],
    anchors: ["small-deadman"],
    footings: ["small-block"],
  },
  catalog: {
    ...usedStack.catalog,
    anchors: [
      {
        id: "small-deadman",
        kind: "deadman",
        name: "Deadman of the test",
        length: ["2 ft", "4 ft"],
        height: "1 ft",
        width: "1 ft",
        depth: ["3 ft", "4 ft"],
        bars: "#4",
        rod: "$38",
        invented: true,
      },
    ],
    footings: [
      {
        id: "small-block",
        kind: "block",
        name: "Block of the test",
        width: ["2 ft", "2 ft 6 in"],
        depth: "2 ft 6 in",
        invented: true,
      },
    ],
  },
};

/** Everything below a value, to look for what JSON can't say. */
function* leaves(value: unknown, path = "$"): Generator<[string, unknown]> {
  if (value !== null && typeof value === "object")
    for (const [key, inner] of Object.entries(value)) yield* leaves(inner, `${path}.${key}`);
  else yield [path, value];
}

describe("mastwright find", () => {
  let ran: Ran;
  // biome-ignore lint/suspicious/noExplicitAny: what a program outside reads is checked field by field here
  let found: any;
  beforeAll(async () => {
    ran = await mastwright("find", USED_STACK, "--json");
    found = JSON.parse(ran.stdout);
  });

  it("find --json prints pure JSON with every field of the contract, and exits 0", () => {
    expect(ran.code).toBe(0);
    expect(ran.stderr).toBe("");
    expect(Object.keys(found)).toEqual(
      expect.arrayContaining([
        "status",
        "design",
        "verdict",
        "bill",
        "concreteVolume",
        "proof",
        "whyNotCheaper",
      ]),
    );
    expect(found.status).toBe("proven");
    expect(found.verdict).toMatchObject({ passes: true, smallestMargin: expect.any(Number) });
    expect(found.verdict.checks.length).toBeGreaterThan(10);
    for (const check of found.verdict.checks)
      expect(Object.keys(check)).toEqual(
        expect.arrayContaining([
          "id",
          "limitState",
          "where",
          "loadCase",
          "demand",
          "capacity",
          "required",
          "utilisation",
          "source",
        ]),
      );
    expect(found.bill.total).toBeGreaterThan(0);
    expect(found.bill.lines.length).toBeGreaterThan(5);
    const cents = found.bill.lines.reduce(
      (sum: number, line: { amount: number }) => sum + Math.round(line.amount),
      0,
    );
    expect(cents).toBe(Math.round(found.bill.total * 100));
    expect(Object.keys(found.proof)).toEqual(
      expect.arrayContaining(["gridSize", "analysed", "pruned", "bound", "gap", "seconds"]),
    );
    expect(found.proof.gap).toBe(0);
    expect(found.proof.bound).toBe(found.bill.total);
    const counted = Object.values(found.proof.pruned as Record<string, number>).reduce(
      (sum, n) => sum + n,
      0,
    );
    expect(counted + 1).toBe(found.proof.gridSize);
    expect(found.whyNotCheaper.length).toBeGreaterThan(0);
    for (const row of found.whyNotCheaper) expect(row.utilisation * 1.05).toBeGreaterThan(1);
  });

  it("find --json prints no number that JSON can't say", () => {
    expect(ran.stdout).not.toMatch(/NaN|Infinity|undefined/);
    let numbers = 0;
    for (const [path, value] of leaves(found))
      if (typeof value === "number") {
        numbers++;
        expect(Number.isFinite(value), path).toBe(true);
      }
    expect(numbers).toBeGreaterThan(100);
  });

  it("find says in words what each cheaper neighbour has and in what it fails", async () => {
    const { stdout } = await mastwright("find", USED_STACK);
    const [, told] = stdout.split(/Why not cheaper.*:\n/);
    expect(stdout).toMatch(/used, of the 0\.95 that the wished margin leaves/);
    const rows = told.split("\n").filter((line) => line.startsWith("  saves $"));
    expect(rows).toHaveLength(found.whyNotCheaper.length);
    for (const row of rows)
      expect(row).toMatch(
        /^ {2}saves \$[\d.,]+ {2}\S.*(ft|in|guys|levels|deep|down|long|used): fails in .+, (no hold|\d+\.\d\d)$/,
      );
    expect(stdout).not.toMatch(/Infinity|NaN|undefined/);
  });

  it("find prints the same answer with one worker as with two", async () => {
    const [one, two] = await Promise.all([
      mastwright("find", USED_STACK, "--json", "--workers", "1"),
      mastwright("find", USED_STACK, "--json", "--workers", "2"),
    ]);
    const [a, b] = [JSON.parse(one.stdout), JSON.parse(two.stdout)];
    expect(a.design).toEqual(b.design);
    expect(a.bill).toEqual(b.bill);
    expect(a.proof.gridSize).toBe(b.proof.gridSize);
    expect([a.proof.workers, b.proof.workers]).toEqual([1, 2]);
  });

  it("find --exhaustive prints the design that find prints", async () => {
    const path = file("small.json", small);
    const [searched, enumerated] = await Promise.all([
      mastwright("find", path, "--json"),
      mastwright("find", path, "--json", "--exhaustive"),
    ]);
    const [a, b] = [JSON.parse(searched.stdout), JSON.parse(enumerated.stdout)];
    expect(b.status).toBe("proven");
    expect(a.design).toEqual(b.design);
    expect(a.bill.total).toBe(b.bill.total);
    expect(b.proof.analysed).toBe(b.proof.gridSize);
    expect(b.proof.gridSize).toBeGreaterThan(300);
    expect(a.proof.analysed).toBeLessThan(b.proof.gridSize / 4);
  });

  it("find --exhaustive refuses a grid that it could never finish", async () => {
    const { code, stdout, stderr } = await mastwright("find", USED_STACK, "--exhaustive");
    expect(code).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toMatch(/--exhaustive: the grid holds [\d.]+e\+\d+ designs; expected at most 2000000/);
  });

  it("find --time-limit S ends as stopped with its incumbent and gap, or with the proof", async () => {
    const hard = {
      ...usedStack,
      wishes: { ...usedStack.wishes, height: "120 ft" },
      parts: {
        ...usedStack.parts,
        sections: "all",
        supports: ["guyed", "freestanding"],
        guysPerLevel: [3, 4],
        levelCounts: [1, 2, 3, 4],
        levelHeights: { from: "10 ft", to: "120 ft", step: "5 ft" },
        strands: "all",
        tensions: [0.08, 0.1, 0.12, 0.15],
        radius: { from: "20 ft", to: "46 ft", step: "1 ft" },
      },
    };
    const started = performance.now();
    const { code, stdout } = await mastwright(
      "find",
      file("hard.json", hard),
      "--json",
      "--time-limit",
      "0.05",
    );
    const seconds = (performance.now() - started) / 1000;
    const { status, design, proof } = JSON.parse(stdout);
    expect(["stopped", "proven"]).toContain(status);
    expect(proof.gridSize).toBeGreaterThan(1e14);
    // NaN would be null here
    for (const count of [proof.decided, proof.analysed, ...Object.values(proof.pruned)])
      expect(count).toBeGreaterThanOrEqual(0);
    expect(code).toBe(design ? 0 : 1);
    if (status === "stopped") expect(proof.gap === null || proof.gap >= 0).toBe(true);
    expect(seconds).toBeLessThan(30);
  });

  it("find says so and exits 1 where nothing is safe, with the nearest miss", async () => {
    const path = file("storm.json", {
      ...small,
      site: { ...small.site, wind: { basis: "uniform", pressure: "140 psf" } },
    });
    const { code, stdout } = await mastwright("find", path, "--json");
    expect(code).toBe(1);
    const { status, design, nearest } = JSON.parse(stdout);
    expect([status, design]).toEqual(["none-safe", null]);
    expect(nearest.verdict.passes).toBe(false);
  });

  it("find --audit looks again at what was pruned", async () => {
    const { code, stdout } = await mastwright("find", file("small.json", small), "--json", "--audit");
    expect(code).toBe(0);
    expect(JSON.parse(stdout).audit.verified).toBeGreaterThan(20);
  });

  it("front --json prints designs none of which beats another", async () => {
    const { code, stdout } = await mastwright("front", file("small.json", small), "--json");
    expect(code).toBe(0);
    const { status, points } = JSON.parse(stdout);
    expect(status).toBe("proven");
    expect(points.length).toBeGreaterThan(1);
    for (const a of points)
      for (const b of points)
        if (a !== b) expect(a.cost <= b.cost && a.concrete <= b.concrete && a.margin >= b.margin).toBe(false);
  });
});
