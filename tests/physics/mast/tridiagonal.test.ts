import fc from "fast-check";
import { expect, test } from "vitest";
import { eigenvalueFromTop } from "../../../src/physics/mast/tridiagonal.ts";
import { eigenvalues } from "./support/dense.ts";

test("eigenvalueFromTop(2 on the diagonal, -1 beside it, rank) is 2 + 2 cos(rank pi/(n + 1))", () => {
  for (let n = 1; n <= 40; n++)
    for (let rank = 1; rank <= n; rank++) {
      const expected = 2 + 2 * Math.cos((rank * Math.PI) / (n + 1));
      const found = eigenvalueFromTop(new Float64Array(n).fill(2), new Float64Array(n).fill(-1), n, rank);
      expect(found, `${rank} of ${n}`).toBeCloseTo(expected, 10);
    }
});

test("eigenvalueFromTop counts all eigenvalues as Jacobi's rotations do, of negative matrices too", () => {
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
      const all = eigenvalues(dense);
      for (let rank = 1; rank <= n; rank++)
        expect(eigenvalueFromTop(diagonal, off, n, rank)).toBeCloseTo(all[n - rank], 9);
      expect(eigenvalueFromTop(diagonal, off, n, n + 1)).toBe(Number.NEGATIVE_INFINITY);
    }),
    { numRuns: 300, seed: 3 },
  );
  expect(tried.size).toBeGreaterThan(280);
});
