import type { Catalog, Section, Table } from "../../model/catalog.ts";
import { tableColumns } from "../../model/csv-columns.ts";
import { SectionDrawing } from "../drawings/section-drawing.tsx";
import { type Reading, useBook } from "../state/book.ts";
import { valueAt } from "../state/path.ts";
import { columnWords, type RowShelf, rowTitle } from "../wording/catalog-words.ts";
import { CatalogCell } from "./catalog-cell.tsx";

type Row = Catalog[Table][number];
interface Props {
  readonly shelf: RowShelf;
  readonly row: Row;
  readonly reading: Reading;
}

/** Every value of the chosen row, each editable, with a drawing from its numbers where there is one. */
export const RowPage = ({ shelf, row, reading }: Props) => {
  const system = useBook((state) => state.system);
  const title = rowTitle(shelf, row, system);
  const kind = (row as { kind?: string }).kind;
  const columns = tableColumns(shelf).filter(
    (column) =>
      column.name !== "id" &&
      // Kinds of one table share its columns: show those that this one has, or could have.
      (kind === undefined || valueAt(row, column.path) !== undefined),
  );
  return (
    <>
      <h2>
        {title}
        <small>{(row as { invented?: boolean }).invented ? "invented" : "as published"}</small>
      </h2>
      {shelf === "sections" && <SectionDrawing section={row as Section} reading={reading} />}
      <table className="rowpage" aria-label={`Every value of ${title}`}>
        <tbody>
          {columns.map((column) => (
            <tr key={column.name}>
              <td className="quiet">{columnWords(column.name)}</td>
              <td className="num">
                <CatalogCell
                  table={shelf}
                  id={row.id}
                  column={column}
                  reading={reading}
                  title={title}
                  whole
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
};
