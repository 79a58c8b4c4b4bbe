import { lazy, Suspense } from "react";
import { useBook } from "../state/book.ts";

// Most days there is nothing to say: the words come when there is.
const Notices = lazy(() => import("./notices.tsx"));

/** Troubles that are not about one field, each with its way out. */
export const Notice = () => {
  const any = useBook(
    ({ trouble, notice, faults, clash, looking }) =>
      (trouble ?? notice ?? clash ?? looking) !== null || faults.length > 0,
  );
  return (
    any && (
      <Suspense>
        <Notices />
      </Suspense>
    )
  );
};
