import { describe, expect, test } from "vitest";
import { DesignError } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import type { Design } from "../../src/model/design.ts";
import { activeCoefficient, passiveCoefficient } from "../../src/physics/ground/rankine.ts";
import { checkValue } from "../support/check-values.ts";
import { FOOT, KSI, POUND, PSF } from "../support/us-units.ts";
import { check, design, freeStanding, pasture, withGuys } from "./support/pasture.ts";

const problem = pasture();
const verdict = verify(problem, design());

const byHand = (
  what: string,
  source: string,
  expected: number,
  computed: number,
  unit: string,
  tolerance = 1e-6,
) =>
  checkValue({
    subject: `checks: ${what}`,
    source,
    tag: "arithmetic",
    expected,
    computed,
    tolerance,
    unit,
  });

/** Greatest value over all stations of all cases of a verdict. */
const worstStation = (of: (moment: number, shear: number, compression: number) => number): number =>
  Math.max(
    ...verdict.cases.flatMap((c) =>
      c.z.map((_, s) => of(Math.abs(c.moment[s]), c.shear[s], c.compression[s])),
    ),
  );

// the section 3leg-13 by hand: 1 1/8 x .083 legs, 13 in apart, 17 in panels, 46 ksi
const INCH = FOOT / 12;
const FACE = 13 * INCH;
const LEG = { outside: 1.125 * INCH, inside: (1.125 - 2 * 0.083) * INCH };
const LEG_AREA = (Math.PI / 4) * (LEG.outside ** 2 - LEG.inside ** 2);
const YIELD = 46 * KSI;
const MODULUS = 29_000 * KSI;
/** AISC 360 E3. */
const critical = (slenderness: number): number => {
  const euler = (Math.PI ** 2 * MODULUS) / slenderness ** 2;
  return YIELD / euler <= 2.25 ? 0.658 ** (YIELD / euler) * YIELD : 0.877 * euler;
};

/** What of the greatest leg force stands for the wind on the leg itself: the same mast whose legs are rated as strong. */
const bent = (): number => {
  const { demand, capacity } = check(verdict, "leg-compression");
  const row = problem.catalog.sections.find(({ id }) => id === "3leg-13");
  const rated = pasture((study) => {
    const moment = capacity * Math.sqrt(0.75) * FACE;
    const section = { ...row, id: "rated", rated: { moment, source: "as computed" } };
    study.catalog = {
      sections: [section as NonNullable<NonNullable<typeof study.catalog>["sections"]>[number]],
    };
  });
  const same = verify(rated, design({ stack: [{ section: "rated", length: 70 * FOOT }] }));
  return demand - check(same, "leg-compression").demand;
};

