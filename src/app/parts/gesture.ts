import { useRef } from "react";

/** Keys further apart than this are two edits. */
const RUN = 1500;
let count = 0;

/** One name for every edit of one drag or one run of arrow keys: Undo takes them back together. */
export const useGesture = () => {
  const last = useRef({ name: "", at: Number.NEGATIVE_INFINITY });
  const start = (): string => {
    count += 1;
    // a history outlives the page it was made on
    last.current = { name: `gesture ${count} of ${performance.timeOrigin}`, at: performance.now() };
    return last.current.name;
  };
  return {
    start,
    /** The drag that is under way. */
    current: (): string => last.current.name,
    /** The drag is over: keys that follow at once are an edit of their own. */
    end: (): void => {
      last.current.at = Number.NEGATIVE_INFINITY;
    },
    /** Of a key pressed now. */
    key: (): string => {
      const now = performance.now();
      if (now - last.current.at > RUN) return start();
      last.current.at = now;
      return last.current.name;
    },
  };
};
