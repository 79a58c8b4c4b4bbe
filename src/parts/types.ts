import type { Insulator, Prices, RuleSet, Soil } from "../model/catalog.ts";
import type { AnchorChoice, FootingChoice } from "../model/design.ts";
import type { BarRun } from "../physics/concrete/bars.ts";
import type { FootingLoads, TakeOff } from "../physics/ground/loads.ts";
import type { GroundRules } from "../physics/ground/soil.ts";

/** What guys do to one anchor in one case, N: up, and towards the mast. */
export interface AnchorReaction {
  readonly uplift: number;
  readonly lateral: number;
}

/** The ground a part stands in and the rules it answers to. */
export interface Ground {
  readonly soil: Soil;
  readonly rules: RuleSet;
  readonly givens: GroundRules;
  readonly prices: Prices;
  /** Is concrete bought for all holes together, as it is sold? Then no part has a price of its own for it. */
  readonly concreteAsSold: boolean;
  /** Are the bars of a base bought in the lengths that they are sold in? Else by mass. */
  readonly barsAsSold: boolean;
  readonly frostDepth: number;
  readonly greatestDig: number;
  readonly waterTable: number;
  readonly pourBelowWater: boolean;
  /** Of the spring that a mast without guys is analysed on, N m/rad; absent means that its base does not turn. */
  readonly baseStiffness?: number;
  /** Base insulators to choose from; null where the mast stands on its footing itself. */
  readonly insulators: readonly Insulator[] | null;
  /** Of the mast's foot above its footing, m: what the tallest of them stands; a shorter one is packed up to it. */
  readonly stand: number;
}

/** Demand and capacity of one limit state at its worst case. SI. */
export interface Measure {
  readonly limitState: string;
  readonly demand: number;
  readonly capacity: number;
  readonly required: number;
  readonly source: string;
  /** Index into the reactions that were asked about. */
  readonly of: number;
  readonly note?: string;
}

/** Share of a capacity that a demand with its required factor uses. Hot. */
export const used = (demand: number, capacity: number, required: number): number =>
  demand <= 0 ? 0 : capacity <= 0 ? Number.POSITIVE_INFINITY : (demand * required) / capacity;

export const utilisation = ({
  demand,
  capacity,
  required,
}: Pick<Measure, "demand" | "capacity" | "required">): number => used(demand, capacity, required);

/** A thing bought beside concrete and digging. */
export interface Extra {
  readonly item: string;
  readonly price: number;
  readonly quantity: number;
  readonly unit: "each" | "m";
}

/** What every sized thing in the ground can say of itself. */
interface GroundPart {
  readonly takeOff: TakeOff;
  readonly extras: readonly Extra[];
  /** Grade to its underside, m; null where it is not dug. */
  readonly depth: number | null;
  /** Whole cents for one; where concrete is paid as it is sold, with the least that it adds to any purchase. */
  readonly cents: number;
  /** What of them is that least; 0 where concrete is paid by volume. */
  readonly concreteShare: number;
}

/** A sized anchor, ready to be asked. Same members for every kind: shared code never asks which kind. */
export interface AnchorPart extends GroundPart {
  readonly choice: AnchorChoice;
  /** Height of the guys' hold above grade, m. */
  readonly head: number;
  /** How far from its middle it lifts the ground, at grade, m; 0 where it lifts none. */
  readonly spread: number;
  /** Every bar in it, bought by mass; absent where none is listed: bought by the volume of concrete, or no concrete. */
  readonly cage?: readonly BarRun[];
  /**
   * Largest utilisation over the reactions. Hot: allocates nothing.
   * @param enough beyond this any number beyond it will do: most sizes of a list are too small by far
   */
  worst(reactions: readonly AnchorReaction[], enough?: number): number;
  /** Never above `worst` of any reactions of which one reaches this uplift and lateral pull, up to `enough`. */
  floor(uplift: number, lateral: number, enough?: number): number;
  measures(reactions: readonly AnchorReaction[]): Measure[];
}

export interface FootingPart extends GroundPart {
  readonly choice: FootingChoice;
  /** Every bar in it; empty where bars are bought by the volume of concrete. */
  readonly bars: readonly BarRun[];
  /** Stands on solid rock: frost does not lift it, IBC 1809.5. */
  readonly onRock: boolean;
  /** Moment at grade over turn, all of the base in contact, N m/rad; undefined where the soil states no modulus. */
  readonly rotationalStiffness: number | undefined;
  /**
   * Largest utilisation over the cases. Hot.
   * @param enough beyond this any number beyond it will do
   */
  worst(loads: readonly FootingLoads[], plate: number, enough?: number): number;
  /** Never above `worst` of any cases of which one has this compression and no less shear and moment. */
  floor(load: FootingLoads, plate: number): number;
  measures(loads: readonly FootingLoads[], plate: number): Measure[];
}

export type { FootingLoads, TakeOff };
