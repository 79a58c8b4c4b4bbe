import fc from "fast-check";
import { expect, test } from "vitest";
import { supplyConcrete } from "../../src/purchase/concrete.ts";
import { checkValue } from "../support/check-values.ts";
import { leastCost } from "../support/highs.ts";

type Supply = Parameters<typeof supplyConcrete>[0];
type Pours = Parameters<typeof supplyConcrete>[1];
const litre = 1e-3;

/** Each hole and each load for itself, volumes of loads as real numbers. */
function byLoads({ bag, truck }: Supply, pours: Pours): number | "impossible" {
  const holes = pours.flatMap(({ count, volume }) => Array.from({ length: count }, () => volume));
  const all = holes.reduce((sum, volume) => sum + volume, 0);
  const loads = truck ? Math.ceil(all / truck.largest) + 1 : 0;
  const each = Array.from({ length: loads }, (_, j) => j);
  return leastCost({
    cost: [
      ...holes.flatMap((volume, h) =>
        bag ? [[Math.ceil(volume / bag.yield - 1e-9) * Math.round(bag.price * 100), `b${h}`] as const] : [],
      ),
      ...each.flatMap((j) => [
        [(truck?.price ?? 0) * 100, `x${j}`] as const,
        [(truck?.shortLoadCharge ?? 0) * 100, `s${j}`] as const,
      ]),
    ],
    rows: [
      ...holes.map((_, h) => ({
        terms: [...(bag ? [[1, `b${h}`] as const] : []), ...(truck ? [[1, `t${h}`] as const] : [])],
        sense: "=" as const,
        than: 1,
      })),
      ...(truck
        ? [
            {
              terms: [
                ...each.map((j) => [1, `x${j}`] as const),
                ...holes.map((volume, h) => [-volume, `t${h}`] as const),
              ],
              sense: ">=" as const,
              than: 0,
            },
            ...each.flatMap((j) => [
              {
                terms: [
                  [1, `x${j}`],
                  [-truck.largest, `n${j}`],
                  [-truck.largest, `s${j}`],
                ] as const,
                sense: "<=" as const,
                than: 0,
              },
              {
                terms: [
                  [1, `x${j}`],
                  [-truck.shortLoadBelow, `n${j}`],
                ] as const,
                sense: ">=" as const,
                than: 0,
              },
              {
                terms: [
                  [1, `n${j}`],
                  [1, `s${j}`],
                ] as const,
                sense: "<=" as const,
                than: 1,
              },
            ]),
          ]
        : []),
    ],
    whole: Object.fromEntries([
      ...holes.flatMap((_, h) => [...(bag ? [[`b${h}`, 1]] : []), ...(truck ? [[`t${h}`, 1]] : [])]),
      ...each.flatMap((j) => [
        [`n${j}`, 1],
        [`s${j}`, 1],
      ]),
    ]),
  });
}

const between = (min: number, max: number) => fc.integer({ min, max });
/** In litres and cents: whole cents a litre, so that no rounding hides a difference. */
const instance = fc
  .record({
    base: between(50, 6000),
    anchors: fc.option(
      fc.record({ count: fc.constantFrom(3, 4), each: fc.oneof(between(40, 400), between(400, 2500)) }),
      { freq: 5 },
    ),
    sold: fc.constantFrom("bag", "truck", "both", "both", "both"),
    perLitre: between(14, 30),
    // bags take about what a truck takes by the litre, so that each wins at times
    dearer: between(-3, 12),
    bagMakes: between(8, 30),
    // a truck that the base all but fills, or any
    room: fc.oneof(between(0, 600), between(0, 6000)),
    short: between(0, 4000),
    charge: between(0, 60_000),
  })
  .map(({ base, anchors, sold, perLitre, dearer, bagMakes, room, short, charge }) => {
    const largest = Math.max(base + room, 2000);
    const supply: Supply = {
      ...(sold === "truck"
        ? {}
        : { bag: { yield: bagMakes * litre, price: (bagMakes * (perLitre + dearer)) / 100 } }),
      ...(sold === "bag"
        ? {}
        : {
            truck: {
              price: perLitre * 10,
              shortLoadBelow: Math.min(short, largest) * litre,
              shortLoadCharge: charge / 100,
              largest: largest * litre,
            },
          }),
    };
    const order: Pours = [
      { name: "base", count: 1, volume: base * litre },
      ...(anchors ? [{ name: "anchor", count: anchors.count, volume: anchors.each * litre }] : []),
    ];
    return { supply, order };
  });

test("supplyConcrete costs what HiGHS finds load by load on 600 random orders", () => {
  const tried = new Set<string>();
  const seen = { bags: 0, truck: 0, both: 0, short: 0, more: 0 };
  let total = 0;
  let judged = 0;
  fc.assert(
    fc.property(instance, ({ supply: sold, order }) => {
      tried.add(JSON.stringify([sold, order]));
      const found = supplyConcrete(sold, order);
      if (found.status !== "supplied") throw new Error(found.found);
      const theirs = byLoads(sold, order) as number;
      // both are whole cents; HiGHS lets a row be off by a millionth of a cubic metre
      expect(Math.abs(found.cents - theirs)).toBeLessThan(0.5);
      total += found.cents;
      judged += Math.round(theirs);
      const { truck, bags } = found;
      seen.bags += Number(truck.loads === 0);
      seen.truck += Number(bags === 0);
      seen.both += Number(bags > 0 && truck.loads > 0);
      seen.short += Number(truck.short > 0);
      const poured = found.pours.reduce((sum, { byTruck, pour }) => sum + byTruck * pour.volume, 0);
      seen.more += Number(truck.volume > poured + 1e-6);
      expect(truck.volume).toBeGreaterThanOrEqual(poured - 1e-9);
      for (const { pour, byBag, byTruck } of found.pours) expect(byBag + byTruck).toBe(pour.count);
    }),
    { numRuns: 600, seed: 97 },
  );
  expect(tried.size).toBeGreaterThan(580);
  for (const [what, count] of Object.entries(seen)) expect(count, what).toBeGreaterThan(15);
  checkValue({
    subject: `concrete by bag and truck: total cost of ${tried.size} optima`,
    source: "HiGHS, mixed-integer solver, hole by hole and load by load",
    tag: "side by side",
    expected: judged,
    computed: total,
    tolerance: 1e-9,
    unit: "cents",
  });
}, 120_000);

test("supplyConcrete(3 m3 under a short load of 3.2) orders more rather than pay the charge", () => {
  const truck = { price: 200, shortLoadBelow: 3.2, shortLoadCharge: 90, largest: 7 };
  expect(supplyConcrete({ truck }, [{ name: "base", count: 1, volume: 3 }])).toMatchObject({
    truck: { volume: 3.2, loads: 1, short: 0 },
    cents: 64_000,
  });
  expect(
    supplyConcrete({ truck: { ...truck, shortLoadCharge: 30 } }, [{ name: "base", count: 1, volume: 3 }]),
  ).toMatchObject({ truck: { volume: 3, loads: 1, short: 1 }, cents: 63_000 });
});

test("supplyConcrete(bags of 17 litres for three holes of 40) opens three bags a hole", () => {
  expect(
    supplyConcrete({ bag: { yield: 0.017, price: 6.4 } }, [{ name: "anchor", count: 3, volume: 0.04 }]),
  ).toMatchObject({ bags: 9, truck: { loads: 0 }, cents: 5760 });
});
