import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./app.tsx";
import "./css/look.css";
import "./css/shell.css";
import "./css/answer.css";
import "./css/tradeoff.css";
import "./css/catalog.css";
import { followAddress, followKeys } from "./state/address.ts";
import { doAgain, takeBack } from "./state/book.ts";
import { loadSaved, saveEveryChange } from "./state/saving.ts";
import { answerEveryReading } from "./state/search.ts";

loadSaved();
followAddress();
followKeys({ undo: takeBack, redo: doAgain });
saveEveryChange();
answerEveryReading();

createRoot(document.getElementById("root")!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
