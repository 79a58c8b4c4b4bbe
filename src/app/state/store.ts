import { startTransition, useCallback, useLayoutEffect, useRef, useState } from "react";

export interface Store<T> {
  readonly get: () => T;
  readonly set: (change: Partial<T>) => void;
  /** For what streams in: drawn in slices of some milliseconds, so that it never holds up the hand. */
  readonly setCalmly: (change: Partial<T>) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

/** A plain readonly store: what a page shows must be testable without a page. */
export const createStore = <T extends object>(initial: T): Store<T> => {
  let state = initial;
  const listeners = new Set<() => void>();
  const set = (change: Partial<T>) => {
    state = { ...state, ...change };
    for (const listener of [...listeners]) listener();
  };
  return {
    get: () => state,
    set,
    setCalmly: (change) => startTransition(() => set(change)),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
};

/** What a component reads of a store. Selectors must return what is stored, or React renders without end. */
export const useStore = <T extends object, S>(store: Store<T>, select: (state: T) => S): S => {
  const [shown, show] = useState(store.get);
  const latest = useRef({ select, asked: shown });
  const hear = useCallback(() => {
    const now = store.get();
    const { select: read, asked } = latest.current;
    if (Object.is(read(now), read(asked))) return;
    latest.current.asked = now;
    show(now);
  }, [store]);
  useLayoutEffect(() => store.subscribe(hear), [store, hear]);
  // Another selector may read what this one has not heard of, and the store may have changed before it was listened to: an
  // answer that came while the page was first drawn is drawn in slices like any other.
  useLayoutEffect(() => {
    latest.current.select = select;
    startTransition(hear);
  });
  return select(shown);
};
