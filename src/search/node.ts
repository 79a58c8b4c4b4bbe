import type { Strand } from "../model/catalog.ts";
import type { PlacedStar } from "../problem/star.ts";
import type { ArmModel } from "../problem/torque-arm.ts";
import type { PackageModel, StackModel } from "../problem/types.ts";
import type { Aimed, Amounts } from "./ground.ts";
import type { Level } from "./level-facts.ts";
import type { RootFloors } from "./root-floors.ts";
import type { Statics } from "./statics.ts";

/** One height, package and stack: the first choice, with what statics knows of it. */
export interface Root {
  /** Its place among the roots, the same in every worker. */
  readonly index: number;
  readonly pack: PackageModel;
  readonly stack: StackModel;
  /** At the top guys of every guyed completion; null where they meet the axis, and free-standing. */
  readonly arm: ArmModel | null;
  /** Antennas, steel, raising, permit: whole cents. */
  readonly cents: number;
  /** Candidate guy heights, bottom up, as indices into `statics.z`. */
  readonly candidates: readonly number[];
  readonly statics: Statics;
  readonly floors: RootFloors;
}

/** Least cents, concrete and digging of any completion. */
export const leastOfNode = ({ spent, ground: { cents, concrete, dug } }: Node): Amounts => ({
  cents: spent + cents,
  concrete,
  dug,
});

/** Least of the aim of any completion: all but the ground is cents alone, and the aim counts cents one by one. */
export const floorOf = ({ spent, ground }: Node): number => spent + ground.aimed;

/** The hold of the problem that a node's anchors are of. */
export const holdOf = ({ star }: Node): number => star?.hold ?? 0;

/**
 * A partial design: choices made top down, and what every completion must at least cost, pour and use. A step of the
 * search makes children and changes no node; only a later search changes those that are handed on to it.
 */
export interface Node {
  readonly stage: "root" | "levels" | "star" | "strands" | "structure" | "probed";
  readonly root: Root;
  /** Least cents of all but the ground of any completion. */
  readonly spent: number;
  /** Least that its anchors and base take; with the top guys as long as the star is not known. */
  readonly ground: Aimed;
  /** Least utilisation of any completion. */
  readonly use: number;
  /** Designs under this node. */
  readonly designs: number;
  readonly perLevel: 0 | 3 | 4;
  /** Guy heights so far, top down, as indices into `root.candidates`. */
  readonly levels: readonly number[];
  /** Where the anchors stand; null until chosen. */
  readonly star: PlacedStar | null;
  /** The levels on that star, top down; empty until it is chosen. */
  readonly guys: readonly Level[];
  /** Strands that the top guys may have in this share of the grid. */
  readonly topStrands: readonly Strand[];
  /** Uplift floor of the windward anchor and lateral pull, N, once the radius is known. */
  readonly uplift: number;
  readonly lateral: number;
  /** Least thrust on the base, N. */
  readonly thrust: number;
  /** Strands so far, top down. */
  readonly strands: readonly Strand[];
  /** Initial tensions, of breaking strength, top down; empty until chosen. */
  readonly tensions: readonly number[];
}

/** Levels of a node, top down, with a strand each: an arm is at the top alone. */
export const levelsOf = (
  { root, levels }: Pick<Node, "root" | "levels">,
  strand: (level: number) => Strand,
) =>
  levels.map((index, i) => ({
    height: root.statics.z[root.candidates[index]],
    strand: strand(i),
    arm: i === 0 ? root.arm : null,
  }));

/**
 * A list with one more at its end, and room for no others: spread and added to, it would have room for sixteen, and
 * a hard study keeps a hundred thousand of these.
 */
export function oneMore<T>(list: readonly T[], last: T): readonly T[] {
  const longer = new Array<T>(list.length + 1);
  for (let i = 0; i < list.length; i++) longer[i] = list[i];
  longer[list.length] = last;
  return longer;
}