describe("verify(a guyed mast), each limit state by hand", () => {
  test("leg compression: P/3 + M/(0.866 b) against Fcr A, factor 1.67", () => {
    const { demand, capacity, required, utilisation, at = 0 } = check(verdict, "leg-compression");
    const radius = Math.sqrt((LEG.outside ** 2 + LEG.inside ** 2) / 16);
    byHand(
      "strength of a leg, 17 in panel",
      "AISC 360-16 E3",
      critical((17 * INCH) / radius) * LEG_AREA,
      capacity,
      "N",
    );
    byHand(
      "greatest leg force P/3 + M/(0.866 b)",
      "statics, less what stands for the wind on the leg between its panels",
      worstStation((m, _, p) => p / 3 + m / (Math.sqrt(0.75) * FACE)),
      demand - bent(),
      "N",
    );
    // that by hand: w p2/8 on a pipe of yield moment Fy S, B1 = 1/(1 - Pn/Pe), at the pressure of the place
    const modulus = (LEG_AREA * radius ** 2) / (LEG.outside / 2);
    const euler = (Math.PI ** 2 * MODULUS * LEG_AREA * radius ** 2) / (17 * INCH) ** 2;
    const wind = problem.pressure(at) * problem.roundFactor * LEG.outside;
    byHand(
      "thrust that stands for the wind on a leg between its panels",
      "AISC 360-16 H1-1 (x + y) and B1 of appendix 8, pressure within an element even",
      ((wind * (17 * INCH) ** 2) / 8) * (capacity / (YIELD * modulus * (1 - capacity / euler))),
      bent(),
      "N",
      0.03,
    );
    expect(required).toBe(1.67);
    expect(utilisation).toBeCloseTo((demand * 1.67) / capacity, 12);
  });

  test("leg tension: M/(0.866 b) - P/3 against Fy A, factor 1.67", () => {
    const { demand, capacity, required } = check(verdict, "leg-tension");
    byHand("yield of a leg Fy A", "AISC 360-16 D2", YIELD * LEG_AREA, capacity, "N");
    byHand(
      "greatest leg tension M/(0.866 b) - P/3",
      "statics",
      worstStation((m, _, p) => m / (Math.sqrt(0.75) * FACE) - p / 3),
      demand,
      "N",
    );
    expect(required).toBe(1.67);
  });

  test("bracing: the shear of one face, 2/3 V, on a diagonal d/b, against its column strength", () => {
    const { demand, capacity, required } = check(verdict, "bracing-shear");
    const row = problem.sections.get("3leg-13")?.row;
    const bar = row && "diameter" in row.bracing.member ? row.bracing.member.diameter : 0;
    const diagonal = Math.hypot(FACE, 8.5 * INCH);
    // a round bar: radius of gyration d/4
    const strength = critical(diagonal / (bar / 4)) * (Math.PI / 4) * bar ** 2;
    byHand(
      "shear that single bracing holds",
      "AISC 360-16 E3, statics",
      (3 / 2) * strength * (FACE / diagonal),
      capacity,
      "N",
    );
    byHand(
      "greatest shear square to the bent mast",
      "statics",
      worstStation((_, v) => v),
      demand,
      "N",
    );
    expect(required).toBe(1.67);
  });

  test("guy strength: the tighter end of the tightest guy of each level, factor 2", () => {
    for (const [level, pounds] of [
      [1, 3990],
      [2, 6650],
    ]) {
      const { demand, capacity, required, at } = check(verdict, `guy-strength/${level}`);
      const tensions = verdict.cases.flatMap((c) =>
        c.guys.filter((g) => g.level === level).flatMap((g) => [g.tensionAnchor, g.tensionMast]),
      );
      expect(demand).toBe(Math.max(...tensions));
      byHand(
        `breaking strength of the strand of level ${level}`,
        "ASTM A475 table 1",
        pounds * POUND,
        capacity,
        "N",
      );
      expect(required).toBe(2);
      expect(at).toBeCloseTo((level === 1 ? 35 : 65) * FOOT, 9);
    }
  });

  test("stability: the least buckling factor of all cases, 1.67 asked", () => {
    const { demand, capacity, required } = check(verdict, "stability");
    expect(demand).toBe(1);
    expect(capacity).toBe(Math.min(...verdict.cases.map((c) => c.bucklingFactor)));
    expect(required).toBe(1.67);
  });

  test("lean: no chord of the mast leans more, 3 degrees allowed", () => {
    const { demand, capacity } = check(verdict, "tilt");
    expect(capacity).toBeCloseTo((3 * Math.PI) / 180, 12);
    let steepest = 0;
    for (const c of verdict.cases)
      for (let s = 3; s < c.z.length; s++) {
        const rise = c.z[s] - c.z[s - 3];
        if (rise > 0.1)
          steepest = Math.max(
            steepest,
            Math.hypot(c.along[s] - c.along[s - 3], c.across[s] - c.across[s - 3]) / rise,
          );
      }
    expect(demand).toBeGreaterThanOrEqual(steepest - 1e-12);
    expect(demand).toBeLessThan(1.5 * steepest);
  });

  test("pipe: wind on the antennas and the pipe about the mast top, against Fy Z", () => {
    const { demand, capacity, required } = check(verdict, "pipe-bending");
    // 0.6 of ASCE 7-16 wind: 115 mph, exposure C, 640 ft above the sea, gust 0.85, Kd 0.85
    const pressure = (feet: number) => {
      const kz = 2.01 * (feet / 900) ** (2 / 9.5);
      return 0.6 * 0.85 * 0.85 * 0.00256 * kz * Math.exp(-0.0000362 * 640) * 115 ** 2 * PSF;
    };
    const [flat, round] = [2, 1.2];
    const row = problem.packages[0];
    const big = problem.catalog.antennas.find((a) => a.id === "beam-5el");
    const small = problem.catalog.antennas.find((a) => a.id === "beam-6m");
    const factor = (kind: string | undefined) => (kind === "flat" ? flat : kind === "round" ? round : 1);
    const moment =
      pressure(72) * (big?.area ?? 0) * factor(big?.areaKind) * 2 * FOOT +
      pressure(75.5) * (small?.area ?? 0) * factor(small?.areaKind) * 5.5 * FOOT +
      pressure(73) * row.pipe.diameter * round * 6 * FOOT * 3 * FOOT;
    byHand(
      "moment of antennas and pipe on the mast top",
      "ASCE 7-16 26.10, statics",
      moment,
      demand,
      "N m",
      1e-4,
    );
    const inside = row.pipe.diameter - 2 * row.pipe.wall;
    byHand(
      "strength of the pipe Fy Z",
      "AISC 360-16 F8",
      (row.pipe.yield * (row.pipe.diameter ** 3 - inside ** 3)) / 6,
      capacity,
      "N m",
    );
    expect(required).toBe(1.67);
  });

  test("anchor uplift: the prism of soil at 30 degrees and the concrete, factor 2", () => {
    const { demand, capacity, required } = check(verdict, "anchor-uplift");
    expect(demand).toBe(Math.max(...verdict.cases.flatMap((c) => c.anchors.map((a) => a.uplift))));
    // 5 x 1.5 ft in plan, 5 ft deep, 1.5 ft high; soil 110 pcf, concrete 145 pcf
    const spread = 2 * 5 * Math.tan(Math.PI / 6);
    const [bottom, middle, top] = [0, 0.5, 1].map((s) => (5 + s * spread) * (1.5 + s * spread));
    const lifted = (5 / 6) * (bottom + 4 * middle + top);
    const concrete = 5 * 1.5 * 1.5;
    byHand(
      "deadman of 5 x 1.5 x 1.5 ft, 5 ft deep, uplift",
      "prismatoid; CPUC General Order 95 rule 48.5",
      (concrete * 145 + (lifted - concrete) * 110) * POUND,
      capacity,
      "N",
    );
    expect(required).toBe(2);
  });

  test("anchor lateral: Rankine on the face, factor 2 on an ultimate value", () => {
    const { demand, capacity, required } = check(verdict, "anchor-lateral");
    expect(demand).toBe(Math.max(...verdict.cases.flatMap((c) => c.anchors.map((a) => a.lateral))));
    const tangent = Math.tan(Math.PI / 4 + (12.5 * Math.PI) / 180) ** 2;
    const depths = (5 ** 2 - 3.5 ** 2) / 2;
    byHand(
      "deadman of 5 x 1.5 ft of face, 25 degrees",
      "Rankine",
      5 * (tangent - 1 / tangent) * 110 * depths * POUND,
      capacity,
      "N",
    );
    expect(required).toBe(2);
  });

  test("base: bearing on the whole block, sliding on cohesion and soil, plate on concrete", () => {
    const heaviest = Math.max(...verdict.cases.map((c) => c.base.compression));
    const own = 3 * 3 * 3 * 145 * POUND;
    const bearing = check(verdict, "base-bearing");
    expect(bearing.capacity).toBeCloseTo(1500 * PSF, 3);
    // a pinned mast's shear tips the block so little that the soil's side takes it
    byHand("bearing (P + W)/A", "statics", (heaviest + own) / (3 * FOOT) ** 2, bearing.demand, "Pa", 1e-3);
    const sliding = check(verdict, "sliding");
    const area = 9 * 130 * POUND;
    const side = 3 * 0.5 * 100 * 3 ** 2 * POUND;
    const loadCase = verdict.cases.find((c) => c.title === sliding.loadCase);
    const dead = (loadCase?.base.compression ?? 0) + own;
    byHand(
      "sliding: cohesion x area, at most half the dead load, and lateral bearing",
      "IBC 1806.3",
      Math.min(area, dead / 2) + side,
      sliding.capacity,
      "N",
    );
    const plate = check(verdict, "base-compression");
    const plateSide = FACE + LEG.outside + 4 * INCH;
    byHand(
      "plate on the block 0.85 f'c A1 sqrt(A2/A1), at most 1.7 f'c A1",
      "AISC 360-16 J8",
      Math.min(0.85 * plateSide * 3 * FOOT, 1.7 * plateSide ** 2) * 3 * KSI,
      plate.capacity,
      "N",
    );
    expect(plate.demand).toBe(heaviest);
    expect(plate.required).toBe(2.31);
  });

  test("site: frost, digging, lot and fall zone by their own numbers", () => {
    const frost = check(verdict, "frost/anchors");
    expect(frost.demand).toBeCloseTo(2.5 * FOOT, 9);
    expect(frost.capacity).toBeCloseTo(5 * FOOT, 9);
    const dig = check(verdict, "dig/base");
    expect(dig.demand).toBeCloseTo(3 * FOOT, 9);
    expect(dig.capacity).toBeCloseTo(6 * FOOT, 9);
    // anchors at 36 ft to the north, and 18 ft south by 31.18 ft east and west, of a mast 46 ft from both sides
    const lot = check(verdict, "lot");
    expect(lot.demand).toBeCloseTo(10 * FOOT, 9);
    expect(lot.capacity).toBeCloseTo((46 - 36 * Math.sin(Math.PI / 3)) * FOOT, 6);
    const fall = check(verdict, "fall-zone");
    expect(fall.kind).toBe("limit");
    expect(fall.capacity).toBeCloseTo((168 - 46) * FOOT, 6);
    // mast 70 ft, pipe 6 ft, clearance 10 ft
    expect(fall.demand).toBeCloseTo(86 * FOOT, 6);
  });
});

