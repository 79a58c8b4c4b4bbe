import { caution } from "../../report/caution.ts";
import { Opened } from "../parts/opened.tsx";
import { useBook } from "../state/book.ts";
import { offer } from "../state/way.ts";
import { glossary } from "../wording/glossary.ts";

/** The caution stands in the flow of every page, never behind a click. */
export const Foot = () => {
  const invented = useBook((state) => {
    const rows = state.reading?.catalog;
    return rows ? rows.prices.invented || rows.sections.some((row) => row.invented) : false;
  });
  return (
    <footer className="foot">
      <span>{caution}</span>
      <button type="button" className="link" onClick={offer}>
        Ways in
      </button>
      {invented && <span>Every section, antenna and price here is invented.</span>}
      <div className="foot-words">
        <Opened words="Words of the trade">{WordsList}</Opened>
      </div>
    </footer>
  );
};

/** Every word that is dotted somewhere, in one place. */
const WordsList = () => (
  <dl className="words-list">
    {glossary.map(({ word, line }) => (
      <div key={word}>
        <dt>{word}</dt>
        <dd className="quiet">{line}</dd>
      </div>
    ))}
  </dl>
);
