import type { Design } from "../../model/design.ts";
import type { Check, Verdict } from "../../model/verdict.ts";
import { lowerFirst } from "../../report/names.ts";
import { type Helping, helping } from "../../search/helping.ts";
import { useCures } from "../state/asked.ts";
import type { Reading } from "../state/book.ts";
import { keep, shelf } from "../state/kept.ts";
import { useStore } from "../state/store.ts";
import { changeWords } from "../wording/change.ts";
import { checkFigure } from "../wording/check.ts";
import { money, type System, used } from "../wording/figures.ts";

const MOST = 3;

interface Props {
  readonly check: Check;
  readonly verdict: Verdict;
  readonly design: Design;
  readonly reading: Reading;
  readonly system: System;
}

/** What one step of one part would do for a check: each step judged whole, none guessed. */
export const CheckCures = ({ check, verdict, design, reading, system }: Props) => {
  const found = useCures(reading, design);
  const { catalog } = reading;
  const words = ({ cure }: Helping) =>
    changeWords(cure.change, catalog, system, design.guys?.levels.length ?? 0);
  const share = (then: Check) =>
    then.kind === "strength" ? used(then.utilisation) : checkFigure(then.demand, then.unit, system);
  const head = check.passes ? "To gain margin" : "To make it pass";
  if (found === null) return <p className="cures quiet">Trying one step of each part.</p>;
  if (found === "broken")
    return <p className="cures">What one step of a part would do could not be worked out.</p>;
  const { steps, spoilt } = helping(check, verdict.checks, found);
  const curing = check.passes ? steps : steps.filter(({ then }) => then.passes);
  // where no step is enough those that come nearest are last: each gains more than the one before
  const shown = curing.length > 0 ? curing.slice(0, MOST) : steps.slice(-MOST).reverse();
  if (shown.length === 0)
    return (
      <p className="cures">
        <b>{head}</b>{" "}
        {spoilt
          ? `no single step of a part will do: ${words(spoilt)} would take it to ${share(spoilt.then)}, but then ${lowerFirst(spoilt.by.title)} fails, ${share(spoilt.by)}.`
          : "no single step of a part takes anything off it."}
      </p>
    );
  return (
    <table className="sum cures" aria-label={`${head}: ${check.title}`}>
      <thead>
        <tr>
          <th>
            <b>{head}</b>{" "}
            {curing.length > 0
              ? "by one step, cheapest first"
              : "no single step is enough; the nearest of them"}
          </th>
          <th className="num">{check.kind === "strength" ? "Used then" : "Then"}</th>
          <th className="num">Costs</th>
          <th>
            <span className="vh">To compare it</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {shown.map((one) => (
          <tr key={words(one)}>
            <td>
              {words(one)}
              {one.failing > 0 && (
                <span className="under quiet">
                  {one.failing === 1 ? "another check fails" : `${one.failing} other checks fail`} still
                </span>
              )}
            </td>
            <td className="num">{share(one.then)}</td>
            <td className="num">
              <b>{priceWords(one.cure.costs, catalog.prices.currency, system)}</b>
            </td>
            <td>
              <Keep design={one.cure.design} name={words(one)} reading={reading} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};

/** Kept, it stands beside the answer on the trade-off page, every check of it. */
const Keep = ({ design, name, reading }: { design: Design; name: string; reading: Reading }) => {
  const kept = useStore(shelf, (state) => state.kept);
  if (kept.some((one) => one.design === design && one.paper === reading.paper))
    return (
      <a className="link" href="#/tradeoff">
        compare
      </a>
    );
  return (
    <button
      type="button"
      className="link"
      onClick={() => void keep({ name: `${reading.study.name}, ${name}`, paper: reading.paper, design })}
    >
      keep<span className="vh"> {name}</span>
    </button>
  );
};

const priceWords = (costs: number, currency: string, system: System): string => {
  if (Math.abs(costs) < 0.5) return "nothing";
  return costs < 0 ? `saves ${money(-costs, currency, system)}` : money(costs, currency, system);
};