describe("verify, as a judge", () => {
  test("passes where every check passes, its margin that of the worst strength check", () => {
    expect(verdict.passes).toBe(true);
    expect(verdict.checks.every((c) => c.passes)).toBe(true);
    const worst = Math.max(...verdict.checks.filter((c) => c.kind === "strength").map((c) => c.utilisation));
    expect(verdict.smallestMargin).toBeCloseTo(1 / worst - 1, 12);
    for (const c of verdict.checks) expect(c.source.length, c.id).toBeGreaterThan(5);
    expect(new Set(verdict.checks.map((c) => c.id)).size).toBe(verdict.checks.length);
  });

  test("is pure: the same verdict twice, from frozen givens, whatever was judged between", () => {
    const freeze = <T>(value: T): T => {
      if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
        Object.freeze(value);
        for (const inner of Object.values(value)) freeze(inner);
      }
      return value;
    };
    const frozen = freeze(design());
    const first = verify(problem, frozen);
    verify(problem, freeStanding());
    verify(problem, withGuys({ tension: 0.12, radius: 20 * FOOT }));
    expect(verify(problem, frozen)).toEqual(first);
    expect(first).toEqual(verdict);
  });

  test("lists failures first, then strength by utilisation, then limits and warnings", () => {
    const failing = verify(problem, withGuys({ tension: 0.05 }));
    expect(failing.checks[0].passes).toBe(false);
    const rank = { strength: 0, limit: 1, warning: 2 };
    const passing = verdict.checks.map((c) => rank[c.kind]);
    expect(passing).toEqual([...passing].sort((a, b) => a - b));
    const strength = verdict.checks.filter((c) => c.kind === "strength").map((c) => c.utilisation);
    expect(strength).toEqual([...strength].sort((a, b) => b - a));
  });

  test("the wished margin is asked of strength and not of limits", () => {
    const asked = (margin: number) =>
      verify(
        pasture((s) => (s.wishes.margin = margin)),
        design(),
      );
    expect(asked(0.15).passes).toBe(true);
    const short = asked(0.17);
    expect(short.passes).toBe(false);
    expect(short.checks.filter((c) => !c.passes).map((c) => c.id)).toEqual(["leg-compression"]);
    expect(check(asked(0.5), "dig/anchors").passes).toBe(true);
    expect(short.smallestMargin).toBeCloseTo(verdict.smallestMargin, 12);
  });

  test("the bill adds up to the cent, whatever the design", () => {
    for (const d of [design(), freeStanding(), withGuys({ anchor: { kind: "screw", row: "screw-9" } })]) {
      const { bill } = verify(problem, d);
      expect(Math.round(bill.total * 100)).toBe(bill.lines.reduce((sum, { amount }) => sum + amount, 0));
    }
  });

  test("a free-standing mast is judged with its pad: moment about the toe, no guys, no anchors", () => {
    const free = verify(problem, freeStanding());
    expect(free.checks.some((c) => c.id.startsWith("guy") || c.where === "anchor")).toBe(false);
    const base = free.cases.find((c) => c.id === "wind-0.6")?.base;
    const overturning = check(free, "overturning");
    const { moment = 0, shear = 0, compression = 0 } = base ?? {};
    byHand(
      "overturning of a pad about its toe, M + V D",
      "statics",
      moment + shear * 5 * FOOT,
      overturning.demand,
      "N m",
    );
    const own = (49 * 1.5 + 2.25 * 3.5) * 145 + (49 - 2.25) * 3.5 * 110;
    byHand(
      "what a pad rights itself with, N B/2",
      "statics",
      (compression + own * POUND) * 3.5 * FOOT,
      overturning.capacity,
      "N m",
    );
    expect(overturning.required).toBe(1.67);
  });
});

