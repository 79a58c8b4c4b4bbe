import { type Book, book, layOpen, type Paper, readFirst } from "./book.ts";
import { type KeptStudy, study as keptStudy, studies, write } from "./cupboard.ts";
import { begin, type History } from "./history.ts";
import { readAhead } from "./search.ts";

const LIGHT = "mastwright.light";
const SYSTEM = "mastwright.system";
/** Which study this tab has open, and which one the last tab had. */
const OPEN = "mastwright.open";
/** Where versions before the store of studies kept their one study. */
const FORMER = "mastwright.paper.1";
/** A store that has not opened by then is stuck. */
const PATIENCE = 4000;

/** Small storage may be switched off or full: what is lost with it is a preference, not work. */
const attempt = <T>(work: () => T): T | undefined => {
  try {
    return work();
  } catch {
    return undefined;
  }
};

export const NOT_KEPT =
  "Nothing is kept in this browser: it may be a private window, or storage is switched off. Write everything to a file before you close this page.";
export const troubleOf = (error: unknown): string => {
  const { name, message } = error as Error;
  if (name === "QuotaExceededError")
    return "The browser has no room left: the last change is not kept. Delete studies or versions that you no longer need, or write everything to a file before you close this page.";
  if (name === "VersionError")
    return "A newer version of this program has kept studies here, which this one can’t read. Close every tab of it and open it again. Until then nothing is kept: write everything to a file.";
  if (name === "SecurityError" || name === "InvalidStateError" || name === "NotSupportedError")
    return NOT_KEPT;
  return `What this browser keeps can’t be reached (${message || name}). Write everything to a file before you close this page.`;
};

const inTime = <T>(work: Promise<T>): Promise<T> =>
  Promise.race([
    work,
    new Promise<never>((_, reject) => {
      setTimeout(() => reject(new Error("the store does not answer")), PATIENCE);
    }),
  ]);

/** The revision of each study that this tab has seen. */
const seen = new Map<string, number>();
/** What of each study is kept already; the demo is not, until it is edited. */
const written = new Map<string, History<Paper>>([[book.get().studyId, book.get().history]]);

export const isHistory = (history: unknown): history is History<Paper> => {
  const { past, present, future } = (history ?? {}) as Partial<History<Paper>>;
  return Array.isArray(past) && Array.isArray(future) && typeof present?.study === "object";
};

/** Lays a kept study open; what can't be read stays kept as it is, and the reason is handed back. */
export const openKept = (record: KeptStudy): string | null => {
  if (!isHistory(record.history)) return "what is kept of it is damaged";
  const before = { history: written.get(record.id), revision: seen.get(record.id) };
  written.set(record.id, record.history);
  seen.set(record.id, record.revision);
  const faults = layOpen(record.id, record.history, record.at);
  if (faults.length === 0) {
    remember(record.id);
    return null;
  }
  if (before.history) written.set(record.id, before.history);
  if (before.revision) seen.set(record.id, before.revision);
  return `${faults[0].path}: ${faults[0].message}`;
};
const remember = (id: string) => {
  attempt(() => sessionStorage.setItem(OPEN, id));
  attempt(() => localStorage.setItem(OPEN, id));
};

const openFormer = async (text: string): Promise<boolean> => {
  const former = attempt(() => JSON.parse(text) as { paper: Paper; at: number });
  if (former?.paper === undefined) return false;
  await readAhead(former.paper);
  return layOpen(crypto.randomUUID(), begin(former.paper), null).length === 0;
};

/** What an earlier version of the program kept is carried over once, and forgotten only when it is written. */
const carryOver = async (): Promise<boolean> => {
  const text = attempt(() => localStorage.getItem(FORMER));
  if (!text || !(await openFormer(text))) return false;
  await saveNow();
  if (book.get().savedAt !== null) attempt(() => localStorage.removeItem(FORMER));
  return true;
};

/** What is kept, the study that lay open last before the others. */
const lastFirst = (records: readonly KeptStudy[]): readonly KeptStudy[] => {
  const here = records.filter((record) => record.deletedAt === null);
  const wish =
    attempt(() => sessionStorage.getItem(OPEN)) ?? attempt(() => localStorage.getItem(OPEN)) ?? null;
  return [
    ...here.filter((record) => record.id === wish),
    ...here.filter((record) => record.id !== wish).sort((a, b) => b.at - a.at),
  ];
};
const openLast = async (order: readonly KeptStudy[]) => {
  for (const [at, record] of order.entries()) {
    if (isHistory(record.history)) await readAhead(record.history.present);
    const why = openKept(record);
    if (why === null) return;
    if (at === 0)
      book.set({
        notice: `The study that lay open here can’t be read: ${why}. It is kept as it is; “Studies” can write it to a file.`,
      });
  }
};

