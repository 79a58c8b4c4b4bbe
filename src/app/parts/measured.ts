import { useCallback, useState, useSyncExternalStore } from "react";

/** Beside what stands on a phone's page, left and right together, px. */
const BESIDE = 32;

/**
 * Width that a drawing may take; drawings are laid out for it, never squeezed, so lettering keeps its size.
 * @param fallback until it is measured; never more than the page has, or it would be wider than a phone for a moment
 */
export const useWidth = <E extends HTMLElement>(fallback: number) => {
  const [width, setWidth] = useState(() => Math.min(fallback, document.documentElement.clientWidth - BESIDE));
  // A callback, because what is measured may come to stand on the page later than who measures it.
  const ref = useCallback((element: E | null) => {
    if (!element) return;
    const observer = new ResizeObserver(([entry]) => {
      // what leaves the page is measured as nothing, and is not to be drawn for that
      if (entry.contentRect.width > 0) setWidth(Math.round(entry.contentRect.width));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, width] as const;
};

export const useMedia = (query: string): boolean =>
  useSyncExternalStore(
    (changed) => {
      const list = matchMedia(query);
      list.addEventListener("change", changed);
      return () => list.removeEventListener("change", changed);
    },
    () => matchMedia(query).matches,
  );
export const usePhone = () => useMedia("(max-width: 640px)");