/** A change of the design or the study, and the only checks that it may fail. */
const wrongs: readonly [string, () => { passes: boolean; failed: string[] }, string[]][] = [
  ["guys slacker than the window", () => judged(withGuys({ tension: 0.05 })), ["initial-tension"]],
  ["guys tauter than the window", () => judged(withGuys({ tension: 0.2 })), ["initial-tension"]],
  ["anchors beyond the setback", () => judged(withGuys({ radius: 44 * FOOT })), ["lot"]],
  [
    "a deadman above the frost line",
    () =>
      judged(
        withGuys({
          anchor: {
            kind: "deadman",
            row: "deadman",
            length: 6 * FOOT,
            height: 2 * FOOT,
            width: 2 * FOOT,
            depth: 2.4 * FOOT,
          },
        }),
      ),
    ["frost/anchors"],
  ],
  [
    "a hole deeper than can be dug",
    () => judged(design({ footing: { kind: "block", row: "block", width: 3 * FOOT, depth: 6.5 * FOOT } })),
    ["dig/base"],
  ],
  ["a pour under water", () => judged(design(), (s) => (s.site.waterTable = "4 ft")), ["water/anchors"]],
  [
    "a mast above the height limit",
    () => judged(design(), (s) => (s.wishes.heightLimit = "65 ft")),
    ["height-limit"],
  ],
  [
    "more concrete than allowed",
    () => judged(design(), (s) => (s.wishes.concreteCap = "1 yd3")),
    ["concrete-cap"],
  ],
];

