import type { Judged, Outcome, Proof } from "../../search/types.ts";
import type { Book, Reading } from "./book.ts";

/** What the Answer page may say: a design is called safe only where its verdict passes. */
export type Answer =
  | { readonly kind: "starting" }
  | { readonly kind: "broken"; readonly message: string }
  | (Base & { readonly kind: "searching"; readonly best: Judged | null; readonly proof: Proof | null })
  | (Base & { readonly kind: "proven"; readonly best: Judged; readonly proof: Proof })
  | (Base & { readonly kind: "stopped"; readonly best: Judged | null; readonly proof: Proof })
  | (Base & { readonly kind: "none-safe"; readonly nearest: Judged | null; readonly proof: Proof })
  | (Base & { readonly kind: "unsafe"; readonly best: Judged; readonly proof: Proof });
interface Base {
  readonly reading: Reading;
  /** Stands for givens that have been changed since. */
  readonly former: boolean;
  /** How far the search for the changed givens has come. */
  readonly seeking?: Proof | null;
}

const ended = (reading: Reading, outcome: Outcome, former: boolean): Answer => {
  if (outcome.status === "none-safe")
    return { kind: "none-safe", reading, former, nearest: outcome.nearest, proof: outcome.proof };
  const { best, proof } = outcome;
  // The search never hands over a failing design; if it did, this page would still not call it safe.
  if (best && !best.verdict.passes) return { kind: "unsafe", reading, former, best, proof };
  if (outcome.status === "stopped") return { kind: "stopped", reading, former, best, proof };
  return { kind: "proven", reading, former, best: outcome.best, proof };
};

export const answerOf = ({ finding, former }: Pick<Book, "finding" | "former">): Answer => {
  if (finding.state === "broken") return { kind: "broken", message: finding.message };
  if (finding.state === "ended") return ended(finding.reading, finding.outcome, false);
  if (finding.state === "waiting") return { kind: "starting" };
  const { reading, progress } = finding;
  const best = progress?.best ?? null;
  if (best?.verdict.passes)
    return { kind: "searching", reading, former: false, best, proof: progress!.proof };
  // Until the first safe design of the new givens, the old answer stays and says for which givens it stands.
  if (former)
    return { ...ended(former.reading, former.outcome, true), seeking: progress?.proof ?? null } as Answer;
  return { kind: "searching", reading, former: false, best: null, proof: progress?.proof ?? null };
};

/** The design that the drawings show: the answer, or the nearest miss, which is drawn crossed. */
export const judgedOf = (answer: Answer): Judged | null => {
  if (answer.kind === "starting" || answer.kind === "broken") return null;
  return answer.kind === "none-safe" ? answer.nearest : answer.best;
};
