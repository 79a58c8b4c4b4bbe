import { type CatenaryState, catenaryState, riggedLength, solveCatenary } from "../guy/catenary.ts";
import { elementMatrices, MATRIX, shearRatio } from "./element.ts";
import { meshHeights } from "./mesh.ts";
import type { GuyLevel, LoadCase, MastInput } from "./types.ts";

export interface Guy {
  level: number;
  anchor: number;
  node: number;
  x: number;
  y: number;
  z: number;
  /** Where it meets a torque arm, from the mast's axis, in the frame of the anchors; 0, 0 on the axis. */
  headX: number;
  headY: number;
  ea: number;
  weight: number;
  length: number;
  /** Tension at the anchor when rigged, in the frame of the anchors. */
  readonly rigged: Float64Array;
  readonly state: CatenaryState;
  /** Load of the case, per unstressed length; anchor from the head at rest, head from the axis: frame of the wind. */
  qx: number;
  qy: number;
  qz: number;
  ax: number;
  ay: number;
  hx: number;
  hy: number;
  /** Unstressed length of the case over that when rigged. */
  stretch: number;
  /** Gone in the case: it pulls at nothing. */
  lost: boolean;
  /** In a plane state: the guy, solved before it, whose mirror image it is. */
  twin: Guy | null;
}

const newGuy = (): Guy => ({
  level: 0,
  anchor: 0,
  node: 0,
  x: 0,
  y: 0,
  z: 0,
  headX: 0,
  headY: 0,
  ea: 0,
  weight: 0,
  length: 0,
  rigged: new Float64Array(3),
  state: catenaryState(),
  qx: 0,
  qy: 0,
  qz: 0,
  ax: 0,
  ay: 0,
  hx: 0,
  hy: 0,
  stretch: 1,
  lost: false,
  twin: null,
});

const NONE = new Float64Array(0);
/** Where a guy without a torque arm meets the mast. */
const ON_AXIS = { x: 0, y: 0 };

/**
 * All that the steps of the method share: the mast cut into elements with its guys rigged, the case being solved,
 * and the arrays that the solution is worked out in. They are kept when another mast is rigged in its place, and may
 * then be longer than it asks: `nodes` and `elements` count.
 *
 * Displacements per node: w up, then (u, theta) along the wind and (v, phi) across it.
 */
export class MastState {
  nodes = 0;
  elements = 0;
  z = NONE;
  length = NONE;
  ei = NONE;
  ea = NONE;
  /** Dead weight per length of each element, N/m. */
  weight = NONE;
  /** Which segment each element lies in. */
  segment = new Int32Array(0);
  shear = NONE;
  kb = NONE;
  g0 = NONE;
  g1 = NONE;
  /** Mean tension of each element when rigged, N. */
  rigged = NONE;
  readonly guys: Guy[] = [];
  /** What rides at each node when rigged, N, and the same times how far above it and times that squared; guys with a third. */
  riding = NONE;
  ridingArm = NONE;
  ridingArm2 = NONE;
  /** Compression on the base when rigged, N. */
  riggedCompression = 0;
  /** Weight of mast and everything on it, without guys, N. */
  deadWeight = 0;
  /** Is the base held against turning? */
  fixed = false;
  /** What resists its turning where it is not held, N m/rad; 0 on a pin. */
  baseSpring = 0;
  deadLoad = NONE;
  deadLean = NONE;

