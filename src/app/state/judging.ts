import { verify } from "../../checks/verify.ts";
import type { Design } from "../../model/design.ts";
import { designKey } from "../../model/design.ts";
import type { Verdict } from "../../model/verdict.ts";
import { compile } from "../../problem/compile.ts";
import type { Reading } from "./book.ts";

const problems = new WeakMap<
  Reading,
  { problem: ReturnType<typeof compile>; verdicts: Map<string, Verdict> }
>();

/** The only judge, for a single design that a plot handed over; some milliseconds, kept by reading and design. */
export const judge = (reading: Reading, design: Design): Verdict | null => {
  let known = problems.get(reading);
  if (!known) {
    known = { problem: compile(reading.study, reading.catalog), verdicts: new Map() };
    problems.set(reading, known);
  }
  const key = designKey(design);
  const kept = known.verdicts.get(key);
  if (kept) return kept;
  try {
    const verdict = verify(known.problem, design);
    known.verdicts.set(key, verdict);
    return verdict;
  } catch {
    // A design that names what this study does not have can't be judged, and what isn't judged isn't shown.
    return null;
  }
};
