import fc from "fast-check";
import { expect, test } from "vitest";
import { analyse } from "../../src/checks/analysis.ts";
import { gusty } from "../../src/checks/gust.ts";
import { loadCase } from "../../src/checks/loads.ts";
import type { SolvedCase } from "../../src/checks/mast-checks.ts";
import { DesignError, resolve } from "../../src/checks/resolve.ts";
import { mastInput, type StructureModel } from "../../src/checks/structure.ts";
import { windCases } from "../../src/checks/wind-cases.ts";
import type { Design } from "../../src/model/design.ts";
import { GAUSS3, shape } from "../../src/physics/mast/element.ts";
import { Mast } from "../../src/physics/mast/solver.ts";
import type { LoadCase, MastInput } from "../../src/physics/mast/types.ts";
import type { Problem } from "../../src/problem/types.ts";
import { designOf } from "../support/random-design.ts";
import { armedStudy, problemOf, smallStudy } from "../support/small-study.ts";

/** From a study's file to a solved mast: what must hold of every answer, whatever the study. */
const places = fc.array(fc.nat({ max: 9999 }), { minLength: 14, maxLength: 14 });

interface Drawn {
  readonly problem: Problem;
  readonly model: StructureModel;
  readonly name: string;
}

function modelOf(problem: Problem, design: Design): StructureModel | null {
  try {
    return resolve(problem, design).model;
  } catch (error) {
    if (error instanceof DesignError) return null;
    throw error;
  }
}

/** The first so many distinct structures of random studies. */
function drawn(count: number, seed: number, studies = smallStudy): Drawn[] {
  const found = new Map<string, Drawn>();
  for (const [file, at] of fc.sample(fc.tuple(studies, places), { numRuns: 20 * count, seed })) {
    if (found.size >= count) break;
    const problem = problemOf(file);
    const design = designOf(problem, at);
    if (!design) continue;
    const name = JSON.stringify([file.site, file.wishes, design]);
    // a level under the highest anchor of a slope is no mast
    const model = modelOf(problem, design);
    if (!model) continue;
    // of studies with torque arms the masts that stand on them
    if (studies === armedStudy && !armed(model)) continue;
    found.set(name, { problem, model, name });
  }
  expect(found.size).toBe(count);
  return [...found.values()];
}

/** Integral of an element's lateral displacement along it, m2: cubic, so that three points are exact. */
function swept(mast: Mast, e: number, plane: number): number {
  const n = new Float64Array(4);
  const low = e * mast.perNode + 1 + 2 * plane;
  const up = low + mast.perNode;
  let sum = 0;
  for (const [xi, weight] of GAUSS3) {
    shape(xi, mast.length[e], mast.shear[e], n, 0);
    const u = n[0] * mast.d[low] + n[1] * mast.d[low + 1] + n[2] * mast.d[up] + n[3] * mast.d[up + 1];
    sum += weight * mast.length[e] * u;
  }
  return sum;
}

const armed = (model: StructureModel): boolean => model.guys?.levels.some(({ arm }) => arm) ?? false;