  // the case being solved
  planes = 1;
  perNode = 3;
  /** Displacements, `perNode` to a node. */
  d = NONE;
  /** Mean tension of each element, N. */
  tension = NONE;
  /** Bending stiffness of each element with what its own weight takes or gives in the case. */
  ks = NONE;
  /** Wind of the case: consistent nodal load of each element (4) and its mean. */
  lineLoad = NONE;
  lineMean = NONE;
  /** Weight per length of each element in the case, N/m: also the slope of its axial tension. */
  pressing = NONE;
  /** Weight x arm at each node in the case: what a pipe above leans on its joint with. */
  lean = NONE;
  /** Vertical load at each node in the case, N up. */
  load = NONE;
  pointForce = NONE;
  pointMoment = NONE;
  /** What the case counts of dead weight and hangs beside it: what sways is told from it when it is asked for. */
  hung: Pick<LoadCase, "dead" | "addedPoints" | "guyAdded"> = {};
  /** As riding, in the case. */
  moving = NONE;
  movingArm = NONE;
  movingArm2 = NONE;
  /** Strain that the mast would take freely in the case. */
  mastStrain = 0;
  /** All loads of the case together, N: what an out-of-balance force is measured by. */
  loadScale = 1;
  iterations = 0;
  /** Are the guys of the last assembly solved to the end? */
  settled = true;
  /** Wind of the last case along the mast: cases that share it differ in where it blows only. */
  line: LoadCase["line"] | null = null;
  /** What the base pushes on the mast with: up, along, moment along, across, moment across. */
  readonly baseReaction = new Float64Array(5);

  // room to work in
  residual = NONE;
  step = NONE;
  /** Tangent, by blocks; `factor` leaves its factors here. */
  k = NONE;
  /** Tangent of the equilibrium, before anything factored it. */
  tangent = NONE;
  /** Every guy that there was ever room for. */
  private readonly allGuys: Guy[] = [];

  /** @throws RangeError where a guy can't be rigged at its tension */
  constructor(input: MastInput) {
    this.rig(input);
  }

  /**
   * Puts up this mast, in the room of the one before.
   * @throws RangeError where a guy can't be rigged at its tension; then nothing stands
   */
  rig(input: MastInput): void {
    const heights = meshHeights(input);
    this.nodes = heights.length;
    this.elements = heights.length - 1;
    if (heights.length > this.z.length) this.makeRoom(heights.length);
    const stiffness = input.base === "fixed" ? (input.baseStiffness ?? Number.POSITIVE_INFINITY) : 0;
    this.fixed = stiffness === Number.POSITIVE_INFINITY;
    this.baseSpring = this.fixed ? 0 : stiffness;
    this.line = null;
    this.z.set(heights);
    this.deadLoad.fill(0);
    this.deadLean.fill(0);
    this.riding.fill(0);
    this.ridingArm.fill(0);
    this.ridingArm2.fill(0);
    this.stackUp(input.segments);
    for (const { z, weight, arm } of input.pointWeights) {
      const node = this.nodeAt(z);
      this.deadLoad[node] -= weight;
      this.deadLean[node] += weight * arm;
      this.riding[node] += weight;
      this.ridingArm[node] += weight * arm;
      this.ridingArm2[node] += weight * arm * arm;
    }
    let dead = 0;
    for (let i = 0; i < this.nodes; i++) dead -= this.deadLoad[i];
    this.deadWeight = dead;
    this.guys.length = 0;
    // what the guys press the nodes down with, until the compression is summed
    const pull = this.load.fill(0);
    for (let level = 0; level < input.levels.length; level++) this.rigLevel(input.levels[level], level, pull);
    // compression when rigged, top down
    let compression = 0;
    for (let e = this.elements - 1; e >= 0; e--) {
      compression += pull[e + 1] - this.deadLoad[e + 1];
      // half the element's own weight is lumped at its upper node: that is the compression at its middle
      this.rigged[e] = -compression;
    }
    this.riggedCompression = compression - this.deadLoad[0];
  }

  private makeRoom(n: number): void {
    const m = n - 1;
    this.segment = new Int32Array(m);
    for (const each of ["length", "ei", "ea", "weight", "shear", "rigged", "tension"] as const)
      this[each] = new Float64Array(m);
    for (const each of ["lineMean", "pressing"] as const) this[each] = new Float64Array(m);
    for (const each of ["kb", "ks", "g0", "g1"] as const) this[each] = new Float64Array(m * MATRIX);
    this.lineLoad = new Float64Array(m * 4);
    for (const each of ["z", "deadLoad", "deadLean", "load", "lean", "pointForce", "pointMoment"] as const)
      this[each] = new Float64Array(n);
    for (const each of ["riding", "ridingArm", "ridingArm2"] as const) this[each] = new Float64Array(n);
    for (const each of ["moving", "movingArm", "movingArm2"] as const) this[each] = new Float64Array(n);
    for (const each of ["d", "residual", "step"] as const) this[each] = new Float64Array(n * 5);
    for (const each of ["k", "tangent"] as const) this[each] = new Float64Array(n * 5 * 10);
  }

