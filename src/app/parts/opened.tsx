import { type ReactNode, useState } from "react";

/** A closed table costs nothing: its rows are made when it is opened. */
export const Opened = ({ words, children }: { words: string; children: () => ReactNode }) => {
  const [open, setOpen] = useState(false);
  return (
    <details className="how" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className="link">{words}</summary>
      {open && children()}
    </details>
  );
};
