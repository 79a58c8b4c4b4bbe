import type { AnchorChoice, Design, FootingChoice } from "../model/design.ts";
import type { Verdict } from "../model/verdict.ts";

/** A design together with the word of the only judge. */
export interface Judged {
  readonly design: Design;
  readonly verdict: Verdict;
}

/** How the answer was won: enough to repeat the claim "nothing cheaper is safe". */
export interface Proof {
  /** Designs on the grid, known before the search starts. */
  readonly gridSize: number;
  /** Designs whose fate is known, by analysis or by a bound. */
  readonly decided: number;
  /** Distinct structures on the grid, and those analysed. */
  readonly structures: number;
  readonly analysed: number;
  /** Designs removed by each rule. */
  readonly pruned: Readonly<Record<string, number>>;
  /** Nothing safe costs less than this (or, under another aim, uses less of it). */
  readonly bound: number;
  /** Objective of the incumbent less the bound; 0 where proven. Infinity where nothing safe is known. */
  readonly gap: number;
  readonly seconds: number;
  readonly workers: number;
}

/** A cheaper design that fails, and where. */
export interface Rejected {
  readonly design: Design;
  /** What it would save, in the catalog's currency. */
  readonly saves: number;
  /** Concrete that it would save, m3. */
  readonly savesConcrete: number;
  /** How it differs, in words of the site: "anchors at 26 ft, not 28" is put in units by the screen. */
  readonly change: Change;
  readonly failsIn: string;
  readonly utilisation: number;
}

/** One difference between two designs, as data. Lengths in metres; `from` and `to` of parts are row ids. */
export type Change =
  | { readonly what: "radius"; readonly from: number; readonly to: number }
  | { readonly what: "level"; readonly level: number; readonly from: number; readonly to: number }
  | { readonly what: "strand"; readonly level: number; readonly from: string; readonly to: string }
  | {
      readonly what: "section";
      readonly from: string;
      readonly to: string;
      readonly was: Design["stack"];
      readonly now: Design["stack"];
    }
  | {
      readonly what: "anchor";
      readonly from: string;
      readonly to: string;
      readonly was: AnchorChoice;
      readonly now: AnchorChoice;
    }
  | {
      readonly what: "footing";
      readonly from: string;
      readonly to: string;
      readonly was: FootingChoice;
      readonly now: FootingChoice;
    }
  /** Initial tension, share of breaking strength; of one level, or of all where it is null. */
  | { readonly what: "tension"; readonly level: number | null; readonly from: number; readonly to: number }
  | { readonly what: "levels"; readonly from: number; readonly to: number }
  /** Torque arm of the top guys; null where they meet the axis. */
  | { readonly what: "arm"; readonly from: string | null; readonly to: string | null };

export type Outcome =
  | { readonly status: "proven"; readonly best: Judged; readonly proof: Proof }
  | { readonly status: "stopped"; readonly best: Judged | null; readonly proof: Proof }
  | { readonly status: "none-safe"; readonly nearest: Judged | null; readonly proof: Proof };

/** What streams while it runs. */
export interface Progress {
  readonly proof: Proof;
  readonly best: Judged | null;
}

export interface FrontPoint {
  /** In the catalog's currency. */
  readonly cost: number;
  /** m3 in place. */
  readonly concrete: number;
  /** As far as the front counts it (`MARGIN_COUNTED`). */
  readonly margin: number;
  readonly design: Design;
}

export interface Front {
  readonly status: "proven" | "stopped";
  /** Below this cost the front is exact already: the search goes cheapest first. Null where all of it is. */
  readonly exactBelow: number | null;
  /** Sorted by cost, none better than another in all three. */
  readonly points: readonly FrontPoint[];
  readonly proof: Proof;
}

/** Cheapest safe design at one height and antenna area, or what stops it. */
export interface MapCell {
  readonly height: number;
  /** Effective area, m2. */
  readonly area: number;
  readonly cost: number | null;
  readonly concrete: number | null;
  readonly margin: number | null;
  readonly design: Design | null;
  /** Title of the check that fails in the nearest miss, where nothing is safe. */
  readonly stoppedBy: string | null;
}

export interface CostMap {
  readonly heights: readonly number[];
  readonly areas: readonly number[];
  /** Row by row, heights outer; a cell not reached yet is absent. */
  readonly cells: readonly MapCell[];
  readonly done: boolean;
}
