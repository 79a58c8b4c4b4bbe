import { book, useBook } from "../state/book.ts";

/** Troubles that are not about one field: a paper that can't be read, storage that keeps nothing. */
export const Notice = () => {
  const trouble = useBook((state) => state.trouble);
  const notice = useBook((state) => state.notice);
  const faults = useBook((state) => state.faults);
  if (!trouble && !notice && faults.length === 0) return null;
  return (
    <div className="notice" role="status">
      <span>
        {faults.slice(0, 3).map((fault) => (
          <span key={fault.path + fault.message} style={{ display: "block" }}>
            ✕ <b>{fault.path}</b> {fault.message}
          </span>
        ))}
        {trouble && <span style={{ display: "block" }}>▲ {trouble}</span>}
        {notice}
      </span>
      <button
        type="button"
        className="link"
        style={{ marginLeft: "auto" }}
        onClick={() => book.set({ trouble: null, notice: null, faults: [] })}
      >
        put away
      </button>
    </div>
  );
};
