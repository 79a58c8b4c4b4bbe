import fc from "fast-check";
import { expect, test } from "vitest";
import { type Cut, type Cutting, cutFromStock, type Stock } from "../../src/purchase/cutting.ts";
import { checkValue } from "../support/check-values.ts";
import { leastCost } from "../support/highs.ts";

/** Each piece put on one numbered reel: says nothing of patterns, so it judges their listing too. */
function byAssignment(stock: readonly Stock[], cuts: readonly Cut[]): number | "impossible" {
  const pieces = cuts.reduce((sum, { count }) => sum + count, 0);
  const reels = stock.flatMap((one, s) =>
    Array.from({ length: Math.min(one.have ?? pieces, pieces) }, (_, j) => ({ ...one, name: `y${s}_${j}` })),
  );
  if (reels.length === 0) return "impossible";
  const on = (i: number, r: number) => `x${i}_${r}`;
  return leastCost({
    cost: reels.map(({ cents, name }) => [cents, name]),
    rows: [
      ...cuts.map(({ count }, i) => ({
        terms: reels.map((_, r) => [1, on(i, r)] as const),
        sense: "=" as const,
        than: count,
      })),
      ...reels.map(({ length, name }, r) => ({
        terms: [...cuts.map((cut, i) => [cut.length, on(i, r)] as const), [-length, name] as const],
        sense: "<=" as const,
        than: 0,
      })),
      // alike reels are taken in order
      ...reels
        .slice(1)
        .flatMap(({ name }, r) =>
          name.split("_")[0] === reels[r].name.split("_")[0]
            ? [{ terms: [[1, reels[r].name] as const, [-1, name] as const], sense: ">=" as const, than: 0 }]
            : [],
        ),
    ],
    whole: Object.fromEntries([
      ...reels.map(({ name }) => [name, 1]),
      ...cuts.flatMap(({ count }, i) => reels.map((_, r) => [on(i, r), count])),
    ]),
  });
}

const wholeMetres = (least: number, most: number) => fc.integer({ min: least, max: most });
const instance = fc.record({
  stock: fc.uniqueArray(
    fc.record({
      length: wholeMetres(12, 90),
      cents: fc.integer({ min: 0, max: 400 }).map((n) => n * 25),
      have: fc.option(fc.integer({ min: 0, max: 3 }), { nil: undefined }),
    }),
    { minLength: 1, maxLength: 3, selector: ({ length }) => length },
  ),
  cuts: fc.uniqueArray(fc.record({ length: wholeMetres(5, 45), count: fc.integer({ min: 1, max: 3 }) }), {
    minLength: 1,
    maxLength: 4,
    selector: ({ length }) => length,
  }),
});

/** Every cut once, no reel longer than it is, none that there is not, and the money of what is bought. */
function sound(stock: readonly Stock[], cuts: readonly Cut[], found: Extract<Cutting, { status: "cut" }>) {
  for (const { length, count } of cuts) {
    const made = found.cutUp.reduce(
      (sum, up) =>
        sum +
        up.count *
          up.cuts.reduce((n, cut) => n + (Math.abs(cut.length - length) < 1.1e-4 ? cut.count : 0), 0),
      0,
    );
    expect(made).toBe(count);
  }
  for (const { stock: from, cuts: out, offcut } of found.cutUp) {
    const used = out.reduce((sum, cut) => sum + cut.count * cut.length, 0);
    expect(offcut).toBeGreaterThanOrEqual(0);
    expect(Math.abs(used + offcut - from.length)).toBeLessThan(2e-4);
  }
  for (const one of stock)
    expect(found.cutUp.reduce((sum, up) => sum + (up.stock === one ? up.count : 0), 0)).toBeLessThanOrEqual(
      one.have ?? Number.POSITIVE_INFINITY,
    );
  expect(found.cutUp.reduce((sum, up) => sum + up.count * up.stock.cents, 0)).toBe(found.cents);
}

test("cutFromStock costs what HiGHS finds by assignment on 600 random reels and cuts", () => {
  const tried = new Set<string>();
  let refused = 0;
  let several = 0;
  let total = 0;
  let judged = 0;
  fc.assert(
    fc.property(instance, ({ stock, cuts }) => {
      tried.add(JSON.stringify([stock, cuts]));
      const found = cutFromStock(stock, cuts);
      const theirs = byAssignment(stock, cuts);
      if (found.status === "refused") {
        refused++;
        expect(theirs).toBe("impossible");
        return;
      }
      sound(stock, cuts, found);
      expect(found.cents).toBeCloseTo(theirs as number, 3);
      if (new Set(found.cutUp.map((up) => up.stock)).size > 1) several++;
      total += found.cents;
      judged += theirs as number;
    }),
    { numRuns: 600, seed: 83 },
  );
  expect(tried.size).toBeGreaterThan(580);
  expect(refused).toBeGreaterThan(60);
  expect(tried.size - refused).toBeGreaterThan(350);
  expect(several).toBeGreaterThan(40);
  checkValue({
    subject: `cutting reels and bars: total cost of ${tried.size - refused} optima`,
    source: "HiGHS, mixed-integer solver, each piece assigned to one reel",
    tag: "side by side",
    expected: judged,
    computed: total,
    tolerance: 1e-9,
    unit: "cents",
  });
}, 120_000);

