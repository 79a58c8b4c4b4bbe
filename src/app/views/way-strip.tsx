import { lazy, Suspense, useEffect, useState } from "react";
import { offers } from "../guides/offers.ts";
import { usePhone } from "../parts/measured.ts";
import type { Fault } from "../state/book.ts";
import { useStore } from "../state/store.ts";
import { goOnWalking, putAway, setOut, walk } from "../state/way.ts";

// Only who sets out needs the steps.
const WaySteps = lazy(() => import("./way-steps.tsx"));

/** The way that the user is on, a step at a time; before that, the ways to choose from. */
export const WayStrip = () => {
  const { id, way, step, offered } = useStore(walk, (state) => state);
  useEffect(() => {
    void goOnWalking();
  }, []);
  if (way)
    return (
      <Suspense fallback={null}>
        <WaySteps way={way} step={step} />
      </Suspense>
    );
  return offered && !id ? <Offer /> : null;
};

const Offer = () => {
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const phone = usePhone();
  const ways = offers.map(({ id, question }) => (
    <button
      key={id}
      type="button"
      className="link"
      onClick={() => {
        void setOut(id).then(setFaults);
      }}
    >
      {question}
    </button>
  ));
  return (
    <nav className="way" aria-label="Ways in">
      {phone ? (
        // one line of a small screen, the ways when they are asked for
        <details>
          <summary>
            New here? <span className="link">Three ways in</span>
          </summary>
          {ways}
        </details>
      ) : (
        <>
          <span>
            New here? <span className="quiet">A few minutes each, on an invented study:</span>
          </span>
          {ways}
        </>
      )}
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