test("verify(anchors so near that they lift the same ground) fails it, and says how far apart they stand", () => {
  const near = verify(problem, withGuys({ radius: 6 * FOOT })).checks.find((c) => c.id === "anchor-spacing");
  expect(near?.passes).toBe(false);
  expect(near?.capacity).toBeCloseTo(6 * Math.sqrt(3) * FOOT, 9);
  expect(verify(problem, design()).checks.find((c) => c.id === "anchor-spacing")?.passes).toBe(true);
});

function judged(d: Design, change?: Parameters<typeof pasture>[0]) {
  const v = verify(change ? pasture(change) : problem, d);
  return { passes: v.passes, failed: v.checks.filter((c) => !c.passes).map((c) => c.id) };
}

test("verify(a design with deadmen) asks their rod for the whole pull, and says where none is rated that it is not asked", () => {
  const verdictOf = (rodHolds: string | undefined, of = design()) =>
    verify(
      pasture((s) => {
        s.catalog = {
          anchors: [
            {
              id: "deadman",
              kind: "deadman",
              name: "Deadman of the tests",
              length: "5 ft",
              height: "18 in",
              width: "18 in",
              depth: "5 ft",
              bars: "#4",
              rod: "$38",
              rodHolds,
              invented: true,
            },
          ],
        };
      }),
      of,
    );
  const notAsked = /rod of a buried concrete anchor and the plate that it pulls by are not checked/;
  const rated = verdictOf("8000 lbf");
  const rod = check(rated, "anchor-rod");
  const pull = Math.max(
    ...rated.cases.flatMap(({ anchors }) =>
      anchors.map(({ uplift, lateral }) => Math.hypot(uplift, lateral)),
    ),
  );
  expect(rod.demand).toBeCloseTo(pull, 6);
  expect(rod.required).toBe(2);
  expect(rod.capacity).toBeCloseTo(8000 * 4.4482216152605, 6);
  expect(rated.assumptions.join(" ")).not.toMatch(notAsked);
  expect(verdictOf(`${(pull * 1.99) / 4.4482216152605} lbf`).passes).toBe(false);
  expect(verdictOf(`${(pull * 2.01) / 4.4482216152605} lbf`).passes).toBe(true);
  expect(verdictOf(undefined).assumptions.join(" ")).toMatch(notAsked);
  expect(verdictOf(undefined, freeStanding()).assumptions.join(" ")).not.toMatch(notAsked);
});

