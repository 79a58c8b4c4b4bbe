import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyse } from "../../src/checks/analysis.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { evaluate, evaluateAll, modelOf } from "../../src/search/evaluate.ts";
import { floorOf, leastOfNode, type Node } from "../../src/search/node.ts";
import { Tree } from "../../src/search/tree.ts";
import { armedStudy, problemOf, smallStudy } from "../support/small-study.ts";

/** A pick from 0 to n - 1 by a small generator of its own, so that a failure repeats. */
const picker = (seed: number) => {
  let state = seed >>> 0;
  return (n: number) => {
    // mulberry32: long period, good low bits
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return Math.floor((((t ^ (t >>> 14)) >>> 0) / 4294967296) * n);
  };
};

const nameOf = ({ stage, root, perLevel, levels, star, strands, tensions }: Node) =>
  JSON.stringify([stage, root.index, perLevel, levels, star?.key, strands.map(({ id }) => id), tensions]);

interface Walked {
  readonly safe: number;
  readonly uneven: number;
  readonly armed: number;
  readonly traded: number;
}

/** Walks trees of random studies down to structures, and holds the floors of every node on the way against them. */
function walk(studies: fc.Arbitrary<StudyFile>, structures: number, seed: number): Walked {
  const pick = picker(7);
  const tried = new Set<string>();
  let safe = 0;
  let uneven = 0;
  let armed = 0;
  let closest = 0;
  let traded = 0;
  for (const file of fc.sample(studies, { numRuns: structures, seed })) {
    if (tried.size >= structures) break;
    const problem = problemOf(file);
    // floors hold whatever is allowed; allowing everything lets unsafe designs test them too
    const tree = new Tree({ ...problem, allowed: 4 });
    const roots = [...tree.roots()];
    if (roots.length === 0) continue;
    for (let way = 0; way < 12; way++) {
      const path: Node[] = [roots[pick(roots.length)]];
      while (path[path.length - 1].stage !== "structure") {
        const children = tree.children(path[path.length - 1]);
        if (children.length === 0) break;
        path.push(children[pick(children.length)]);
      }
      const leaf = path[path.length - 1];
      if (leaf.stage !== "structure") continue;
      const name = JSON.stringify([
        file,
        leaf.root.index,
        leaf.levels,
        leaf.star?.key,
        leaf.strands.map((s) => s.id),
        leaf.tensions,
        leaf.perLevel,
        leaf.root.arm?.row.id,
      ]);
      if (tried.has(name)) continue;
      tried.add(name);
      // a buckling factor is worked out only where it is the worst, as in the search
      const result = analyse(problem, modelOf(leaf, problem), { giveUpAbove: Number.MAX_VALUE });
      // a mast without equilibrium is beyond every floor
      const use = result.status === "complete" ? result.worst : Number.POSITIVE_INFINITY;
      // floors assume that the lean check passes: a mast that leans more is rejected anyway
      for (const node of path)
        if (use <= 1) {
          const pipe = leaf.root ? path[0].use : 0;
          expect(node.use, name).toBeLessThanOrEqual(Math.max(use, pipe) * (1 + 1e-9));
          if (use > 0) closest = Math.max(closest, node.use / Math.max(use, pipe));
        }
      // what no completion of a node may use more than, its floors must leave this one: the front asks so
      const asked = Math.max(use, path[0].use) * (1 + 1e-6);
      if (use <= 1)
        for (let i = 1; i < path.length; i++)
          expect(tree.children(path[i - 1], asked).map(nameOf), `left of ${asked}: ${name}`).toContain(
            nameOf(path[i]),
          );
      if (result.status === "complete" && use <= 1) {
        const pressed = Math.max(...result.bases.map(({ compression }) => compression));
        const pulled = Math.max(0, ...result.anchors.map(({ uplift }) => uplift));
        for (const node of path) {
          expect(node.thrust, `thrust: ${name}`).toBeLessThanOrEqual(pressed * (1 + 1e-9));
          expect(node.uplift, `uplift: ${name}`).toBeLessThanOrEqual(pulled + 1e-6);
        }
      }
      if (leaf.star && !leaf.star.even && use <= 1) uneven++;
      if (leaf.root.arm && use <= 1) armed++;
      const full = evaluate(leaf, tree);
      if (full.status !== "safe" || use > 1) continue;
      safe++;
      const all = evaluateAll(leaf, tree, 4, 0);
      if (all.status !== "safe") throw new Error(name);
      const poured = Math.min(...all.candidates.map(({ concrete }) => concrete));
      for (const node of path) {
        const { cents, concrete } = leastOfNode(node);
        expect(cents, name).toBeLessThanOrEqual(full.candidates[0].cents);
        expect(concrete, name).toBeLessThanOrEqual(poured);
        expect(floorOf(node), name).toBeLessThanOrEqual(full.candidates[0].objective);
      }
      for (const node of path) {
        const ground = node.star && tree.pricing.floors.of(node);
        if (!ground) continue;
        const trades = tree.pricing.floors.trades(node, 0);
        for (const { cents, concrete, use } of all.candidates) {
          traded++;
          const under = trades.some(
            (t) => node.spent + t.cents <= cents && t.concrete <= concrete && t.use <= use + 1e-9,
          );
          expect(under, `${name}: no way to hold it is under ${cents} cents, ${concrete}, ${use}`).toBe(true);
        }
      }
    }
  }
  console.log(
    `${tried.size} distinct structures, ${uneven} standing on uneven anchors, ${armed} on torque arms, ${safe} with mast and ground standing; closest floor ${closest.toFixed(3)} of the truth; ${traded} times a design was above a way to hold it`,
  );
  expect(tried.size).toBeGreaterThanOrEqual(structures);
  return { safe, uneven, armed, traded };
}

describe("lower bounds", () => {
  it("no floor on a partial design is above what any completion of it needs: utilisation, cents, concrete", () => {
    const { safe, uneven, traded } = walk(smallStudy, 4000, 11);
    expect(safe).toBeGreaterThan(400);
    expect(traded).toBeGreaterThan(4000);
    expect(uneven).toBeGreaterThan(100);
  }, 300_000);

  it("nor where the top guys may meet torque arms", () => {
    const { safe, armed } = walk(armedStudy, 1500, 12);
    expect(safe).toBeGreaterThan(150);
    expect(armed).toBeGreaterThan(150);
  }, 300_000);
});
