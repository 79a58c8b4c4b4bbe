import type { Design } from "../../model/design.ts";
import { type Paper, type Reading, readPaper } from "./book.ts";
import { createStore } from "./store.ts";

/** A design with the paper that it was found under, kept to be compared with those of other studies. */
export interface Kept {
  readonly name: string;
  readonly paper: Paper;
  readonly design: Design;
}

const KEY = "mastwright.kept.1";
/** More columns than this are no comparison any more. */
const MOST_KEPT = 6;

/** Storage may be switched off or full, and holds what anybody wrote: then nothing is kept. */
const stored = (): readonly Kept[] => {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(KEY) ?? "[]");
    return Array.isArray(read)
      ? read.filter((one) => one?.paper?.study && one?.paper?.catalog && one?.design && one?.name)
      : [];
  } catch {
    return [];
  }
};

export const shelf = createStore<{ readonly kept: readonly Kept[]; readonly trouble: string | null }>({
  kept: stored(),
  trouble: null,
});

const put = (kept: readonly Kept[]) => {
  let trouble: string | null = null;
  try {
    localStorage.setItem(KEY, JSON.stringify(kept));
  } catch {
    trouble = "This browser kept nothing: the designs are here until the page closes.";
  }
  shelf.set({ kept, trouble });
};

/** The newest last; the oldest goes where there are too many. */
export const keep = (one: Kept) => put([...shelf.get().kept, one].slice(-MOST_KEPT));
export const letGo = (one: Kept) => put(shelf.get().kept.filter((other) => other !== one));

const readings = new WeakMap<Paper, Reading | null>();
/** A kept paper as it is read today; null where this version can't read it. */
export const readingOf = ({ paper }: Kept): Reading | null => {
  let reading = readings.get(paper);
  if (reading === undefined) {
    const read = readPaper(paper);
    reading = "study" in read ? read : null;
    readings.set(paper, reading);
  }
  return reading;
};
