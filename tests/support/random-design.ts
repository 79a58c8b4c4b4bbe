import type { Design } from "../../src/model/design.ts";
import { starOf } from "../../src/problem/star.ts";
import type { Problem } from "../../src/problem/types.ts";

/** One design of a study's grid; null where the grid has none at the drawn places. */
export function designOf(problem: Problem, at: readonly number[]): Design | null {
  let next = 0;
  const pick = <T>(from: readonly T[]): T => from[at[next++ % at.length] % from.length];
  const { parts } = problem.study;
  const h = at[0] % problem.heights.length;
  if (problem.stacks[h].length === 0) return null;
  const stack = pick(problem.stacks[h]);
  const guyed = pick(parts.supports) === "guyed";
  const reachable = problem.levelHeights.filter((z) => z <= stack.height);
  const count = Math.min(pick(parts.levelCounts), reachable.length);
  if (guyed && (count === 0 || problem.anchors.length === 0)) return null;
  const start = at[1] % Math.max(1, reachable.length - count + 1);
  const design: Design = {
    package: problem.packages[0].row.id,
    height: stack.height,
    stack: stack.parts.map(({ section, length }) => ({ section: section.row.id, length })),
    guys: guyed
      ? {
          perLevel: pick(parts.guysPerLevel),
          radius: pick(problem.radii),
          rotation: pick(problem.rotations),
          tension: pick(parts.tensions),
          levels: reachable
            .slice(start, start + count)
            .map((height) => ({ height, strand: pick(problem.strands).id })),
          anchor: pick(problem.anchors).choice,
        }
      : null,
    footing: pick(problem.footings).choice,
  };
  const { guys } = design;
  if (!guys) return design;
  const arm = problem.arms.length > 0 ? pick([undefined, ...problem.arms])?.row.id : undefined;
  if (arm !== undefined) Object.assign(guys.levels[guys.levels.length - 1], { arm });
  // a guy that does not rise from its anchor is no design of the grid's that can be judged
  const head = problem.anchors.find((part) => part.choice === guys.anchor)?.head;
  const highest = Math.max(...starOf(problem.study.lot, guys, head).anchors.map((a) => a.elevation));
  return guys.levels[0].height > highest ? design : null;
}
