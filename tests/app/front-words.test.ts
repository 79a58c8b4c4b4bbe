import fc from "fast-check";
import { expect, test } from "vitest";
import { frontWords, LETTER } from "../../src/app/plots/front-words.ts";

const paper = [56, 8, 312, 268] as const;
const ring = (x: number, y: number, letter: string | null = null, radius = 4) => ({ x, y, radius, letter });
const end = (y: number, under = false) => ({
  x: 308,
  y,
  words: ["margin 25 % or more", "margin 25 %"] as const,
  under,
});

test("frontWords() leaves letters and words where they belong while nothing is in the way", () => {
  const { letters, labels } = frontWords([ring(120, 200, "A")], [end(200), end(220, true)], paper);
  expect(letters).toEqual([[-9 - LETTER / 2, 0]]);
  expect(labels).toEqual([
    { text: "margin 25 % or more", dy: -7 },
    { text: "margin 25 % or more", dy: 17 },
  ]);
});

test("frontWords() sets a letter on the other side of a ring whose neighbour it would cover", () => {
  const { letters } = frontWords([ring(200, 200, "C"), ring(185, 200)], [], paper);
  expect(letters).toEqual([[9 + LETTER / 2, 0], null]);
});

test("frontWords() shortens words that would lie on a ring, then moves them under their line", () => {
  expect(frontWords([ring(215, 193)], [end(200)], paper).labels).toEqual([{ text: "margin 25 %", dy: -7 }]);
  expect(frontWords([ring(290, 193)], [end(200)], paper).labels).toEqual([
    { text: "margin 25 % or more", dy: 17 },
  ]);
});

test("frontWords() of up to 12 random rings and 3 stairs covers no ring with a letter, in 500 of 500", () => {
  const spot = fc.tuple(fc.integer({ min: 80, max: 290 }), fc.integer({ min: 40, max: 240 }));
  fc.assert(
    fc.property(fc.array(spot, { minLength: 1, maxLength: 12 }), (spots) => {
      const rings = spots.map(([x, y], i) => ring(x, y, i < 4 ? "ABCD"[i] : null, 3 + (i % 3) * 2));
      const { letters } = frontWords(rings, [end(60), end(140), end(220, true)], paper);
      letters.forEach((off, i) => {
        if (!off) return;
        const [x, y] = [rings[i].x + off[0], rings[i].y + off[1]];
        for (const other of rings)
          expect(Math.max(Math.abs(other.x - x), Math.abs(other.y - y))).toBeGreaterThanOrEqual(
            LETTER / 2 + other.radius,
          );
      });
    }),
    { numRuns: 500, seed: 5 },
  );
});
