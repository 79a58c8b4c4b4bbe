import type { TorqueArm } from "../model/catalog.ts";
import type { AntennaModel } from "./types.ts";

/** A torque arm of the catalog with what the wind and the scales know of it. */
export interface ArmModel {
  readonly row: TorqueArm;
  /** As an antenna on the axis. */
  readonly hung: AntennaModel;
}

/**
 * Where the tips stand: each between two anchors, so that an anchor's two guys run to the tips 60 degrees to either
 * side of it. Toward the anchor and aside, over the arm's length.
 */
const TOWARD = 0.5;
const ASIDE = Math.sqrt(3) / 2;

/** The heads of an anchor's two guys from the axis, toward the anchor and to its left, m. */
export const tipsOf = ({ row: { length } }: ArmModel): readonly (readonly [number, number])[] => [
  [TOWARD * length, -ASIDE * length],
  [TOWARD * length, ASIDE * length],
];

/** How far the heads stand in from the axis toward their anchor, m; 0 without an arm. */
export const insetOf = (arm: ArmModel | null | undefined): number => (arm ? TOWARD * arm.row.length : 0);

/** Level distance from an anchor to the head of its guy, m. */
export const guySpan = (radius: number, arm: ArmModel | null | undefined): number =>
  arm ? Math.hypot(radius - insetOf(arm), ASIDE * arm.row.length) : radius;

/** Guys of one level that share an anchor. */
export const guysAtAnchor = (arm: ArmModel | null | undefined): 1 | 2 => (arm ? 2 : 1);
