import { StrictMode, startTransition } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./app.tsx";
import { followAddress, followKeys } from "./state/address.ts";
import { book, doAgain, takeBack } from "./state/book.ts";
import { breathe } from "./state/reader.ts";
import { heedOtherTabs, loadPreferences, loadSaved, saveEveryChange } from "./state/saving.ts";
import { answerEveryReading } from "./state/search.ts";

loadPreferences();
await loadSaved();
await breathe();
followAddress();
followKeys({ undo: takeBack, redo: doAgain });
saveEveryChange();
heedOtherTabs();
answerEveryReading();
await breathe();

// drawn in slices, like all that is not an answer to the hand
startTransition(() =>
  createRoot(document.getElementById("root")!).render(
    <StrictMode>
      <App />
    </StrictMode>,
  ),
);

/** How long the first answer stands before the page is kept for offline use, ms: its fetching would take time from the drawing. */
const STANDS = 2000;
// Offline comes after the first answer is drawn: what is fetched for later must not keep the page waiting now.
if (import.meta.env.PROD && "serviceWorker" in navigator) {
  const leave = book.subscribe(() => {
    if (book.get().finding.state !== "ended") return;
    leave();
    setTimeout(() => void navigator.serviceWorker.register("/sw.js").catch(() => undefined), STANDS);
  });
}
