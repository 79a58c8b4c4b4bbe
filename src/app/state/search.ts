import { createSearchClient } from "../../../workers/client.ts";
import type { SearchClient } from "../../../workers/protocol.ts";
import type { Judged, Outcome, Progress } from "../../search/types.ts";
import { book, job, knowPaper, type Paper, type Reading } from "./book.ts";
import { knowCatalog, readerComes } from "./reader.ts";

/** Text changes at most four times a second. */
const PACE = 250;
/** An edit is answered at once; those that follow it within this time, as while a handle is dragged, are one search. */
const REST = 120;
let lastEdit = Number.NEGATIVE_INFINITY;

let client: SearchClient | null = null;
let current: Reading | null = null;
let lastShown = 0;
let pending: ReturnType<typeof setTimeout> | undefined;

const searchClient = (): SearchClient => (client ??= createSearchClient());

/** A worker that has not read by then is stuck: the page reads itself. */
const PATIENCE = 4000;

/**
 * Reads a paper where the search is, before the page needs it: a slow phone would stand still for it. What can't be
 * read there is read here, and said.
 */
export const readAhead = async (paper: Paper): Promise<void> => {
  const late = new Promise<null>((resolve) => setTimeout(() => resolve(null), PATIENCE));
  const reading = await Promise.race([searchClient().read(job(paper)), late]).catch(() => null);
  if (!reading) return readerComes();
  if (reading.catalog) knowCatalog(paper.catalog, reading.catalog);
  knowPaper(paper, reading.read);
};

const show = (reading: Reading, progress: Progress) => {
  if (reading !== current) return;
  const first = book.get().finding.state === "searching" && progressOf() === null && progress.best !== null;
  if (!first && performance.now() - lastShown < PACE) return;
  lastShown = performance.now();
  book.setCalmly({ finding: { state: "searching", reading, progress } });
};
const progressOf = () => {
  const { finding } = book.get();
  return finding.state === "searching" ? finding.progress : null;
};

const end = (reading: Reading, outcome: Outcome) => {
  if (reading !== current) return;
  book.setCalmly({ finding: { state: "ended", reading, outcome }, former: { reading, outcome } });
  if (outcome.status === "proven") explain(reading, outcome.best);
};

/** The answer does not wait for its reasons. A cheaper one that is safe would be a defect, and is said as one. */
const explain = (reading: Reading, best: Judged) =>
  searchClient()
    .whyNot()
    .then(
      (rows) => rows && reading === current && book.setCalmly({ whyNot: { best, rows } }),
      (error: unknown) => breakOff(reading, error),
    );

const breakOff = (reading: Reading, error: unknown) => {
  if (reading !== current) return;
  const message = error instanceof Error ? error.message : String(error);
  book.set({ finding: { state: "broken", message } });
  // A client that broke once may hold a dead worker: the next search starts afresh.
  client?.dispose();
  client = null;
};

const run = (
  reading: Reading,
  work: (client: SearchClient, report: (p: Progress) => void) => Promise<Outcome>,
) => {
  current = reading;
  lastShown = 0;
  book.set({ finding: { state: "searching", reading, progress: null } });
  work(searchClient(), (progress) => show(reading, progress)).then(
    (outcome) => end(reading, outcome),
    (error: unknown) => breakOff(reading, error),
  );
};

export const find = (reading: Reading) => {
  clearTimeout(pending);
  run(reading, (search, report) => search.find(job(reading.paper), report));
};
const findSoon = (reading: Reading) => {
  clearTimeout(pending);
  current = null;
  const alone = performance.now() - lastEdit > REST;
  lastEdit = performance.now();
  pending = setTimeout(() => find(reading), alone ? 0 : REST);
};
export const stop = () => client?.stop();
export const goOn = () => {
  const { finding } = book.get();
  if (finding.state === "ended") run(finding.reading, (search, report) => search.resume(report));
};
export const searchAgain = () => {
  const { reading } = book.get();
  if (reading) find(reading);
};

/** Every new reading is answered; nothing waits for a button. */
export const answerEveryReading = () => {
  let answered = book.get().reading;
  if (answered) find(answered);
  return book.subscribe(() => {
    const { reading } = book.get();
    if (!reading || reading === answered) return;
    answered = reading;
    findSoon(reading);
  });
};
