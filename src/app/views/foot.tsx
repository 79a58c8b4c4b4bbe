import { useBook } from "../state/book.ts";
import { offer } from "../state/way.ts";

/** The caution stands in the flow of every page, never behind a click. */
export const Foot = () => {
  const invented = useBook((state) => {
    const rows = state.reading?.catalog;
    return rows ? rows.prices.invented || rows.sections.some((row) => row.invented) : false;
  });
  return (
    <footer className="foot">
      <span>
        An estimating and learning tool. Masts kill by falling, by electrocution and by collapse: local codes,
        the maker’s drawings and a licensed engineer decide; keep the fall zone clear of power lines.
      </span>
      <button type="button" className="link" onClick={offer}>
        Ways in
      </button>
      {invented && <span>Every section, antenna and price here is invented.</span>}
    </footer>
  );
};
