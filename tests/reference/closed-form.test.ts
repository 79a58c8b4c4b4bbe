import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type ClosedFormCase, closedFormCase } from "../../src/report/reference/closed-form.ts";
import { checkValue } from "../support/check-values.ts";

interface JudgedCase extends ClosedFormCase {
  readonly source: string;
  readonly tolerance: number;
  readonly expected: Readonly<Record<string, number | readonly number[]>>;
}

const elsewhere = ["catenary", "strand"];
const cases: JudgedCase[] = JSON.parse(
  readFileSync(new URL("cases/closed-form.json", import.meta.url), "utf8"),
);
const ours = cases.filter(({ kind }) => !elsewhere.includes(kind));

test("the outside file holds the cases that these tests rely on", () => {
  expect(ours.length).toBeGreaterThanOrEqual(28);
});

for (const outside of ours)
  test(`closedFormCase(${outside.id}) agrees with ${outside.source}`, () => {
    const result = closedFormCase(outside);
    if (!("computed" in result)) throw new Error(result.error);
    expect(Object.keys(result.computed).sort()).toEqual(Object.keys(outside.expected).sort());
    for (const [name, expected] of Object.entries(outside.expected)) {
      const wanted = [expected].flat();
      const computed = [result.computed[name]].flat();
      expect(computed.length).toBe(wanted.length);
      wanted.forEach((value, index) => {
        checkValue({
          subject: `outside cases: ${outside.id}, ${name}${wanted.length > 1 ? ` ${index + 1}` : ""}`,
          source: outside.source,
          tag: "side by side",
          expected: value as number,
          computed: computed[index] as number,
          tolerance: outside.tolerance,
          unit: "SI",
        });
      });
    }
  });

test("closedFormCase(a kind nobody knows) says which kinds there are", () => {
  const result = closedFormCase({ id: "x", kind: "balloon", input: {} });
  expect(result).toMatchObject({ id: "x", error: expect.stringContaining("eccentric-footing") });
});

test("closedFormCase(a case without a given) names the given", () => {
  const result = closedFormCase({
    id: "x",
    kind: "column-stress",
    input: { yieldStress: 1e8, modulus: 2e11 },
  });
  expect(result).toMatchObject({ error: "input.slenderness: found undefined, expected a number" });
});

test("closedFormCase(a case outside a method's range) is refused with the reason, not thrown", () => {
  const input = { undrainedStrength: 5e4, diameter: 1, embedment: 1.4, eccentricity: 0 };
  expect(closedFormCase({ id: "x", kind: "short-pile-clay", input })).toMatchObject({
    error: expect.stringContaining("1.5 diameters"),
  });
});

test("closedFormCase(case, more) answers kinds that live elsewhere", () => {
  const result = closedFormCase(
    { id: "x", kind: "catenary", input: { span: 3 } },
    { catenary: (given) => ({ horizontal: 2 * given.number("span") }) },
  );
  expect(result).toMatchObject({ computed: { horizontal: 6 } });
});
