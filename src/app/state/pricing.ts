import { createSearchClient } from "../../../workers/client.ts";
import type { SearchClient } from "../../../workers/protocol.ts";
import type { Outcome } from "../../search/types.ts";
import { job, type Paper } from "./book.ts";
import { questionKey } from "./steps.ts";
import { createStore } from "./store.ts";

/** Answers to "what if" questions, one after another, when the desk is idle. Kept for the session. */
interface Pricing {
  readonly answers: ReadonlyMap<string, Outcome>;
}
export const pricing = createStore<Pricing>({ answers: new Map() });

/** A question that would take longer than this says less than it costs. */
const PATIENCE = 8000;
/** The same where the user opened a table to see it. */
export const PATIENT = 30_000;
const KEPT = 400;
let client: SearchClient | null = null;
/** Questions that belong together: a table's, a strip's. The newest is what the user looks at. */
interface Batch {
  readonly papers: Paper[];
  readonly patience: number;
}
let batches: readonly Batch[] = [];
let asked: Batch | null = null;
let working = false;

const idle = () =>
  new Promise<void>((resolve) => {
    if ("requestIdleCallback" in globalThis) requestIdleCallback(() => resolve(), { timeout: 500 });
    else setTimeout(resolve, 50);
  });

const ask = async (paper: Paper, patience: number): Promise<Outcome> => {
  // One core: the page and its answer come first.
  const asking = (client ??= createSearchClient(1));
  const timer = setTimeout(() => asking.stop(), patience);
  try {
    return await asking.find(job(paper), () => {});
  } finally {
    clearTimeout(timer);
  }
};

/** The next question, and whose it is: of the newest batch that has one. */
const next = (): { batch: Batch; paper: Paper } | null => {
  for (const batch of batches.toReversed()) {
    const paper = batch.papers.shift();
    if (paper) return { batch, paper };
  }
  return null;
};

const work = async () => {
  if (working) return;
  working = true;
  try {
    for (;;) {
      await idle();
      const one = next();
      if (!one) break;
      const key = questionKey(one.paper);
      if (pricing.get().answers.has(key)) continue;
      asked = one.batch;
      const outcome = await ask(one.paper, one.batch.patience).catch(() => null);
      asked = null;
      if (!outcome) {
        // A broken what-if is only a missing figure; the answer itself reports its own defects.
        client?.dispose();
        client = null;
        continue;
      }
      // stopped because nobody wants it any more: that is no answer
      if (outcome.status === "stopped" && !batches.includes(one.batch)) continue;
      const entries = [...pricing.get().answers, [key, outcome] as const].slice(-KEPT);
      pricing.setCalmly({ answers: new Map(entries) });
    }
  } finally {
    working = false;
  }
};

/**
 * Asks what is not answered yet, before what was asked earlier; returns how to take it back.
 * @param patience for one question, ms
 */
export const askAll = (papers: readonly Paper[], patience = PATIENCE): (() => void) => {
  const { answers } = pricing.get();
  const batch: Batch = { papers: papers.filter((paper) => !answers.has(questionKey(paper))), patience };
  batches = [...batches, batch];
  void work();
  return () => {
    batches = batches.filter((one) => one !== batch);
    if (asked === batch) client?.stop();
  };
};
