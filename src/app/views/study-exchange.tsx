import { useEffect, useState } from "react";
import { useBook } from "../state/book.ts";
import { LONG_LINK, writeFragment } from "../state/link.ts";
import { readParcel } from "../state/parcel.ts";
import { useStore } from "../state/store.ts";
import { bring, kept, leaveBrought, takeBrought, writeEverything, writeOpen } from "../state/studies.ts";
import { Does } from "./study-parts.tsx";

/** Out to files and links, and in from files. */
export const HandOn = () => {
  const [said, setSaid] = useState<string | null>(null);
  const [link, setLink] = useState<string | null>(null);
  const paper = useBook((state) => state.history.present);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a link stands for the paper it was made of
  useEffect(() => {
    setLink(null);
    setSaid(null);
  }, [paper]);
  const makeLink = async () => {
    const made = `${location.origin}${location.pathname}${await writeFragment(paper)}`;
    setLink(made);
    const length =
      made.length > LONG_LINK
        ? ` It is ${made.length} letters long, and some programs cut such links: a file is safer.`
        : "";
    const copied = await navigator.clipboard?.writeText(made).then(
      () => true,
      () => false,
    );
    setSaid((copied ? "The link is copied." : "Copy the link from here.") + length);
  };
  return (
    <section className="sec" aria-label="Hand it on">
      <h2>Hand it on</h2>
      <ul className="plain">
        <li>
          <Does act={writeOpen}>Write this study to a file</Does>
        </li>
        <li>
          <Does act={makeLink}>Make a link that holds this study</Does>{" "}
          <span className="quiet">it goes to nobody but who you give it to</span>
        </li>
        {link && (
          <li>
            <input
              className="field whole"
              aria-label="The link"
              readOnly
              value={link}
              onFocus={(event) => event.target.select()}
            />
          </li>
        )}
        {said && (
          <li role="status" className="quiet">
            {said}
          </li>
        )}
        <li>
          <Does act={writeEverything}>Write everything to one file</Does>{" "}
          <span className="quiet">
            all studies, their versions, the price books, the designs kept for comparison
          </span>
        </li>
        <li>
          <label className="link">
            Read a file
            <input
              type="file"
              accept=".json,application/json"
              className="vh"
              onChange={(event) => {
                const file = event.target.files?.[0];
                if (file) void bring(file.name, () => readFile(file));
                event.target.value = "";
              }}
            />
          </label>
        </li>
      </ul>
    </section>
  );
};

const MOST = 50e6;
const readFile = async (file: File) => {
  if (file.size > MOST) throw new Error("it is larger than 50 MB, which no file of this program is");
  return readParcel(await file.text());
};

/** What a file or link holds, before any of it is kept. */
export const Brought = () => {
  const brought = useStore(kept, (state) => state.brought);
  const refused = useStore(kept, (state) => state.refused);
  if (refused)
    return (
      <div className="warn" role="alert">
        <b>✕ Nothing was taken.</b> {refused} What is kept here is untouched.{" "}
        <Does act={leaveBrought}>put away</Does>
      </div>
    );
  if (!brought) return null;
  const { studies, books, designs, refused: bad } = brought.found;
  const count = studies.length + books.length + designs.length;
  return (
    <section className="warn" aria-label="What it brings">
      <h2>
        {brought.from}
        <small>nothing kept yet</small>
      </h2>
      <table className="cat" aria-label="What it brings">
        <tbody>
          {bad.map(({ where, why }) => (
            <tr key={where + why} className="bad">
              <td>
                <b>✕ {where}</b>
              </td>
              <td className="wrap">
                <b>{why}</b>
              </td>
            </tr>
          ))}
          {studies.map((study, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a file may hold a name twice, and its order stays
            <tr key={at}>
              <td>{study.name}</td>
              <td className="quiet">
                a study{study.versions.length > 0 && `, ${study.versions.length} versions`}, comes beside
                yours
              </td>
            </tr>
          ))}
          {books.map((one, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: as above
            <tr key={at}>
              <td>{one.name}</td>
              <td className="quiet">a book of parts and prices</td>
            </tr>
          ))}
          {designs.map((one, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: as above
            <tr key={at}>
              <td>{one.name}</td>
              <td className="quiet">a design kept for comparison</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="actions">
        <button type="button" className="btn" disabled={count === 0} onClick={() => void takeBrought()}>
          Take {count === 1 ? "it" : `these ${count}`}
        </button>
        <Does act={leaveBrought}>leave it</Does>
      </p>
    </section>
  );
};