/** What is left of all forces and moments on the mast, as shares of all loads together. */
function unbalanced({ problem, model, wind, mast }: SolvedCase): number {
  const load = loadCase(problem, model, wind);
  const { perNode: per, d, z } = mast;
  const sums = { along: 0, across: 0, up: 0, bendAlong: 0, bendAcross: 0 };
  let all = 0;
  const at = (height: number) => mast.nodeAt(height);
  const moved = (node: number, plane: number, turn: 0 | 1) =>
    plane === 1 && per === 3 ? 0 : d[node * per + 1 + 2 * plane + turn];
  const weigh = (node: number, weight: number, arm: number) => {
    sums.up -= weight;
    sums.bendAlong += weight * (moved(node, 0, 0) + arm * moved(node, 0, 1));
    sums.bendAcross += weight * (moved(node, 1, 0) + arm * moved(node, 1, 1));
    all += weight;
  };
  for (let e = 0; e < mast.elements; e++) {
    const [a, b, c, f] = mast.lineLoad.subarray(4 * e, 4 * e + 4);
    sums.along += a + c;
    sums.bendAlong += a * z[e] + b + c * z[e + 1] + f;
    const weight = mast.pressing[e];
    sums.up -= weight * mast.length[e];
    sums.bendAlong += weight * swept(mast, e, 0);
    if (per === 5) sums.bendAcross += weight * swept(mast, e, 1);
    all += Math.abs(a) + Math.abs(c) + weight * mast.length[e];
  }
  const { pointWeights } = mastInput(model);
  for (const { z: height, weight, arm } of pointWeights) weigh(at(height), (load.dead ?? 1) * weight, arm);
  for (const { z: height, weight, arm } of load.addedPoints ?? []) weigh(at(height), weight, arm);
  for (const { z: height, force, moment } of load.points) {
    sums.along += force;
    sums.bendAlong += force * z[at(height)] + moment;
    all += Math.abs(force);
  }
  for (const { node, state, hx, hy, qx, qy, qz, length, stretch, lost } of mast.guys) {
    if (lost) continue;
    sums.along += state.fx;
    sums.across += state.fy;
    sums.up += state.fz;
    sums.bendAlong += state.fx * z[node] - state.fz * moved(node, 0, 0);
    sums.bendAcross += state.fy * z[node] - state.fz * moved(node, 1, 0);
    // on a torque arm, which leans with its node; what turns about the mast itself is shared by both planes alike
    const [theta, phi] = [moved(node, 0, 1), moved(node, 1, 1)];
    const shared = 0.5 * (state.fx * hy + state.fy * hx);
    sums.bendAlong -= hx * (state.fz + state.fx * theta) + shared * phi;
    sums.bendAcross -= hy * (state.fz + state.fy * phi) + shared * theta;
    all += Math.abs(state.fz);
    // a guy pulls its two ends with what hangs and blows on it
    const scale = state.tensionMast + Math.hypot(qx, qy, qz) * length;
    for (const [pull, q] of [
      [state.fx + state.ax, qx],
      [state.fy + state.ay, qy],
      [state.fz + state.az, qz],
    ])
      expect(Math.abs(pull - q * length * stretch)).toBeLessThan(1e-8 * scale);
  }
  const [up, along, turnAlong, across, turnAcross] = mast.baseReaction;
  const fixed = model.guys === null;
  const two = per === 5;
  const height = z[z.length - 1];
  const left = [
    sums.up + up,
    sums.along + along,
    two ? sums.across + across : 0,
    (sums.bendAlong + (fixed ? turnAlong : 0)) / height,
    two ? (sums.bendAcross + (fixed ? turnAcross : 0)) / height : 0,
  ];
  return Math.max(...left.map(Math.abs)) / all;
}

test("in every case wind, weights, guys and base balance, forces and moments in the deformed shape, to 1e-8", () => {
  let cases = 0;
  let worst = 0;
  const kinds = new Set<string>();
  const structures = [...drawn(250, 91), ...drawn(60, 94, armedStudy)];
  for (const { problem, model, name } of structures)
    analyse(problem, model, {
      visit: (c) => {
        cases++;
        kinds.add(`${c.wind.weather} ${c.mast.planes} ${model.guys?.star.perLevel ?? 0}`);
        const left = unbalanced(c);
        expect(left, `${c.wind.id} of ${name}`).toBeLessThan(1e-8);
        worst = Math.max(worst, left);
      },
    });
  console.info(
    `${structures.length} distinct structures, ${cases} cases of ${kinds.size} kinds: ${worst.toExponential(1)} left at most`,
  );
  expect(cases).toBeGreaterThan(800);
  expect(kinds.size).toBeGreaterThanOrEqual(8);
});