test("cutFromStock(twelve unlike guys from three sizes of reel) keeps to the bounds of its length", () => {
  let seed = 17;
  const random = () => (seed = (seed * 16807) % 2147483647) / 2147483647;
  const stock = [
    { length: 76.2, cents: 8000 },
    { length: 152.4, cents: 15_000, have: 2 },
    { length: 304.8, cents: 28_500 },
  ];
  for (let n = 0; n < 10; n++) {
    const cuts = Array.from({ length: 12 }, () => ({ length: 10 + 25 * random(), count: 1 }));
    const found = cutFromStock(stock, cuts);
    if (found.status !== "cut") throw new Error(found.found);
    sound(stock, cuts, found);
    const whole = cuts.reduce((sum, { length }) => sum + length, 0);
    const cheapest = Math.min(...stock.map(({ length, cents }) => cents / length));
    expect(found.cents).toBeGreaterThanOrEqual(cheapest * whole);
    for (const { length, cents, have } of stock)
      if (have === undefined)
        expect(found.cents).toBeLessThanOrEqual(cents * Math.ceil((2 * whole) / length + 1));
  }
}, 60_000);

test("cutFromStock(a pad's bars: 28 of 9 ft, 8 of 4 ft 6 in, 6 ties) is cut from whole bars of 20 and 40 ft", () => {
  const bars = [
    { length: 6.096, cents: 2000 },
    { length: 12.192, cents: 3900 },
  ];
  const found = cutFromStock(bars, [
    { length: 2.7432, count: 28 },
    { length: 1.3716, count: 8 },
    { length: 1.2, count: 6 },
  ]);
  if (found.status !== "cut") throw new Error(found.found);
  // 28 x 9 + 8 x 4.5 + 6 x 3.937 ft is 311.6 ft: eight of 40 ft hold 320, and four nines leave 4 ft of each
  expect(found.cents).toBeGreaterThanOrEqual((3900 * 311.6) / 40);
  expect(found.cents).toBe(byAssignmentOfBars(bars, [2.7432, 1.3716, 1.2], [28, 8, 6]));
});

/** The same by the ways to cut one bar, all of them, solved by HiGHS. */
function byAssignmentOfBars(
  stock: readonly Stock[],
  lengths: readonly number[],
  demand: readonly number[],
): number | "impossible" {
  const ways: { name: string; cents: number; counts: number[] }[] = [];
  stock.forEach(({ length, cents }, s) => {
    for (let a = 0; a * lengths[0] <= length; a++)
      for (let b = 0; a * lengths[0] + b * lengths[1] <= length + 1e-6; b++)
        for (let c = 0; a * lengths[0] + b * lengths[1] + c * lengths[2] <= length + 1e-6; c++)
          if (a + b + c > 0) ways.push({ name: `w${s}_${a}_${b}_${c}`, cents, counts: [a, b, c] });
  });
  return leastCost({
    cost: ways.map(({ cents, name }) => [cents, name]),
    rows: demand.map((than, i) => ({
      terms: ways.flatMap(({ counts, name }) => (counts[i] > 0 ? [[counts[i], name] as const] : [])),
      sense: ">=" as const,
      than,
    })),
    whole: Object.fromEntries(ways.map(({ name }) => [name, undefined])),
  });
}

test("cutFromStock(a cut longer than every reel, too little stock, too many unlike cuts) refuses with the reason", () => {
  expect(cutFromStock([{ length: 6, cents: 100 }], [{ length: 6.5, count: 1 }])).toMatchObject({
    status: "refused",
    found: expect.stringMatching(/6\.50 m and nothing on sale longer than 6\.00 m/),
  });
  expect(cutFromStock([{ length: 6, cents: 100, have: 1 }], [{ length: 4, count: 2 }])).toMatchObject({
    found: "less in stock than there is to cut",
  });
  const unlike = Array.from({ length: 24 }, (_, i) => ({ length: 10 + i / 10, count: 1 }));
  for (const length of [60, 2000])
    expect(cutFromStock([{ length, cents: 100 }], unlike)).toMatchObject({
      status: "refused",
      found: "24 pieces of 24 lengths",
    });
  expect(cutFromStock([], [])).toEqual({ status: "cut", cutUp: [], cents: 0 });
});
