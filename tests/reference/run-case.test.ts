import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseCatalog } from "../../src/model/parse.ts";
import { differences } from "../../src/report/reference/difference.ts";
import { runCase } from "../../src/report/reference/run-case.ts";
import { checkValue } from "../support/check-values.ts";
import { judgedMasts } from "./support/guyed-masts.ts";

const read = parseCatalog(defaultCatalog);
if (!read.ok) throw new Error("the catalog of the project can't be read");
const context = { catalog: read.catalog };

interface JudgedCase {
  readonly id: string;
  readonly kind: string;
  readonly source: string;
  readonly input: Readonly<Record<string, number | string>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: number;
}
const cases: JudgedCase[] = JSON.parse(
  readFileSync(new URL("cases/closed-form.json", import.meta.url), "utf8"),
);
const [mast] = judgedMasts;

for (const outside of cases.filter(({ kind }) => kind === "catenary" || kind === "strand"))
  test(`runCase(${outside.id}) agrees with ${outside.source}`, () => {
    const result = runCase(outside, context);
    if ("error" in result) throw new Error(result.error);
    for (const [name, expected] of Object.entries(outside.expected))
      checkValue({
        subject: `outside cases: ${outside.id}, ${name}`,
        source: outside.source,
        tag: "side by side",
        expected,
        computed: result.computed[name] as number,
        tolerance: outside.tolerance,
        unit: "SI",
      });
  });

test("runCase answers every closed-form case of the outside file, within its tolerance", () => {
  expect(cases.length).toBeGreaterThanOrEqual(33);
  for (const outside of cases)
    for (const { group, largest } of differences(outside, runCase(outside, context)))
      expect(largest, `${outside.id} ${group}`).toBeLessThanOrEqual(outside.tolerance);
});

/** A copy of a mast with the value at a path replaced. */
function broken(path: readonly (string | number)[], value: unknown): unknown {
  const copy = structuredClone(mast) as unknown as Record<string | number, unknown>;
  let at = copy;
  for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
  at[path[path.length - 1]] = value;
  return copy;
}

const slips: readonly [string, unknown, string][] = [
  ["a word", "case", "the case"],
  ["a list", [1], "the case"],
  ["nothing", null, "the case"],
  ["no kind", { id: "x", input: {} }, "kind: found nothing, expected text"],
  ["no input", { id: "x", kind: "catenary" }, "input: found nothing"],
  ["an unknown kind", { id: "x", kind: "balloon", input: {} }, 'kind: found "balloon"'],
  [
    "a cable that does not reach",
    {
      id: "x",
      kind: "catenary",
      input: { span: -3, rise: 1, unstressedLength: 2, weightPerLength: 1, axialStiffness: 1e5 },
    },
    "input.span: found -3, expected a number above 0",
  ],
  ["a strand nobody makes", { id: "x", kind: "strand", input: { diameter: "9/7", grade: "EHS" } }, "strand:"],
  [
    "a size that is no number",
    { id: "x", kind: "strand", input: { diameter: "thin", grade: "HS" } },
    "strand:",
  ],
  [
    "a mast without height",
    broken(["input", "mast", "height_m"], undefined),
    "input.mast.height_m: found nothing",
  ],
  ["a base of jelly", broken(["input", "mast", "base"], "jelly"), 'input.mast.base: found "jelly"'],
  [
    "a stiffness of text",
    broken(["input", "mast", "segments", 0, "EI_N_m2"], "stiff"),
    'input.mast.segments[0].EI_N_m2: found "stiff", expected a number',
  ],
  [
    "a gap below the mast",
    broken(["input", "mast", "segments", 0, "z_from_m"], 1),
    "input.mast.segments[0].z_from_m: found 1, expected 0",
  ],
  [
    "a mast shorter than its height",
    broken(["input", "mast", "height_m"], 13),
    "input.mast.height_m: found 13, expected 12",
  ],
  [
    "guys above the top",
    broken(["input", "guy_levels", 0, "z_m"], 50),
    "input.guy_levels[0].z_m: found 50, expected a height up to the mast top",
  ],
  [
    "an anchor too few",
    broken(["input", "guy_levels", 0, "anchor_elevations_m"], [0, 0]),
    "input.guy_levels[0].anchor_elevations_m: found 2 elevations",
  ],
  [
    "a load off the mast",
    broken(["input", "loads", "point_loads", 0, "z_m"], 99),
    "input.loads.point_loads[0].z_m: found 99",
  ],
  [
    "wind that runs down",
    broken(
      ["input", "loads", "wind_line_load_N_per_m"],
      [
        [12, 1],
        [0, 1],
      ],
    ),
    "input.loads.wind_line_load_N_per_m[1][0]: found 0",
  ],
  [
    "a guy that its own weight tears down",
    broken(["input", "guy_levels", 0, "initial_tension_fraction"], 1e-5),
    "input: no guy of span",
  ],
];

