import type { Check } from "../model/verdict.ts";
import type { Problem } from "../problem/types.ts";
import { type GuyModel, initialTensions, insideWindow } from "./rigging.ts";
import { limitStateTitles } from "./titles.ts";

/** Is every guy inside the window of initial tension? */
export function initialTensionCheck(problem: Problem, guys: GuyModel): Check {
  const { least, most, source } = problem.rules.tension;
  const all = initialTensions(guys);
  const slackest = Math.min(...all);
  const tautest = Math.max(...all);
  const slack = slackest < least - 1e-12;
  return {
    id: "initial-tension",
    limitState: "initial-tension",
    title: limitStateTitles["initial-tension"],
    kind: "limit",
    where: "all guys",
    loadCase: "still air",
    unit: "ratio",
    demand: slack ? slackest : tautest,
    capacity: most,
    required: 1,
    utilisation: slack ? least / slackest : tautest / most,
    passes: insideWindow(problem, guys),
    source,
    note: slack
      ? "slacker than the window: guys that gallop"
      : tautest > most
        ? "tauter than the window: strand that hums and tires"
        : undefined,
  };
}
