import { takeBack, useBook } from "../state/book.ts";
import { effectRows, effectSentence } from "../wording/edit-effect.ts";

/** What the last edit did to the answer, once the new answer is known. */
export const EditEffect = () => {
  const before = useBook((state) => state.before);
  const finding = useBook((state) => state.finding);
  const did = useBook((state) => state.history.past.at(-1)?.did);
  const system = useBook((state) => state.system);
  const currency = useBook((state) => state.reading?.catalog.prices.currency ?? "$");
  if (!did)
    return (
      <section aria-label="What your edit did">
        <h2>What your edit did</h2>
        <p className="quiet">Dotted values can be edited; what an edit does to the answer is said here.</p>
      </section>
    );
  const after = finding.state === "ended" ? finding.outcome : null;
  return (
    <section aria-label="What your edit did">
      <h2>
        What your edit did<small>{did}</small>
      </h2>
      {before && after ? (
        <>
          <table aria-label="Before and after">
            <tbody>
              {effectRows(before, after, system, currency).map((row) => (
                <tr key={row.name}>
                  <td>{row.name}</td>
                  <td className="num quiet">{row.before}</td>
                  <td className="num">
                    <b>{row.after}</b>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="reason">
            {effectSentence(before, after, system, currency)}{" "}
            <button type="button" className="link letter" onClick={takeBack}>
              Undo
            </button>
          </p>
        </>
      ) : (
        <p className="quiet">
          {after ? "There was no answer before it to compare with." : "Looking for the new answer."}
        </p>
      )}
    </section>
  );
};
