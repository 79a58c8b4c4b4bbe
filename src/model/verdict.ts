import type { Place } from "./place.ts";

/** What the numbers of a check are measured in; the screen and the sheets turn them into units. */
export type CheckUnit = "force" | "moment" | "pressure" | "length" | "volume" | "angle" | "ratio" | "money";

/**
 * One limit state at its worst place and case.
 * - `strength`: utilisation = demand x required / capacity, counts for the margin.
 * - `limit`: inside or outside (a window, a lot line), fails the design but has no margin.
 * - `warning`: never fails the design; always shown.
 */
export interface Check {
  /** Unique in a verdict: limit state and place. */
  readonly id: string;
  readonly limitState: string;
  /** As said on site: "Leg compression". */
  readonly title: string;
  readonly kind: "strength" | "limit" | "warning";
  /** "under the upper guys, 64 ft" is for the screen to word: here the place and its height. */
  readonly where: string;
  /** Height above the footing top, m, where the place has one. */
  readonly at?: number;
  readonly loadCase: string;
  /** Where in the study's ranges it is worst; absent where none are stated, or nothing that it reads is in them. */
  readonly place?: Place;
  readonly unit: CheckUnit;
  /** SI. */
  readonly demand: number;
  readonly capacity: number;
  /** Factor that demand must keep below capacity. */
  readonly required: number;
  /** demand x required / capacity; Infinity where it is unstable. */
  readonly utilisation: number;
  readonly passes: boolean;
  readonly source: string;
  /** One sentence where the number needs it: the hand way beside the exact one, "unstable under this load". */
  readonly note?: string;
}

/** What a line of the bill is for. Words for a reader are made from it: rows have names, lengths have units. */
export interface BillItem {
  /** "section", "strand", "base: concrete". */
  readonly item: string;
  /** Of guys, from 1 up, where it is for one level alone; and the anchor, where guys of a level differ. */
  readonly level?: number;
  readonly anchor?: number;
  /** Of the catalog: a section or a strand. */
  readonly row?: string;
  /** Of one piece, bar or reel, m. */
  readonly length?: number;
  /** What may also be bought whole: the plan of purchases sets itself beside these lines. */
  readonly material?: "concrete" | "bars";
}

export interface BillLine extends BillItem {
  readonly group: "antennas" | "sections" | "guys" | "anchors" | "footing" | "digging" | "raising" | "other";
  readonly quantity: number;
  readonly unit: "each" | "m" | "m3" | "m2" | "kg";
  /** Price of one unit, in the catalog's currency. */
  readonly price: number;
  /** Whole cents. */
  readonly amount: number;
}

export interface Bill {
  /** Whole cents made into the currency. */
  readonly total: number;
  readonly lines: readonly BillLine[];
}

/** How long it takes to build, by the price book's hours: an estimate, no part of any check. */
export interface Work {
  /** Of one pair of hands, s, and what it is made of. */
  readonly hands: number;
  readonly lines: readonly {
    readonly what: "setting up" | "digging" | "pouring" | "anchors" | "guys" | "raising" | "antennas";
    readonly hands: number;
  }[];
  /** That poured concrete hardens before guys pull at it, s; 0 where none is poured. */
  readonly curing: number;
}

/** Where the wind of a load case blows, and what it did. All SI, sampled along the mast, bottom up: ends and
 * vertex of the moment of each element, so that a joint stands twice. */
export interface CaseResponse {
  readonly id: string;
  readonly title: string;
  /** Direction the wind blows toward, degrees clockwise from anchor 1; null where still. */
  readonly windToward: number | null;
  readonly stable: boolean;
  /** Factor on the mast's compression at which the deformed mast buckles. */
  readonly bucklingFactor: number;
  /** The first sway frequencies of the mast as rigged, Hz, rising; in still air without ice only. */
  readonly frequencies?: readonly number[];
  readonly z: readonly number[];
  /** Along the wind and across it, m. */
  readonly along: readonly number[];
  readonly across: readonly number[];
  /** Resultant moment, with the sign of its part along the wind: positive bends the top downwind. N m. */
  readonly moment: readonly number[];
  readonly shear: readonly number[];
  /** N. */
  readonly compression: readonly number[];
  /** What each level of guys holds back along the wind, N, exactly and by hand; in wind on a guyed mast only. */
  readonly hand?: {
    readonly exact: readonly number[];
    readonly thrusts: readonly number[];
    /** Pull of one guy that stands alone against its thrust by hand, without its initial tension. */
    readonly tensions: readonly number[];
  };
  /** Turn about the axis, rad, and torque, N m, for torques of either sense; absent where nothing turns the mast. */
  readonly twist?: readonly number[];
  readonly torque?: readonly number[];
  readonly guys: readonly {
    readonly level: number;
    readonly anchor: number;
    readonly tensionAnchor: number;
    readonly tensionMast: number;
    readonly unstressedLength: number;
  }[];
  readonly anchors: readonly { readonly uplift: number; readonly lateral: number }[];
  readonly base: { readonly compression: number; readonly shear: number; readonly moment: number };
  /** Pressure of the wind at heights, Pa, for the drawing. */
  readonly pressure: readonly { readonly z: number; readonly q: number }[];
}

/** What `verify` says of a design under a study. Nothing is shown as safe without one that passes. */
export interface Verdict {
  readonly passes: boolean;
  /** 1 / largest utilisation of the strength checks - 1. */
  readonly smallestMargin: number;
  /** Sorted, the shortest road to failure first; limits and warnings last. */
  readonly checks: readonly Check[];
  readonly bill: Bill;
  /** Concrete in place, m3. */
  readonly concreteVolume: number;
  /** Ground dug, m3. */
  readonly dugVolume: number;
  readonly work: Work;
  /** What was assumed for want of a given, in sentences. */
  readonly assumptions: readonly string[];
  /** Of the place that leads the study's ranges. */
  readonly cases: readonly CaseResponse[];
}
