import { lazy, Suspense, useState } from "react";
import type { Fault } from "../state/book.ts";
import type { Typed } from "../wording/given.ts";

// The fields come when they are asked for.
const StatedForm = lazy(() => import("./stated-form.tsx"));

/** One field of something that is stated whole or not at all. */
export interface Part {
  readonly key: string;
  readonly label: string;
  /** As it is stated, or "". */
  readonly start: string;
  readonly read?: (text: string) => Typed;
  /** What goes to the file for it: the text with its unit, or the number. */
  readonly as?: "text" | "number";
  readonly optional?: boolean;
  readonly options?: readonly { readonly value: string; readonly name: string }[];
  /** An entry as it may be written. */
  readonly example?: string;
}
export type Values = Readonly<Record<string, string | number>>;

export interface StatedProps {
  readonly label: string;
  /** As it reads in the strip: "rigged at 50 °F, air −10 °F to 100 °F", or "no temperature stated". */
  readonly shown: string;
  readonly parts: readonly Part[];
  /** Undefined: no longer stated. */
  readonly write: (values: Values | undefined) => readonly Fault[];
  /** "State no ice": left out where there must be one. */
  readonly remove?: string;
  readonly note?: string;
}

/** What takes several numbers to say: a sentence that opens into its fields and is taken whole. */
export const Stated = (props: StatedProps) => {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="ed" aria-expanded={open} onClick={() => setOpen(!open)}>
        <span className="vh">{props.label}: </span>
        {props.shown}
      </button>
      {open && (
        <Suspense>
          <StatedForm {...props} close={() => setOpen(false)} />
        </Suspense>
      )}
    </>
  );
};
