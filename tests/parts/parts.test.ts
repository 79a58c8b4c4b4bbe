import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anchorPart, anchorParts, footingPart, footingParts } from "../../src/parts/index.ts";
import { line, partLines, pricesOf } from "../../src/parts/price.ts";
import {
  type AnchorReaction,
  type FootingLoads,
  type FootingPart,
  utilisation,
} from "../../src/parts/types.ts";
import { pasture } from "../checks/support/pasture.ts";
import { FOOT } from "../support/us-units.ts";

const problems = ["ibc-2", "ibc-4", "ibc-5", "clay-over-gravel"].flatMap((soil) =>
  ["asce7-asd", "asce7-lrfd"].map((set) =>
    pasture((s) => {
      s.site.soil = soil;
      s.rules.set = set;
      if (soil === "ibc-4") s.site.waterTable = "4 ft";
    }),
  ),
);
/** Slim blocks, plain and barred, whose concrete breaks before their soil. */
const slim = (["#4", undefined] as const).map((bars) =>
  pasture((s) => {
    const row = {
      id: "deadman",
      kind: "deadman" as const,
      name: "Slim deadmen of the tests",
      length: ["4 ft", "10 ft"],
      height: ["1 ft", "2 ft"],
      width: "1 ft",
      depth: "4 ft",
      bars,
      rod: "$38",
      rodHolds: bars ? "3000 lbf" : undefined,
      invented: true,
    };
    s.catalog = { anchors: [row] };
    s.parts = { ...s.parts, anchors: ["deadman"] };
  }),
);
const slimAnchors = slim.flatMap((p) => p.anchors);
const anchors = [...problems.flatMap((p) => p.anchors), ...slimAnchors, ...slimAnchors];
/** Soils that suit a pier otherwise than the catalog's do: clay with a strength, and one that suits no method. */
const oddSoil = (id: string, change: object) =>
  pasture((s) => {
    s.site.soil = id;
    const row = {
      id,
      name: `soil ${id} of the tests`,
      bearing: "3000 psf",
      lateralPerDepth: "150 psf/ft",
      unitWeight: "110 pcf",
      digging: "firm" as const,
      source: "invented for the tests",
      ...change,
    };
    s.catalog = { soils: [row] };
  });
const clay = oddSoil("clay", { undrainedStrength: "1200 psf" });
const unsuited = oddSoil("unsuited", { values: "ultimate" });
const footings = [...problems, clay, unsuited].flatMap((p) => p.footings);

const reaction: fc.Arbitrary<AnchorReaction> = fc.record({
  uplift: fc.double({ min: -500, max: 30_000, noNaN: true }),
  lateral: fc.double({ min: 0, max: 30_000, noNaN: true }),
});
const reactions = fc.array(reaction, { minLength: 1, maxLength: 8 });
const upTo = fc.double({ min: 0.3, max: 2, noNaN: true });
const loads: fc.Arbitrary<FootingLoads[]> = fc.array(
  fc.record({
    compression: fc.double({ min: 1000, max: 80_000, noNaN: true }),
    shear: fc.double({ min: 0, max: 8000, noNaN: true }),
    moment: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 90_000, noNaN: true })),
  }),
  { minLength: 1, maxLength: 6 },
);

