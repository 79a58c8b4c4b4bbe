/**
 * The mast as the solver sees it. SI; z up from the base; x and y horizontal in any right-handed frame, which
 * the solver turns so that the wind of a case blows along +x.
 */

export interface Segment {
  readonly from: number;
  readonly to: number;
  /** Bending stiffness, N m2. */
  readonly ei: number;
  /** Axial stiffness, N. */
  readonly ea: number;
  /** Shear stiffness of the bracing, N; Infinity where it does not give. */
  readonly ga: number;
  /** Dead weight, N/m. */
  readonly weight: number;
}

/** A weight fixed to the mast at z, carried `arm` above it on a pipe that turns with the mast. */
export interface PointWeight {
  readonly z: number;
  readonly weight: number;
  readonly arm: number;
}

export interface GuyLevel {
  readonly z: number;
  /** Anchor heads, a guy each; `tension` where it is not that of the level. */
  readonly anchors: readonly {
    readonly x: number;
    readonly y: number;
    readonly z: number;
    readonly tension?: number;
    /** Where its guy is not as the level's: hardware weighs more in a shorter guy. */
    readonly ea?: number;
    readonly weight?: number;
    /** Where it meets a torque arm, from the mast's axis; on the axis where left out. */
    readonly head?: { readonly x: number; readonly y: number };
    /** Which anchor of the star, where two guys share one; its place in this list where left out. */
    readonly anchor?: number;
  }[];
  readonly ea: number;
  /** Weight per unstressed length, N/m. */
  readonly weight: number;
  /** Tension at the anchor end when rigged: still air, plumb, reference temperature. N. */
  readonly tension: number;
}

export interface MastInput {
  readonly segments: readonly Segment[];
  readonly base: "pinned" | "fixed";
  /** Of a fixed base: what its footing resists turning with, N m/rad. Default Infinity: it does not turn. */
  readonly baseStiffness?: number;
  readonly pointWeights: readonly PointWeight[];
  /** Bottom up. */
  readonly levels: readonly GuyLevel[];
  /** Heights where the load steps or kinks. */
  readonly kinks?: readonly number[];
  /** Elements between supports; the one mesh of search and verdict uses `ELEMENTS_PER_SPAN`. */
  readonly elementsPerSpan?: number;
}

/** Wind force at z, with the moment of a force that acts above z on a pipe. */
export interface PointForce {
  readonly z: number;
  readonly force: number;
  readonly moment: number;
}

/** Turning force about the mast's axis at z, N m: what catches the wind beside the axis. */
export interface PointTorque {
  readonly z: number;
  /** Positive anticlockwise seen from above. */
  readonly torque: number;
}

export interface LoadCase {
  /** Unit vector the wind blows toward, in the frame of the anchors. */
  readonly toward: readonly [number, number];
  /** Wind on the mast, N/m, at z. */
  readonly line: (z: number) => number;
  readonly points: readonly PointForce[];
  /** Twist of the case; it may turn either way. Every z is that of a point weight, so that a node is there. */
  readonly torques?: readonly PointTorque[];
  /** Wind on a guy of each level that lies square to it, N per unstressed length. */
  readonly guyWind: readonly number[];
  /** Are the guys their own mirror image in the vertical plane of the wind? */
  readonly planar: boolean;
  /** Factor on all dead weight, the guys' too, against what stood when the mast was rigged. Default 1. */
  readonly dead?: number;
  /** What hangs on the mast beside its own weight, N/m at z: ice. */
  readonly added?: (z: number) => number;
  readonly addedPoints?: readonly PointWeight[];
  /** The same on a guy of each level, N per unstressed length. */
  readonly guyAdded?: readonly number[];
  /** Unstressed length of the guys of each level times this: 1 + alpha x temperature change. Default 1. */
  readonly guyStretch?: readonly number[];
  /** The one guy that is gone, indices into levels and anchors. Default none. */
  readonly lost?: { readonly level: number; readonly anchor: number };
  /** Strain that the mast would take freely: alpha x temperature change. Default 0. */
  readonly mastStrain?: number;
}

/** Three cubic elements per span: leg force within 0.4 % of ten (docs/theory/mast.md). */
export const ELEMENTS_PER_SPAN = 3;
