import { useState } from "react";
import { exportCsv, type ImportPreview, previewImport } from "../../model/csv.ts";
import { exportPricesCsv, previewPrices } from "../../model/csv-prices.ts";
import { type Reading, useBook } from "../state/book.ts";
import { downloadText } from "../state/files.ts";
import { jsonPreview } from "../state/json-import.ts";
import { takeImport, writtenCatalog, writtenPrices } from "../state/shelf.ts";
import type { Shelf } from "../wording/catalog-words.ts";
import type { System } from "../wording/figures.ts";
import { Alert } from "./study-parts.tsx";

/** What the file would change of this shelf. */
const preview = (
  shelf: Shelf,
  name: string,
  text: string,
  { paper }: Reading,
  system: System,
): ImportPreview => {
  const json = /\.json$/i.test(name);
  if (shelf === "prices") return previewPrices(text, json ? "json" : "csv", writtenPrices(paper), system);
  const catalog = writtenCatalog(paper);
  return json ? jsonPreview(shelf, text, catalog) : previewImport(shelf, text, catalog, system);
};
const csvOf = (shelf: Shelf, { catalog }: Reading, system: System): string =>
  shelf === "prices" ? exportPricesCsv(catalog.prices, system) : exportCsv(shelf, catalog, system);

/** A file is only looked at: what it would change and what is refused, and nothing is written before Take. */
export const FromFile = ({ shelf, reading }: { shelf: Shelf; reading: Reading }) => {
  const system = useBook((state) => state.system);
  const [seen, setSeen] = useState<{ name: string; found: ImportPreview } | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const look = async (file: File | undefined) => {
    if (!file) return;
    setFault(null);
    try {
      setSeen({ name: file.name, found: preview(shelf, file.name, await file.text(), reading, system) });
    } catch (error) {
      setSeen(null);
      setFault(`${file.name} can’t be read: ${(error as Error).message}.`);
    }
  };
  const take = () => {
    if (!seen) return;
    const faults = takeImport(seen.found);
    if (faults.length) setFault(faults[0].message);
    else setSeen(null);
  };
  const writeJson = () =>
    downloadText(
      `${shelf}.json`,
      `${JSON.stringify(writtenCatalog(reading.paper)[shelf], null, 2)}\n`,
      "application/json",
    );
  return (
    <section aria-label="From a file">
      <h2>
        From a file<small>{seen ? `${seen.name}, nothing written yet` : "and to one"}</small>
      </h2>
      <p className="actions">
        <label className="link">
          Read a file
          <input
            type="file"
            className="vh"
            accept=".csv,.json,text/csv,application/json"
            onChange={(event) => {
              void look(event.target.files?.[0]);
              event.target.value = "";
            }}
          />
        </label>
        <button
          type="button"
          className="link"
          onClick={() => downloadText(`${shelf}.csv`, csvOf(shelf, reading, system), "text/csv")}
        >
          Write CSV
        </button>
        <button type="button" className="link" onClick={writeJson}>
          Write JSON
        </button>
      </p>
      <Alert fault={fault} />
      {seen && <Preview found={seen.found} take={take} leave={() => setSeen(null)} />}
    </section>
  );
};

const MOST = 12;
const Preview = ({ found, take, leave }: { found: ImportPreview; take: () => void; leave: () => void }) => {
  const prices = found.table === "prices";
  const count = prices ? found.changed.length : found.rows.length;
  const unit = prices ? "price" : "row";
  const refusedRows = new Set(found.refused.map((cell) => cell.row)).size;
  return (
    <>
      <table aria-label="What the file would change">
        <thead>
          <tr>
            <th>Row</th>
            <th>Column</th>
            <th>Found</th>
            <th>Expected</th>
          </tr>
        </thead>
        <tbody>
          {found.refused.slice(0, MOST).map((cell) => (
            <tr key={`${cell.row}/${cell.column}/${cell.found}`} className="bad">
              <td>
                <b>✕ {cell.row}</b>
              </td>
              <td>
                <b>{cell.column}</b>
              </td>
              <td>
                <b>{cell.found}</b>
              </td>
              <td>
                <b>{cell.expected}</b>
              </td>
            </tr>
          ))}
          {found.changed.slice(0, MOST).map((cell) => (
            <tr key={`${cell.row}/${cell.field}`}>
              <td>{cell.row}</td>
              <td>{cell.field}</td>
              <td>
                {cell.found}, was {cell.was || "nothing"}
              </td>
              <td className="quiet">will change</td>
            </tr>
          ))}
          {found.added.slice(0, MOST).map((row) => (
            <tr key={row.row}>
              <td>{row.row}</td>
              <td>id</td>
              <td>{row.id}</td>
              <td className="quiet">a new row</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="actions">
        <button type="button" className="btn" disabled={count === 0} onClick={take}>
          Take {count} {unit}
          {count === 1 ? "" : "s"}
        </button>
        <span className="quiet">
          {refusedRows > 0
            ? `${refusedRows} ${unit}${refusedRows === 1 ? " is" : "s are"} refused and left out; mend the file to take ${refusedRows === 1 ? "it" : "them"}`
            : `${found.unchanged} ${unit}${found.unchanged === 1 ? " says" : "s say"} what the catalog says already`}
        </span>
        <button type="button" className="link" onClick={leave}>
          leave it
        </button>
      </p>
    </>
  );
};
