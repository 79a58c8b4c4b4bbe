import { siteRefusal } from "../checks/site.ts";
import { type Aim, isLeast, type Least } from "../model/aim.ts";
import type { AnchorPart, AnchorReaction, FootingLoads, FootingPart } from "../parts/types.ts";
import type { Problem } from "../problem/types.ts";

/** Tenths of a litre: concrete added up in whole numbers, so that sums never depend on their order. */
export const litres = (volume: number): number => Math.round(volume * 1e4);

/** What an aim may add up, in whole numbers: cents, concrete poured and ground dug in tenths of a litre. */
export interface Amounts {
  readonly cents: number;
  readonly concrete: number;
  readonly dug: number;
}

/**
 * The same with what the aim makes of them together: the least of it is more than the least of each by itself, for
 * the part that pours least is seldom the cheapest. The aim adds up as they do.
 */
export interface Aimed extends Amounts {
  readonly aimed: number;
}
export const NOTHING: Aimed = { cents: 0, concrete: 0, dug: 0, aimed: 0 };

/** Anchors of a star, all alike, and the base. */
export const starAmounts = (anchors: number, anchor: Aimed, footing: Aimed): Aimed => ({
  cents: anchors * anchor.cents + footing.cents,
  concrete: anchors * anchor.concrete + footing.concrete,
  dug: anchors * anchor.dug + footing.dug,
  aimed: anchors * anchor.aimed + footing.aimed,
});

/** Both are floors: so is the greater of each. */
export const greater = (a: Aimed, b: Aimed): Aimed => ({
  cents: Math.max(a.cents, b.cents),
  concrete: Math.max(a.concrete, b.concrete),
  dug: Math.max(a.dug, b.dug),
  aimed: Math.max(a.aimed, b.aimed),
});

/** A part with what the aim adds up. */
export interface Priced<T> extends Aimed {
  readonly part: T;
  /** Cents without concrete where that is bought for all holes together: what a part that pours less may be beaten by. */
  readonly apart: number;
}

/** Amounts that floors need to know beside the aim: the others stand at 0, and no part is asked for their sake. */
export interface Minded {
  readonly cents: boolean;
  readonly concrete: boolean;
  readonly dug: boolean;
}
export const ALL_MINDED: Minded = { cents: true, concrete: true, dug: true };
/** What the study caps. */
export const capped = ({ study }: Problem): Minded => {
  const { budget, concreteCap, digCap } = study.wishes;
  return { cents: budget !== undefined, concrete: concreteCap !== undefined, dug: digCap !== undefined };
};

/** Anchors and footings that the site allows, best first under the study's aim. */
export interface GroundChoices {
  /** Anchors of one hold of the problem. */
  readonly anchorsOf: (hold: number) => readonly Priced<AnchorPart>[];
  readonly footings: readonly Priced<FootingPart>[];
}

/** The aim as one whole number: cents, or volume first and cents to tell equals apart. */
export type Objective = (amounts: Amounts) => number;

const VOLUME_FIRST = 1e9;
const objectives: Readonly<Record<Least, Objective>> = {
  cost: ({ cents }) => cents,
  concrete: ({ cents, concrete }) => concrete * VOLUME_FIRST + cents,
  digging: ({ cents, dug }) => dug * VOLUME_FIRST + cents,
};
/** What the search makes least: cost where the aim is the most of something, which `pursue` asks for in turns. */
export const leastOfAim = (aim: Aim): Least => (isLeast(aim) ? aim : "cost");
export const objectiveOf = (problem: Problem): Objective => objectives[leastOfAim(problem.study.aim)];

/** An objective in the words of the aim: dollars, or m3. */
export const objectiveInWords = (aim: Aim, objective: number): number =>
  leastOfAim(aim) === "cost" ? objective / 100 : Math.floor(objective / VOLUME_FIRST) / 1e4;

/** Side of a base plate that parts are asked with at rest, m: under no load it is all the same. */
const LEAST_PLATE = 0.1;

export function groundChoices(problem: Problem): GroundChoices {
  const objective = objectiveOf(problem);
  const allowed = <T extends AnchorPart | FootingPart>(
    parts: readonly T[],
    atRest: (part: T) => number,
  ): Priced<T>[] =>
    parts
      // what is refused under no load at all, as a dowel where no rock is, need not be asked under any
      .filter((part) => siteRefusal(part, problem.ground) === null && atRest(part) < Number.POSITIVE_INFINITY)
      .map((part) => {
        const { concrete, dug } = part.takeOff;
        const amounts = { cents: part.cents, concrete: litres(concrete), dug: litres(dug) };
        return { part, ...amounts, apart: part.cents - part.concreteShare, aimed: objective(amounts) };
      })
      // a stable sort: the problem lists them by price, concrete and key
      .sort((a, b) => a.aimed - b.aimed);
  const still = { compression: 0, shear: 0, moment: 0 };
  const footings = allowed(problem.footings, (part) => part.floor(still, LEAST_PLATE));
  const ofHold = problem.holds.map(({ anchors }) => allowed(anchors, (part) => part.floor(0, 0)));
  return { anchorsOf: (hold) => ofHold[hold], footings };
}

