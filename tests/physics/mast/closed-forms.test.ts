import { expect, test } from "vitest";
import { Mast } from "../../../src/physics/mast/solver.ts";
import type { MastInput } from "../../../src/physics/mast/types.ts";
import { checkValue } from "../../support/check-values.ts";
import { along, momentAt, roller, segment, solved, turn, wind } from "./support/masts.ts";

const L = 12;
const EI = 4e5;

const check = (
  what: string,
  source: string,
  expected: number,
  computed: number,
  tolerance: number,
  unit = "",
  tag: "from memory" | "arithmetic" | "published" = "from memory",
) => checkValue({ subject: `mast: ${what}`, source, tag, expected, computed, tolerance, unit });

const cantilever = (more: Partial<MastInput> = {}): MastInput => ({
  segments: [segment(0, L)],
  base: "fixed",
  pointWeights: [],
  levels: [],
  ...more,
});

const TEXTBOOK = "strength of materials, textbook";

test("a free-standing mast under a force at its top is the cantilever of the textbook", () => {
  const s = solved(cantilever(), wind({ at: [{ z: L, force: 500, moment: 0 }] }));
  check(
    "cantilever, tip force, deflection P L3/3EI",
    TEXTBOOK,
    (500 * L ** 3) / (3 * EI),
    along(s, L),
    1e-9,
    "m",
  );
  check(
    "cantilever, tip force, slope P L2/2EI",
    TEXTBOOK,
    (500 * L ** 2) / (2 * EI),
    turn(s, L),
    1e-9,
    "rad",
  );
  check("cantilever, tip force, moment P L", TEXTBOOK, 500 * L, momentAt(s, 0), 1e-9, "N m");
});

test("a free-standing mast under even wind is the cantilever of the textbook", () => {
  const s = solved(cantilever(), wind({ line: () => 120 }));
  check(
    "cantilever, even load, deflection w L4/8EI",
    TEXTBOOK,
    (120 * L ** 4) / (8 * EI),
    along(s, L),
    1e-9,
    "m",
  );
  check(
    "cantilever, even load, slope w L3/6EI",
    TEXTBOOK,
    (120 * L ** 3) / (6 * EI),
    turn(s, L),
    1e-9,
    "rad",
  );
  check("cantilever, even load, moment w L2/2", TEXTBOOK, (120 * L ** 2) / 2, momentAt(s, 0), 1e-9, "N m");
});

test("bracing that gives adds P L/GA to the top of a cantilever, and carries the shear", () => {
  const ga = 2e4;
  const s = solved(
    cantilever({ segments: [segment(0, L, { ga })] }),
    wind({ at: [{ z: L, force: 500, moment: 0 }] }),
  );
  check(
    "shear-flexible cantilever, deflection P L3/3EI + P L/GA",
    "Timoshenko beam, textbook",
    (500 * L ** 3) / (3 * EI) + (500 * L) / ga,
    along(s, L),
    1e-9,
    "m",
  );
  for (const shear of s.forces.shear) expect(shear).toBeCloseTo(500, 6);
});

// T&G table A-1, values by the closed forms; P/Pe of the pinned column that the cantilever is half of
const AMPLIFIED = [
  [0.1, 1.1285, 1.0727, 1.1096, 1.1115, 1.1143, 1.1375],
  [0.2, 1.2903, 1.1624, 1.2467, 1.2509, 1.2572, 1.3102],
  [0.3, 1.5, 1.2766, 1.4228, 1.4301, 1.4411, 1.5334],
  [0.4, 1.7817, 1.4272, 1.6576, 1.6691, 1.6864, 1.8322],
  [0.5, 2.1786, 1.6359, 1.9863, 2.0036, 2.0299, 2.2522],
  [0.6, 2.7776, 1.9463, 2.4792, 2.5055, 2.5455, 2.8842],
  [0.8, 5.7977, 3.4801, 4.9434, 5.015, 5.1247, 6.0579],
] as const;
const TG = "Timoshenko and Gere, Theory of Elastic Stability, 2nd ed., table A-1";
const EULER = (Math.PI ** 2 * EI) / (4 * L ** 2);
const loaded = (share: number, elementsPerSpan = 12) =>
  cantilever({ elementsPerSpan, pointWeights: [{ z: L, weight: share * EULER, arm: 0 }] });

