import fc from "fast-check";
import { expect, test } from "vitest";
import { factor, solveFactored } from "../../../src/physics/mast/blocks.ts";
import { eigenvalues, type Matrix, solveDense } from "./support/dense.ts";

/** A symmetric matrix of nodes that meet their neighbours, from a list of entries, its diagonal raised by `raise`. */
function blocks(nodes: number, per: number, entries: readonly number[], raise: number) {
  const n = nodes * per;
  const packed = new Float64Array(2 * n * per);
  const dense: Matrix = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  let next = 0;
  for (let i = 0; i < n; i++) {
    const below = (Math.floor(i / per) - 1) * per;
    for (let j = Math.max(0, below); j <= i; j++) {
      const value = entries[next++ % entries.length] + (i === j ? raise : 0);
      packed[2 * per * i + j - below] = value;
      dense[i][j] = value;
      dense[j][i] = value;
    }
  }
  return { packed, dense };
}

const entry = fc.double({ min: -1, max: 1, noNaN: true }).map((x) => (Math.abs(x) < 1e-3 ? 0.25 : x));
const shape = fc.record({
  nodes: fc.integer({ min: 1, max: 5 }),
  per: fc.integer({ min: 1, max: 5 }),
  entries: fc.array(entry, { minLength: 23, maxLength: 61 }),
});

test("factor, solveFactored(a positive matrix) gives what dense elimination gives", () => {
  const tried = new Set<string>();
  fc.assert(
    fc.property(shape, ({ nodes, per, entries }) => {
      tried.add(JSON.stringify([nodes, per, entries]));
      const { packed, dense } = blocks(nodes, per, entries, 3 * per + 2);
      const b = Float64Array.from({ length: nodes * per }, (_, i) => entries[(7 * i) % entries.length]);
      const expected = solveDense(dense, [...b]);
      expect(factor(packed, nodes, per)).toBe(0);
      solveFactored(packed, nodes, per, b);
      expected.forEach((x, i) => {
        expect(b[i]).toBeCloseTo(x, 10);
      });
    }),
    { numRuns: 300, seed: 1 },
  );
  expect(tried.size).toBeGreaterThan(280);
});

test("factor(any matrix) counts its negative eigenvalues (Sylvester)", () => {
  let counted = 0;
  const seen = new Set<number>();
  fc.assert(
    fc.property(shape, fc.double({ min: -2, max: 2, noNaN: true }), ({ nodes, per, entries }, raise) => {
      const { packed, dense } = blocks(nodes, per, entries, raise);
      const values = eigenvalues(dense);
      // without pivoting the count is only safe away from singular leading blocks
      const leading = dense.map((_, k) => dense.slice(0, k + 1).map((row) => row.slice(0, k + 1)));
      fc.pre(leading.every((block) => Math.min(...eigenvalues(block).map(Math.abs)) > 1e-3));
      counted++;
      const negative = values.filter((value) => value < 0).length;
      seen.add(negative);
      expect(factor(packed, nodes, per)).toBe(negative);
    }),
    { numRuns: 200, seed: 2 },
  );
  expect(counted).toBeGreaterThanOrEqual(200);
  expect(seen.size).toBeGreaterThan(4);
});

test("factor(a singular matrix) counts the pivot that vanishes", () => {
  expect(factor(Float64Array.from([0, 1, 1, 1]), 2, 1)).toBe(1);
  expect(factor(Float64Array.from([0, Number.NaN]), 1, 1)).toBe(1);
});
