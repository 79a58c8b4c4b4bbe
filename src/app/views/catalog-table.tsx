import { type Column, tableColumns } from "../../model/csv-columns.ts";
import { type Reading, useBook } from "../state/book.ts";
import { valueAt } from "../state/path.ts";
import { columnWords, mainColumns, type RowShelf, rowTitle } from "../wording/catalog-words.ts";
import { CatalogCell, columnUnit } from "./catalog-cell.tsx";

interface Props {
  readonly shelf: Exclude<RowShelf, "sections">;
  readonly reading: Reading;
  readonly chosen: string;
  readonly choose: (id: string) => void;
}

/** Kinds of one table share its columns: a screw has no block to be wide. */
const has = (shelf: RowShelf, row: object, column: Column): boolean =>
  (shelf !== "anchors" && shelf !== "footings") || valueAt(row, column.path) !== undefined;

/** A table of the catalog by its main columns; the chosen row has its whole page at the right. */
export const CatalogTable = ({ shelf, reading, chosen, choose }: Props) => {
  const system = useBook((state) => state.system);
  const all = tableColumns(shelf);
  const columns = mainColumns[shelf]
    .map((name) => all.find((column) => column.name === name))
    .filter((column): column is Column => column !== undefined);
  const currency = reading.catalog.prices.currency;
  const numeric = (column: Column) => column.kind !== "text" && column.kind !== "boolean";
  return (
    <table className="cat" aria-label={shelf}>
      <thead>
        <tr>
          <th>
            <span className="vh">Choose</span>
          </th>
          {columns.map((column) => {
            const unit = columnUnit(column, system, currency);
            return (
              <th key={column.name} className={numeric(column) ? "num" : undefined}>
                {columnWords(column.name)}
                {unit && `, ${unit}`}
              </th>
            );
          })}
        </tr>
      </thead>
      <tbody>
        {reading.catalog[shelf].map((row) => (
          <tr key={row.id} className={row.id === chosen ? "sel" : undefined}>
            <td>
              <button
                type="button"
                className="pick"
                aria-pressed={row.id === chosen}
                aria-label={`Choose ${rowTitle(shelf, row, system)}`}
                onClick={() => choose(row.id)}
              >
                {row.id === chosen ? "▸" : "·"}
              </button>
            </td>
            {columns.map((column) => (
              <td key={column.name} className={numeric(column) ? "num" : undefined}>
                {has(shelf, row, column) && (
                  <CatalogCell
                    table={shelf}
                    id={row.id}
                    column={column}
                    reading={reading}
                    title={rowTitle(shelf, row, system)}
                  />
                )}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
};
