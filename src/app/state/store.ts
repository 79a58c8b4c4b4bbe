import { useSyncExternalStore } from "react";

export interface Store<T> {
  readonly get: () => T;
  readonly set: (change: Partial<T>) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

/** A plain readonly store: what a page shows must be testable without a page. */
export const createStore = <T extends object>(initial: T): Store<T> => {
  let state = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    set: (change) => {
      state = { ...state, ...change };
      for (const listener of [...listeners]) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
};

/** Selectors must return what is stored, or React renders without end. */
export const useStore = <T extends object, S>(store: Store<T>, select: (state: T) => S): S =>
  useSyncExternalStore(store.subscribe, () => select(store.get()));