for (const [share, phi, psi, chi, eta, lambda, secant] of AMPLIFIED) {
  test(`compression of ${share} Pcr amplifies a cantilever as half a pinned column of twice its length`, () => {
    const tip = solved(loaded(share), wind({ at: [{ z: L, force: 20, moment: 0 }] }));
    check(`chi at P/Pe ${share}`, TG, chi, along(tip, L) / ((20 * L ** 3) / (3 * EI)), 1e-4);
    // even load one way, its support at the top the other: half of a simple span of 2 L
    const even = solved(loaded(share), wind({ line: () => -5, at: [{ z: L, force: 5 * L, moment: 0 }] }));
    check(`eta at P/Pe ${share}`, TG, eta, along(even, L) / ((5 * 5 * (2 * L) ** 4) / (384 * EI)), 1e-4);
    check(`lambda at P/Pe ${share}`, TG, lambda, momentAt(even, 0) / ((5 * L ** 2) / 2), 1e-4);
    const couple = solved(loaded(share), wind({ at: [{ z: L, force: 0, moment: 100 }] }));
    check(`sec u at P/Pe ${share}`, TG, secant, Math.abs(momentAt(couple, 0)) / 100, 1e-4);
  });

  test(`compression of ${share} Pe turns the ends of a pinned column as phi and psi say`, () => {
    const pe = (Math.PI ** 2 * EI) / L ** 2;
    const column = solved(
      {
        segments: [segment(0, L)],
        base: "pinned",
        pointWeights: [{ z: L, weight: share * pe, arm: 0 }],
        levels: [roller(L)],
        elementsPerSpan: 12,
      },
      wind({ at: [{ z: L, force: 0, moment: 100 }] }),
    );
    check(`psi at P/Pe ${share}`, TG, psi, turn(column, L) / ((100 * L) / (3 * EI)), 1e-4);
    check(`phi at P/Pe ${share}`, TG, phi, -turn(column, 0) / ((100 * L) / (6 * EI)), 1e-4);
  });
}

// equilibrium is found to a share of all loads: rollers of 1e8 N/m answer to no better than 1e-5 N of a few
const BALLAST = [{ z: 0, weight: 1e5, arm: 0 }];

// Hicks, Civil Engineering Formulas, table 2.1: support moments / w L2 and reactions / w L from an end
const SPANS = [
  [2, [1 / 8], [3 / 8, 10 / 8]],
  [3, [1 / 10], [0.4, 1.1]],
  [4, [3 / 28, 2 / 28], [11 / 28, 32 / 28, 26 / 28]],
  [5, [4 / 38, 3 / 38], [15 / 38, 43 / 38, 37 / 38]],
] as const;

for (const [spans, moments, reactions] of SPANS)
  test(`a mast on ${spans - 1} guy levels and a roller at its top is the continuous beam of ${spans} spans`, () => {
    const span = 6;
    const w = 10;
    const s = solved(
      {
        segments: [segment(0, spans * span, { ei: 4e4 })],
        base: "pinned",
        pointWeights: BALLAST,
        levels: Array.from({ length: spans }, (_, i) => roller((i + 1) * span)),
      },
      wind({ line: () => w }),
    );
    const source = "Hicks, Civil Engineering Formulas, table 2.1 (equal spans, even load)";
    moments.forEach((m, i) => {
      check(
        `${spans} spans, moment over support ${i + 1} / w L2`,
        source,
        m,
        Math.abs(momentAt(s, (i + 1) * span)) / (w * span ** 2),
        1e-4,
        "",
        "published",
      );
    });
    const thrust = (level: number) =>
      -s.mast.guys.filter((g) => g.level === level).reduce((sum, g) => sum + g.state.fx, 0);
    reactions.forEach((r, i) => {
      check(
        `${spans} spans, reaction ${i} / w L`,
        source,
        r,
        (i === 0 ? -s.mast.baseReaction[1] : thrust(i - 1)) / (w * span),
        1e-4,
        "",
        "published",
      );
    });
  });

test("the vertex between nodes is found: the end span of two, M = 9/128 w L2 at 3/8 L", () => {
  const s = solved(
    {
      segments: [segment(0, 12, { ei: 4e4 })],
      base: "pinned",
      pointWeights: BALLAST,
      levels: [roller(6), roller(12)],
    },
    wind({ line: () => 10 }),
  );
  let best = 0;
  for (let i = 0; i < s.forces.count; i++)
    if (s.forces.z[i] < 6 && s.forces.along[i] < s.forces.along[best]) best = i;
  const source = "continuous beam of two equal spans, textbook";
  check(
    "two spans, moment in the span 9/128 w L2",
    source,
    (9 / 128) * 10 * 36,
    -s.forces.along[best],
    1e-4,
    "N m",
  );
  check("two spans, its place 3/8 L", source, (3 / 8) * 6, s.forces.z[best], 1e-4, "m");
});

const bucklingLoad = (input: MastInput): number => {
  const mast = new Mast(input);
  if (!mast.solve(wind())) throw new Error("not solved");
  return mast.bucklingFactor();
};

