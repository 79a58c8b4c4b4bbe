import { useBook } from "../state/book.ts";

const time = (at: number) => new Date(at).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });

/** The study on the desk, and whether it is kept; its name leads to all the others. */
export const StudyName = () => {
  const name = useBook((state) => state.history.present.study.name);
  const page = useBook((state) => state.page);
  const savedAt = useBook((state) => state.savedAt);
  const unkept = useBook((state) => state.trouble !== null || state.clash !== null);
  const looking = useBook((state) => state.looking?.version.name);
  const state = unkept ? "not saved" : savedAt ? `saved ${time(savedAt)}` : "as it came";
  return (
    <div className="study">
      <a href="#/studies" className="study-name" aria-current={page === "studies" ? "page" : undefined}>
        {name}
      </a>
      <span className="quiet"> · {looking ? "an earlier version" : state}</span>
    </div>
  );
};
