import { verify } from "../checks/verify.ts";
import type { Aim } from "../model/aim.ts";
import type { Problem } from "../problem/types.ts";
import { better, type Candidate } from "./evaluate.ts";
import { whyNotCheaper } from "./explain.ts";
import { Grid } from "./grid.ts";
import { objectiveInWords } from "./ground.ts";
import { SAFE } from "./tree.ts";
import type { FrontPoint, Judged, Outcome, Proof } from "./types.ts";

/** What one worker has to say of its share of the tree: plain data, small enough to send often. */
export interface ShareReport {
  readonly best: Candidate | null;
  /** Objective below which nothing safe is left in this share. */
  readonly bound: number;
  readonly analysed: number;
  readonly pruned: Readonly<Record<string, number>>;
  readonly finished: boolean;
}

/** What must be known of a grid to speak of its search. */
export interface GridSize {
  readonly designs: number;
  readonly structures: number;
  readonly aim: Aim;
}

export const gridSize = (problem: Problem): GridSize => ({
  ...new Grid(problem).total(),
  aim: problem.study.aim,
});

/** The shares put together: one proof, one best, whatever the number of workers or who found it first. */
export function combined(
  size: GridSize,
  shares: readonly ShareReport[],
  seconds: number,
): { best: Candidate | null; proof: Proof } {
  const { designs, structures, aim } = size;
  let best: Candidate | null = null;
  let bound = Number.POSITIVE_INFINITY;
  let analysed = 0;
  const pruned: Record<string, number> = {};
  for (const share of shares) {
    if (share.best && better(share.best, best)) best = share.best;
    bound = Math.min(bound, share.bound);
    analysed += share.analysed;
    for (const [rule, count] of Object.entries(share.pruned)) pruned[rule] = (pruned[rule] ?? 0) + count;
  }
  // the answer itself was counted with the safe ones
  const answered = best !== null && (pruned[SAFE] ?? 0) > 0;
  if (answered) pruned[SAFE] -= 1;
  bound = Math.min(bound, best?.objective ?? Number.POSITIVE_INFINITY);
  const finished = shares.every((share) => share.finished);
  const counted = Object.values(pruned).reduce((sum, n) => sum + n, 0) + (answered ? 1 : 0);
  const words = (objective: number) =>
    objective === Number.POSITIVE_INFINITY ? objective : objectiveInWords(aim, objective);
  return {
    best,
    proof: {
      gridSize: designs,
      decided: finished ? designs : Math.min(counted, designs),
      structures,
      analysed,
      pruned,
      bound: words(bound),
      gap: best ? words(best.objective) - words(bound) : Number.POSITIVE_INFINITY,
      seconds,
      workers: shares.length,
    },
  };
}

export const judgedOf = (problem: Problem, candidate: Candidate | null): Judged | null =>
  candidate && { design: candidate.design, verdict: verify(problem, candidate.design) };

/** The last word of a search, explained where it is proven. Where nothing is safe the nearest miss is sought besides. */
export function outcome(problem: Problem, shares: readonly ShareReport[], seconds: number): Outcome {
  const { best, proof } = combined(gridSize(problem), shares, seconds);
  const judged = judgedOf(problem, best);
  if (!shares.every((share) => share.finished)) return { status: "stopped", best: judged, proof };
  if (!judged) return { status: "none-safe", nearest: null, proof };
  return { status: "proven", best: judged, proof, whyNotCheaper: whyNotCheaper(problem, judged) };
}

/** A point of the front as the caller sees it. */
export const frontPoint = (candidate: Candidate): FrontPoint => ({
  cost: candidate.cents / 100,
  concrete: candidate.concrete / 1e4,
  margin: 1 / candidate.use - 1,
  design: candidate.design,
});