test("verify(a long slim deadman) of plain concrete breaks by bending, and with bars along its edges holds", () => {
  const slim = withGuys({
    anchor: {
      kind: "deadman",
      row: "deadman",
      length: 12 * FOOT,
      height: FOOT,
      width: FOOT,
      depth: 4 * FOOT,
    },
  });
  const judgedWith = (bars: "#4" | undefined) =>
    judged(slim, (s) => {
      s.catalog = {
        anchors: [
          {
            id: "deadman",
            kind: "deadman",
            name: "Slim deadman of the tests",
            length: "12 ft",
            height: "1 ft",
            width: "1 ft",
            depth: "4 ft",
            bars,
            rod: "$38",
            invented: true,
          },
        ],
      };
    });
  expect(judgedWith(undefined).failed).toEqual(["anchor-bending"]);
  expect(judgedWith("#4").failed).toEqual([]);
});

test("verify(anchors on falling ground) gives the soil before them what Coulomb's wedge leaves of it, and says so", () => {
  const sloping = pasture((s) => {
    s.lot.slope = { toward: 0, fall: 0.2 };
  });
  const capacity = (p: typeof problem) => check(verify(p, design()), "anchor-lateral").capacity;
  const { frictionAngle } = problem.soil;
  if (frictionAngle === undefined) throw new Error("the pasture's soil states no friction angle");
  const net = (fall: number) =>
    passiveCoefficient(frictionAngle, fall) - activeCoefficient(frictionAngle, fall);
  expect(capacity(sloping) / capacity(problem)).toBeCloseTo(net(0.2) / net(0), 9);
  expect(capacity(sloping) / capacity(problem)).toBeLessThan(0.75);
  expect(verify(sloping, design()).assumptions.join(" ")).toMatch(/falling away before every face/);
});

test("verify(a pour under water by choice) asks no dry hole and says what it assumed", () => {
  const allowed = pasture((s) => {
    s.site.waterTable = "4 ft";
    s.site.pourBelowWater = true;
  });
  const verdict = verify(allowed, design());
  expect(verdict.checks.some((c) => c.limitState === "water")).toBe(false);
  expect(verdict.assumptions.join(" ")).toMatch(/poured below water/);
  const dry = check(verify(problem, design()), "anchor-uplift");
  expect(check(verdict, "anchor-uplift").capacity).toBeLessThan(dry.capacity);
});

for (const [what, of, expected] of wrongs)
  test(`verify(${what}) fails ${expected.join(", ")} and nothing else`, () => {
    const { passes, failed } = of();
    expect(passes).toBe(false);
    expect(failed).toEqual(expected);
  });

test("verify(a mast that can't stand) fails its stability, never an exception, never a pass", () => {
  const spindly = design({ stack: [{ section: "3leg-7.5", length: 70 * FOOT }] });
  const hurricane = pasture((s) => (s.site.wind = { basis: "uniform", pressure: "300 psf" }));
  const v = verify(hurricane, {
    ...spindly,
    guys: {
      ...(spindly.guys as NonNullable<Design["guys"]>),
      levels: [{ height: 15 * FOOT, strand: "ehs-3-16" }],
    },
  });
  expect(v.passes).toBe(false);
  const stability = check(v, "stability");
  expect(stability.utilisation).toBe(Number.POSITIVE_INFINITY);
  expect(stability.note).toMatch(/unstable/);
  expect(v.smallestMargin).toBe(-1);
});

/** A power line from south to north, so many feet east of the lot's origin. */
const lineBeside = (east: number, lot: { lineClearance?: string; linesWithinFall?: boolean }) =>
  verify(
    pasture((s) => {
      Object.assign(s.lot, lot);
      s.lot.powerLines = [
        {
          name: "Near line",
          points: [
            [`${east} ft`, "-40 ft"],
            [`${east} ft`, "165 ft"],
          ],
        },
      ];
    }),
    design(),
  );

