import type { Least } from "../../model/aim.ts";
import type { Catalog } from "../../model/catalog.ts";
import { lowerFirst } from "../../report/names.ts";
import type { Judged, Rejected } from "../../search/types.ts";
import { usePhone } from "../parts/measured.ts";
import { useBook } from "../state/book.ts";
import { changeWords } from "../wording/change.ts";

import { money, said, used } from "../wording/figures.ts";

interface Props {
  readonly best: Judged;
  readonly catalog: Catalog;
  readonly levels: number;
  readonly aim: Least;
  /** What the study asks beyond every required factor. */
  readonly margin: number;
}

/** Cheaper designs near the answer, nearest saving first, and where each fails. */
export const WhyNot = ({ best, catalog, levels, aim, margin }: Props) => {
  const system = useBook((state) => state.system);
  const known = useBook((state) => state.whyNot);
  const phone = usePhone();
  // the rows of the answer before keep their place until those of this one come, unseen: they are not its reasons
  const waits = known !== null && known.best !== best;
  const rows = known?.rows ?? [];
  if (rows.length === 0) return null;
  const saved = (row: Rejected) => (aim === "cost" ? row.saves : row.savesConcrete);
  const sorted = [...rows].sort((a, b) => saved(a) - saved(b));
  const savedWords = (row: Rejected) =>
    aim === "concrete" && row.savesConcrete > 5e-4
      ? said(row.savesConcrete, "volume", system)
      : money(row.saves, catalog.prices.currency, system);
  const most =
    margin > 0
      ? `; with your margin of ${Math.round(margin * 100)} % the most is ${(1 / (1 + margin)).toFixed(2)}`
      : "";
  const gloss = `each of these saves ${aim === "cost" ? "money" : `${aim} or money`} and fails${most}`;
  return (
    <div className="sec" style={waits ? { visibility: "hidden" } : undefined}>
      <h2>
        {aim === "cost" ? "Why not cheaper" : "Why not less"}
        {!phone && <small>{gloss}</small>}
      </h2>
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
                <td className="num saves">{savedWords(row)}</td>
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
