import { wrap } from "comlink";
import { type Hand, Pool } from "./pool.ts";
import type { SearchClient } from "./protocol.ts";
import type { ShareWorker } from "./share-worker.ts";

/** A browser worker with a share of the search. Its failure to load rejects what waits for it. */
function hire(): Hand {
  const worker = new Worker(new URL("./search.worker.ts", import.meta.url), { type: "module" });
  const failed = new Promise<never>((_, reject) => {
    worker.addEventListener("error", (event) =>
      reject(new Error(`a search worker failed: ${event.message || "its file did not load"}`)),
    );
    worker.addEventListener("messageerror", () =>
      reject(new Error("a message to or from a search worker could not be read")),
    );
  });
  // a failure that nobody waits for yet is heard by the next call
  failed.catch(() => {});
  return { remote: wrap<ShareWorker>(worker), failed, terminate: () => worker.terminate() };
}

/** A search on as many workers as the machine has cores to spare: one is left to the page. */
export const createSearchClient = (
  workers = Math.max(
    1,
    Math.min(8, (navigator.hardwareConcurrency || 2) - (navigator.hardwareConcurrency > 2 ? 1 : 0)),
  ),
): SearchClient => new Pool(hire, workers);
