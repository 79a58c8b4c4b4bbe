import { verify } from "../checks/verify.ts";
import type { Problem } from "../problem/types.ts";
import type { Candidate } from "./candidate.ts";
import { Grid } from "./grid.ts";
import { combined, type GridSize, type ShareReport } from "./together.ts";
import type { Judged, Outcome } from "./types.ts";

export const gridSize = (problem: Problem): GridSize => ({
  ...new Grid(problem).total(),
  aim: problem.study.aim,
});

export const judgedOf = (problem: Problem, candidate: Candidate | null): Judged | null =>
  candidate && { design: candidate.design, verdict: verify(problem, candidate.design) };

/**
 * The last word of a search. Where nothing is safe the nearest miss is for the caller to seek.
 * @param judge asks `verify`, or remembers what it said
 */
export function outcome(
  problem: Problem,
  shares: readonly ShareReport[],
  seconds: number,
  judge = (best: Candidate | null) => judgedOf(problem, best),
): Outcome {
  const { best, proof } = combined(gridSize(problem), shares, seconds);
  const judged = judge(best);
  if (!shares.every((share) => share.finished)) return { status: "stopped", best: judged, proof };
  return judged ? { status: "proven", best: judged, proof } : { status: "none-safe", nearest: null, proof };
}
