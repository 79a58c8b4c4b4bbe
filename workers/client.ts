import { wrap } from "comlink";
import { coresLater, spareCores, startedWorker } from "./early.ts";
import { type Hand, Pool } from "./pool.ts";
import type { SearchClient } from "./protocol.ts";
import type { ShareWorker } from "./share-worker.ts";

/** A browser worker with a share of the search. Its failure to load rejects what waits for it. */
function hire(): Hand {
  const { worker, failed } = startedWorker();
  return { remote: wrap<ShareWorker>(worker), failed, terminate: () => worker.terminate() };
}

/** @param workers left out: as many as the machine allows, and no more than leave a core to a page that is being built */
export const createSearchClient = (workers?: number): SearchClient =>
  new Pool(hire, workers ?? spareCores(), workers ?? coresLater());
