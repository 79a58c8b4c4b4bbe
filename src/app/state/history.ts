/** Undo for anything replaced whole. `did` says what the step did, for the button's title and the live region. */
export interface History<T> {
  readonly past: readonly Step<T>[];
  readonly present: T;
  readonly future: readonly Step<T>[];
}
export interface Step<T> {
  readonly was: T;
  readonly did: string;
  /** Of the drag or the run of arrow keys that made it; what follows in the same one makes no step of its own. */
  readonly gesture?: string;
}

/** Enough for an evening's work; older steps fall off. */
const DEPTH = 200;

export const begin = <T>(present: T): History<T> => ({ past: [], present, future: [] });

/** Is the last step a part of this gesture? */
export const goesOn = <T>({ past, future }: History<T>, gesture?: string): boolean =>
  gesture !== undefined && future.length === 0 && past.at(-1)?.gesture === gesture;

export const edit = <T>(history: History<T>, next: T, did: string, gesture?: string): History<T> => {
  const { past, present } = history;
  const earlier = goesOn(history, gesture) ? past.slice(0, -1) : past;
  const was = goesOn(history, gesture) ? past[past.length - 1].was : present;
  return { past: [...earlier, { was, did, gesture }].slice(-DEPTH), present: next, future: [] };
};

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
