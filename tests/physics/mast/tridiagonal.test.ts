import fc from "fast-check";
import { expect, test } from "vitest";
import { largestEigenvalue } from "../../../src/physics/mast/tridiagonal.ts";
import { eigenvalues } from "./support/dense.ts";

test("largestEigenvalue(2 on the diagonal, -1 beside it) is 2 + 2 cos(pi/(n + 1))", () => {
  for (let n = 1; n <= 40; n++) {
    const expected = 2 + 2 * Math.cos(Math.PI / (n + 1));
    expect(largestEigenvalue(new Float64Array(n).fill(2), new Float64Array(n).fill(-1), n)).toBeCloseTo(
      expected,
      10,
    );
  }
});

test("largestEigenvalue agrees with Jacobi's rotations, of negative matrices too", () => {
  const tried = new Set<string>();
  const value = fc.double({ min: -5, max: 5, noNaN: true });
  fc.assert(
    fc.property(fc.array(fc.tuple(value, value), { minLength: 1, maxLength: 12 }), value, (rows, shift) => {
      tried.add(JSON.stringify([rows, shift]));
      const n = rows.length;
      const diagonal = Float64Array.from(rows, ([a]) => a + shift);
      const off = Float64Array.from(rows, ([, b]) => b);
      const dense = rows.map((_, i) =>
        rows.map((__, j) => (i === j ? diagonal[i] : Math.abs(i - j) === 1 ? off[Math.min(i, j)] : 0)),
      );
      expect(largestEigenvalue(diagonal, off, n)).toBeCloseTo(eigenvalues(dense)[n - 1], 9);
    }),
    { numRuns: 300, seed: 3 },
  );
  expect(tried.size).toBeGreaterThan(280);
});