/** Moment about the base of all that the ground holds with, by case: what wind and drift overturn. N m. */
function overturning(problem: Problem, model: StructureModel): Map<string, number> | null {
  const found = new Map<string, number>();
  const result = analyse(problem, model, {
    visit: ({ wind, mast }) => {
      // with a guy lost in still air nothing is blown over
      if (wind.toward === null || wind.purpose === "accident") return;
      const held = mast.guys.reduce(
        (sum, { state, ax, hx, z }) => sum + state.ax * z - state.az * (ax + hx),
        0,
      );
      found.set(wind.id, held + (model.guys ? 0 : Math.abs(mast.baseReaction[2])));
    },
  });
  return result.status === "complete" ? found : null;
}

test("twice the wind never overturns less: not at a free base, and not about the foot of a guyed mast", () => {
  let compared = 0;
  for (const { problem, model, name } of [...drawn(200, 92), ...drawn(40, 95, armedStudy)]) {
    const once = overturning(problem, model);
    const twice = overturning(gusty(problem, { bare: 2, iced: 2 }), model);
    if (!once || !twice) continue;
    compared++;
    for (const [id, moment] of once) {
      expect(moment, `${id} of ${name}`).toBeGreaterThanOrEqual(0);
      expect(twice.get(id), `${id} of ${name}`).toBeGreaterThanOrEqual(moment);
    }
  }
  console.info(`twice the wind: ${compared} structures that stand in both`);
  expect(compared).toBeGreaterThan(60);
});

/** Anchors and wind moved by one motion of the plane. */
function placed(
  input: MastInput,
  load: LoadCase,
  move: (x: number, y: number) => [number, number],
): { input: MastInput; load: LoadCase } {
  return {
    input: {
      ...input,
      levels: input.levels.map((level) => ({
        ...level,
        anchors: level.anchors.map((anchor) => {
          const [x, y] = move(anchor.x, anchor.y);
          const head = anchor.head && move(anchor.head.x, anchor.head.y);
          return { ...anchor, x, y, head: head && { x: head[0], y: head[1] } };
        }),
      })),
    },
    load: { ...load, toward: move(...load.toward) },
  };
}

test("turning anchors and wind together, or mirroring both, changes no force and turns the shape with them", () => {
  let compared = 0;
  for (const { problem, model, name } of [...drawn(120, 93), ...drawn(30, 96, armedStudy)]) {
    if (!model.guys) continue;
    const input = mastInput(model);
    for (const wind of windCases(problem, model.guys)) {
      const load = { ...loadCase(problem, model, wind), planar: false };
      const mast = new Mast(input);
      if (!(mast.solve(load) && mast.stable())) continue;
      // a mast about to fall magnifies every rounding: those that lean so are refused anyway
      const far = Math.max(...mast.d.map(Math.abs));
      if (far > 0.02 * model.stack.height) continue;
      const angle = 0.1 + compared * 0.37;
      const turned = placed(input, load, (x, y) => [
        x * Math.cos(angle) - y * Math.sin(angle),
        x * Math.sin(angle) + y * Math.cos(angle),
      ]);
      const mirrored = placed(input, load, (x, y) => [x, -y]);
      for (const [other, sign] of [
        [turned, 1],
        [mirrored, -1],
      ] as const) {
        const moved = new Mast(other.input);
        expect(moved.solve(other.load) && moved.stable(), name).toBe(true);
        for (let i = 0; i < mast.nodes * 5; i++) {
          const across = i % 5 >= 3;
          expect(Math.abs(moved.d[i] - (across ? sign : 1) * mast.d[i]), name).toBeLessThan(
            1e-6 * far + 1e-9,
          );
        }
        mast.guys.forEach(({ state, lost }, g) => {
          if (lost) return;
          expect(moved.guys[g].state.tensionMast / state.tensionMast, name).toBeCloseTo(1, 6);
        });
      }
      compared++;
    }
  }
  console.info(`turned and mirrored: ${compared} solved cases`);
  expect(compared).toBeGreaterThan(200);
});