export const loadPreferences = () => {
  const system = attempt(() => localStorage.getItem(SYSTEM));
  const light = attempt(() => localStorage.getItem(LIGHT));
  if (system === "us" || system === "si") book.set({ system });
  if (light === "day" || light === "lamp") book.set({ light });
};

export const loadSaved = async () => {
  try {
    const order = lastFirst(await inTime(studies()));
    if (!(await carryOver())) await openLast(order);
  } catch (error) {
    // where the store fails, what an earlier version kept is still better than the demo
    const text = attempt(() => localStorage.getItem(FORMER));
    if (text) await openFormer(text);
    book.set({ trouble: troubleOf(error) });
  }
  if (book.get().reading) return;
  await readAhead(book.get().history.present);
  readFirst();
};

const channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel("mastwright");
/** Tells the other tabs what was written, and this tab's own list. */
export const tell = (id: string | null) => {
  channel?.postMessage(id);
  for (const listener of listeners) listener();
};
const listeners = new Set<() => void>();
export const onKept = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

let queue: Promise<void> = Promise.resolve();
/** What waits for its turn; of several states of a study only the last is written. */
const waiting = new Map<string, History<Paper>>();

const writeNext = async (id: string): Promise<void> => {
  const history = waiting.get(id);
  if (!history) return;
  waiting.delete(id);
  try {
    const done = await inTime(write(id, seen.get(id) ?? 0, history));
    if (done.ok) {
      seen.set(id, done.kept.revision);
      remember(book.get().studyId);
      if (book.get().studyId === id) book.set({ savedAt: done.kept.at, trouble: null });
      tell(id);
    } else if (book.get().studyId === id) book.set({ clash: done.theirs });
    // the user has gone on to another study: what he left is kept beside what the other tab wrote
    else await write(crypto.randomUUID(), 0, history);
  } catch (error) {
    written.delete(id);
    book.set({ trouble: troubleOf(error) });
  }
};

/** What is to be kept of the open study: an earlier version that lies open is only looked at. */
const mineOf = ({ history, looking }: Book): History<Paper> => looking?.back ?? history;

const writeIfNew = (id: string, mine: History<Paper>): Promise<void> => {
  if (written.get(id) === mine) return queue;
  written.set(id, mine);
  waiting.set(id, mine);
  queue = queue.then(() => writeNext(id));
  return queue;
};
/** Writes what has changed since it was last written. */
export const saveNow = (): Promise<void> => {
  const now = book.get();
  return now.clash ? queue : writeIfNew(now.studyId, mineOf(now));
};

/** Every change is written at once: an edit is a whole value, and a page may close at any time. */
export const saveEveryChange = () => {
  let last = book.get();
  const stop = book.subscribe(() => {
    const before = last;
    const now = (last = book.get());
    // the study that was just left is written before the next one is thought of
    if (now.studyId !== before.studyId && !before.clash) void writeIfNew(before.studyId, mineOf(before));
    if (mineOf(now) !== mineOf(before)) void saveNow();
  });
  // what could not be written is tried again when the page is put away
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void saveNow();
  });
  return stop;
};

/** The later tab is told what the other one wrote, and chooses. */
export const heedOtherTabs = () => {
  const look = async () => {
    for (const listener of listeners) listener();
    const { studyId } = book.get();
    const known = seen.get(studyId);
    if (known === undefined) return;
    const theirs = await keptStudy(studyId).catch(() => undefined);
    if (theirs && theirs.revision > (seen.get(studyId) ?? 0) && book.get().studyId === studyId)
      book.set({ clash: theirs });
  };
  channel?.addEventListener("message", () => void look());
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") void look();
  });
};

export const takeTheirs = (): string | null => {
  const { clash } = book.get();
  return clash && openKept(clash);
};
export const writeMineOver = () => {
  const { clash, studyId } = book.get();
  if (!clash) return;
  seen.set(studyId, clash.revision);
  written.delete(studyId);
  book.set({ clash: null });
  void saveNow();
};
export const keepMineBeside = () => {
  const mine = mineOf(book.get());
  layOpen(crypto.randomUUID(), renamed(mine, `${mine.present.study.name}, from this tab`), null);
};
/** The same steps under another name; the name is no step of its own. */
export const renamed = (history: History<Paper>, name: string): History<Paper> => ({
  ...history,
  present: { ...history.present, study: { ...history.present.study, name } },
});

export const keepLight = (light: "auto" | "day" | "lamp") =>
  attempt(() => localStorage.setItem(LIGHT, light));
export const keepSystem = (system: string) => attempt(() => localStorage.setItem(SYSTEM, system));
