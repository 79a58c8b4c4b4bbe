import type { Aim } from "../model/aim.ts";
import { better, type Candidate } from "./candidate.ts";
import { objectiveInWords } from "./ground.ts";
import type { Proof } from "./types.ts";

/** The rule under which safe designs are counted that are neither cheaper than the answer nor better at its price. */
export const SAFE = "safe, but no better than the answer";

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
