import fc from "fast-check";
import { expect, test } from "vitest";
import { type IntegerProgram, solveInteger } from "../../src/purchase/program.ts";
import { checkValue } from "../support/check-values.ts";
import { leastCost } from "../support/highs.ts";

const byHighs = ({ cost, rows, most }: IntegerProgram): number | "impossible" => {
  const terms = (of: readonly number[]) => of.map((c, i) => [c, `x${i}`] as const);
  return leastCost({
    cost: terms(cost),
    rows: rows.flatMap(({ coefficients, least, most: limit }) => [
      ...(least === undefined ? [] : [{ terms: terms(coefficients), sense: ">=" as const, than: least }]),
      ...(limit === undefined ? [] : [{ terms: terms(coefficients), sense: "<=" as const, than: limit }]),
    ]),
    whole: Object.fromEntries(most.map((limit, i) => [`x${i}`, limit])),
  });
};

/** Purchases: whole pieces at a price, lengths to make up, stock that runs out. */
const program: fc.Arbitrary<IntegerProgram> = fc.integer({ min: 1, max: 5 }).chain((n) =>
  fc.record({
    cost: fc.array(fc.integer({ min: 1, max: 60_000 }), { minLength: n, maxLength: n }),
    rows: fc.array(
      fc
        .record({
          coefficients: fc.array(fc.integer({ min: 0, max: 12 }), { minLength: n, maxLength: n }),
          least: fc.option(fc.integer({ min: 1, max: 60 }), { nil: undefined }),
          spare: fc.option(fc.integer({ min: 0, max: 15 }), { nil: undefined }),
        })
        .map(({ coefficients, least, spare }) => ({
          coefficients,
          least,
          // at most: a little above what is asked, so that equality and near misses both happen
          most: spare === undefined ? undefined : (least ?? 20) + spare,
        })),
      { minLength: 1, maxLength: 3 },
    ),
    most: fc.array(fc.option(fc.integer({ min: 0, max: 9 }), { nil: undefined }), {
      minLength: n,
      maxLength: n,
    }),
  }),
);

test("solveInteger finds the optimum of HiGHS on 600 random small integer programs", () => {
  const tried = new Set<string>();
  let impossible = 0;
  let total = 0;
  let judged = 0;
  fc.assert(
    fc.property(program, (p) => {
      // a row that asks nothing is no row
      fc.pre(p.rows.every((row) => row.least !== undefined || row.most !== undefined));
      tried.add(JSON.stringify(p));
      const ours = solveInteger(p);
      const theirs = byHighs(p);
      if (ours.status === "impossible") {
        impossible++;
        expect(theirs).toBe("impossible");
        return;
      }
      expect(theirs).not.toBe("impossible");
      expect(Math.abs(ours.cost - (theirs as number))).toBeLessThan(1e-6 * Math.max(1, ours.cost));
      total += ours.cost;
      judged += theirs as number;
      ours.counts.forEach((count, i) => {
        expect(
          Number.isInteger(count) && count >= 0 && count <= (p.most[i] ?? Number.POSITIVE_INFINITY),
        ).toBe(true);
      });
    }),
    { numRuns: 600, seed: 61 },
  );
  expect(tried.size).toBeGreaterThanOrEqual(560);
  expect(impossible).toBeGreaterThan(40);
  expect(tried.size - impossible).toBeGreaterThan(250);
  checkValue({
    subject: `integer programs: total cost of ${tried.size - impossible} optima`,
    source: "HiGHS, mixed-integer solver",
    tag: "side by side",
    expected: judged,
    computed: total,
    tolerance: 1e-9,
    unit: "cents",
  });
});
