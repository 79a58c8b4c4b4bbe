import { Fragment, useId, useLayoutEffect, useRef, useState } from "react";
import { glossedPieces } from "../wording/glossary.ts";

/** A text whose words of the trade explain themselves: point at one, focus it or press it. */
export const Glossed = ({ text }: { text: string }) => (
  <>
    {glossedPieces(text).map((piece, i) =>
      piece.line ? (
        // a text's pieces stand in one order for as long as it is the same text
        // biome-ignore lint/suspicious/noArrayIndexKey: as above
        <Term key={i} word={piece.text} line={piece.line} />
      ) : (
        // biome-ignore lint/suspicious/noArrayIndexKey: as above
        <Fragment key={i}>{piece.text}</Fragment>
      ),
    )}
  </>
);

/** Space between a note and the edge of the page, px. */
const EDGE = 12;

/** One word with its line: shown to the pointer, to the keyboard and to a press. */
export const Term = ({ word, line }: { word: string; line: string }) => {
  const [shown, setShown] = useState(false);
  const note = useRef<HTMLSpanElement>(null);
  const id = useId();
  // a word near the right edge moves its note to the left, or the page would scroll sideways
  useLayoutEffect(() => {
    const box = note.current;
    if (!shown || !box) return;
    const over = box.getBoundingClientRect().right - (document.documentElement.clientWidth - EDGE);
    box.style.left = over > 0 ? `${-over}px` : "";
  }, [shown]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the pointer only shows what focus shows as well
    <span className="term" onMouseEnter={() => setShown(true)} onMouseLeave={() => setShown(false)}>
      <button
        type="button"
        aria-describedby={shown ? id : undefined}
        onFocus={() => setShown(true)}
        onBlur={() => setShown(false)}
        onClick={() => setShown(true)}
        onKeyDown={(event) => event.key === "Escape" && setShown(false)}
      >
        {word}
      </button>
      {shown && (
        // biome-ignore lint/a11y/useKeyWithClickEvents: Escape puts it away as well; this is for fingers
        <span ref={note} id={id} role="tooltip" className="term-note" onClick={() => setShown(false)}>
          {line}
        </span>
      )}
    </span>
  );
};
