import { type FormEvent, useState } from "react";
import { useStore } from "../state/store.ts";
import { kept, putDroppedBack } from "../state/studies.ts";

export const when = (at: number) =>
  new Date(at).toLocaleString("en-GB", {
    day: "numeric",
    month: "short",
    hour: "2-digit",
    minute: "2-digit",
  });

export const Does = ({ act, label, children }: { act: () => unknown; label?: string; children: string }) => (
  <button type="button" className="link" aria-label={label} onClick={() => void act()}>
    {children}
  </button>
);

interface KeepAsProps {
  readonly label: string;
  readonly example: string;
  /** Hands back whether it is kept: then the field is empty for the next name. */
  readonly keep: (name: string) => Promise<boolean>;
}
/** A name for what stands here now. */
export const KeepAs = ({ label, example, keep }: KeepAsProps) => {
  const [typed, setTyped] = useState("");
  const name = typed.trim();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (name !== "") void keep(name).then((done) => done && setTyped(""));
  };
  return (
    <form className="line" onSubmit={submit}>
      <label>
        {label}{" "}
        <input
          className="field"
          maxLength={80}
          placeholder={example}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
      </label>
      <button type="submit" className="btn" disabled={name === ""}>
        Keep
      </button>
    </form>
  );
};

/** Why what was asked can't be done, said at once. */
export const Alert = ({ fault }: { fault: string | null }) =>
  fault && (
    <p role="alert">
      <b>✕ {fault}</b>
    </p>
  );

/** What was deleted last of this kind, and the way back. */
export const Dropped = ({ kind }: { kind: "version" | "book" }) => {
  const dropped = useStore(kept, (state) => state.dropped);
  if (!dropped || !(kind in dropped)) return null;
  const { name } = "version" in dropped ? dropped.version : dropped.book;
  return (
    <p role="status" className="quiet">
      “{name}” is deleted. <Does act={putDroppedBack}>Put it back</Does>
    </p>
  );
};
