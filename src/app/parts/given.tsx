import { useId, useRef, useState } from "react";
import type { Fault } from "../state/book.ts";
import type { Typed } from "../wording/given.ts";

interface GivenProps {
  /** What the field asks, for who can't see where it stands. */
  readonly label: string;
  /** As it reads in the strip: "Wind 120 mph". */
  readonly shown: string;
  /** What the field starts from: "120 mph". */
  readonly start: string;
  readonly read: (text: string) => Typed;
  readonly write: (typed: Extract<Typed, { ok: true }>) => readonly Fault[];
  /** "The answer still stands for 120 mph.": said beside an error. */
  readonly stands?: string;
  readonly width?: number;
}

/** A value edited where it stands; a bad entry stays in the field with its reason, the old answer stays too. */
export const Given = ({ label, shown, start, read, write, stands, width = 120 }: GivenProps) => {
  const [text, setText] = useState<string | null>(null);
  const [error, setError] = useState<string | null>(null);
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const close = () => {
    setText(null);
    setError(null);
  };
  const leave = () => {
    close();
    requestAnimationFrame(() => button.current?.focus());
  };
  const take = (refocus: boolean) => {
    if (text === null) return;
    if (text.trim() === start.trim()) return refocus ? leave() : close();
    const typed = read(text);
    if (!typed.ok) return setError(typed.message);
    const faults = write(typed);
    if (faults.length > 0) return setError(faults[0].message);
    if (refocus) leave();
    else close();
  };
  if (text === null)
    return (
      <button
        ref={button}
        type="button"
        className="ed"
        aria-label={`${label}: ${shown}`}
        onClick={() => setText(start)}
      >
        {shown}
      </button>
    );
  return (
    <span className="given-open">
      <input
        className="field"
        style={{ width }}
        value={text}
        aria-label={label}
        aria-invalid={error !== null}
        aria-describedby={error ? id : undefined}
        // biome-ignore lint/a11y/noAutofocus: the user has just asked for this field
        autoFocus
        onFocus={(event) => event.target.select()}
        onChange={(event) => setText(event.target.value)}
        onBlur={() => take(false)}
        onKeyDown={(event) => {
          if (event.key === "Enter") take(true);
          else if (event.key === "Escape") leave();
          else if (event.key === "ArrowUp" || event.key === "ArrowDown") {
            event.preventDefault();
            setText(stepped(text, event.key === "ArrowUp" ? 1 : -1, event.shiftKey));
          }
        }}
      />
      {error && (
        <span id={id} role="alert" className="given-error">
          <b>✕ {error}</b> {stands}
        </span>
      )}
    </span>
  );
};

/** Arrows step the number in the text by its last whole place, Shift by a tenth of that. */
export const stepped = (text: string, direction: 1 | -1, fine: boolean): string =>
  text.replace(/\d+(?:\.\d+)?/, (found) => {
    const decimals = found.split(".")[1]?.length ?? 0;
    const step = fine ? 0.1 : 1;
    const value = Math.max(0, Number(found) + direction * step);
    return value.toFixed(Math.max(decimals, fine ? 1 : 0));
  });

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly name: string }[];
  readonly write: (value: string) => readonly Fault[];
}
export const Choice = ({ label, value, options, write }: ChoiceProps) => {
  const [error, setError] = useState<string | null>(null);
  return (
    <>
      <select
        className="ed choice"
        aria-label={label}
        value={value}
        onChange={(event) => setError(write(event.target.value)[0]?.message ?? null)}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.name}
          </option>
        ))}
      </select>
      {error && (
        <span role="alert" className="given-error">
          <b>✕ {error}</b>
        </span>
      )}
    </>
  );
};
