import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { resolve } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import { bill, fixedCents, levelCents, volumes } from "../../src/cost/bill.ts";
import { cutLength } from "../../src/cost/reels.ts";
import type { Design } from "../../src/model/design.ts";
import { design, freeStanding, pasture, withGuys } from "../checks/support/pasture.ts";
import { checkValue } from "../support/check-values.ts";
import { FOOT } from "../support/us-units.ts";

const problem = pasture();
const billOf = (d: Design) => verify(problem, d).bill;

const sumOf = (d: Design, of: (group: string, item: string) => boolean): number =>
  billOf(d)
    .lines.filter(({ group, item }) => of(group, item))
    .reduce((sum, { amount }) => sum + amount, 0);

describe("bill(the guyed mast of 70 ft), group by group by hand", () => {
  const dollars = (what: string, expected: number, computed: number) =>
    checkValue({
      subject: `bill: ${what}`,
      source: "the demo's invented prices, added up by hand",
      tag: "arithmetic",
      expected,
      computed: computed / 100,
      tolerance: 0.005,
      absolute: true,
      unit: "$",
    });
  const cent = (amount: number) => Math.round(amount * 100) / 100;
  const all = design();

  test("sections, guys, raising, permit", () => {
    dollars(
      "seven ten-foot pieces at $302",
      7 * 302,
      sumOf(all, (g) => g === "sections"),
    );
    // chord and 2 ft 6 in for the ends; $0.34 and $0.45 a foot; ends $31 and $38; a bracket of $42 a level
    const strand = (height: number, price: number) => 3 * cent((Math.hypot(height, 36) + 2.5) * price);
    dollars(
      "guys of two levels",
      strand(35, 0.34) + 3 * 31 + 42 + strand(65, 0.45) + 3 * 38 + 42,
      sumOf(all, (g) => g === "guys"),
    );
    dollars(
      "raising 70 ft at $2.50",
      175,
      sumOf(all, (g) => g === "raising"),
    );
    dollars(
      "permit",
      85,
      sumOf(all, (g) => g === "other"),
    );
  });

  test("anchors, footing, digging", () => {
    // three deadmen of 5 x 1.5 x 1.5 ft: concrete with 5 % waste at $185/yd3, a rod, and bars at $1.10: four #4 of
    // 4.5 ft, and ties #3 of 2 (36 - 12 - 0.75) + 20 x 0.375 in., 54 in. in steps of (18 - 3.625)/2: nine
    const yards = (5 * 1.5 * 1.5) / 27;
    dollars(
      "three deadmen",
      3 * (cent(yards * 1.05 * 185) + cent((4 * 4.5 * 0.668 + 9 * 4.5 * 0.376) * 1.1) + 38),
      sumOf(all, (g) => g === "anchors"),
    );
    // bars of the block: 0.18 % of 36 x 36 in is 2.33 in2, on 18 in at most eight #5 of 30 in upright; each way
    // 0.18 % in rings that cross twice, four #5 of 4 x 29.375 + 20 x 0.625 in; 1.043 lb/ft at $1.10
    const steel = 1.043 * (8 * 2.5 + (4 * 130) / 12);
    // a block of a cubic yard; forms of 6 in round its top at $3.40/ft2; base plate $95
    dollars(
      "the block",
      cent(1.05 * 185) + cent(steel * 1.1) + cent(4 * 3 * 0.5 * 3.4) + 95,
      sumOf(all, (g) => g === "footing"),
    );
    // firm ground at $78/yd3
    dollars(
      "digging",
      3 * cent(((5 * 1.5 * 5) / 27) * 78) + cent(78),
      sumOf(all, (g) => g === "digging"),
    );
  });

  test("concrete in place and ground dug", () => {
    const { model, anchor, footing } = resolve(problem, all);
    const found = volumes({ guys: model.guys && anchor ? { ...model.guys, anchor } : null, footing });
    expect(found.concrete / FOOT ** 3).toBeCloseTo(3 * 11.25 + 27, 6);
    expect(found.dug / FOOT ** 3).toBeCloseTo(3 * 37.5 + 27, 6);
  });
});

test("bill.total is the sum of its lines in whole cents, for random designs of the grid", () => {
  const tried = new Set<string>();
  const anchors = problem.anchors.map((part) => part.choice);
  const footings = problem.footings.map((part) => part.choice);
  fc.assert(
    fc.property(
      fc.constantFrom(...problem.stacks[0]),
      fc.uniqueArray(fc.constantFrom(...problem.levelHeights), { minLength: 1, maxLength: 3 }),
      fc.constantFrom(...problem.strands),
      fc.constantFrom(...problem.radii),
      fc.constantFrom(3 as const, 4 as const),
      fc.constantFrom(...anchors),
      fc.constantFrom(...footings),
      (stack, heights, strand, radius, perLevel, anchor, footing) => {
        const d = design({
          stack: stack.parts.map(({ section, length }) => ({ section: section.row.id, length })),
          guys: {
            perLevel,
            radius,
            rotation: 0,
            tension: 0.1,
            levels: heights.sort((a, b) => a - b).map((height) => ({ height, strand: strand.id })),
            anchor,
          },
          footing,
        });
        tried.add(JSON.stringify(d));
        const { model, anchor: part, footing: base } = resolve(problem, d);
        if (!model.guys || !part) throw new Error("guys lost");
        const { star } = model.guys;
        const made = bill(problem, {
          pack: model.package,
          stack: model.stack,
          guys: { ...model.guys, anchor: part },
          footing: base,
        });
        const cents = made.lines.reduce((sum, { amount }) => sum + amount, 0);
        expect(Math.round(made.total * 100)).toBe(cents);
        expect(made.lines.every(({ amount }) => Number.isInteger(amount) && amount >= 0)).toBe(true);
        // the search adds the same cents in groups
        const grouped =
          fixedCents(problem, model.package, model.stack.height) +
          model.stack.cents +
          model.guys.levels.reduce(
            (sum, level) => sum + levelCents(problem, level.height, star, level.strand),
            0,
          ) +
          perLevel * part.cents +
          base.cents;
        expect(grouped).toBe(cents);
      },
    ),
    { numRuns: 400, seed: 51 },
  );
  expect(tried.size).toBeGreaterThan(390);
});

test("a free-standing mast's bill has no guys and no anchors", () => {
  const groups = new Set(billOf(freeStanding()).lines.map(({ group }) => group));
  expect(groups.has("guys") || groups.has("anchors")).toBe(false);
});

test("cutLength grows with height and radius, and holds both terminations", () => {
  expect(cutLength(problem, 0, 0)).toBeCloseTo(2.5 * FOOT, 9);
  expect(cutLength(problem, 30, 40)).toBeCloseTo(50 + 2.5 * FOOT, 9);
});

test("more of anything never costs less: height of a level, radius, thicker strand of one grade", () => {
  const total = (d: Design) => billOf(d).total;
  expect(total(withGuys({ radius: 40 * FOOT }))).toBeGreaterThan(total(design()));
  const strands = ["ehs-3-16", "ehs-1-4", "ehs-5-16", "ehs-3-8"].map((strand) =>
    total(withGuys({ levels: [{ height: 65 * FOOT, strand }] })),
  );
  expect(strands).toEqual([...strands].sort((a, b) => a - b));
});
