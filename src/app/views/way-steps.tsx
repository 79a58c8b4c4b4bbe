import { offers } from "../guides/offers.ts";
import type { Way } from "../guides/ways.ts";
import { Glossed } from "../parts/glossed.tsx";
import { leaveWay, stepTo } from "../state/way.ts";

/** One step of a way: what to look at, what to try, and how to go on. */
const WaySteps = ({ way, step }: { way: Way; step: number }) => {
  const question = offers.find(({ id }) => id === way.id)?.question;
  const { look, act } = way.steps[step];
  const last = step + 1 === way.steps.length;
  return (
    <section className="way on" aria-label={question}>
      <p className="way-count">
        <b>{question}</b>{" "}
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
export default WaySteps;
