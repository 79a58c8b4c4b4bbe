import fc from "fast-check";
import { expect, test } from "vitest";
import type { Section } from "../../src/model/catalog.ts";
import { buyLength } from "../../src/purchase/stack.ts";
import { pasture } from "../checks/support/pasture.ts";

const [some] = [...pasture().sections.values()];
const section = (pieces: Section["pieces"]): Section => ({ ...some.row, pieces });

/** Every way to make a length, by trying all. */
function cheapest(pieces: Section["pieces"], length: number): number | null {
  let best: number | null = null;
  const go = (i: number, left: number, cost: number) => {
    if (Math.abs(left) < 1e-4) best = best === null ? cost : Math.min(best, cost);
    if (i === pieces.length || left < -1e-4) return;
    const { length: piece, price, have } = pieces[i];
    for (let n = 0; n * piece <= left + 1e-4 && n <= (have ?? Number.POSITIVE_INFINITY); n++)
      if (n > 0 || i + 1 <= pieces.length) go(i + 1, left - n * piece, cost + n * Math.round(price * 100));
  };
  go(0, length, 0);
  return best;
}

const piece = fc.record({
  length: fc.constantFrom(0.9144, 1.524, 2.4384, 3.048, 6.096),
  price: fc.integer({ min: 4000, max: 60_000 }).map((cents) => cents / 100),
  have: fc.option(fc.integer({ min: 0, max: 6 }), { nil: undefined }),
});

test("buyLength makes the length exactly, at the least price, from what there is", () => {
  const tried = new Set<string>();
  let bought = 0;
  fc.assert(
    fc.property(
      fc.uniqueArray(piece, { minLength: 1, maxLength: 4, selector: (p) => p.length }),
      fc.integer({ min: 1, max: 26 }),
      (pieces, count) => {
        const length = count * 0.9144 + (count % 3) * 0.6096;
        tried.add(JSON.stringify([pieces, length]));
        const found = buyLength(section(pieces), length);
        const expected = cheapest(pieces, length);
        expect(found?.cents ?? null).toBe(expected);
        if (!found) return;
        bought++;
        const made = found.pieces.reduce((sum, p) => sum + p.length * p.count, 0);
        expect(made).toBeCloseTo(length, 3);
        for (const { length: l, count: n } of found.pieces)
          expect(n).toBeLessThanOrEqual(pieces.find((p) => p.length === l)?.have ?? Number.POSITIVE_INFINITY);
      },
    ),
    { numRuns: 500, seed: 71 },
  );
  expect(tried.size).toBeGreaterThan(450);
  expect(bought).toBeGreaterThan(60);
});

test("buyLength(a length that no pieces make) buys nothing", () => {
  expect(buyLength(section([{ length: 3.048, price: 100 }]), 4)).toBeNull();
  expect(buyLength(section([{ length: 3.048, price: 100, have: 1 }]), 6.096)).toBeNull();
});
