import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { Search } from "../../src/search/search.ts";
import { createThreads } from "../../workers/node-client.ts";
import { randomStudies } from "./random-studies.ts";
import { type BenchStudy, grids, problemOf } from "./studies.ts";

/** A search that takes longer is stopped, ms. */
const PATIENCE = 60_000;
/** Room for each thread's long-lived objects, MB: where it has all of the machine's, the engine seldom collects. */
export const HEAP = 192;

/** The study of the bench with this name: drawn ones as `studies` of them from this seed. */
function named(name: string, studies: number, seed: number): BenchStudy {
  const found = [...grids, ...randomStudies(studies, seed)].find((study) => study.name === name);
  if (!found) throw new Error(`the bench has no study "${name}"`);
  return found;
}

/** Searches to the proof, or until patience ends. */
async function proven({ file }: BenchStudy, workers: number): Promise<boolean> {
  const until = performance.now() + PATIENCE;
  if (workers === 0) {
    const search = new Search(problemOf(file));
    while (performance.now() < until && !search.step(1000)) {}
    return search.finished;
  }
  const pool = createThreads(workers);
  const stopping = setTimeout(() => pool.stop(), PATIENCE);
  try {
    return (await pool.find({ study: file, catalog: defaultCatalog }, () => {})).status !== "stopped";
  } finally {
    clearTimeout(stopping);
    pool.dispose();
  }
}

/**
 * Greatest memory of a process that makes one search and nothing else, for what others left behind would be counted
 * with it; its threads have little room each, and it fails where that is not enough.
 * @param workers 0: in the process itself
 * @throws Error where it fails
 */
export function memoryOf(name: string, workers: number, studies: number, seed: number) {
  const words = [name, workers, studies, seed].map(String);
  const flags = [...process.execArgv, `--max-old-space-size=${HEAP}`];
  const child = spawnSync(process.execPath, [...flags, fileURLToPath(import.meta.url), ...words], {
    encoding: "utf8",
  });
  if (child.status !== 0) throw new Error(`memory of "${name}": ${child.stderr}`);
  const [memory, ended] = child.stdout.trim().split(" ");
  return { study: name, workers: workers || "none", "greatest memory, MB": Number(memory), search: ended };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [name, workers, studies, seed] = process.argv.slice(2);
  const ended = await proven(named(name, Number(studies), Number(seed)), Number(workers));
  console.log(Math.round(process.resourceUsage().maxRSS / 1024), ended ? "proven" : "stopped");
  process.exit(0);
}
