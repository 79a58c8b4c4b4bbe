/** Undo for anything replaced whole. `did` says what the step did, for the button's title and the live region. */
export interface History<T> {
  readonly past: readonly Step<T>[];
  readonly present: T;
  readonly future: readonly Step<T>[];
}
export interface Step<T> {
  readonly was: T;
  readonly did: string;
}

/** Enough for an evening's work; older steps fall off. */
const DEPTH = 200;

export const begin = <T>(present: T): History<T> => ({ past: [], present, future: [] });

export const edit = <T>(history: History<T>, next: T, did: string): History<T> => ({
  past: [...history.past, { was: history.present, did }].slice(-DEPTH),
  present: next,
  future: [],
});

export const undo = <T>(history: History<T>): History<T> => {
  const step = history.past.at(-1);
  if (!step) return history;
  return {
    past: history.past.slice(0, -1),
    present: step.was,
    future: [{ was: history.present, did: step.did }, ...history.future],
  };
};

export const redo = <T>(history: History<T>): History<T> => {
  const [step, ...future] = history.future;
  if (!step) return history;
  return { past: [...history.past, { was: history.present, did: step.did }], present: step.was, future };
};

/** Undone until `step` is undone too. */
export const undoTo = <T>(history: History<T>, step: Step<T>): History<T> => {
  let back = history;
  while (back.past.includes(step)) back = undo(back);
  return back;
};
