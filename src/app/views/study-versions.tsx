import { useState } from "react";
import { turnTo } from "../state/address.ts";
import { takeBackTo, useBook } from "../state/book.ts";
import { useStore } from "../state/store.ts";
import { dropVersion, goBackTo, keepVersion, kept, look } from "../state/studies.ts";
import { Alert, Does, Dropped, KeepAs, when } from "./study-parts.tsx";

/** States of the open study that were given a name: looked at, gone back to, or put away. */
export const Versions = ({ name }: { name: string }) => {
  const versions = useStore(kept, (state) => state.versions);
  const looking = useBook((state) => state.looking?.version.id);
  const [fault, setFault] = useState<string | null>(null);
  return (
    <section aria-label="Versions">
      <h2>
        Versions<small>of {name}</small>
      </h2>
      {!looking && (
        <KeepAs label="Keep it as it stands now, as" example="before the bigger beam" keep={keepVersion} />
      )}
      <Alert fault={fault} />
      <Dropped kind="version" />
      {versions.length > 0 && (
        <table className="cat" aria-label="Versions">
          <tbody>
            {versions.map((version) => (
              <tr key={version.id} className={version.id === looking ? "sel" : undefined}>
                <td>{version.name}</td>
                <td className="quiet">{when(version.at)}</td>
                <td className="actions">
                  <Does
                    act={() => {
                      const faults = look(version);
                      setFault(faults[0] ? `${faults[0].path} ${faults[0].message}` : null);
                      if (faults.length === 0) turnTo("answer");
                    }}
                    label={`Look at ${version.name}`}
                  >
                    Look at
                  </Does>
                  <Does act={() => goBackTo(version)} label={`Go back to ${version.name}`}>
                    Go back to
                  </Does>
                  <Does act={() => dropVersion(version)} label={`Delete the version ${version.name}`}>
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

const MOST_STEPS = 12;
/** What Undo would take back, and how far. */
export const Steps = () => {
  const past = useBook((state) => state.history.past);
  const shown = past.slice(-MOST_STEPS).reverse();
  return (
    <section className="sec" aria-label="Steps">
      <h2>
        Steps<small>the last of them first; Undo remembers them, even when this page is closed</small>
      </h2>
      {shown.length === 0 && <p className="quiet">Nothing has been changed yet.</p>}
      {shown.length > 0 && (
        <table className="cat" aria-label="Steps">
          <tbody>
            {shown.map((step, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a step is known by its place, and may be done twice
              <tr key={past.length - at}>
                <td>{step.did}</td>
                <td className="actions">
                  <Does act={() => takeBackTo(step)}>
                    {at === 0 ? "Take it back" : `Take back these ${at + 1}`}
                  </Does>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {past.length > shown.length && <p className="quiet">and {past.length - shown.length} before them</p>}
    </section>
  );
};