test("bucklingFactor of a weightless cantilever under a top load is Euler's", () => {
  const by = (perSpan: number) => bucklingLoad(loaded(0.25, perSpan)) * 0.25 * EULER;
  check("Euler load of a cantilever pi2 EI/4L2", "Euler, textbook", EULER, by(12), 1e-6, "N");
  check("the same on the mesh of search and verdict", "Euler, textbook", EULER, by(3), 1e-5, "N");
});

test("bucklingFactor of a cantilever under its own weight is 7.8373 EI/L3", () => {
  const own = (perSpan: number) =>
    bucklingLoad(cantilever({ elementsPerSpan: perSpan, segments: [segment(0, L, { weight: 50 })] })) * 50;
  const source = "Timoshenko and Gere, Theory of Elastic Stability, 2.12";
  check("self-weight buckling q L3/EI", source, 7.8373, (own(12) * L ** 3) / EI, 1e-5);
  check("the same on the mesh of search and verdict", source, 7.8373, (own(3) * L ** 3) / EI, 1e-4);
});

test("bucklingFactor of a pinned column, and of one whose bracing gives (Engesser)", () => {
  const pe = (Math.PI ** 2 * EI) / L ** 2;
  const ga = 4 * pe;
  const column = (shear: number, elementsPerSpan = 12): MastInput => ({
    segments: [segment(0, L, { ga: shear })],
    base: "pinned",
    pointWeights: [{ z: L, weight: 0.2 * pe, arm: 0 }],
    levels: [roller(L)],
    elementsPerSpan,
  });
  check(
    "Euler load of a pinned column pi2 EI/L2",
    "Euler, textbook",
    pe,
    bucklingLoad(column(Number.POSITIVE_INFINITY)) * 0.2 * pe,
    1e-5,
    "N",
  );
  check(
    "built-up column Pe/(1 + Pe/GA)",
    "Engesser; Timoshenko and Gere, Theory of Elastic Stability, 2.17",
    pe / (1 + pe / ga),
    // the shear strain is constant within an element: the square of its length is left as error
    bucklingLoad(column(ga, 60)) * 0.2 * pe,
    1e-4,
    "N",
  );
});

test("bucklingFactor of a mast whose load stands on a pipe above it: k a tan(k L) = 1", () => {
  for (const arm of [0.5, 2, 6]) {
    // root by bisection: a cantilever with a rigid extension, from v'' + k2 v = k2 (v(L) + a v'(L))
    let low = 1e-9;
    let high = Math.PI / 2 / L - 1e-12;
    for (let i = 0; i < 100; i++) {
      const k = 0.5 * (low + high);
      if (k * arm * Math.tan(k * L) > 1) high = k;
      else low = k;
    }
    const expected = EI * low * low;
    const found =
      bucklingLoad(cantilever({ elementsPerSpan: 12, pointWeights: [{ z: L, weight: 300, arm }] })) * 300;
    check(
      `load on a pipe of ${arm} m above a mast of ${L} m`,
      "differential equation of the column, tests/physics/mast/closed-forms.test.ts",
      expected,
      found,
      1e-6,
      "N",
      "arithmetic",
    );
  }
});

test("weight on a leaning mast adds its moment at the top: the pipe leans with its joint", () => {
  const arm = 1.5;
  const weight = 200;
  const s = solved(
    cantilever({ pointWeights: [{ z: L, weight, arm }] }),
    wind({ at: [{ z: L, force: 400, moment: 0 }] }),
  );
  // moment at the base about the point where the weight stands, P-delta and lean included
  const lever = along(s, L) + arm * turn(s, L);
  check(
    "base moment F L + W (u + a theta)",
    "equilibrium in the deformed shape",
    400 * L + weight * lever,
    momentAt(s, 0),
    1e-7,
    "N m",
    "arithmetic",
  );
});

test("shear square to the axis is what strains the bracing: V = GA (u' - theta), compression included", () => {
  const ga = 5e4;
  const s = solved(
    cantilever({ segments: [segment(0, L, { ga })], pointWeights: [{ z: L, weight: 0.3 * EULER, arm: 0 }] }),
    wind({ at: [{ z: L, force: 100, moment: 0 }] }),
  );
  // the top half leans most; gamma by the element's own constant shear strain
  const e = s.mast.elements - 1;
  const gamma = s.mast.slopeAt(e, 1, 0) - turn(s, L);
  expect(ga * gamma).toBeCloseTo(s.forces.shear[3 * e + 1], -0.5);
  const lateral = 100 + 0.3 * EULER * s.mast.slopeAt(e, 1, 0);
  expect(s.forces.shear[3 * e + 2]).toBeCloseTo(lateral, 3);
});