describe("anchors", () => {
  test("a slim deadman breaks by its concrete before its soil lets go, and sooner without bars", () => {
    const pull = [{ uplift: 12_000, lateral: 12_000 }];
    const [barred, plain] = slim.map((p) =>
      p.anchors.filter(({ choice }) => choice.kind === "deadman" && choice.length > 3),
    );
    barred.forEach((part, i) => {
      const use = (one: typeof part, id: string) =>
        Math.max(...one.measures(pull).flatMap((m) => (m.limitState === id ? [utilisation(m)] : [])));
      expect(use(plain[i], "anchor-bending")).toBeGreaterThan(use(plain[i], "anchor-uplift"));
      expect(use(barred[i], "anchor-bending")).toBeLessThan(use(plain[i], "anchor-bending"));
      expect(plain[i].worst(pull)).toBe(use(plain[i], "anchor-bending"));
      expect(part.worst(pull)).toBe(use(part, "anchor-rod"));
      expect(plain[i].takeOff.bars).toBe(0);
      expect(plain[i].cents).toBeLessThan(part.cents);
      expect(part.cage?.map(({ bar, count }) => `${count} ${bar.name}`)[0]).toBe("4 #4");
    });
  });

  test("floor(uplift, lateral) is never above worst of reactions of which one reaches both", () => {
    const tried = new Set<string>();
    fc.assert(
      fc.property(
        fc.nat({ max: anchors.length - 1 }),
        reactions,
        reaction,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (index, others, reached, up, side) => {
          const part = anchors[index];
          tried.add(JSON.stringify([index, others, reached, up, side]));
          // what one reaction reaches: at most its own pull in each direction
          const floor = part.floor(up * reached.uplift, side * reached.lateral);
          expect(floor).toBeLessThanOrEqual(part.worst([...others, reached]) * (1 + 1e-12));
        },
      ),
      { numRuns: 3000, seed: 41 },
    );
    expect(tried.size).toBeGreaterThan(2900);
  });

  test("worst and floor, asked up to enough, are the whole where it is no more, and beyond enough where it is", () => {
    let refused = 0;
    let whole = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(anchors, slimAnchors),
        fc.nat(),
        reactions,
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        upTo,
        (of, i, drawn, share, enough) => {
          const part = of[i % of.length];
          const all = drawn.map(({ uplift, lateral }) => ({
            uplift: share * uplift,
            lateral: share * lateral,
          }));
          const [{ uplift, lateral }] = all;
          const answers = [
            [part.worst(all), part.worst(all, enough)],
            [part.floor(uplift, lateral), part.floor(uplift, lateral, enough)],
          ];
          for (const [full, asked] of answers)
            if (full > enough) {
              refused++;
              expect(asked).toBeGreaterThan(enough);
            } else {
              whole++;
              expect(asked).toBe(full);
            }
        },
      ),
      { numRuns: 3000, seed: 43 },
    );
    expect(Math.min(refused, whole)).toBeGreaterThan(400);
  });

  test("worst(reactions) is the largest utilisation of measures(reactions), and names its reaction", () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(fc.nat({ max: anchors.length - 1 }), reactions, (index, all) => {
        const part = anchors[index];
        kinds.add(part.choice.kind);
        const measures = part.measures(all);
        const worst = Math.max(...measures.map(utilisation));
        if (Number.isFinite(worst))
          expect(Math.abs(part.worst(all) - worst)).toBeLessThan(1e-9 * Math.max(1, worst));
        else expect(part.worst(all)).toBe(worst);
        for (const measure of measures) {
          expect(measure.of).toBeGreaterThanOrEqual(0);
          expect(measure.of).toBeLessThan(all.length);
          expect(measure.source.length).toBeGreaterThan(5);
        }
      }),
      { numRuns: 2000, seed: 42 },
    );
    expect([...kinds].sort()).toEqual(["deadman", "post", "rock-rod", "screw"]);
  });

  test("a further reaction, or a stronger one, never makes a deadman or a rod better", () => {
    fc.assert(
      fc.property(fc.nat({ max: anchors.length - 1 }), reactions, reaction, (index, all, more) => {
        const part = anchors[index];
        // a rod lies along the greatest pull: a greater one may lift it out of a pull that is too flat
        if (part.choice.kind === "rock-rod" && part.worst(all) === Number.POSITIVE_INFINITY) return;
        expect(part.worst([...all, more])).toBeGreaterThanOrEqual(part.worst(all) * (1 - 1e-12));
        if (part.choice.kind === "screw") return;
        const stronger = all.map((r) => ({ uplift: Math.abs(r.uplift) * 1.1, lateral: r.lateral * 1.1 }));
        expect(part.worst(stronger)).toBeGreaterThanOrEqual(part.worst(all) * (1 - 1e-12));
      }),
      { numRuns: 1500, seed: 43 },
    );
  });

  test("a longer, deeper deadman of the same kind holds no less", () => {
    const [{ ground, catalog }] = problems;
    const row = catalog.anchors.find((a) => a.id === "deadman");
    if (row?.kind !== "deadman") throw new Error("the catalog has no deadman");
    const pull = [{ uplift: 9000, lateral: 6000 }];
    const use = (length: number, depth: number) =>
      anchorPart(
        row,
        {
          kind: "deadman",
          row: row.id,
          length: length * FOOT,
          height: FOOT,
          width: FOOT,
          depth: depth * FOOT,
        },
        ground,
      )?.worst(pull) ?? Number.NaN;
    expect(use(5, 4)).toBeLessThan(use(4, 4));
    expect(use(4, 5)).toBeLessThan(use(4, 4));
  });

  test("a screw pulled off its shaft by more than its rating fails sideways, and says by how much", () => {
    const [{ ground, catalog }] = problems.filter((p) => p.soil.id === "ibc-5");
    const row = catalog.anchors.find((a) => a.id === "screw-9");
    if (row?.kind !== "screw") throw new Error("the catalog has no screw");
    const part = anchorPart(row, { kind: "screw", row: row.id }, ground);
    const [, sideways] =
      part?.measures([
        { uplift: 4000, lateral: 4000 },
        { uplift: 4500, lateral: 0 },
      ]) ?? [];
    expect(sideways.demand).toBe(Number.POSITIVE_INFINITY);
    expect(sideways.note).toMatch(/45 degrees, the rating covers 15/);
  });

  test("a rock rod whose greatest pull rises less than the cone opens is refused, and says why", () => {
    const [{ ground, catalog }] = problems.filter((p) => p.soil.id === "ibc-2");
    const row = catalog.anchors.find((a) => a.kind === "rock-rod");
    if (row?.kind !== "rock-rod") throw new Error("the catalog has no rock rod");
    const part = anchorPart(row, { kind: "rock-rod", row: row.id, socket: 1.2 }, ground);
    const flat = [{ uplift: 1000, lateral: 2000 }];
    expect(part?.worst(flat)).toBe(Number.POSITIVE_INFINITY);
    expect(part?.measures(flat)[0].note).toMatch(/rises less than 30 degrees/);
    expect(part?.worst([{ uplift: 1000, lateral: 1700 }])).toBeLessThan(10);
  });

  test("a post too high for its shape is refused whatever the pull, and says why", () => {
    const [{ ground, catalog }] = problems;
    const row = catalog.anchors.find((a) => a.kind === "post");
    if (row?.kind !== "post") throw new Error("the catalog has no post");
    const section = { plasticModulus: 1.77e-4, area: 2.86e-3, shearArea: 8.9e-4, leastRadius: 0.0368 };
    const choice = { kind: "post", row: row.id, width: 0.9, depth: 1.5 } as const;
    const high = anchorPart({ ...row, section, yield: 345e6, height: 2 }, choice, ground);
    expect(high?.worst([{ uplift: 10, lateral: 10 }])).toBe(Number.POSITIVE_INFINITY);
    expect(high?.measures([{ uplift: 10, lateral: 10 }])[0].note).toMatch(/turns sideways/);
    expect(high?.head).toBe(2);
    expect(
      anchorPart({ ...row, section, yield: 345e6, height: 0.6 }, choice, ground)?.worst([
        { uplift: 10, lateral: 10 },
      ]),
    ).toBeLessThan(1);
  });

  test("sizes are those of the table, a deadman never higher than deep", () => {
    const [{ ground, catalog }] = problems;
    for (const row of catalog.anchors) {
      const parts = anchorParts(row, ground);
      const keys = new Set(parts.map((part) => JSON.stringify(part.choice)));
      expect(keys.size).toBe(parts.length);
      if (row.id === "deadman") expect(parts.length).toBe(9 * 3 * 3 * 7);
      for (const { choice } of parts)
        if (choice.kind === "deadman") expect(choice.depth).toBeGreaterThanOrEqual(choice.height);
    }
  });
});

