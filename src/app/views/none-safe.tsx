import { useEffect, useMemo } from "react";
import { change, useBook } from "../state/book.ts";
import { askAll, pricing } from "../state/pricing.ts";
import type { Answer } from "../state/shown.ts";
import { costOf, questionKey, waysOut } from "../state/steps.ts";
import { useStore } from "../state/store.ts";
import { governing, lowerFirst } from "../wording/check.ts";
import { money, used } from "../wording/figures.ts";
import { proofClaim } from "../wording/proof.ts";

/** Nothing passes: the nearest miss, then the smallest ways out, each really searched. */
export const NoneSafe = ({ answer }: { answer: Extract<Answer, { kind: "none-safe" }> }) => {
  const system = useBook((state) => state.system);
  const ways = useMemo(() => waysOut(answer.reading, system), [answer.reading, system]);
  const answers = useStore(pricing, (state) => state.answers);
  useEffect(() => askAll(ways.map((way) => way.paper)), [ways]);
  const found = ways.map((way) => ({ way, outcome: answers.get(questionKey(way.paper)) }));
  const open = found.flatMap(({ way, outcome }) => {
    const cost = outcome && costOf(outcome);
    return cost === null || cost === undefined ? [] : [{ way, cost }];
  });
  const waiting = found.some(({ outcome }) => !outcome);
  const miss = answer.nearest && governing(answer.nearest.verdict.checks);
  return (
    <>
      <p className="none">Nothing on this grid is safe</p>
      <p className="reason claim">
        {proofClaim("none-safe", answer.proof, system)}
        {miss && (
          <>
            {" "}
            The nearest of those analysed fails{" "}
            <span className="gov letter">
              {lowerFirst(miss.title)}, {used(miss.utilisation)}
            </span>
            .
          </>
        )}
      </p>
      <table aria-label="Ways out">
        <thead>
          <tr>
            <th>Give way on one of these</th>
            <th className="num">By</th>
            <th className="num">Then it costs</th>
            <th>
              <span className="vh">Choose</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {open.map(({ way, cost }) => {
            const [what, by] = way.label.split("|");
            return (
              <tr key={way.id}>
                <td>{what}</td>
                <td className="num">{by}</td>
                <td className="num">
                  <b>{money(cost, answer.reading.catalog.prices.currency, system)}</b>
                </td>
                <td className="num">
                  <button type="button" className="link" onClick={() => change(way.paper, lowerFirst(what))}>
                    take
                  </button>
                </td>
              </tr>
            );
          })}
          {open.length === 0 && (
            <tr>
              <td colSpan={4} className="quiet">
                {waiting ? "Looking for the smallest way out." : "None of the small steps tried is enough."}
              </td>
            </tr>
          )}
        </tbody>
      </table>
    </>
  );
};
