import { verify } from "../../checks/verify.ts";
import type { Design } from "../../model/design.ts";
import { designKey } from "../../model/design-key.ts";
import type { Verdict } from "../../model/verdict.ts";
import { compile } from "../../problem/compile.ts";
import { problemAt } from "../../search/map.ts";
import type { Reading } from "./book.ts";
import type { Taken } from "./plots.ts";

const kept = new WeakMap<Reading, Map<string, Verdict>>();

/**
 * The only judge, for a single design that a plot handed over; some milliseconds, kept by reading and design. A cell
 * of the map is judged under that cell's height and area, which are not the study's own.
 */
export const judge = (reading: Reading, design: Design, at: Taken["at"] = null): Verdict | null => {
  const verdicts = kept.get(reading) ?? new Map<string, Verdict>();
  kept.set(reading, verdicts);
  const key = `${designKey(design)}${at ? `@${at.height}/${at.area}` : ""}`;
  const known = verdicts.get(key);
  if (known) return known;
  try {
    const { study, catalog } = reading;
    const problem = at ? problemAt(study, catalog, at.height, at.area) : compile(study, catalog);
    const verdict = verify(problem, design);
    verdicts.set(key, verdict);
    return verdict;
  } catch {
    // A design that names what this study does not have can't be judged, and what isn't judged isn't shown.
    return null;
  }
};
