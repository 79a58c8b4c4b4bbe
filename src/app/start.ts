import { startEarly } from "../../workers/early.ts";
import "./css/look.css";
import "./css/shell.css";
import "./css/answer.css";
import "./css/guide.css";

/** A browser that does not tell of what it has drawn, or draws nothing because the page is out of sight. */
const PATIENCE = 300;

/** The first words stand on the screen. */
const drawn = new Promise<void>((resolve) => {
  new PerformanceObserver(() => resolve()).observe({ type: "paint", buffered: true });
  setTimeout(resolve, PATIENCE);
});

// The program is asked for when the caution can be read: beside the styles it would hold up the first words. The workers
// load beside it. What it is made of is run piece by piece as it comes, and not in one go when the last is here: React, then what
// the page shares with the workers (that file stands in it), then the page.
drawn.then(() => {
  startEarly();
  void import("react-dom/client");
  void import("../search/ground.ts");
  void import("./main.tsx");
});
