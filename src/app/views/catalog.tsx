import { type KeyboardEvent, useEffect, useState } from "react";
import type { RuleSet, Table } from "../../model/catalog.ts";
import { type Reading, useBook } from "../state/book.ts";
import { copyRow, deleteRow } from "../state/shelf.ts";
import { rowTitle, type Shelf, shelves } from "../wording/catalog-words.ts";
import { Books } from "./books.tsx";
import { CatalogTable } from "./catalog-table.tsx";
import { EditEffect } from "./edit-effect.tsx";
import { FromFile } from "./from-file.tsx";
import { PricesTable } from "./prices-table.tsx";
import { RowPage } from "./row-page.tsx";
import { RulePage } from "./rule-page.tsx";
import { RulesTable } from "./rules-table.tsx";
import { SectionReach } from "./section-reach.tsx";
import { SectionsTable } from "./sections-table.tsx";
import { UnderRules } from "./under-rules.tsx";
import "../css/catalog.css";
import "../css/studies.css";

const CatalogView = () => {
  const reading = useBook((state) => state.reading);
  const [shelf, setShelf] = useState<Shelf>("sections");
  const [chosen, setChosen] = useState<string | null>(null);
  if (!reading) return <main />;
  const rows = shelf === "prices" ? [] : reading.catalog[shelf];
  const row = rows.find((one) => one.id === chosen) ?? rows[0];
  const below = (
    <>
      <EditEffect />
      <FromFile key={shelf} shelf={shelf} reading={reading} />
      <Books reading={reading} />
    </>
  );
  return (
    <main className="catalog spread">
      <section className="figs" aria-label="Catalog">
        <div className="shelves">
          <h1>{shelves.find((one) => one.id === shelf)?.question}</h1>
          <Shelves shelf={shelf} choose={setShelf} />
        </div>
        <div className="scroll-x">
          {shelf === "sections" && (
            <SectionsTable reading={reading} chosen={row?.id ?? ""} choose={setChosen} />
          )}
          {shelf === "prices" && <PricesTable reading={reading} />}
          {shelf === "rules" && <RulesTable reading={reading} chosen={row?.id ?? ""} choose={setChosen} />}
          {shelf !== "sections" && shelf !== "prices" && shelf !== "rules" && (
            <CatalogTable shelf={shelf} reading={reading} chosen={row?.id ?? ""} choose={setChosen} />
          )}
        </div>
        {shelf !== "prices" && row && (
          <Actions key={shelf} table={shelf} id={row.id} reading={reading} choose={setChosen} />
        )}
        {shelf === "sections" && <SectionReach reading={reading} />}
        {shelf === "rules" && <UnderRules reading={reading} />}
        {shelf !== "prices" && <div className="below">{below}</div>}
      </section>
      <aside className="sketch" aria-label={shelf === "prices" ? "What edits do" : "The chosen row"}>
        {shelf === "prices" && <div className="below one">{below}</div>}
        {row && shelf === "rules" && <RulePage rule={row as RuleSet} reading={reading} />}
        {row && shelf !== "prices" && shelf !== "rules" && (
          <RowPage shelf={shelf} row={row} reading={reading} />
        )}
      </aside>
    </main>
  );
};
export default CatalogView;

/** One stop for Tab; arrows, Home and End go from shelf to shelf. */
const Shelves = ({ shelf, choose }: { shelf: Shelf; choose: (shelf: Shelf) => void }) => {
  const turn = (event: KeyboardEvent<HTMLDivElement>) => {
    const at = shelves.findIndex((one) => one.id === shelf);
    const last = shelves.length - 1;
    const to = {
      ArrowRight: at === last ? 0 : at + 1,
      ArrowLeft: at === 0 ? last : at - 1,
      Home: 0,
      End: last,
    }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    choose(shelves[to].id);
    event.currentTarget.querySelectorAll<HTMLElement>("[role=tab]")[to].focus();
  };
  return (
    <div className="tabs" role="tablist" aria-label="Tables" onKeyDown={turn}>
      {shelves.map(({ id, name }) => (
        <button
          key={id}
          type="button"
          role="tab"
          aria-selected={shelf === id}
          tabIndex={shelf === id ? 0 : -1}
          className="link"
          onClick={() => choose(id)}
        >
          {name}
        </button>
      ))}
    </div>
  );
};

interface ActionsProps {
  readonly table: Table;
  readonly id: string;
  readonly reading: Reading;
  readonly choose: (id: string) => void;
}
const Actions = ({ table, id, reading, choose }: ActionsProps) => {
  const system = useBook((state) => state.system);
  const [fault, setFault] = useState<string | null>(null);
  // A refusal belongs to the row it was about.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the row is what the effect waits for
  useEffect(() => setFault(null), [id]);
  const row = reading.catalog[table].find((one) => one.id === id);
  const title = row ? rowTitle(table, row, system) : id;
  const words = table.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  const name = table === "strand" ? "strand" : table === "rules" ? "rule set" : words.replace(/s$/, "");
  const one = /^[aeiou]/.test(name) ? `an ${name}` : `a ${name}`;
  const copy = (did: string) => {
    const done = copyRow(table, id, did);
    if (done.faults.length) setFault(done.faults[0].message);
    else choose(done.id);
  };
  const remove = () => {
    const faults = deleteRow(table, id, `deleted ${title}`);
    setFault(faults.length ? `It can’t be deleted: ${faults[0].message}.` : null);
  };
  return (
    <p className="actions">
      <button type="button" className="link" onClick={() => copy(`added ${one} like ${title}`)}>
        Add {one}
      </button>
      <button type="button" className="link" onClick={() => copy(`copied ${title}`)}>
        Copy this one
      </button>
      <button type="button" className="link" onClick={remove}>
        Delete this one
      </button>
      <span className="quiet">a new row starts as the chosen one</span>
      {fault && (
        <span role="alert">
          <b>✕ {fault}</b>
        </span>
      )}
    </p>
  );
};
