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
const KEPT = 400;
let client: SearchClient | null = null;
let queue: Paper[] = [];
let working = false;

const idle = () =>
  new Promise<void>((resolve) => {
    if ("requestIdleCallback" in globalThis) requestIdleCallback(() => resolve(), { timeout: 500 });
    else setTimeout(resolve, 50);
  });

const ask = async (paper: Paper): Promise<Outcome> => {
  // One core: the page and its answer come first.
  const asking = (client ??= createSearchClient(1));
  const timer = setTimeout(() => asking.stop(), PATIENCE);
  try {
    return await asking.find(job(paper), () => {});
  } finally {
    clearTimeout(timer);
  }
};

const work = async () => {
  if (working) return;
  working = true;
  try {
    while (queue.length > 0) {
      await idle();
      const paper = queue.shift();
      if (!paper) break;
      const key = questionKey(paper);
      if (pricing.get().answers.has(key)) continue;
      const outcome = await ask(paper).catch(() => null);
      if (!outcome) {
        // A broken what-if is only a missing figure; the answer itself reports its own defects.
        client?.dispose();
        client = null;
        continue;
      }
      const entries = [...pricing.get().answers, [key, outcome] as const].slice(-KEPT);
      pricing.setCalmly({ answers: new Map(entries) });
    }
  } finally {
    working = false;
  }
};

/** Replaces the questions waiting: those of a former study are no longer asked. */
export const askAll = (papers: readonly Paper[]) => {
  const { answers } = pricing.get();
  queue = papers.filter((paper) => !answers.has(questionKey(paper)));
  void work();
};
export const askNothing = () => {
  queue = [];
  client?.stop();
};