for (const [what, input, message] of slips)
  test(`runCase(${what}) says where, what was found and what was expected`, () => {
    const result = runCase(input, context);
    expect(result).not.toHaveProperty("computed");
    expect("error" in result && result.error).toContain(message);
  });

test("runCase(a mast without guys or wind on them) solves a free-standing one", () => {
  const free = {
    ...mast,
    input: { ...mast.input, mast: { ...mast.input.mast, base: "fixed" }, guy_levels: [] },
  };
  const result = runCase(free, context);
  expect(result).toHaveProperty("computed.top.u_horizontal_m");
});

test("runCase(a pinned mast without guys) is refused as unstable, never answered", () => {
  const result = runCase({ ...mast, input: { ...mast.input, guy_levels: [] } }, context);
  expect("error" in result && result.error).toMatch(/unstable/);
});

test("runCase never throws, whatever is put in the place of one value of a case", () => {
  const paths: (string | number)[][] = [];
  const walk = (value: unknown, path: (string | number)[]) => {
    if (path.length > 0) paths.push(path);
    if (typeof value === "object" && value !== null)
      for (const [key, inner] of Object.entries(value))
        walk(inner, [...path, Array.isArray(value) ? Number(key) : key]);
  };
  walk(mast.input, ["input"]);
  const tried = new Set<string>();
  fc.assert(
    fc.property(fc.constantFrom(...paths), fc.jsonValue({ maxDepth: 2 }), (path, value) => {
      tried.add(JSON.stringify([path, value]));
      const result = runCase(broken(path, value), { ...context, elementsPerSpan: 2 });
      expect("error" in result || "computed" in result).toBe(true);
    }),
    { numRuns: 400, seed: 7 },
  );
  expect(tried.size).toBeGreaterThan(250);
});

test("differences(case, answer) names the worst number of each group, by the case's own measure", () => {
  const result = runCase(mast, context);
  const found = differences(mast, result);
  expect(found.map(({ group }) => group)).toEqual([
    "guy tensions",
    "unstressed lengths",
    "moments",
    "displacements",
    "slopes",
    "anchors",
    "base compression",
    "base shear",
    "thrust of guy levels",
    "axial force",
    "shear",
    "places of peaks",
    "buckling factor",
  ]);
  if ("error" in result) throw new Error(result.error);
  const guys = result.computed.guys as { tension_mast_N: number }[];
  const worse = {
    ...result,
    computed: {
      ...result.computed,
      guys: guys.map((guy, i) => (i === 1 ? { ...guy, tension_mast_N: guy.tension_mast_N + 100 } : guy)),
    },
  };
  const [tensions] = differences(mast, worse);
  const greatest = Math.max(...mast.output.guys.map((g) => g.tension_mast_N as number));
  expect(tensions.at).toBe("guys.1.tension_mast_N");
  expect(tensions.largest).toBeCloseTo(100 / greatest, 5);
});

test("differences(a closed form, answer) are relative number by number; a refusal has none", () => {
  const [outside] = cases;
  const [name, expected] = Object.entries(outside.expected)[0];
  const computed = Object.fromEntries(Object.entries(outside.expected).map(([key, v]) => [key, v]));
  const off = { id: "x", kind: outside.kind, computed: { ...computed, [name]: expected * 1.25 } };
  expect(differences(outside, off).find(({ group }) => group === name)?.largest).toBeCloseTo(0.25, 12);
  expect(differences(outside, { id: "x", kind: "x", error: "no" })).toEqual([]);
  expect(differences({ ...outside, expected: undefined }, off)).toEqual([]);
});
