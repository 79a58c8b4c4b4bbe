import "../css/opened.css";
import type { Design } from "../../model/design.ts";
import type { Check, Verdict } from "../../model/verdict.ts";
import { upperFirst } from "../../report/names.ts";
import { CheckSketch } from "../drawings/check-sketch.tsx";
import { Glossed } from "../parts/glossed.tsx";
import type { Reading } from "../state/book.ts";
import { checkFigure, demandOfCapacity } from "../wording/check.ts";
import { grouped, type System, used } from "../wording/figures.ts";
import { type Formula, formulaOf } from "../wording/formulas.ts";
import { lettersFound } from "../wording/letters-found.ts";
import { CheckCures } from "./check-cures.tsx";

interface Props {
  readonly check: Check;
  readonly verdict: Verdict;
  readonly system: System;
  readonly governs: boolean;
  /** Where its study and design are at hand, what would take load off it is worked out. */
  readonly asked?: { readonly reading: Reading; readonly design: Design };
}

/** A check's sum as the judge made it: every number here stands in the verdict, none is worked out anew. */
const CheckOpened = ({ check, verdict, system, governs, asked }: Props) => {
  const formula = formulaOf(check.limitState);
  const [asks, holds] = [check.demand, check.capacity].map((si) => checkFigure(si, check.unit, system));
  return (
    <div className="opened-in">
      <p className="reason">
        {spoken(check, system)} {check.note && <Glossed text={`${upperFirst(check.note)}.`} />}
      </p>
      {formula && (
        <>
          <CheckSketch
            kind={formula.sketch}
            title={check.title}
            holds={`${meets(check)} ${holds}`}
            {...{ asks, governs }}
          />
          <Sum {...{ check, formula, asks, holds, system }} />
          <Letters {...{ check, formula, verdict, system }} />
        </>
      )}
      {asked && check.kind !== "warning" && <CheckCures {...{ check, verdict, system, ...asked }} />}
      <p className="quiet">
        Source: {check.source}.{check.loadCase && ` Load: ${check.loadCase}.`}
      </p>
      <span className="vh">{demandOfCapacity(check, system)}</span>
    </div>
  );
};

export default CheckOpened;

/** What bears a load holds it; a limit only has room for what is asked. */
const meets = (check: Check) => (check.kind === "strength" ? "holds" : "has");

const spoken = (check: Check, system: System): string => {
  if (check.kind === "warning")
    return check.demand <= check.capacity ? "It is out of reach." : "▲ It is within reach.";
  if (check.kind === "limit") return check.passes ? "It is inside the limit." : "✕ It is outside the limit.";
  if (!Number.isFinite(check.utilisation)) return "✕ It holds nothing here.";
  if (check.utilisation === 0) return "Nothing is asked of it here.";
  const times = grouped(check.required / check.utilisation, 2, system, true);
  const rule = `the rule asks ${grouped(check.required, 2, system, true)}`;
  if (check.passes) return `It holds ${times} times the load; ${rule}.`;
  if (check.utilisation <= 1) return `✕ It holds ${times} times the load; ${rule}, and your margin on top.`;
  return `✕ It holds only ${times} times the load; ${rule}.`;
};

interface SumProps {
  readonly check: Check;
  readonly formula: Formula;
  readonly asks: string;
  readonly holds: string;
  readonly system: System;
}
const Sum = ({ check, formula, asks, holds, system }: SumProps) => {
  const factor = grouped(check.required, 2, system, true);
  return (
    <table className="sum" aria-label={`The sum: ${check.title}`}>
      <tbody>
        <tr>
          <th scope="row">Asks</th>
          <td>{formula.asks}</td>
          <td className="num">{asks}</td>
        </tr>
        {check.kind === "strength" && (
          <tr>
            <th scope="row">Factor</th>
            <td className="quiet">required by the rules</td>
            <td className="num">× {factor}</td>
          </tr>
        )}
        <tr>
          <th scope="row">{upperFirst(meets(check))}</th>
          <td>{formula.holds}</td>
          <td className="num">{holds}</td>
        </tr>
        {check.kind === "strength" && (
          <tr>
            <th scope="row">Used</th>
            <td>
              {asks} × {factor} / {holds}
            </td>
            <td className="num">
              <b>{used(check.utilisation)}</b>
            </td>
          </tr>
        )}
      </tbody>
    </table>
  );
};

const Letters = ({
  check,
  formula,
  verdict,
  system,
}: Omit<Props, "governs" | "asked"> & { formula: Formula }) => {
  if (formula.letters.length === 0) return null;
  const found = lettersFound(formula, check, verdict, system);
  return (
    <ul className="letters plain">
      {formula.letters.map(([letter, words]) => (
        <li key={letter}>
          <b>{letter}</b> <span className="quiet">{words}</span>
          {found[letter] && <b> {found[letter]}</b>}
        </li>
      ))}
    </ul>
  );
};
