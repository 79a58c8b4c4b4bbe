import { type ReactNode, useState } from "react";
import { book, lookAway, useBook } from "../state/book.ts";
import type { KeptVersion } from "../state/cupboard.ts";
import { keepMineBeside, takeTheirs, writeMineOver } from "../state/saving.ts";

/** What the page has to say beside its answer, a line each. */
const Notices = () => {
  const trouble = useBook((state) => state.trouble);
  const notice = useBook((state) => state.notice);
  const faults = useBook((state) => state.faults);
  const clash = useBook((state) => state.clash);
  const looking = useBook((state) => state.looking);
  return (
    <>
      {clash && <Clash deleted={clash.deletedAt !== null} at={clash.at} />}
      {looking && <Looking version={looking.version} />}
      {trouble && (
        <Line away={() => book.set({ trouble: null })}>
          <span>▲ {trouble}</span>
          <Action does={writeEverything}>Write everything to a file</Action>
        </Line>
      )}
      {(notice || faults.length > 0) && (
        <Line away={() => book.set({ notice: null, faults: [] })}>
          <span>
            {faults.slice(0, 3).map((fault) => (
              <span key={fault.path + fault.message} style={{ display: "block" }}>
                ✕ <b>{fault.path}</b> {fault.message}
              </span>
            ))}
            {notice}
          </span>
        </Line>
      )}
    </>
  );
};

const Line = ({ away, children }: { away?: () => void; children: ReactNode }) => (
  <div className="notice" role="status">
    {children}
    {away && (
      <button type="button" className="link away" onClick={away}>
        put away
      </button>
    )}
  </div>
);
const Action = ({ does, children }: { does: () => void; children: ReactNode }) => (
  <button type="button" className="link" onClick={does}>
    {children}
  </button>
);

/** The page of studies, with all that writes files, comes when it is asked for. */
const fromStudies = <T,>(act: (studies: typeof import("../state/studies.ts")) => T) =>
  void import("../state/studies.ts").then(act);
const writeEverything = () => fromStudies((studies) => studies.writeEverything());

const Clash = ({ deleted, at }: { deleted: boolean; at: number }) => {
  const [why, setWhy] = useState<string | null>(null);
  const when = new Date(at).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
  return (
    <Line>
      <span>
        ▲{" "}
        {deleted
          ? "Another tab has deleted this study. Until you choose, nothing here is saved."
          : `Another tab changed this study at ${when}. Until you choose, nothing here is saved.`}
        {why && ` It can’t be shown here: ${why}.`}
      </span>
      {!deleted && <Action does={() => setWhy(takeTheirs())}>Show what it wrote, leave mine</Action>}
      <Action does={keepMineBeside}>Keep mine beside it, as a study of its own</Action>
      <Action does={writeMineOver}>{deleted ? "Put it back as it stands here" : "Write mine over it"}</Action>
    </Line>
  );
};

const Looking = ({ version }: { version: KeptVersion }) => (
  <Line>
    <span>
      You look at “{version.name}”, kept {new Date(version.at).toLocaleString("en-GB")}. It can’t be changed.
    </span>
    <Action does={() => fromStudies((studies) => studies.goBackTo(version))}>Go back to it</Action>
    <Action does={lookAway}>Return to the present</Action>
  </Line>
);

export default Notices;
