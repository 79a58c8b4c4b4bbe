import { type ComponentType, lazy, Suspense, useEffect } from "react";
import { Hatches } from "./drawings/hatches.tsx";
import { useBook } from "./state/book.ts";
import { readerComes } from "./state/reader.ts";
import { answerOf } from "./state/shown.ts";
import { AnswerView } from "./views/answer.tsx";
import { Foot } from "./views/foot.tsx";
import { Notice } from "./views/notice.tsx";
import { Top } from "./views/top.tsx";
import { WayStrip } from "./views/way-strip.tsx";

// Plots weigh more than the rest of the program: they come when they are asked for. Each page but the first may read
// papers as it is drawn.
const later = (come: () => Promise<{ readonly default: ComponentType }>) =>
  lazy(() => Promise.all([come(), readerComes()]).then(([view]) => view));
const TradeoffView = later(() => import("./views/tradeoff.tsx"));
const CatalogView = later(() => import("./views/catalog.tsx"));
const LotView = later(() => import("./views/lot.tsx"));
const StudiesView = later(() => import("./views/studies.tsx"));
const SheetsView = later(() => import("./views/sheets.tsx"));

export const App = () => {
  const page = useBook((state) => state.page);
  const light = useBook((state) => state.light);
  useEffect(() => followLight(light), [light]);
  useEffect(() => void readerComes(), []);
  return (
    <>
      <Hatches />
      <div className="book">
        <Top />
        <WayStrip />
        <Notice />
        <Suspense fallback={<main aria-busy="true" style={{ minHeight: 600 }} />}>
          {page === "answer" && <AnswerView />}
          {page === "tradeoff" && <TradeoffView />}
          {page === "catalog" && <CatalogView />}
          {page === "lot" && <LotView />}
          {page === "sheets" && <SheetsView />}
          {page === "studies" && <StudiesView />}
        </Suspense>
        <Foot />
        <Announcer />
      </div>
    </>
  );
};

/** Day or lamp follows the system until the control overrides it. */
const followLight = (light: "auto" | "day" | "lamp") => {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const set = () => {
    document.documentElement.dataset.light = light === "auto" ? (dark.matches ? "lamp" : "day") : light;
  };
  set();
  dark.addEventListener("change", set);
  return () => dark.removeEventListener("change", set);
};

/** Says only what a listener must know: first safe, proven, stopped. */
const Announcer = () => {
  const words = useBook((state) => {
    const answer = answerOf(state);
    if (answer.kind === "searching")
      return answer.best ? "A safe mast is found; looking for a cheaper one." : "";
    if ("former" in answer && answer.former) return "";
    if (answer.kind === "proven") return "Proven: nothing cheaper is safe.";
    if (answer.kind === "stopped") return "Stopped.";
    return answer.kind === "none-safe" ? "Nothing on this grid is safe." : "";
  });
  return (
    <div className="vh" aria-live="polite" data-testid="announcer">
      {words}
    </div>
  );
};
