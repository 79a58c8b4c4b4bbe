import { DesignError, resolve } from "../checks/resolve.ts";
import { siteRefusal } from "../checks/site.ts";
import { type JudgedMast, judge, judgeMast } from "../checks/verify.ts";
import type { Design } from "../model/design.ts";
import { designKey } from "../model/design-key.ts";
import { radiiAt, spareOf, starOf } from "../problem/star.ts";
import type { Problem } from "../problem/types.ts";
import { better, type Candidate } from "./candidate.ts";
import { guyChoice } from "./evaluate.ts";
import { Grid, tuples } from "./grid.ts";
import { litres, objectiveOf } from "./ground.ts";

/** More designs than this are for the search: each one is judged whole. */
export const ENUMERABLE = 2_000_000;

function* subsets(values: readonly number[], size: number, from = 0): Generator<number[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = from; i <= values.length - size; i++)
    for (const rest of subsets(values, size - 1, i + 1)) yield [values[i], ...rest];
}

/** Every design of the grid, without a thought: it shares no rule with the search. */
export function* everyDesign(problem: Problem): Generator<Design> {
  const { parts } = problem.study;
  const grid = new Grid(problem);
  const axes = {
    lot: problem.study.lot,
    radii: problem.radii,
    rotations: problem.rotations,
    drawnIn: parts.drawnIn,
  };
  for (const pack of problem.packages)
    for (const [h, height] of problem.heights.entries())
      for (const stack of problem.stacks[h]) {
        const common = {
          package: pack.row.id,
          height,
          stack: stack.parts.map(({ section, length }) => ({ section: section.row.id, length })),
        };
        if (parts.supports.includes("freestanding"))
          for (const footing of problem.footings) yield { ...common, guys: null, footing: footing.choice };
        if (!parts.supports.includes("guyed")) continue;
        for (const perLevel of parts.guysPerLevel)
          for (const radius of problem.radii)
            for (const rotation of problem.rotations) {
              const radii = radiiAt(axes, perLevel, radius, rotation);
              const star = starOf(problem.study.lot, { perLevel, radius, radii, rotation });
              for (const count of parts.levelCounts)
                for (const tensions of grid.drawn(count))
                  for (const heights of subsets(grid.candidates(height), count))
                    for (const strands of tuples(problem.strands, count))
                      for (const arm of [null, ...problem.arms])
                        for (const anchor of problem.anchors)
                          for (const footing of problem.footings)
                            yield {
                              ...common,
                              guys: guyChoice(
                                star,
                                rotation,
                                heights.map((z, i) => ({
                                  height: z,
                                  strand: strands[i],
                                  tension: tensions[i],
                                  arm: i === count - 1 ? arm : null,
                                })),
                                anchor.choice,
                              ),
                              footing: footing.choice,
                            };
            }
      }
}

/**
 * The answer by enumeration: every design through what `verify` does, the best kept by the same order as the search's.
 * @throws RangeError where the grid is larger than `ENUMERABLE`
 */
export function enumerate(
  problem: Problem,
  visit?: (candidate: Candidate) => void,
): { best: Candidate | null; designs: number } {
  const size = new Grid(problem).total().designs;
  if (size > ENUMERABLE)
    throw new RangeError(
      `the grid holds ${size.toPrecision(3)} designs; expected at most ${ENUMERABLE} to enumerate`,
    );
  const objective = objectiveOf(problem);
  const mastOf = mastsOf(problem);
  let best: Candidate | null = null;
  let designs = 0;
  for (const design of everyDesign(problem)) {
    designs++;
    const candidate = judged(problem, design, objective, mastOf);
    if (!candidate) continue;
    visit?.(candidate);
    if (better(candidate, best)) best = candidate;
  }
  return { best, designs };
}

type Resolved = ReturnType<typeof resolve>;

/** Masts judged by all of a design but what stands in the ground: that moves a mast by the height of its hold alone. */
function mastsOf(problem: Problem): (design: Design, resolved: Resolved) => JudgedMast {
  let structure = "";
  const byHold = new Map<number, JudgedMast>();
  return ({ footing: _, guys, ...above }, { model, anchor }) => {
    const key = JSON.stringify([above, guys && { ...guys, anchor: null }]);
    if (key !== structure) byHold.clear();
    structure = key;
    const hold = anchor?.head ?? 0;
    let mast = byHold.get(hold);
    if (!mast) byHold.set(hold, (mast = judgeMast(problem, model)));
    return mast;
  };
}

function judged(
  problem: Problem,
  design: Design,
  objective: ReturnType<typeof objectiveOf>,
  mastOf: ReturnType<typeof mastsOf>,
): Candidate | null {
  // what the site refuses outright costs nothing to judge
  const footing = problem.footings.find((part) => part.choice === design.footing);
  if (footing && siteRefusal(footing, problem.ground)) return null;
  try {
    const resolved = resolve(problem, design);
    const verdict = judge(problem, design, resolved, mastOf(design, resolved));
    if (!verdict.passes) return null;
    const cents = Math.round(verdict.bill.total * 100);
    const anchor = problem.anchors.find((part) => part.choice === design.guys?.anchor);
    const count = design.guys?.perLevel ?? 0;
    const concrete = litres(footing?.takeOff.concrete ?? 0) + count * litres(anchor?.takeOff.concrete ?? 0);
    const dug = litres(footing?.takeOff.dug ?? 0) + count * litres(anchor?.takeOff.dug ?? 0);
    return {
      design,
      cents,
      concrete,
      objective: objective({ cents, concrete, dug }),
      use: 1 / (1 + verdict.smallestMargin),
      spare: design.guys ? spareOf(problem.study.lot, design.guys) : 0,
      key: designKey(design),
    };
  } catch (error) {
    if (error instanceof DesignError) return null;
    throw error;
  }
}
