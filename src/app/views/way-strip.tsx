import { useState } from "react";
import { type Way, ways } from "../guides/ways.ts";
import { Glossed } from "../parts/glossed.tsx";
import type { Fault } from "../state/book.ts";
import { useStore } from "../state/store.ts";
import { leaveWay, putAway, setOut, stepTo, walk } from "../state/way.ts";

/** The way that the user is on, a step at a time; before that, the ways to choose from. */
export const WayStrip = () => {
  const { way, step, offered } = useStore(walk, (state) => state);
  if (way) return <Steps way={way} step={step} />;
  return offered ? <Offer /> : null;
};

const Offer = () => {
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  return (
    <nav className="way" aria-label="Ways in">
      <span>
        New here? <span className="quiet">Five minutes each, on an invented study:</span>
      </span>
      {ways.map((way) => (
        <button key={way.id} type="button" className="link" onClick={() => setFaults(setOut(way))}>
          {way.question}
        </button>
      ))}
      <button type="button" className="link quiet away" onClick={putAway}>
        not now
      </button>
      {faults.map(({ path, message }) => (
        <span key={path} role="alert">
          ✕ {path} {message}
        </span>
      ))}
    </nav>
  );
};

const Steps = ({ way, step }: { way: Way; step: number }) => {
  const { look, act } = way.steps[step];
  const last = step + 1 === way.steps.length;
  return (
    <section className="way on" aria-label={way.question}>
      <p className="way-count">
        <b>{way.question}</b>{" "}
        <span className="quiet">
          {step + 1} of {way.steps.length}
        </span>
      </p>
      <p className="way-say" aria-live="polite">
        <Glossed text={look} /> {act && <b>{act}</b>}
      </p>
      <p className="way-go">
        {step > 0 && (
          <button type="button" className="link" onClick={() => stepTo(step - 1)}>
            Back
          </button>
        )}
        <button type="button" className="btn" onClick={() => stepTo(step + 1)}>
          {last ? "Done" : "Next"}
        </button>
        {!last && (
          <button type="button" className="link quiet" onClick={leaveWay}>
            leave
          </button>
        )}
      </p>
    </section>
  );
};
