import type { CaseResponse, Check, Verdict } from "../../model/verdict.ts";
import { type System, said } from "./figures.ts";
import type { Formula } from "./formulas.ts";

type Letters = Readonly<Record<string, string>>;

/**
 * What the check's own load case left at its place, by the letters of its formula. Only what the verdict holds: where
 * it holds nothing of a letter, or two cases share a name, that letter goes without a number.
 */
export const lettersFound = (formula: Formula, check: Check, verdict: Verdict, system: System): Letters => {
  const cases = verdict.cases.filter((one) => one.title === check.loadCase);
  if (cases.length !== 1 || !formula.found) return {};
  return finders[formula.found](cases[0], check, system);
};

const finders: Readonly<
  Record<NonNullable<Formula["found"]>, (c: CaseResponse, check: Check, system: System) => Letters>
> = {
  mast: (c, check, system): Letters => {
    const at = c.z.flatMap((z, i) => (check.at !== undefined && Math.abs(z - check.at) < 1e-6 ? [i] : []));
    if (at.length === 0) return {};
    // a joint stands twice: the element with the greater moment is the one that was judged
    const worst = at.reduce((a, b) => (Math.abs(c.moment[b]) > Math.abs(c.moment[a]) ? b : a));
    return {
      P: said(c.compression[worst], "force", system),
      M: said(Math.abs(c.moment[worst]), "moment", system),
    };
  },
  anchor: (c, check, system): Letters => {
    const weight: Readonly<Record<string, (r: CaseResponse["anchors"][number]) => number>> = {
      "anchor-uplift": (r) => r.uplift,
      "anchor-lateral": (r) => r.lateral,
    };
    const by = weight[check.limitState] ?? ((r) => Math.hypot(r.uplift, r.lateral));
    if (c.anchors.length === 0) return {};
    const worst = c.anchors.reduce((a, b) => (by(b) > by(a) ? b : a));
    return { U: said(worst.uplift, "force", system), H: said(worst.lateral, "force", system) };
  },
  base: (c, _check, system) => ({
    M: said(Math.abs(c.base.moment), "moment", system),
    V: said(c.base.shear, "force", system),
  }),
};
