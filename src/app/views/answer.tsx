import { lazy, Suspense, useRef } from "react";
import { shortCaution } from "../../report/caution.ts";
import { leastOfAim } from "../../search/ground.ts";
import { Elevation } from "../drawings/elevation.tsx";
import { Glossed } from "../parts/glossed.tsx";
import { usePhone, useWidth } from "../parts/measured.ts";
import { useBook } from "../state/book.ts";
import { type Answer, answerOf, judgedOf } from "../state/shown.ts";
import { designSentence } from "../wording/design-sentence.ts";
import { BigThree } from "./big-three.tsx";
import { BillBar } from "./bill-bar.tsx";
import { ChecksTable } from "./checks-table.tsx";
import { Givens } from "./givens.tsx";
import { LockPrices } from "./lock-prices.tsx";
import { ProofLine } from "./proof-line.tsx";
import { useStepPrices } from "./step-price.tsx";
import { WhyNot } from "./why-not.tsx";

const Chance = lazy(() => import("./chance.tsx"));
const NoneSafe = lazy(() => import("./none-safe.tsx"));

/** Memoised by reference: a selector must not make a new object for an unchanged book. */
export const useAnswer = (): Answer => {
  const finding = useBook((state) => state.finding);
  const former = useBook((state) => state.former);
  const kept = useRef<{ finding: unknown; former: unknown; answer: Answer } | null>(null);
  if (kept.current?.finding !== finding || kept.current.former !== former)
    kept.current = { finding, former, answer: answerOf({ finding, former }) };
  return kept.current.answer;
};

export const AnswerView = () => {
  const phone = usePhone();
  useStepPrices();
  return (
    <>
      {phone ? (
        <>
          <aside className="heed quiet" aria-label="Caution">
            {shortCaution}
          </aside>
          <details className="phone-givens">
            <summary>Givens</summary>
            <Givens />
          </details>
        </>
      ) : (
        <Givens />
      )}
      <Body />
    </>
  );
};

const Body = () => {
  const answer = useAnswer();
  const phone = usePhone();
  const judged = judgedOf(answer);
  return (
    <main className="spread answer">
      <section className="figs lead" aria-label="Figures">
        <h1 className="vh">The cheapest safe mast</h1>
        <Lead answer={answer} />
        <Sentence answer={answer} />
        <ProofLine answer={answer} />
        {!phone && <p className="quiet">{shortCaution}</p>}
      </section>
      <Sketch answer={answer} />
      <section className="figs rest" aria-label="Reasons">
        {judged && "reading" in answer && (
          <ChecksTable
            reading={answer.reading}
            design={judged.design}
            verdict={judged.verdict}
            provisional={answer.kind === "searching"}
          />
        )}
        {answer.kind === "proven" && "reading" in answer && (
          <WhyNot
            best={answer.best}
            catalog={answer.reading.catalog}
            aim={leastOfAim(answer.reading.study.aim)}
            margin={answer.reading.study.wishes.margin}
            levels={answer.best.design.guys?.levels.length ?? 0}
          />
        )}
        {answer.kind === "proven" && "reading" in answer && answer.reading.study.aim === "cost" && (
          <LockPrices reading={answer.reading} cost={answer.best.verdict.bill.total} />
        )}
        {answer.kind === "proven" && "reading" in answer && answer.reading.study.uncertain && (
          <Suspense>
            <Chance reading={answer.reading} design={answer.best.design} />
          </Suspense>
        )}
        {judged?.verdict.passes && (
          <BillBar bill={judged.verdict.bill} levels={judged.design.guys?.levels.length ?? 0} />
        )}
        {judged && judged.verdict.assumptions.length > 0 && (
          <div className="sec">
            <h2>
              Assumed <small>for want of a given</small>
            </h2>
            <ul className="plain">
              {judged.verdict.assumptions.map((words) => (
                <li key={words} className="quiet">
                  <Glossed text={words} />
                </li>
              ))}
            </ul>
          </div>
        )}
      </section>
    </main>
  );
};

/** What the mast is, and its place while the first is sought: what stands below is not pushed down when it comes. */
const Sentence = ({ answer }: { answer: Answer }) => {
  const system = useBook((state) => state.system);
  if (answer.kind === "none-safe" || !("reading" in answer)) return null;
  const judged = judgedOf(answer);
  if (!judged)
    return answer.kind === "searching" && <p className="sentence quiet">Looking for the first safe mast.</p>;
  const words = designSentence(judged.design, answer.reading.catalog, system);
  return (
    <p className="sentence" key={words}>
      <Glossed text={words} />
    </p>
  );
};

const Lead = ({ answer }: { answer: Answer }) => {
  if (answer.kind === "starting") return <p className="reason">Reading the study.</p>;
  if (answer.kind === "broken")
    return (
      <div className="warn" role="alert">
        <b>▲ The search broke off.</b> This is a defect of the program, not of your study: {answer.message}
      </div>
    );
  if (answer.kind === "none-safe")
    return (
      <Suspense>
        <NoneSafe answer={answer} />
      </Suspense>
    );
  return <BigThree answer={answer} />;
};

const Sketch = ({ answer }: { answer: Answer }) => {
  const [ref, width] = useWidth<HTMLDivElement>(752);
  const system = useBook((state) => state.system);
  const pointed = useBook((state) => state.pointed);
  const judged = judgedOf(answer);
  return (
    <section className="sketch" aria-label="Drawing">
      <div ref={ref} className="paper">
        {judged && "reading" in answer ? (
          <Elevation
            judged={judged}
            study={answer.reading.study}
            catalog={answer.reading.catalog}
            width={Math.max(width, 300)}
            system={system}
            pointed={pointed}
          />
        ) : (
          <p className="quiet">The drawing stands here as soon as one safe mast is known.</p>
        )}
      </div>
    </section>
  );
};
