import { useStore } from "../state/store.ts";
import { kept, putDroppedBack } from "../state/studies.ts";

export const when = (at: number) =>
  new Date(at).toLocaleString("en-GB", {
    day: "numeric",
    month: "short",
    hour: "2-digit",
    minute: "2-digit",
  });

export const Does = ({ act, label, children }: { act: () => unknown; label?: string; children: string }) => (
  <button type="button" className="link" aria-label={label} onClick={() => void act()}>
    {children}
  </button>
);

/** What was deleted last of this kind, and the way back. */
export const Dropped = ({ kind }: { kind: "version" | "book" }) => {
  const dropped = useStore(kept, (state) => state.dropped);
  if (!dropped || !(kind in dropped)) return null;
  const { name } = "version" in dropped ? dropped.version : dropped.book;
  return (
    <p role="status" className="quiet">
      “{name}” is deleted. <Does act={putDroppedBack}>Put it back</Does>
    </p>
  );
};
