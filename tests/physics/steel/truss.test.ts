import { expect, test } from "vitest";
import { type Bracing, facePattern } from "../../../src/physics/steel/bracing.ts";
import { type LatticeGeometry, latticeProperties } from "../../../src/physics/steel/lattice.ts";
import { memberShape } from "../../../src/physics/steel/member.ts";
import { checkValue } from "../../support/check-values.ts";
import { solveTruss, type Truss } from "./support/truss.ts";

// the formulas of one face and of the tube against whole trusses, solved joint by joint; legs as good as rigid
const [FACE, PANEL, PANELS] = [0.4, 0.5, 6];
const RIGID = 1e15;
const member = { diameter: 0.02, wall: 0.002 };
const horizontal = { diameter: 0.014 };
const section = (legs: 3 | 4, bracing: Bracing): LatticeGeometry => ({
  legs,
  face: FACE,
  leg: { diameter: 0.04, wall: 0.003 },
  bracing,
  panel: PANEL,
  yield: 250e6,
  modulus: 200e9,
  extraWeight: 0,
});
const ea = (bar: Parameters<typeof memberShape>[0]) => 200e9 * memberShape(bar).area;

/** One plane face, held at its foot, sheared by 1000 N at its top. Nodes of level i: 2i on the left, 2i + 1. */
function face(bracing: Bracing): Truss {
  const { horizontal: rung } = facePattern(section(4, bracing));
  const bars: [number, number, number][] = [];
  if (bracing.pattern === "single") {
    const nodes = Array.from({ length: 2 * PANELS + 1 }, (_, i): [number, number, number] => [
      i % 2 ? FACE : 0,
      0,
      (i * PANEL) / 2,
    ]);
    nodes.forEach((_, i) => {
      if (i > 0) bars.push([i - 1, i, ea(bracing.member)]);
      if (i > 1) bars.push([i - 2, i, RIGID]);
    });
    return { nodes, bars, held: new Set([0, 1]), frozen: "y", loads: new Map([[2 * PANELS, [1000, 0, 0]]]) };
  }
  const nodes = Array.from({ length: PANELS + 1 }, (_, i): [number, number, number][] => [
    [0, 0, i * PANEL],
    [FACE, 0, i * PANEL],
  ]).flat();
  for (let i = 0; i <= PANELS; i++) {
    if (rung && i > 0) bars.push([2 * i, 2 * i + 1, ea(rung)]);
    if (i === PANELS) continue;
    bars.push(
      [2 * i, 2 * i + 2, RIGID],
      [2 * i + 1, 2 * i + 3, RIGID],
      [2 * i, 2 * i + 3, ea(bracing.member)],
    );
    if (bracing.pattern === "x") bars.push([2 * i + 1, 2 * i + 2, ea(bracing.member)]);
  }
  // as the panels below it shear: pull from one end, push from the other
  const loads = new Map<number, [number, number, number]>([
    [2 * PANELS, [500, 0, 0]],
    [2 * PANELS + 1, [500, 0, 0]],
  ]);
  return { nodes, bars, held: new Set([0, 1]), frozen: "y", loads };
}

const patterns: readonly (readonly [string, Bracing])[] = [
  ["zigzag", { pattern: "single", member }],
  ["crossed", { pattern: "x", member }],
  ["all one way with horizontals", { pattern: "z", member, horizontal }],
];

test.each(patterns)("shearStiffness of a face, %s, is that of the truss", (what, bracing) => {
  const solved = solveTruss(face(bracing));
  if (!solved) throw new Error("a mechanism");
  // one whole panel in the middle: zigzag nodes stand half a panel apart, the others come in pairs
  const [low, high] = [PANELS, PANELS + 2];
  const drift = solved.moved[high][0] - solved.moved[low][0];
  checkValue({
    subject: `steel: shear stiffness of a face, ${what}`,
    source: "a pin-jointed truss of six panels solved by direct stiffness, legs rigid",
    tag: "side by side",
    expected: (1000 * PANEL) / drift / 1000,
    computed: latticeProperties(section(4, bracing)).shearStiffness / 2 / 1000,
    tolerance: 1e-5,
    unit: "kN",
  });
});

