import { useMemo } from "react";
import { type Reading, useBook } from "../state/book.ts";
import { pricing } from "../state/pricing.ts";
import { costOf, lockVariants, questionKey } from "../state/steps.ts";
import { useStore } from "../state/store.ts";
import { money } from "../wording/figures.ts";

interface Props {
  readonly reading: Reading;
  /** What the answer costs with every lock shut. */
  readonly cost: number;
}

/** What each lock of the study costs: the answer with it open, by an exact search of its own. */
export const LockPrices = ({ reading, cost }: Props) => {
  const system = useBook((state) => state.system);
  const answers = useStore(pricing, (state) => state.answers);
  const locks = useMemo(() => lockVariants(reading), [reading]);
  const { currency } = reading.catalog.prices;
  const rows = locks.flatMap(({ id, label, paper }) => {
    const outcome = answers.get(questionKey(paper));
    const open = outcome ? costOf(outcome) : null;
    return open === null ? [] : [{ id, label, saves: cost - open }];
  });
  if (rows.length === 0) return null;
  return (
    <div className="sec">
      <h2>What the locks cost</h2>
      <table aria-label="What the locks cost">
        <thead className="vh">
          <tr>
            <th>The study allows</th>
            <th className="num">Open it saves</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, label, saves }) => (
            <tr key={id}>
              <td>{label}</td>
              <td className="num">{saves < 0.5 ? "nothing" : money(saves, currency, system)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};
