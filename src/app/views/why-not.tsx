import type { Catalog } from "../../model/catalog.ts";
import type { Rejected } from "../../search/types.ts";
import { usePhone } from "../parts/measured.ts";
import { useBook } from "../state/book.ts";
import { changeWords } from "../wording/change.ts";
import { lowerFirst } from "../wording/check.ts";
import { money, used } from "../wording/figures.ts";

/** Cheaper designs near the answer, nearest saving first, and where each fails. */
export const WhyNot = ({
  rows,
  catalog,
  levels,
}: {
  rows: readonly Rejected[];
  catalog: Catalog;
  levels: number;
}) => {
  const system = useBook((state) => state.system);
  const phone = usePhone();
  if (rows.length === 0) return null;
  const sorted = [...rows].sort((a, b) => a.saves - b.saves);
  return (
    <div className="sec">
      <h2>Why not cheaper{!phone && <small>each of these saves money and fails</small>}</h2>
      <table aria-label="Why not cheaper">
        <thead className={phone ? "vh" : undefined}>
          <tr>
            <th className="num saves">Saves</th>
            <th>By</th>
            {!phone && <th>Fails in</th>}
            {!phone && <th className="num">Used</th>}
          </tr>
        </thead>
        <tbody>
          {sorted.map((row) => {
            const words = changeWords(row.change, catalog, system, levels);
            const share = used(row.utilisation);
            return (
              <tr key={`${row.saves}${words}`}>
                <td className="num saves">{money(row.saves, catalog.prices.currency, system)}</td>
                <td>
                  {words}
                  {phone && (
                    <span className="under quiet">
                      {lowerFirst(row.failsIn)} fails, {share}
                    </span>
                  )}
                </td>
                {!phone && <td className="quiet">{lowerFirst(row.failsIn)}</td>}
                {!phone && (
                  <td className="num">
                    <b>{share}</b>
                  </td>
                )}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
};
