import type { Design } from "../model/design.ts";
import { designKey } from "../model/design-key.ts";
import type { FrontPoint } from "./types.ts";

/** A complete design that the analysis passed, with all that ranks it. `verify` has the last word. */
export interface Candidate {
  readonly design: Design;
  readonly cents: number;
  readonly concrete: number;
  readonly objective: number;
  readonly use: number;
  /** Room of the worst anchor inside the lot, or of its guys beside power lines, m. */
  readonly spare: number;
  readonly key: string;
}

/** Two stars that fit the lot equally well differ by their rotation alone: the smaller one is taken. */
const sameButTurned = (a: Design, b: Design): boolean =>
  designKey({ ...a, guys: a.guys && { ...a.guys, rotation: 0 } }) ===
  designKey({ ...b, guys: b.guys && { ...b.guys, rotation: 0 } });

/** Cheaper first; equals by margin, then room on the lot, then key: the same answer whoever finds it first. */
export const better = (a: Candidate, b: Candidate | null): boolean => {
  if (!b) return true;
  if (a.objective !== b.objective) return a.objective < b.objective;
  // margins that differ by rounding only are one: unlike orders of summing must not choose
  if (Math.abs(a.use - b.use) > 1e-9) return a.use < b.use;
  if (Math.abs(a.spare - b.spare) > 1e-6) return a.spare > b.spare;
  const turn = (a.design.guys?.rotation ?? 0) - (b.design.guys?.rotation ?? 0);
  if (turn !== 0 && sameButTurned(a.design, b.design)) return turn < 0;
  return a.key < b.key;
};

/** A point of the front as the caller sees it. */
export const frontPoint = (candidate: Candidate): FrontPoint => ({
  cost: candidate.cents / 100,
  concrete: candidate.concrete / 1e4,
  margin: 1 / candidate.use - 1,
  design: candidate.design,
});
