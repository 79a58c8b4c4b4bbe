/** A worker whose file has been asked for, and what rejects where it does not load or dies. */
export interface Started {
  readonly worker: Worker;
  readonly failed: Promise<never>;
}

const start = (): Started => {
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
  return { worker, failed };
};

const cores = () => navigator.hardwareConcurrency || 2;
/** As many as the machine has cores to spare: one is left to the page. */
export const spareCores = (): number => Math.max(1, Math.min(8, cores() - 1));
/** For searches after the first: of two cores the page is then content with half of one. */
export const coresLater = (): number => Math.max(2, spareCores());

const waiting: Started[] = [];
/** Workers load while the page does: this file is small and comes first, who asks them comes later. */
export const startEarly = (): void => {
  for (let i = spareCores(); i > 0; i--) waiting.push(start());
};

/** One that was started early, or a new one. */
export const startedWorker = (): Started => waiting.pop() ?? start();
