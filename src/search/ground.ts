import { siteRefusal } from "../checks/site.ts";
import type { Study } from "../model/study.ts";
import type { AnchorPart, AnchorReaction, FootingLoads, FootingPart } from "../parts/types.ts";
import type { Problem } from "../problem/types.ts";

/** Tenths of a litre: concrete added up in whole numbers, so that sums never depend on their order. */
export const litres = (volume: number): number => Math.round(volume * 1e4);

/** A part with what the aim adds up. */
export interface Priced<T> {
  readonly part: T;
  readonly cents: number;
  readonly concrete: number;
}

/** Anchors and footings that the site allows, best first under the study's aim. */
export interface GroundChoices {
  readonly anchors: readonly Priced<AnchorPart>[];
  /** Of them those that hold their guys at this height above ground. */
  readonly anchorsAt: (head: number) => readonly Priced<AnchorPart>[];
  readonly footings: readonly Priced<FootingPart>[];
}

/** The aim as one whole number: cents, or concrete first and cents to tell equals apart. */
export type Objective = (cents: number, concrete: number) => number;

const CONCRETE_FIRST = 1e9;
export const objectiveOf = (problem: Problem): Objective =>
  problem.study.aim === "concrete"
    ? (cents, concrete) => concrete * CONCRETE_FIRST + cents
    : (cents) => cents;

/** An objective in the words of the aim: dollars, or m3 of concrete. */
export const objectiveInWords = (aim: Study["aim"], objective: number): number =>
  aim === "concrete" ? Math.floor(objective / CONCRETE_FIRST) / 1e4 : objective / 100;

export function groundChoices(problem: Problem): GroundChoices {
  const objective = objectiveOf(problem);
  const allowed = <T extends AnchorPart | FootingPart>(parts: readonly T[]): Priced<T>[] =>
    parts
      .filter((part) => siteRefusal(part, problem.ground) === null)
      .map((part) => ({ part, cents: part.cents, concrete: litres(part.takeOff.concrete) }))
      // a stable sort: the problem lists them by price, concrete and key
      .sort((a, b) => objective(a.cents, a.concrete) - objective(b.cents, b.concrete));
  const anchors = allowed(problem.anchors);
  const footings = allowed(problem.footings);
  const byHead = new Map<number, Priced<AnchorPart>[]>();
  for (const priced of anchors)
    byHead.set(priced.part.head, [...(byHead.get(priced.part.head) ?? []), priced]);
  return { anchors, anchorsAt: (head) => byHead.get(head) ?? [], footings };
}

/** Least cents and least concrete of the parts that a floor does not refuse; null where it refuses all. */
export function leastOf<T>(
  parts: readonly Priced<T>[],
  use: (part: T) => number,
  allowed: number,
): { cents: number; concrete: number } | null {
  let cents = Number.POSITIVE_INFINITY;
  let concrete = Number.POSITIVE_INFINITY;
  for (const priced of parts) {
    // nothing to gain: the floor need not be asked
    if (priced.cents >= cents && priced.concrete >= concrete) continue;
    if (use(priced.part) > allowed) continue;
    cents = Math.min(cents, priced.cents);
    concrete = Math.min(concrete, priced.concrete);
  }
  return cents === Number.POSITIVE_INFINITY ? null : { cents, concrete };
}

export interface Chosen<T> extends Priced<T> {
  readonly use: number;
}

/** The first part that holds and all that cost the same: equals are told apart as whole designs. */
export function firstHolding<T>(
  parts: readonly Priced<T>[],
  use: (part: T) => number,
  allowed: number,
  objective: Objective,
): Chosen<T>[] {
  const found: Chosen<T>[] = [];
  for (const priced of parts) {
    if (
      found.length > 0 &&
      objective(priced.cents, priced.concrete) > objective(found[0].cents, found[0].concrete)
    )
      break;
    const here = use(priced.part);
    if (here <= allowed) found.push({ ...priced, use: here });
  }
  return found;
}

/** Every part that no other beats in cents, concrete and use together. */
export function nonDominated<T>(
  parts: readonly Priced<T>[],
  use: (part: T) => number,
  allowed: number,
  leastUse: number,
): Chosen<T>[] {
  const kept: Chosen<T>[] = [];
  for (const priced of parts) {
    const here = Math.max(use(priced.part), leastUse);
    if (here > allowed) continue;
    if (kept.some((k) => k.cents <= priced.cents && k.concrete <= priced.concrete && k.use <= here)) continue;
    kept.push({ ...priced, use: here });
  }
  return kept.filter(
    (a) =>
      !kept.some(
        (b) =>
          b !== a &&
          b.cents <= a.cents &&
          b.concrete <= a.concrete &&
          b.use <= a.use &&
          (b.cents < a.cents || b.concrete < a.concrete || b.use < a.use),
      ),
  );
}

/** Never above `anchorUse` of any set of reactions that holds these: a screw is turned in along the greatest of all. */
export const anchorFloor = (reactions: readonly AnchorReaction[]) => (part: AnchorPart) => {
  let most = 0;
  for (const { uplift, lateral } of reactions) most = Math.max(most, part.floor(uplift, lateral));
  return most;
};
export const anchorUse = (reactions: readonly AnchorReaction[]) => (part: AnchorPart) =>
  part.worst(reactions);
export const footingUse = (loads: readonly FootingLoads[], plate: number) => (part: FootingPart) =>
  part.worst(loads, plate);