/** How much a part is used; beyond `enough` any number beyond it will do. */
export type Asked<T> = (part: T, enough: number) => number;

/**
 * The least of the aim and of each amount that is minded, each by itself, of the parts that a floor does not refuse;
 * null where it refuses all.
 * @param parts best first under the aim
 */
export function leastOf<T>(
  parts: readonly Priced<T>[],
  use: Asked<T>,
  allowed: number,
  minded: Minded,
): Aimed | null {
  let first: Priced<T> | null = null;
  let cents = minded.cents ? Number.POSITIVE_INFINITY : 0;
  let concrete = minded.concrete ? Number.POSITIVE_INFINITY : 0;
  let dug = minded.dug ? Number.POSITIVE_INFINITY : 0;
  for (const priced of parts) {
    // nothing to gain: the floor need not be asked
    if (first && priced.cents >= cents && priced.concrete >= concrete && priced.dug >= dug) continue;
    if (use(priced.part, allowed) > allowed) continue;
    first ??= priced;
    cents = Math.min(cents, priced.cents);
    concrete = Math.min(concrete, priced.concrete);
    dug = Math.min(dug, priced.dug);
    if (!minded.cents && !minded.concrete && !minded.dug) break;
  }
  return first && { cents, concrete, dug, aimed: first.aimed };
}

export interface Chosen<T> extends Priced<T> {
  readonly use: number;
}

/** The first part that holds and all that cost the same: equals are told apart as whole designs. */
export function firstHolding<T>(parts: readonly Priced<T>[], use: Asked<T>, allowed: number): Chosen<T>[] {
  const found: Chosen<T>[] = [];
  for (const priced of parts) {
    if (found.length > 0 && priced.aimed > found[0].aimed) break;
    const here = use(priced.part, allowed);
    if (here <= allowed) found.push({ ...priced, use: here });
  }
  return found;
}

/**
 * Every part that no other beats in cents, concrete and use together. Concrete that is bought for all holes together
 * never costs less where more is poured: there cents are counted without it.
 * @param minded does digging count as well?
 */
export function nonDominated<T>(
  parts: readonly Priced<T>[],
  use: Asked<T>,
  allowed: number,
  leastUse: number,
  minded: boolean,
): Chosen<T>[] {
  const dug = (a: Amounts) => (minded ? a.dug : 0);
  const kept: Chosen<T>[] = [];
  const beaten = (priced: Priced<T>, here: number) => {
    for (const k of kept)
      if (k.use <= here && k.concrete <= priced.concrete && k.apart <= priced.apart && dug(k) <= dug(priced))
        return true;
    return false;
  };
  for (const priced of parts) {
    // a part that is used least already spares the question
    if (beaten(priced, leastUse)) continue;
    const here = Math.max(use(priced.part, allowed), leastUse);
    if (here > allowed || beaten(priced, here)) continue;
    kept.push({ ...priced, use: here });
  }
  return kept.filter(
    (a) =>
      !kept.some(
        (b) =>
          b !== a &&
          b.apart <= a.apart &&
          b.concrete <= a.concrete &&
          dug(b) <= dug(a) &&
          b.use <= a.use &&
          (b.apart < a.apart || b.concrete < a.concrete || dug(b) < dug(a) || b.use < a.use),
      ),
  );
}

/** Never above `anchorUse` of any set of reactions that holds these: a screw is turned in along the greatest of all. */
export const anchorFloor =
  (reactions: readonly AnchorReaction[]): Asked<AnchorPart> =>
  (part, enough) => {
    let most = 0;
    for (const { uplift, lateral } of reactions) {
      most = Math.max(most, part.floor(uplift, lateral, enough));
      if (most > enough) break;
    }
    return most;
  };
export const anchorUse =
  (reactions: readonly AnchorReaction[]): Asked<AnchorPart> =>
  (part, enough) =>
    part.worst(reactions, enough);
export const footingUse =
  (loads: readonly FootingLoads[], plate: number): Asked<FootingPart> =>
  (part, enough) =>
    part.worst(loads, plate, enough);
