import fc from "fast-check";
import solver from "javascript-lp-solver";
import { describe, expect, it } from "vitest";
import { analyse } from "../../src/checks/analysis.ts";
import { loadCase } from "../../src/checks/loads.ts";
import { mastInput } from "../../src/checks/structure.ts";
import { windCases } from "../../src/checks/wind-cases.ts";
import { catenaryState, solveCatenary } from "../../src/physics/guy/catenary.ts";
import { Mast } from "../../src/physics/mast/solver.ts";
import { modelOf } from "../../src/search/evaluate.ts";
import type { Node } from "../../src/search/node.ts";
import { levelCurve, levelShares, sharedThrust } from "../../src/search/sharing-floors.ts";
import { guysOf, Tree } from "../../src/search/tree.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

/** Complete masts on even anchors of random studies, a few of each, with what their guys may do. */
function* masts(runs: number, seed: number) {
  for (const file of fc.sample(smallStudy, { numRuns: runs, seed })) {
    const problem = problemOf(file);
    const tree = new Tree(problem);
    let turn = 0;
    for (const root of tree.roots()) {
      let node: Node | undefined = root;
      const path: Node[] = [];
      while (node && node.stage !== "structure") {
        path.push(node);
        const children: Node[] = tree.children(node).filter(({ perLevel }) => perLevel !== 0);
        node = children[turn++ % Math.max(children.length, 1)];
      }
      if (!node?.star?.even || node.root.arm) continue;
      const { star } = node;
      const levels = guysOf(node, problem);
      const curves = levels.map((level) => levelCurve(problem, star, level));
      const shares = levels.map((level) => levelShares(problem, star, level));
      yield { problem, node, path: [...path, node], star, levels, curves, shares };
    }
  }
}

describe("the least thrust of guys that share the wind's moment", () => {
  it("sharedThrust(mast, shares, moment, weight) is below every sharing of a linear program, and near the least", () => {
    let asked = 0;
    let nearest = 0;
    const ratios: number[] = [];
    for (const { node, star, curves, shares } of masts(800, 77)) {
      const { floors, stack } = node.root;
      const floor = sharedThrust({ stack, star }, shares, floors.moment, 0);
      if (curves.some((curve) => curve === null) || floor === 0) continue;
      // every level at a mixture of its drifts: no convex curve does worse
      const variables: Record<string, Record<string, number>> = {};
      const constraints: Record<string, { min?: number; equal?: number }> = {
        moment: { min: floors.moment },
      };
      curves.forEach((curve, level) => {
        constraints[`level${level}`] = { equal: 1 };
        curve?.drifts.forEach((_, k) => {
          variables[`${level} ${k}`] = {
            press: curve.press[k],
            moment: curve.held[k],
            [`level${level}`]: 1,
          };
        });
      });
      const found = solver.Solve({ optimize: "press", opType: "min", constraints, variables }) as {
        feasible: boolean;
        result: number;
      };
      // a moment that no drift holds
      if (!found.feasible) continue;
      asked++;
      expect(floor).toBeLessThanOrEqual(found.result * (1 + 1e-9) + 1e-6);
      nearest = Math.max(nearest, floor / found.result);
      ratios.push(floor / found.result);
    }
    ratios.sort((a, b) => a - b);
    console.log(
      `${asked} masts; the floor is ${ratios[Math.floor(asked / 2)].toFixed(3)} of the program's least at the median, ${nearest.toFixed(4)} at most`,
    );
    expect(asked).toBeGreaterThan(250);
    expect(nearest).toBeGreaterThan(0.95);
  }, 120_000);

  it("levelShares(level) is no more than what guys press and hold at any drift, sunk or not, as the solver has them", () => {
    let asked = 0;
    let closest = Number.POSITIVE_INFINITY;
    for (const { problem, node, star, levels, shares } of masts(250, 78)) {
      const model = modelOf(node, problem);
      const mast = new Mast(mastInput(model));
      // its guys with the loads of the case on them, wherever it comes to rest
      mast.solve(loadCase(problem, model, windCases(problem, model.guys)[0]));
      const state = catenaryState();
      levels.forEach((level, index) => {
        const share = shares[index];
        if (!share) return;
        const windward = star.perLevel === 3 ? 0.5 : 1;
        for (let step = -20; step <= 60; step++) {
          // the head pushed there by hand, sunk by its drift alone
          const drift = (level.height * 0.05 * step) / 60;
          let press = 0;
          let held = 0;
          for (const guy of mast.guys.filter((one) => one.level === index)) {
            state.h = 0;
            const { ax, ay, length, ea, qx, qy, qz } = guy;
            const rise = level.height - guy.z - (drift * drift) / (2 * level.height);
            solveCatenary(drift - ax, -ay, rise, length, ea, qx, qy, qz, state);
            press -= state.fz;
            held -= state.fx * level.height - state.fz * drift;
          }
          [0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1].forEach((part, i) => {
            const worth = press - (part / (windward * star.radius)) * held;
            asked++;
            closest = Math.min(closest, worth - share[i]);
            expect(worth).toBeGreaterThanOrEqual(share[i] - 1e-6);
          });
        }
      });
    }
    console.log(`${asked} drifts and prices, the nearest ${closest.toFixed(2)} N over the floor`);
    expect(asked).toBeGreaterThan(50_000);
  }, 120_000);

  it("no partial design's thrust is above what the killing wind presses on the base of a mast that stands in it", () => {
    let stood = 0;
    let nearest = 0;
    for (const { problem, node, path } of masts(1200, 79)) {
      const model = modelOf(node, problem);
      const cases = windCases(problem, model.guys);
      const result = analyse(problem, model, { giveUpAbove: problem.allowed, cases });
      if (result.status !== "complete") continue;
      stood++;
      const pressed = Math.max(...result.bases.map(({ compression }) => compression));
      for (const { thrust } of path) {
        expect(thrust).toBeLessThanOrEqual(pressed * (1 + 1e-9));
        nearest = Math.max(nearest, thrust / pressed);
      }
    }
    console.log(`${stood} masts that stand, the nearest floor ${nearest.toFixed(3)} of the truth`);
    expect(stood).toBeGreaterThan(100);
  }, 300_000);
});
