import type { Job } from "../../../workers/protocol.ts";
import type { Catalog, CatalogFile } from "../../model/catalog.ts";
import { defaultCatalog } from "../../model/default-catalog.ts";
import { demoStudy } from "../../model/demo-study.ts";
import type { Study, StudyFile } from "../../model/study.ts";
import type { Judged, Outcome, Progress, Rejected } from "../../search/types.ts";
import type { System } from "../wording/figures.ts";
import type { KeptStudy, KeptVersion } from "./cupboard.ts";
import { begin, edit, goesOn, type History, redo, type Step, undo, undoTo } from "./history.ts";
import { withValue } from "./path.ts";
import { readerComes, theReader } from "./reader.ts";
import { createStore, useStore } from "./store.ts";

/** What the user owns and edits; undo replaces it whole. */
export interface Paper {
  readonly study: StudyFile;
  readonly catalog: CatalogFile;
}
/** The same in SI, as the drawings need it. */
export interface Reading {
  readonly paper: Paper;
  readonly study: Study;
  readonly catalog: Catalog;
}
export interface Fault {
  readonly path: string;
  readonly message: string;
}

export type Finding =
  | { readonly state: "waiting" }
  | { readonly state: "searching"; readonly reading: Reading; readonly progress: Progress | null }
  | { readonly state: "ended"; readonly reading: Reading; readonly outcome: Outcome }
  | { readonly state: "broken"; readonly message: string };

export type Page = "answer" | "tradeoff" | "lot" | "catalog" | "sheets" | "studies";
/** The numbered ones; "studies" opens from the study's name. */
export const pages: readonly { readonly id: Page; readonly name: string }[] = [
  { id: "answer", name: "Answer" },
  { id: "tradeoff", name: "Trade-off" },
  { id: "lot", name: "Lot" },
  { id: "catalog", name: "Catalog" },
  { id: "sheets", name: "Sheets" },
];

export interface Book {
  /** Which of the kept studies lies on the desk. */
  readonly studyId: string;
  readonly history: History<Paper>;
  readonly reading: Reading | null;
  /** Why the paper as it stands can't be read; the reading before it stays. */
  readonly faults: readonly Fault[];
  readonly finding: Finding;
  /** The last answer that came to its end, kept while the next is sought. */
  readonly former: { readonly reading: Reading; readonly outcome: Outcome } | null;
  /** The answer as it stood before the last edit, for "what your edit did". */
  readonly before: Outcome | null;
  /** Why nothing cheaper than a proven answer is safe: it comes a moment after the answer. */
  readonly whyNot: { readonly best: Judged; readonly rows: readonly Rejected[] } | null;
  readonly system: System;
  readonly light: "auto" | "day" | "lamp";
  readonly page: Page;
  readonly pointed: string | null;
  readonly savedAt: number | null;
  /** Why nothing is being kept; what is in memory can still be written to a file. */
  readonly trouble: string | null;
  readonly notice: string | null;
  /** An earlier version laid open to look at; `back` is what comes back when it is put away. */
  readonly looking: { readonly version: KeptVersion; readonly back: History<Paper> } | null;
  /** What another tab wrote of this study; nothing is written over it until the user has chosen. */
  readonly clash: KeptStudy | null;
}

type Read = ReturnType<typeof import("../../model/parse.ts").parseStudy>;
const readings = new WeakMap<Paper, Reading | readonly Fault[]>();

/** What the parser says of a paper, here or in another thread; a paper is read once. */
export const knowPaper = (paper: Paper, read: Read): Reading | readonly Fault[] => {
  const reading = read.ok
    ? { paper, study: read.study, catalog: read.catalog }
    : read.errors.map(({ path, message }) => ({ path, message }));
  readings.set(paper, reading);
  return reading;
};
/** Reads a paper, or says why it can't be read. */
export const readPaper = (paper: Paper): Reading | readonly Fault[] => {
  const known = readings.get(paper);
  if (known) return known;
  const reader = theReader();
  if (!reader) return [{ path: "", message: "The page is still coming: try once more." }];
  return knowPaper(paper, reader.parseStudy(paper.study, { catalog: paper.catalog }));
};
const isReading = (read: Reading | readonly Fault[]): read is Reading => !Array.isArray(read);

const firstPaper: Paper = { study: demoStudy, catalog: defaultCatalog };

