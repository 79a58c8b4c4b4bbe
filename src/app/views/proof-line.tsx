import type { Least } from "../../model/aim.ts";
import { leastOfAim } from "../../search/ground.ts";
import type { Proof } from "../../search/types.ts";
import { useBook } from "../state/book.ts";
import { goOn, searchAgain, stop } from "../state/search.ts";
import type { Answer } from "../state/shown.ts";
import { counted, countText, money, type System, said } from "../wording/figures.ts";
import { boundWords, proofClaim } from "../wording/proof.ts";
import { ProofScale } from "./proof-scale.tsx";

export const ProofLine = ({ answer }: { answer: Answer }) => {
  const system = useBook((state) => state.system);
  if (!("proof" in answer) || !answer.proof) return null;
  const { proof } = answer;
  const { aim: asked } = answer.reading.study;
  const aim = leastOfAim(asked);
  if (answer.kind === "none-safe" || answer.kind === "unsafe")
    return <How proof={proof} system={system} aim={aim} />;
  if (answer.former)
    return (
      <>
        <p className="reason claim">
          The givens have changed: this answer stands for those before your edit.{" "}
          {answer.seeking
            ? `Of the new grid ${proofClaim("searching", answer.seeking, system)} Nothing safe found yet.`
            : "Looking for the new one."}
        </p>
        {answer.seeking && (
          <p>
            <button type="button" className="btn" onClick={stop}>
              Stop
            </button>
          </p>
        )}
      </>
    );
  if (answer.kind === "proven")
    return (
      <>
        <p className="reason claim" data-testid="claim">
          <Powers
            text={proofClaim("proven", proof, system, true, asked)}
            count={proof.gridSize}
            system={system}
          />
        </p>
        <p className="quiet bound">{boundWords(proof, answer.best.verdict.bill.total, aim, system)}</p>
        <How proof={proof} system={system} aim={aim} />
      </>
    );
  const total = answer.best?.verdict.bill.total ?? null;
  return (
    <>
      {total !== null && aim === "cost" && (
        <ProofScale bound={Math.max(0, proof.bound)} best={total} system={system} />
      )}
      <p className="reason claim">{proofClaim(answer.kind, proof, system, answer.best !== null)}</p>
      {answer.kind === "searching" ? (
        <p>
          <button type="button" className="btn" onClick={stop}>
            {answer.best ? "Stop and keep this" : "Stop"}
          </button>
          <span className="quiet meanwhile"> or go on working: every page shows the best so far</span>
        </p>
      ) : (
        <p>
          <button type="button" className="btn" onClick={goOn}>
            Go on
          </button>{" "}
          <button type="button" className="link" onClick={searchAgain}>
            start over
          </button>
        </p>
      )}
    </>
  );
};

/** A power of ten set as one, since a raised figure reads better than a chain of small digits. */
const Powers = ({ text, count, system }: { text: string; count: number; system: System }) => {
  const { figure, power } = counted(count, system);
  if (power === null) return text;
  return (
    <>
      {figure} × 10<sup>{power}</sup>
      {text.slice(countText(count, system).length)}
    </>
  );
};

const How = ({ proof, system, aim }: { proof: Proof; system: System; aim: Least }) => {
  const rules = Object.entries(proof.pruned).sort(([, a], [, b]) => b - a);
  const bound = aim === "cost" ? money(proof.bound, "$", system) : said(proof.bound, "volume", system);
  const gap = aim === "cost" ? money(proof.gap, "$", system) : said(proof.gap, "volume", system);
  return (
    <details className="how">
      <summary className="link">How</summary>
      <p className="reason">
        Every design on the grid was either judged or ruled out by a rule that no design of its kind can
        escape. Masts were taken in the order of the least that each could cost; the search ended when the
        next least was not below the best safe one.
      </p>
      <table aria-label="How the answer was won">
        <tbody>
          <Row name="Designs on the grid" value={countText(proof.gridSize, system)} />
          <Row name="Decided" value={countText(proof.decided, system)} />
          <Row name="Masts with their guys, before the ground" value={countText(proof.structures, system)} />
          <Row name="Analysed in full" value={countText(proof.analysed, system)} />
          {rules.map(([rule, count]) => (
            <Row key={rule} name={`Ruled out: ${rule}`} value={countText(count, system)} />
          ))}
          {Number.isFinite(proof.bound) && <Row name="Nothing safe below" value={bound} />}
          {Number.isFinite(proof.gap) && <Row name="Left open" value={gap} />}
        </tbody>
      </table>
    </details>
  );
};
const Row = ({ name, value }: { name: string; value: string }) => (
  <tr>
    <td className="quiet">{name}</td>
    <td className="num">{value}</td>
  </tr>
);