test("diagonals and horizontals of a face carry V d/b and V, an X shares it between pull and push", () => {
  const d = Math.hypot(FACE, PANEL);
  const forces = (bracing: Bracing) => {
    const truss = face(bracing);
    const solved = solveTruss(truss);
    if (!solved) throw new Error("a mechanism");
    return truss.bars.flatMap(([a, b, stiff], i) => {
      const inner = Math.min(a, b) >= PANELS - 2 && Math.max(a, b) <= PANELS + 3;
      return inner && stiff < RIGID ? [Math.round(solved.forces[i] * 1000) / 1000] : [];
    });
  };
  const unique = (values: number[]) => [...new Set(values)].sort((x, y) => x - y);
  const half = Math.round(((1000 * d) / FACE / 2) * 1000) / 1000;
  expect(unique(forces({ pattern: "x", member }))).toEqual([-half, half]);
  expect(unique(forces({ pattern: "z", member, horizontal }))).toEqual([
    -1000,
    Math.round(((1000 * d) / FACE) * 1000) / 1000,
  ]);
});

test("an X that only pulls is a mechanism without horizontals, and stands with them", () => {
  const pulls = (rung: boolean): Truss => {
    const whole = face({ pattern: "x", member, horizontal: rung ? horizontal : undefined });
    // the pressed family has gone slack
    return { ...whole, bars: whole.bars.filter(([a, b]) => !(a % 2 === 1 && b === a + 1)) };
  };
  expect(solveTruss(pulls(false))).toBeNull();
  expect(solveTruss(pulls(true))).not.toBeNull();
});

test.each([3, 4] as const)(
  "torsionStiffness of %d legs is that of the truss in space, crossed and one way",
  (legs) => {
    const radius = FACE / (2 * Math.sin(Math.PI / legs));
    const torque = 1000;
    for (const [what, bracing] of patterns.slice(1)) {
      const nodes = Array.from({ length: PANELS + 1 }, (_, i) =>
        Array.from({ length: legs }, (_, leg): [number, number, number] => {
          const angle = (2 * Math.PI * leg) / legs;
          return [radius * Math.cos(angle), radius * Math.sin(angle), i * PANEL];
        }),
      ).flat();
      const bars: [number, number, number][] = [];
      const node = (level: number, leg: number) => level * legs + (leg % legs);
      for (let i = 0; i <= PANELS; i++)
        for (let leg = 0; leg < legs; leg++) {
          // an X has none of its own: they hold the outline, and carry nothing
          if (i > 0)
            bars.push([node(i, leg), node(i, leg + 1), bracing.pattern === "z" ? ea(horizontal) : RIGID]);
          if (i === PANELS) continue;
          bars.push(
            [node(i, leg), node(i + 1, leg), RIGID],
            [node(i, leg), node(i + 1, leg + 1), ea(member)],
          );
          if (bracing.pattern === "x") bars.push([node(i, leg + 1), node(i + 1, leg), ea(member)]);
        }
      const loads = new Map(
        Array.from({ length: legs }, (_, leg): [number, [number, number, number]] => {
          const angle = (2 * Math.PI * leg) / legs;
          const push = torque / (legs * radius);
          return [node(PANELS, leg), [-push * Math.sin(angle), push * Math.cos(angle), 0]];
        }),
      );
      const held = new Set(Array.from({ length: legs }, (_, leg) => leg));
      const solved = solveTruss({ nodes, bars, held, loads });
      if (!solved) throw new Error("a mechanism");
      // leg 0 stands on the x axis: its y is the turn
      const turn = (level: number) => solved.moved[node(level, 0)][1] / radius;
      checkValue({
        subject: `steel: torsional stiffness of a lattice of ${legs} legs, ${what}`,
        source: "a pin-jointed truss in space of six panels solved by direct stiffness, legs rigid",
        tag: "side by side",
        expected: (torque * PANEL) / (turn(4) - turn(3)) / 1000,
        computed: latticeProperties(section(legs, bracing)).torsionStiffness / 1000,
        tolerance: 1e-5,
        unit: "kN m2",
      });
    }
  },
);
