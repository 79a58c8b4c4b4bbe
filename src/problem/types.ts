import type { Catalog, Pipe, Prices, RuleSet, Section, Soil, Strand } from "../model/catalog.ts";
import type { Place } from "../model/place.ts";
import type { AntennaPackage, Study } from "../model/study.ts";
import type { BillLine } from "../model/verdict.ts";
import type { AnchorPart, FootingPart, Ground } from "../parts/types.ts";
import type { LatticeProperties } from "../physics/steel/lattice.ts";
import type { Icing } from "./iced.ts";
import type { Hold, PlacedStar } from "./star.ts";
import type { ArmModel } from "./torque-arm.ts";

/** A section of the catalog with what its members make of it. SI; strengths nominal. */
export interface SectionModel {
  readonly row: Section;
  readonly lattice: LatticeProperties;
  /** Drag factor x solid area of a face, worst direction, m2 per m of height. */
  readonly dragWidth: number;
  /** The same of one leg alone. */
  readonly legDragWidth: number;
}

/** What the wind and the scales know of an antenna. */
export interface AntennaModel {
  readonly name: string;
  /** From the mast's axis to the middle of its wind and weight, m. */
  readonly offset: number;
  /** As stated, m2. */
  readonly area: number;
  /** Drag factor x area, m2. */
  readonly dragArea: number;
  /** N. */
  readonly weight: number;
  /** Under the study's ice, where its maker states them: drag factor x area, and weight of the ice alone. */
  readonly icedDragArea?: number;
  readonly icedWeight?: number;
}

/** On the pipe. */
export interface MountedAntenna extends AntennaModel {
  /** Above the mast top, m. */
  readonly above: number;
}

/** Beside the mast. */
export interface SideAntenna extends AntennaModel {
  readonly from: "base" | "top";
  /** Up from the base or down from the top, m. */
  readonly distance: number;
}

/**
 * Height of an antenna beside a mast of this height, m over the base. A study's own masts are all high enough for it;
 * the map asks for lower ones too, where it stands at the end of the mast.
 */
export const sideHeight = ({ from, distance }: SideAntenna, mast: number): number =>
  from === "base" ? Math.min(distance, mast) : Math.max(mast - distance, 0);

/** A set of antennas on its pipe. */
export interface PackageModel {
  readonly row: AntennaPackage;
  /** On the pipe, and beside the mast. */
  readonly antennas: readonly MountedAntenna[];
  readonly sides: readonly SideAntenna[];
  readonly pipe: Pipe;
  /** Nominal bending strength of the pipe, N m. */
  readonly pipeStrength: number;
  /** m2/m. */
  readonly pipeDragWidth: number;
  /** Pipe above the mast top, m; the rest of it stands inside the mast. 0, and no pipe, where nothing is on it. */
  readonly exposed: number;
  readonly pipeWeight: number;
  /** Drag factor x width of cables and ladder along the mast, m2/m. */
  readonly runDragWidth: number;
  readonly lines: readonly BillLine[];
  readonly cents: number;
}

/** One way to build a height from sections that fit together, bottom up. */
export interface StackModel {
  readonly parts: readonly { readonly section: SectionModel; readonly length: number }[];
  readonly height: number;
  readonly lines: readonly BillLine[];
  readonly cents: number;
}

/** Another place of the study's ranges that a design must be safe at: what differs there. */
export interface Elsewhere extends Pick<Problem, "pressure" | "guyPressure" | "iced" | "sections"> {
  readonly place: Place;
  readonly site: Study["site"];
}

/**
 * A study ready to be computed with: every choice listed, every price in cents. Built once, read by all. Where the
 * study states ranges, all of it is said of the place that leads them, and `elsewhere` has the others.
 */
export interface Problem {
  readonly study: Study;
  readonly catalog: Catalog;
  readonly rules: RuleSet;
  readonly soil: Soil;
  readonly prices: Prices;
  readonly ground: Ground;
  /** Design wind pressure at z, Pa: basis, gust and load factor inside. */
  readonly pressure: (z: number) => number;
  /** The even pressure that stands for it on a guy between two heights, Pa. */
  readonly guyPressure: (from: number, to: number) => number;
  readonly roundFactor: number;
  /** Ice on a mast of a height; null where the study states none. */
  readonly iced: Icing | null;
  readonly sections: ReadonlyMap<string, SectionModel>;
  /** Why a section of the catalog is outside what steel or wind of the study cover. */
  readonly uncovered: ReadonlyMap<string, string>;
  readonly packages: readonly PackageModel[];
  readonly heights: readonly number[];
  /** Stacks by index of `heights`. */
  readonly stacks: readonly (readonly StackModel[])[];
  readonly strands: readonly Strand[];
  /** Torque arms that the top guys may meet. */
  readonly arms: readonly ArmModel[];
  readonly levelHeights: readonly number[];
  readonly radii: readonly number[];
  readonly rotations: readonly number[];
  /** Anchors that may stand in the same places; every one of `anchors` is in one of them. */
  readonly holds: readonly (Hold & { readonly anchors: readonly AnchorPart[] })[];
  /** Stars of the grid by guys per level: one for each that is another mast. */
  readonly stars: ReadonlyMap<3 | 4, readonly PlacedStar[]>;
  /** Cheapest first; all of the grid, those that the site refuses too. */
  readonly anchors: readonly AnchorPart[];
  readonly footings: readonly FootingPart[];
  readonly place: Place;
  readonly elsewhere: readonly Elsewhere[];
  /** Greatest utilisation that the wished margin leaves: 1 / (1 + margin). */
  readonly allowed: number;
  readonly assumptions: readonly string[];
}