  private stackUp(segments: MastInput["segments"]): void {
    for (let e = 0, index = 0; e < this.elements; e++) {
      const middle = 0.5 * (this.z[e] + this.z[e + 1]);
      while (middle > segments[index].to) index++;
      const { ei, ea, ga, weight } = segments[index];
      const length = this.z[e + 1] - this.z[e];
      this.length[e] = length;
      this.ei[e] = ei;
      this.ea[e] = ea;
      this.weight[e] = weight;
      this.segment[e] = index;
      this.shear[e] = shearRatio(ei, ga, length);
      elementMatrices(ei, length, this.shear[e], this.kb, this.g0, this.g1, e * MATRIX);
      this.deadLoad[e] -= 0.5 * weight * length;
      this.deadLoad[e + 1] -= 0.5 * weight * length;
    }
  }

  private rigLevel(level: GuyLevel, index: number, pull: Float64Array): void {
    const node = this.nodeAt(level.z);
    let span = -1;
    let length = 0;
    // what one guy pulls: its anchor, level for each metre of span and up, and the mast, up
    let outward = 0;
    let upward = 0;
    let downward = 0;
    let before: GuyLevel["anchors"][number] | null = null;
    for (let a = 0; a < level.anchors.length; a++) {
      const anchor = level.anchors[a];
      const rise = level.z - anchor.z;
      const ea = anchor.ea ?? level.ea;
      const weight = anchor.weight ?? level.weight;
      const { x: headX, y: headY } = anchor.head ?? ON_AXIS;
      const outX = anchor.x - headX;
      const outY = anchor.y - headY;
      const thisSpan = Math.sqrt(outX * outX + outY * outY);
      // the guys of an even star are alike: rig one
      const alike =
        before !== null &&
        Math.abs(thisSpan - span) <= 1e-12 * span &&
        Math.abs(before.z - anchor.z) <= 1e-12 &&
        before.tension === anchor.tension;
      before = anchor;
      if (!alike) {
        span = thisSpan;
        length = riggedLength(span, rise, anchor.tension ?? level.tension, ea, weight);
      }
      const g = this.guys.length;
      const guy = (this.allGuys[g] ??= newGuy());
      guy.level = index;
      guy.anchor = anchor.anchor ?? a;
      guy.node = node;
      guy.x = anchor.x;
      guy.y = anchor.y;
      guy.z = anchor.z;
      guy.headX = headX;
      guy.headY = headY;
      guy.ea = ea;
      guy.weight = weight;
      guy.length = length;
      if (!alike) {
        guy.state.h = 0;
        solveCatenary(span, 0, rise, length, ea, 0, 0, -weight, guy.state);
        outward = guy.state.ax / span;
        upward = guy.state.az;
        downward = guy.state.fz;
      }
      guy.rigged[0] = -outward * outX;
      guy.rigged[1] = -outward * outY;
      guy.rigged[2] = upward;
      pull[node] -= downward;
      this.riding[node] += (weight * length) / 3;
      this.guys.push(guy);
    }
  }

  nodeAt(z: number): number {
    for (let i = 0; i < this.nodes; i++) if (Math.abs(this.z[i] - z) < 1e-6) return i;
    throw new RangeError(`no node at ${z} m; expected one of the mesh's heights`);
  }

  /** Is this displacement of the base's node free? A base on a pin or a spring turns. */
  baseFree(component: number): boolean {
    return !this.fixed && (component === 2 || component === 4);
  }
}