describe("footings", () => {
  test("worst(loads) is the largest utilisation of measures(loads)", () => {
    const kinds = new Set<string>();
    const tried = new Set<string>();
    fc.assert(
      fc.property(
        fc.nat({ max: footings.length - 1 }),
        loads,
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        (index, all, plate) => {
          const part = footings[index];
          kinds.add(part.choice.kind);
          tried.add(JSON.stringify([index, all, plate]));
          const worst = Math.max(...part.measures(all, plate).map(utilisation));
          const hot = part.worst(all, plate);
          if (Number.isFinite(worst)) expect(Math.abs(hot - worst)).toBeLessThan(1e-9 * Math.max(1, worst));
          else expect(hot > 1 || Number.isNaN(hot)).toBe(true);
        },
      ),
      { numRuns: 2500, seed: 44 },
    );
    expect([...kinds].sort()).toEqual(["block", "pad", "pier", "rock-pad"]);
    expect(tried.size).toBeGreaterThan(2400);
  });

  test("worst, asked up to enough, is the whole where it is no more, and beyond enough where it is", () => {
    let refused = 0;
    let whole = 0;
    fc.assert(
      fc.property(fc.nat({ max: footings.length - 1 }), loads, upTo, (index, all, enough) => {
        const full = footings[index].worst(all, 0.4);
        const asked = footings[index].worst(all, 0.4, enough);
        if (full > enough || Number.isNaN(full)) {
          refused++;
          expect(asked <= enough).toBe(false);
        } else {
          whole++;
          expect(asked).toBe(full);
        }
      }),
      { numRuns: 3000, seed: 46 },
    );
    expect(Math.min(refused, whole)).toBeGreaterThan(300);
  });

  test("a further load never makes a footing better", () => {
    fc.assert(
      fc.property(fc.nat({ max: footings.length - 1 }), loads, loads, (index, all, more) => {
        const part = footings[index];
        const worse = part.worst([...all, ...more], 0.4);
        expect(!(worse < part.worst(all, 0.4) * (1 - 1e-12))).toBe(true);
      }),
      { numRuns: 800, seed: 45 },
    );
  });

  test("worst(the thrust alone) is never above worst of any loads of which one presses as much", () => {
    fc.assert(
      fc.property(
        fc.nat({ max: footings.length - 1 }),
        loads,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (index, all, share) => {
          const part = footings[index];
          const compression = share * Math.max(...all.map((load) => load.compression));
          const floor = part.worst([{ compression, shear: 0, moment: 0 }], 0.4);
          const whole = part.worst(all, 0.4);
          expect(floor <= whole * (1 + 1e-12) || Number.isNaN(whole)).toBe(true);
        },
      ),
      { numRuns: 2000, seed: 46 },
    );
  });

  test("a pier is judged by every method that its soil suits, and refused by name where none does", () => {
    const states = (problem: (typeof problems)[number]) => {
      const part = problem.footings.find((f) => f.choice.kind === "pier");
      return part?.measures([{ compression: 1e4, shear: 100, moment: 500 }], 0.4) ?? [];
    };
    const ids = (problem: (typeof problems)[number]) =>
      states(problem)
        .map((m) => m.limitState)
        .filter((id) => id.startsWith("pier-"));
    const byId = (id: string) => problems.find((p) => p.soil.id === id) ?? clay;
    expect(ids(byId("ibc-4"))).toEqual(["pier-as-post", "pier-in-sand", "pier-bending"]);
    expect(ids(byId("ibc-2"))).toEqual(["pier-as-post", "pier-bending"]);
    expect(ids(clay)).toEqual(["pier-as-post", "pier-in-clay", "pier-bending"]);
    const [, refusal] = states(unsuited);
    expect(refusal.demand).toBe(Number.POSITIVE_INFINITY);
    expect(refusal.note).toMatch(/found a soil .* IBC 1807.3.2.1 wants/);
    expect(unsuited.footings.filter((f) => f.choice.kind === "pier")).not.toHaveLength(0);
  });

  test("a base analysed on a spring must be as stiff, and a soil without a modulus can't say that it is", () => {
    const { soil, ground } = clay;
    const stiff = { ...ground, baseStiffness: 1e6, soil: { ...soil, subgradeModulus: 2e7 } };
    const loose = { ...ground, baseStiffness: 1e6 };
    const load = { compression: 4e4, shear: 500, moment: 4000 };
    const asked = (part: FootingPart | undefined, of = load) =>
      part?.measures([of], 0.4).find((m) => m.limitState === "base-stiffness");
    for (const row of clay.catalog.footings) {
      const parts = footingParts(row, stiff);
      const kept = parts.map((part) => asked(part)).filter((m) => m !== undefined);
      expect(kept).toHaveLength(parts.length);
      expect(kept.some((m) => utilisation(m) < 1)).toBe(true);
      // a pin brings no moment and asks for no stiffness
      expect(asked(parts[0], { ...load, moment: 0 })?.demand).toBe(0);
      const [unknown] = footingParts(row, loose);
      expect(unknown.rotationalStiffness).toBeUndefined();
      expect(asked(unknown)?.capacity).toBe(0);
      expect(asked(unknown)?.note).toMatch(/found no subgrade modulus/);
      parts.forEach((part, i) => {
        const m = kept[i];
        expect(m.capacity).toBeLessThanOrEqual(part.rotationalStiffness ?? 0);
        expect(part.worst([load], 0.4)).toBeGreaterThanOrEqual(utilisation(m) * (1 - 1e-12));
      });
    }
  });

  test("water above its underside never makes a footing hold more", () => {
    const wet = pasture((s) => {
      s.site.waterTable = "2 ft";
      s.site.pourBelowWater = true;
    });
    const dry = pasture();
    const drained = new Map(dry.footings.map((part) => [JSON.stringify(part.choice), part]));
    // less weight presses less, so bearing may gain; what holds it up and in its place may not
    const holding = ["overturning", "sliding", "pier-as-post", "pier-in-sand"];
    let asked = 0;
    let worse = 0;
    fc.assert(
      fc.property(fc.nat({ max: wet.footings.length - 1 }), loads, (index, all) => {
        const part = wet.footings[index];
        const before = drained.get(JSON.stringify(part.choice))?.measures(all, 0.4) ?? [];
        for (const measure of part.measures(all, 0.4).filter((m) => holding.includes(m.limitState))) {
          const was = before.find((m) => m.limitState === measure.limitState);
          if (!was) throw new Error(`${measure.limitState} is asked under water only`);
          asked++;
          if (utilisation(measure) > utilisation(was)) worse++;
          expect(utilisation(measure)).toBeGreaterThanOrEqual(utilisation(was) * (1 - 1e-12));
        }
      }),
      { numRuns: 400, seed: 47 },
    );
    expect(worse).toBeGreaterThan(0.8 * asked);
  });

  test("a footing of a size that is not in the table is the same part as one from it", () => {
    const [{ ground, catalog }] = problems;
    for (const row of catalog.footings)
      for (const part of footingParts(row, ground)) {
        const again = footingPart(row, part.choice, ground);
        expect(again?.cents).toBe(part.cents);
        expect(again?.takeOff).toEqual(part.takeOff);
      }
  });
});

test("what a part costs is the sum of its lines, in whole cents", () => {
  for (const { ground, anchors: parts, footings: bases } of problems)
    for (const part of [...parts, ...bases]) {
      const lines = partLines("part", "other", part, ground, 1);
      expect(part.cents).toBe(lines.reduce((sum, { amount }) => sum + amount, 0));
      expect(part.cents).toBe(pricesOf(part, ground).cents);
      expect(Number.isInteger(part.cents)).toBe(true);
      const three = partLines("part", "other", part, ground, 3);
      expect(three.reduce((sum, { amount }) => sum + amount, 0)).toBe(3 * part.cents);
    }
});

test("line(quantity, price) rounds once, then multiplies: three of a thing cost three times one", () => {
  expect(line("other", "x", 1.006, "m", 1, 3).amount).toBe(303);
  expect(line("other", "x", 1.006, "m", 1, 3).quantity).toBeCloseTo(3.018, 12);
  expect(line("other", "x", 2, "each", 0.105).amount).toBe(21);
});
