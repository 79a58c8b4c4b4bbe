import { useState } from "react";
import type { Table } from "../../model/catalog.ts";
import { exportCsv, type ImportPreview, previewImport } from "../../model/csv.ts";
import { type Reading, useBook } from "../state/book.ts";
import { jsonPreview } from "../state/json-import.ts";
import { downloadText } from "../state/saving.ts";
import { takeImport } from "../state/shelf.ts";

/** A file is only looked at: what it would change and what is refused, and nothing is written before Take. */
export const FromFile = ({ table, reading }: { table: Table; reading: Reading }) => {
  const system = useBook((state) => state.system);
  const [preview, setPreview] = useState<{ name: string; found: ImportPreview } | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const look = async (file: File | undefined) => {
    if (!file) return;
    setFault(null);
    try {
      const text = await file.text();
      const found = /\.json$/i.test(file.name)
        ? jsonPreview(table, text, reading.paper.catalog)
        : previewImport(table, text, reading.paper.catalog, system);
      setPreview({ name: file.name, found });
    } catch (error) {
      setPreview(null);
      setFault(`${file.name} can’t be read: ${(error as Error).message}.`);
    }
  };
  const take = () => {
    if (!preview) return;
    const faults = takeImport(preview.found);
    if (faults.length) setFault(faults[0].message);
    else setPreview(null);
  };
  const writeJson = () =>
    downloadText(
      `${table}.json`,
      `${JSON.stringify(reading.paper.catalog[table], null, 2)}\n`,
      "application/json",
    );
  return (
    <section aria-label="From a file">
      <h2>
        From a file<small>{preview ? `${preview.name}, nothing written yet` : "and to one"}</small>
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
          onClick={() => downloadText(`${table}.csv`, exportCsv(table, reading.catalog, system), "text/csv")}
        >
          Write CSV
        </button>
        <button type="button" className="link" onClick={writeJson}>
          Write JSON
        </button>
      </p>
      {fault && (
        <p role="alert">
          <b>✕ {fault}</b>
        </p>
      )}
      {preview && <Preview found={preview.found} take={take} leave={() => setPreview(null)} />}
    </section>
  );
};

const MOST = 12;
const Preview = ({ found, take, leave }: { found: ImportPreview; take: () => void; leave: () => void }) => {
  const count = found.rows.length;
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
          Take {count} row{count === 1 ? "" : "s"}
        </button>
        <span className="quiet">
          {refusedRows > 0
            ? `${refusedRows} row${refusedRows === 1 ? " is" : "s are"} refused and left out; mend the file to take ${refusedRows === 1 ? "it" : "them"}`
            : `${found.unchanged} rows say what the catalog says already`}
        </span>
        <button type="button" className="link" onClick={leave}>
          leave it
        </button>
      </p>
    </>
  );
};
