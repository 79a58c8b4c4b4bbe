import { Worker } from "node:worker_threads";
import { wrap } from "comlink";
import nodeEndpoint from "comlink/dist/esm/node-adapter.mjs";
import { type Hand, Pool } from "./pool.ts";
import type { ShareWorker } from "./share-worker.ts";

/** A thread with a share of the search: the same code as in the browser. */
function hire(): Hand {
  const worker = new Worker(new URL("./node-worker.mjs", import.meta.url));
  const failed = new Promise<never>((_, reject) => {
    worker.on("error", reject);
    worker.on("exit", (code) => reject(new Error(`a search thread ended with code ${code}`)));
  });
  failed.catch(() => {});
  return {
    remote: wrap<ShareWorker>(nodeEndpoint(worker)),
    failed,
    terminate: () => void worker.terminate(),
  };
}

/** @param later threads from the second job on, where they are to be more */
export const createThreads = (count: number, later?: number): Pool => new Pool(hire, count, later);