export const book = createStore<Book>({
  studyId: "first",
  history: begin(firstPaper),
  reading: null,
  faults: [],
  finding: { state: "waiting" },
  former: null,
  before: null,
  whyNot: null,
  system: "us",
  light: "auto",
  page: "answer",
  pointed: null,
  savedAt: null,
  trouble: null,
  notice: null,
  looking: null,
  clash: null,
});
/** Reads the demo where nothing that is kept has been opened. */
export const readFirst = () => {
  const { reading, history, notice } = book.get();
  if (!reading) turnTo(history, notice);
};
export const useBook = <S>(select: (state: Book) => S): S => useStore(book, select);

const turnTo = (history: History<Paper>, notice: string | null) => {
  const read = readPaper(history.present);
  if (isReading(read)) book.set({ history, reading: read, faults: [], notice, before: null });
  else book.set({ history, faults: read, notice });
};

/**
 * What the hand does before the parser has come is done when it has, in its order; what is then refused, or can't be
 * done because the parser does not come, is said at the top.
 */
const whenRead = (act: () => readonly Fault[]): readonly Fault[] => {
  if (theReader()) return act();
  readerComes()
    .then(act, () => [
      { path: "", message: "The page has not come whole, so that was not done: load it anew." },
    ])
    .then(([fault]) => fault && book.set({ notice: fault.message }));
  return [];
};

/** Changes the paper; what can't be read is refused and said, and nothing is written. */
export const change = (next: Paper, did: string, gesture?: string): readonly Fault[] =>
  whenRead(() => {
    if (book.get().looking)
      return [{ path: "", message: "An earlier version lies open: go back to it first." }];
    const read = readPaper(next);
    if (!isReading(read)) return read;
    const { history, finding, before: earlier } = book.get();
    const ended = finding.state === "ended" ? finding.outcome : null;
    const before = goesOn(history, gesture) ? earlier : ended;
    book.set({ history: edit(history, next, did, gesture), reading: read, faults: [], notice: null, before });
    return [];
  });
export const changeStudy = (
  path: readonly (string | number)[],
  value: unknown,
  did: string,
  gesture?: string,
) =>
  whenRead(() => {
    const { present } = book.get().history;
    return change({ ...present, study: withValue(present.study, path, value) }, did, gesture);
  });
/** A notice of what was done goes by itself; one of trouble does not. */
const say = (act: () => void) => {
  act();
  const { notice } = book.get();
  setTimeout(() => book.get().notice === notice && book.set({ notice: null }), 6000);
};
/** A step through the history as it is when the step is done: an edit that waits for the parser comes before it. */
const walk = (way: (history: History<Paper>) => readonly [History<Paper>, string] | null) =>
  whenRead(() => {
    const there = way(book.get().history);
    if (there) say(() => turnTo(...there));
    return [];
  });
export const takeBack = () =>
  walk((history) => {
    const step = history.past.at(-1);
    return step ? [undo(history), `Taken back: ${step.did}.`] : null;
  });
export const doAgain = () =>
  walk((history) => {
    const [step] = history.future;
    return step ? [redo(history), `Done again: ${step.did}.`] : null;
  });
/** Several steps taken back at once, the last of them `step`. */
export const takeBackTo = (step: Step<Paper>) =>
  walk((history) => [undoTo(history, step), `Taken back, up to: ${step.did}.`]);
/** Lays a study of its own on the desk; the one before it stays where it is kept. */
export const layOpen = (studyId: string, history: History<Paper>, savedAt: number | null) => {
  const read = readPaper(history.present);
  if (!isReading(read)) return read;
  book.set({
    studyId,
    history,
    reading: read,
    faults: [],
    before: null,
    former: null,
    notice: null,
    savedAt,
    looking: null,
    clash: null,
  });
  return [];
};
/** A study from elsewhere is a study of its own. */
export const openStudy = (
  file: StudyFile,
  catalog: CatalogFile = book.get().history.present.catalog,
): readonly Fault[] => whenRead(() => layOpen(crypto.randomUUID(), begin({ study: file, catalog }), null));

/** Shows an earlier version in the place of the study, or what lay there before it. */
export const look = (version: KeptVersion): readonly Fault[] => {
  const { history, looking } = book.get();
  const read = readPaper(version.paper);
  if (!isReading(read)) return read;
  book.set({
    looking: { version, back: looking?.back ?? history },
    history: begin(version.paper),
    reading: read,
    faults: [],
    before: null,
  });
  return [];
};
export const lookAway = () => {
  const { looking } = book.get();
  if (!looking) return;
  book.set({ looking: null });
  turnTo(looking.back, null);
};

export const job = (paper: Paper): Job => ({ study: paper.study, catalog: paper.catalog });
