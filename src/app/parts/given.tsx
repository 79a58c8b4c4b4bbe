import { type KeyboardEvent, type PointerEvent, useId, useRef, useState } from "react";
import type { Fault } from "../state/book.ts";
import { stepped, stepSize, type Typed } from "../wording/given.ts";
import { useGesture } from "./gesture.ts";

interface GivenProps {
  /** What the field asks, for who can't see where it stands. */
  readonly label: string;
  /** As it reads in the strip: "Wind 120 mph". */
  readonly shown: string;
  /** What the field starts from: "120 mph". */
  readonly start: string;
  readonly read: (text: string) => Typed;
  readonly write: (typed: Extract<Typed, { ok: true }>, gesture?: string) => readonly Fault[];
  /** Of the number when it is dragged or stepped, in the unit it is shown in; left out: a round share of it. */
  readonly grain?: number;
  /** "The answer still stands for 120 mph.": said beside an error. */
  readonly stands?: string;
  readonly width?: number;
}

/** A value edited where it stands; a bad entry stays in the field with its reason, the old answer stays too. */
export const Given = ({ label, shown, start, read, write, grain, stands, width = 120 }: GivenProps) => {
  const [text, setText] = useState<string | null>(null);
  const [error, setError] = useState<string | null>(null);
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const scrub = useScrub(start, grain, (next, gesture) => {
    const typed = read(next);
    // what a drag runs into is not an entry: the value waits at the last that can be read
    if (typed.ok) write(typed, gesture);
  });
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
        className={scrub.moves ? "ed scrubs" : "ed"}
        aria-label={`${label}: ${shown}`}
        {...scrub.on}
        onClick={() => scrub.wasDragged() || setText(start)}
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
            const size = grain ?? stepSize(text);
            setText(stepped(text, (event.key === "ArrowUp" ? 1 : -1) * size * (event.shiftKey ? 0.1 : 1)));
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

/** Sideways movement of the pointer that is one step, px. */
const PITCH = 7;

/** A number in words that can be dragged sideways, or stepped by the arrow keys; Shift makes the step finer. */
const useScrub = (text: string, grain: number | undefined, put: (text: string, gesture: string) => void) => {
  const gesture = useGesture();
  const held = useRef<{ x: number; from: string; steps: number } | null>(null);
  const dragged = useRef(false);
  const moves = /\d/.test(text);
  const size = (fine: boolean) => (grain ?? stepSize(text)) * (fine ? 0.1 : 1);
  const on = {
    onPointerDown: (event: PointerEvent<HTMLButtonElement>) => {
      dragged.current = false;
      if (!moves || event.button !== 0 || event.pointerType === "touch") return;
      held.current = { x: event.clientX, from: text, steps: 0 };
      event.currentTarget.setPointerCapture(event.pointerId);
      gesture.start();
    },
    onPointerMove: (event: PointerEvent<HTMLButtonElement>) => {
      const start = held.current;
      if (!start) return;
      const steps = Math.round((event.clientX - start.x) / PITCH);
      if (steps === start.steps) return;
      start.steps = steps;
      dragged.current = true;
      put(stepped(start.from, steps * size(event.shiftKey)), gesture.current());
    },
    onPointerUp: () => {
      held.current = null;
    },
    onPointerCancel: () => {
      held.current = null;
    },
    onKeyDown: (event: KeyboardEvent<HTMLButtonElement>) => {
      const direction = { ArrowUp: 1, ArrowDown: -1 }[event.key];
      if (!moves || !direction) return;
      event.preventDefault();
      put(stepped(text, direction * size(event.shiftKey)), gesture.key());
    },
  };
  return { on, moves, wasDragged: () => dragged.current };
};

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
