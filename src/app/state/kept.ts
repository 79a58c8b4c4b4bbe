import { type Paper, type Reading, readPaper } from "./book.ts";
import type { KeptDesign } from "./cupboard.ts";
import * as cupboard from "./cupboard.ts";
import { troubleOf } from "./saving.ts";
import { createStore } from "./store.ts";

/** Where versions before the store of designs kept them all. */
const FORMER = "mastwright.kept.1";
/** More columns than this are no comparison any more. */
const MOST_KEPT = 6;

export const shelf = createStore<{ readonly kept: readonly KeptDesign[]; readonly trouble: string | null }>({
  kept: [],
  trouble: null,
});

/** What is kept stays in memory where the store fails, and words say so. */
const withStore = async (work: () => Promise<unknown>): Promise<void> => {
  try {
    await work();
    shelf.set({ trouble: null });
  } catch (error) {
    shelf.set({ trouble: troubleOf(error) });
  }
};

/** What an earlier version kept; it may have been switched off, and holds what anybody wrote. */
const former = (): readonly KeptDesign[] => {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(FORMER) ?? "[]");
    if (!Array.isArray(read)) return [];
    return read
      .filter((one) => one?.paper?.study && one?.paper?.catalog && one?.design && one?.name)
      .map(({ name, paper, design }, at) => ({ id: `former-${at}`, name, at, paper, design }));
  } catch {
    return [];
  }
};
/** Carried over once, and forgotten only when it is written; two tabs at once write the same. */
const carryOver = async (): Promise<void> => {
  const old = former();
  if (old.length === 0) return;
  for (const one of old) await cupboard.putDesign(one);
  localStorage.removeItem(FORMER);
};

/** Lays out what is kept; what this tab has in memory already stays the same object. */
export const layOutKept = (): Promise<void> =>
  withStore(async () => {
    await carryOver();
    const there = await cupboard.designs();
    const here = shelf.get().kept;
    const missing = there.filter(({ id }) => !here.some((one) => one.id === id));
    if (missing.length > 0) shelf.set({ kept: [...here, ...missing].sort((a, b) => a.at - b.at) });
  });

/** The newest last; the oldest goes where there are too many. */
export const keep = (design: Omit<KeptDesign, "id" | "at">): Promise<void> => {
  const one = { id: cupboard.newId(), at: Date.now(), ...design };
  const all = [...shelf.get().kept, one];
  const gone = all.slice(0, -MOST_KEPT);
  shelf.set({ kept: all.slice(-MOST_KEPT) });
  return withStore(async () => {
    await cupboard.putDesign(one);
    for (const { id } of gone) await cupboard.dropDesign(id);
  });
};
export const letGo = ({ id }: KeptDesign): Promise<void> => {
  shelf.set({ kept: shelf.get().kept.filter((other) => other.id !== id) });
  return withStore(() => cupboard.dropDesign(id));
};

const readings = new WeakMap<Paper, Reading | null>();
/** A kept paper as it is read today; null where this version can't read it. */
export const readingOf = ({ paper }: KeptDesign): Reading | null => {
  let reading = readings.get(paper);
  if (reading === undefined) {
    const read = readPaper(paper);
    reading = "study" in read ? read : null;
    readings.set(paper, reading);
  }
  return reading;
};