test("verify(a power line within reach of the falling mast) fails, a hair farther off passes, and only warns where the study lets it", () => {
  const beside = (east: number, linesWithinFall?: boolean) => lineBeside(east, { linesWithinFall });
  // 46 ft east stands the mast, of 70 ft and 6 ft of pipe; 10 ft are kept
  const near = beside(46 + 85.9);
  expect(near.passes).toBe(false);
  expect(check(near, "fall-zone")).toMatchObject({
    kind: "limit",
    passes: false,
    note: expect.stringContaining("would come too near"),
  });
  expect(near.checks.filter(({ passes }) => !passes)).toHaveLength(1);
  expect(beside(46 + 86).passes).toBe(true);
  const allowed = beside(46 + 54, true);
  expect(allowed.passes).toBe(true);
  expect(check(allowed, "fall-zone")).toMatchObject({
    kind: "warning",
    note: expect.stringContaining("which the study allows"),
  });
  expect(allowed.assumptions.join(" ")).toMatch(/within reach of a falling mast, as the study says/);
  expect(near.assumptions.join(" ")).not.toMatch(/within reach of a falling mast/);
});

test("verify(a guy nearer to a power line than the stated clearance) fails, a hair farther off passes", () => {
  // guys toward 0, 120 and 240 degrees: the anchor toward 120 stands 36 ft x sin 60 = 31.18 ft east of the mast
  const gap = 46 + 36 * Math.sin(Math.PI / 3);
  const beside = (east: number, lineClearance?: string) =>
    lineBeside(east, { lineClearance, linesWithinFall: true });
  const near = beside(gap + 14.9, "15 ft");
  expect(near.passes).toBe(false);
  expect(check(near, "line-clearance")).toMatchObject({
    kind: "limit",
    where: "Near line",
    passes: false,
    demand: expect.closeTo(15 * FOOT, 9),
    capacity: expect.closeTo(14.9 * FOOT, 6),
    note: "guy toward anchor 2",
  });
  expect(beside(gap + 15.1, "15 ft").passes).toBe(true);
  // nothing stated: 10 ft, and the verdict says so
  const silent = beside(gap + 9.9);
  expect(check(silent, "line-clearance")).toMatchObject({
    passes: false,
    demand: expect.closeTo(10 * FOOT, 9),
  });
  expect(silent.assumptions.join(" ")).toMatch(/No clearance from power lines is stated/);
  expect(beside(gap + 10.1).passes).toBe(true);
  // across the guys: nothing between them
  expect(check(beside(gap - 5, "15 ft"), "line-clearance").utilisation).toBe(Number.POSITIVE_INFINITY);
});

test("parseStudy() refuses a mast nearer to a power line than guys keep from it", () => {
  const touching = () =>
    pasture((s) => {
      s.lot.powerLines = [
        {
          name: "Drop to the shed",
          points: [
            ["50 ft", "0 ft"],
            ["50 ft", "120 ft"],
          ],
        },
      ];
    });
  expect(touching).toThrow(/lot\.mast: found a mast 1\.2 m from Drop to the shed, expected 3\.0 m or more/);
});

test("verify(a gust factor below what a slow mast asks) fails and says what to state", () => {
  const tall = pasture((s) => (s.wishes.height = "140 ft"));
  const slow = freeStanding({ height: 140 * FOOT, stack: [{ section: "3leg-31", length: 140 * FOOT }] });
  const found = check(verify(tall, slow), "gust-factor");
  expect(found.passes).toBe(false);
  expect(found.note).toMatch(/first sway frequency 0\.\d+ Hz: state a gust factor of/);
});

const strangers: readonly [string, Design, string][] = [
  ["package", design({ package: "nobody" }), "package"],
  ["section", design({ stack: [{ section: "nobody", length: 70 * FOOT }] }), "stack[0].section"],
  ["strand", withGuys({ levels: [{ height: 65 * FOOT, strand: "nobody" }] }), "guys.levels[0].strand"],
  ["anchor row", withGuys({ anchor: { kind: "screw", row: "nobody" } }), "guys.anchor.row"],
  ["anchor of another kind", withGuys({ anchor: { kind: "screw", row: "deadman" } }), "guys.anchor.kind"],
  ["footing", design({ footing: { kind: "block", row: "nobody", width: 1, depth: 1 } }), "footing.row"],
  [
    "footing of another kind",
    design({ footing: { kind: "block", row: "pad", width: 1, depth: 1 } }),
    "footing.kind",
  ],
  [
    "length that no pieces make",
    design({ height: 21.5, stack: [{ section: "3leg-13", length: 21.5 }] }),
    "stack",
  ],
];

for (const [what, d, path] of strangers)
  test(`verify(a design with an unknown ${what}) is refused at ${path}`, () => {
    expect(() => verify(problem, d)).toThrow(DesignError);
    try {
      verify(problem, d);
    } catch (error) {
      expect(error).toMatchObject({ path });
    }
  });
