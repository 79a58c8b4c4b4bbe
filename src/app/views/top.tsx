import { book, doAgain, pages, takeBack, useBook } from "../state/book.ts";
import { keepLight, keepSystem } from "../state/saving.ts";
import type { System } from "../wording/figures.ts";
import { StudyName } from "./study-name.tsx";

export const Top = () => {
  const page = useBook((state) => state.page);
  return (
    <header className="top">
      <span className="name">Mastwright</span>
      <StudyName />
      <nav aria-label="Pages">
        {pages.map(({ id, name }, i) => (
          <a key={id} href={`#/${id}`} aria-current={page === id ? "page" : undefined}>
            <kbd>{i + 1}</kbd>
            {name}
          </a>
        ))}
      </nav>
      <Tools />
    </header>
  );
};

const Tools = () => {
  const system = useBook((state) => state.system);
  const light = useBook((state) => state.light);
  const last = useBook((state) => state.history.past.at(-1)?.did);
  const next = useBook((state) => state.history.future[0]?.did);
  const setSystem = (value: System) => {
    book.set({ system: value });
    keepSystem(value);
  };
  const toggleLight = () => {
    const lit = document.documentElement.dataset.light === "lamp";
    const value = lit ? "day" : "lamp";
    book.set({ light: value });
    keepLight(value);
  };
  return (
    <div className="tools">
      <fieldset aria-label="Units">
        <button type="button" aria-pressed={system === "us"} onClick={() => setSystem("us")}>
          ft lbf
        </button>
        <button type="button" aria-pressed={system === "si"} onClick={() => setSystem("si")}>
          m N
        </button>
      </fieldset>
      <button
        type="button"
        disabled={!last}
        title={last ? `Take back: ${last}` : "Nothing to take back"}
        onClick={takeBack}
      >
        Undo
      </button>
      <button
        type="button"
        disabled={!next}
        title={next ? `Do again: ${next}` : "Nothing to do again"}
        onClick={doAgain}
      >
        Redo
      </button>
      <button type="button" aria-pressed={light === "lamp"} onClick={toggleLight}>
        Lamp
      </button>
    </div>
  );
};
