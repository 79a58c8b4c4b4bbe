import { useEffect, useMemo, useState } from "react";
import type { Reading } from "../state/book.ts";
import type { KeptBook } from "../state/cupboard.ts";
import { differences, writtenCatalog } from "../state/shelf.ts";
import { useStore } from "../state/store.ts";
import { dropBook, followKept, keepBook, kept, takeBook } from "../state/studies.ts";
import { Alert, Does, Dropped, KeepAs } from "./study-parts.tsx";

const day = (at: number) =>
  new Date(at).toLocaleDateString("en-GB", { day: "numeric", month: "short", year: "numeric" });

const count = (n: number, one: string) => (n === 0 ? [] : [`${n} ${one}${n === 1 ? "" : "s"}`]);
/** What taking a book would change, before it is taken. */
const differs = ({ rows, prices }: { rows: number; prices: number }): string => {
  const words = [...count(rows, "row"), ...count(prices, "price")].join(" and ");
  if (!words) return "as it stands here";
  return `${words} differ${rows + prices === 1 ? "s" : ""}`;
};

/** Catalogs with their prices, each as it stood when it was given a name: this spring's beside last year's. */
export const Books = ({ reading }: { reading: Reading }) => {
  useEffect(followKept, []);
  const books = useStore(kept, (state) => state.books);
  const here = useMemo(() => writtenCatalog(reading.paper), [reading]);
  const [fault, setFault] = useState<string | null>(null);
  const take = (one: KeptBook) => {
    const faults = takeBook(one);
    setFault(faults.length ? `“${one.name}” can’t be taken: ${faults[0].path} ${faults[0].message}` : null);
  };
  return (
    <section aria-label="Books">
      <h2>
        Books<small>all shelves and prices, kept for every study</small>
      </h2>
      <KeepAs label="Keep this one as" example="spring prices" keep={(name) => keepBook(name, here)} />
      <Alert fault={fault} />
      <Dropped kind="book" />
      {books.length > 0 && (
        <table className="cat" aria-label="Books">
          <tbody>
            {books.map((one) => (
              <tr key={one.id}>
                <td>{one.name}</td>
                <td className="quiet">{day(one.at)}</td>
                <td className="quiet">{differs(differences(here, one.catalog))}</td>
                <td className="actions">
                  <Does act={() => take(one)} label={`Take the book ${one.name}`}>
                    Take
                  </Does>
                  <Does act={() => dropBook(one)} label={`Delete the book ${one.name}`}>
                    Delete
                  </Does>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
};
