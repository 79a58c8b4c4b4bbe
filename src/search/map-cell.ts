import type { Problem } from "../problem/types.ts";
import { nearestMiss } from "./nearest.ts";
import { Search } from "./search.ts";
import type { MapCell } from "./types.ts";

/** One cell, solved to its proof in slices, so that its worker can hear that it is no longer wanted. */
export async function mapCell(
  problem: Problem,
  height: number,
  area: number,
  rest: () => Promise<boolean>,
): Promise<MapCell | null> {
  const search = new Search(problem);
  while (!search.step(20)) if (!(await rest())) return null;
  const { best } = search;
  const base = { height, area };
  if (best)
    return {
      ...base,
      cost: best.cents / 100,
      concrete: best.concrete / 1e4,
      margin: 1 / best.use - 1,
      design: best.design,
      stoppedBy: null,
    };
  const miss = nearestMiss(problem);
  const stoppedBy = miss?.verdict.checks.find((check) => !check.passes)?.title ?? "no design on the grid";
  return { ...base, cost: null, concrete: null, margin: null, design: null, stoppedBy };
}
