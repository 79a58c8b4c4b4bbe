import type { Problem } from "../problem/types.ts";
import { nearestMiss } from "./nearest.ts";
import { Search } from "./search.ts";
import type { MapCell } from "./types.ts";

/**
 * One cell, solved to its proof in slices.
 * @param rest asked between them: whether to go on, or what to answer in place of the cell
 */
export async function mapCell<Put>(
  problem: Problem,
  height: number,
  area: number,
  rest: () => Promise<"go on" | Put>,
): Promise<MapCell | Put> {
  const search = new Search(problem);
  while (!search.step(20)) {
    const word = await rest();
    if (word !== "go on") return word;
  }
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
