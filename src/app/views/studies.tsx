import { useEffect } from "react";
import { startingStudies } from "../../model/starting-studies.ts";
import { Given } from "../parts/given.tsx";
import { LINK_MARK } from "../state/address.ts";
import { useBook } from "../state/book.ts";
import type { KeptStudy } from "../state/cupboard.ts";
import { readFragment } from "../state/link.ts";
import { isHistory } from "../state/saving.ts";
import { useStore } from "../state/store.ts";
import {
  begun,
  bring,
  destroy,
  duplicate,
  followKept,
  kept,
  open,
  putBack,
  remove,
  rename,
  renameOpen,
  writeRaw,
} from "../state/studies.ts";
import { Brought, HandOn } from "./study-exchange.tsx";
import { Does, when } from "./study-parts.tsx";
import { Steps, Versions } from "./study-versions.tsx";
import "../css/catalog.css";
import "../css/studies.css";

/** Every study of this browser, the versions of the open one, and what comes in and goes out. */
const StudiesView = () => {
  useEffect(followKept, []);
  useEffect(readLinks, []);
  const name = useBook((state) => state.history.present.study.name);
  return (
    <main className="studies spread">
      <section className="figs" aria-label="Studies">
        <h1>What do you work on?</h1>
        <Brought />
        <List />
        <section className="sec" aria-label="Begin a new study">
          <h2>Begin a new one</h2>
          <ul className="plain">
            {startingStudies.map(({ id, file }) => (
              <li key={id}>
                <Does act={() => begun(file)}>{file.name}</Does>
              </li>
            ))}
          </ul>
        </section>
        <Bin />
      </section>
      <aside className="sketch" aria-label={`Versions and steps of ${name}`}>
        <Versions name={name} />
        <Steps />
        <HandOn />
      </aside>
    </main>
  );
};
export default StudiesView;

/** A link is looked at and taken out of the address, so that a reload does not bring it again. */
const readLinks = () => {
  const read = () => {
    const fragment = location.hash;
    if (!fragment.startsWith(LINK_MARK)) return;
    history.replaceState(null, "", "#/studies");
    void bring("The link", () => readFragment(fragment));
  };
  read();
  window.addEventListener("hashchange", read);
  return () => window.removeEventListener("hashchange", read);
};

const List = () => {
  const studies = useStore(kept, (state) => state.studies);
  const openId = useBook((state) => state.studyId);
  const present = useBook((state) => state.history.present);
  const here = studies.filter((study) => study.deletedAt === null);
  const unkept = !here.some((study) => study.id === openId);
  return (
    <div className="scroll-x">
      <table className="cat" aria-label="Studies">
        <thead>
          <tr>
            <th>Study</th>
            <th>Last changed</th>
            <th>
              <span className="vh">What to do with it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {unkept && (
            <tr className="sel">
              <td>
                ▸ <Name name={present.study.name} write={renameOpen} />
              </td>
              <td className="quiet">as it came</td>
              <td className="actions">
                <Does act={() => duplicate(present)}>Copy</Does>
              </td>
            </tr>
          )}
          {here.map((study) => (
            <Row key={study.id} study={study} isOpen={study.id === openId} />
          ))}
        </tbody>
      </table>
    </div>
  );
};

const Name = ({ name, write }: { name: string; write: (name: string) => unknown }) => (
  <Given
    label="Name of the study"
    shown={name}
    start={name}
    read={(text) =>
      text.trim() === "" || text.length > 120
        ? { ok: false, message: "A name has one to 120 letters." }
        : { ok: true, text: text.trim(), si: 0 }
    }
    write={({ text }) => {
      void write(text);
      return [];
    }}
    width={260}
  />
);

const Row = ({ study, isOpen }: { study: KeptStudy; isOpen: boolean }) => {
  if (!isHistory(study.history))
    return (
      <tr>
        <td>✕ a damaged study</td>
        <td className="quiet">{when(study.at)}</td>
        <td className="actions">
          <Does act={() => writeRaw(study)}>Write it as it is kept</Does>{" "}
          <Does act={() => remove(study)}>Delete</Does>
        </td>
      </tr>
    );
  const { name } = study.history.present.study;
  return (
    <tr className={isOpen ? "sel" : undefined}>
      <td>
        {isOpen && "▸ "}
        <Name name={name} write={(text) => rename(study, text)} />
      </td>
      <td className="quiet">{when(study.at)}</td>
      <td className="actions">
        {isOpen ? (
          <span className="quiet">lies open</span>
        ) : (
          <Does act={() => open(study)} label={`Open ${name}`}>
            Open
          </Does>
        )}
        <Does act={() => duplicate(study.history.present)} label={`Copy ${name}`}>
          Copy
        </Does>
        <Does act={() => remove(study)} label={`Delete ${name}`}>
          Delete
        </Does>
      </td>
    </tr>
  );
};

const Bin = () => {
  const studies = useStore(kept, (state) => state.studies);
  const gone = studies.filter((study) => study.deletedAt !== null);
  if (gone.length === 0) return null;
  return (
    <section className="sec" aria-label="Deleted studies">
      <h2>
        Deleted<small>kept until you destroy them</small>
      </h2>
      <table className="cat" aria-label="Deleted studies">
        <tbody>
          {gone.map((study) => {
            const name = isHistory(study.history) ? study.history.present.study.name : "a damaged study";
            return (
              <tr key={study.id}>
                <td>{name}</td>
                <td className="actions">
                  <Does act={() => putBack(study)} label={`Put back ${name}`}>
                    Put back
                  </Does>
                  <Does act={() => destroy(study)} label={`Destroy for good: ${name}`}>
                    Destroy for good
                  </Does>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
};
