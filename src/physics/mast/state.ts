import { type CatenaryState, catenaryState, riggedLength, solveCatenary } from "../guy/catenary.ts";
import { elementMatrices, MATRIX, shearRatio } from "./element.ts";
import { meshHeights } from "./mesh.ts";
import type { LoadCase, MastInput } from "./types.ts";

export interface Guy {
  readonly level: number;
  readonly anchor: number;
  readonly node: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly ea: number;
  readonly weight: number;
  readonly length: number;
  /** Tension at the anchor when rigged, as a vector in the frame of the anchors. */
  readonly rigged: readonly [number, number, number];
  readonly state: CatenaryState;
  /** Load of the case, per unstressed length, and anchor, in the frame of the wind. */
  qx: number;
  qy: number;
  qz: number;
  ax: number;
  ay: number;
  /** Unstressed length of the case over that when rigged. */
  stretch: number;
  /** Gone in the case: it pulls at nothing. */
  lost: boolean;
  /** In a plane state: the guy, solved before it, whose mirror image it is. */
  twin: Guy | null;
}

/**
 * All that the steps of the method share: the mast cut into elements with its guys rigged, the case being solved,
 * and the arrays that the solution is worked out in. One allocation a structure, none a case.
 *
 * Displacements per node: w up, then (u, theta) along the wind and (v, phi) across it.
 */
export class MastState {
  readonly nodes: number;
  readonly elements: number;
  readonly z: Float64Array;
  readonly length: Float64Array;
  readonly ei: Float64Array;
  readonly ea: Float64Array;
  /** Dead weight per length of each element, N/m. */
  readonly weight: Float64Array;
  /** Which segment each element lies in. */
  readonly segment: Int32Array;
  readonly shear: Float64Array;
  readonly kb: Float64Array;
  readonly g0: Float64Array;
  readonly g1: Float64Array;
  /** Mean tension of each element when rigged, N. */
  readonly rigged: Float64Array;
  readonly guys: readonly Guy[];
  /** Point masses: what rides at each node, and how far above it; guys with a third of their weight. */
  readonly riding: { node: number; weight: number; arm: number }[] = [];
  /** Compression on the base when rigged, N. */
  readonly riggedCompression: number;
  /** Weight of mast and everything on it, without guys, N. */
  readonly deadWeight: number;
  /** Is the base held against turning? */
  readonly fixed: boolean;
  /** What resists its turning where it is not held, N m/rad; 0 on a pin. */
  readonly baseSpring: number;
  readonly deadLoad: Float64Array;
  readonly deadLean: Float64Array;

  // the case being solved
  planes = 1;
  perNode = 3;
  /** Displacements, `perNode` to a node. */
  readonly d: Float64Array;
  /** Mean tension of each element, N. */
  readonly tension: Float64Array;
  /** Bending stiffness of each element with what its own weight takes or gives in the case. */
  readonly ks: Float64Array;
  /** Wind of the case: consistent nodal load of each element (4) and its mean. */
  readonly lineLoad: Float64Array;
  readonly lineMean: Float64Array;
  /** Weight per length of each element in the case, N/m: also the slope of its axial tension. */
  readonly pressing: Float64Array;
  /** Weight x arm at each node in the case: what a pipe above leans on its joint with. */
  readonly lean: Float64Array;
  /** Vertical load at each node in the case, N up. */
  readonly load: Float64Array;
  readonly pointForce: Float64Array;
  readonly pointMoment: Float64Array;
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
  readonly residual: Float64Array;
  readonly step: Float64Array;
  /** Tangent, banded by rows; `factor` leaves its factors here. */
  readonly k: Float64Array;
  /** Tangent of the equilibrium, before anything factored it. */
  readonly tangent: Float64Array;
  readonly g0d = new Float64Array(8);

  /** @throws RangeError where a guy can't be rigged at its tension */
  constructor(input: MastInput) {
    const heights = meshHeights(input);
    const n = heights.length;
    const m = n - 1;
    this.nodes = n;
    this.elements = m;
    const stiffness = input.base === "fixed" ? (input.baseStiffness ?? Number.POSITIVE_INFINITY) : 0;
    this.fixed = stiffness === Number.POSITIVE_INFINITY;
    this.baseSpring = this.fixed ? 0 : stiffness;
    this.z = Float64Array.from(heights);
    this.length = new Float64Array(m);
    this.ei = new Float64Array(m);
    this.ea = new Float64Array(m);
    this.weight = new Float64Array(m);
    this.segment = new Int32Array(m);
    this.shear = new Float64Array(m);
    this.kb = new Float64Array(m * MATRIX);
    this.ks = new Float64Array(m * MATRIX);
    this.g0 = new Float64Array(m * MATRIX);
    this.g1 = new Float64Array(m * MATRIX);
    this.rigged = new Float64Array(m);
    this.tension = new Float64Array(m);
    this.lineLoad = new Float64Array(m * 4);
    this.lineMean = new Float64Array(m);
    this.deadLoad = new Float64Array(n);
    this.lean = new Float64Array(n);
    this.deadLean = new Float64Array(n);
    this.load = new Float64Array(n);
    this.pressing = new Float64Array(m);
    this.pointForce = new Float64Array(n);
    this.pointMoment = new Float64Array(n);
    this.d = new Float64Array(n * 5);
    this.residual = new Float64Array(n * 5);
    this.step = new Float64Array(n * 5);
    this.k = new Float64Array(n * 5 * 10);
    this.tangent = new Float64Array(n * 5 * 10);

    for (let e = 0; e < m; e++) {
      const middle = 0.5 * (heights[e] + heights[e + 1]);
      const index = input.segments.findIndex((s) => middle > s.from && middle < s.to);
      const s = input.segments[index];
      const length = heights[e + 1] - heights[e];
      this.length[e] = length;
      this.ei[e] = s.ei;
      this.ea[e] = s.ea;
      this.weight[e] = s.weight;
      this.segment[e] = index;
      this.shear[e] = shearRatio(s.ei, s.ga, length);
      elementMatrices(s.ei, length, this.shear[e], this.kb, this.g0, this.g1, e * MATRIX);
      this.deadLoad[e] -= 0.5 * s.weight * length;
      this.deadLoad[e + 1] -= 0.5 * s.weight * length;
    }
    for (const point of input.pointWeights) {
      const node = this.nodeAt(point.z);
      this.deadLoad[node] -= point.weight;
      this.deadLean[node] += point.weight * point.arm;
      this.riding.push({ node, weight: point.weight, arm: point.arm });
    }
    let dead = 0;
    for (let i = 0; i < n; i++) dead -= this.deadLoad[i];
    this.deadWeight = dead;

    const guys: Guy[] = [];
    const pull = new Float64Array(n);
    input.levels.forEach((level, levelIndex) => {
      const node = this.nodeAt(level.z);
      let span = -1;
      let rise = 0;
      let length = 0;
      let tension = Number.NaN;
      level.anchors.forEach((anchor, anchorIndex) => {
        const thisSpan = Math.hypot(anchor.x, anchor.y);
        const thisRise = level.z - anchor.z;
        const thisTension = anchor.tension ?? level.tension;
        const ea = anchor.ea ?? level.ea;
        const weight = anchor.weight ?? level.weight;
        // the guys of an even star are alike: rig one
        if (
          Math.abs(thisSpan - span) > 1e-12 * span ||
          Math.abs(thisRise - rise) > 1e-12 ||
          thisTension !== tension
        ) {
          span = thisSpan;
          rise = thisRise;
          tension = thisTension;
          length = riggedLength(span, rise, tension, ea, weight);
        }
        const state = catenaryState();
        solveCatenary(-anchor.x, -anchor.y, rise, length, ea, 0, 0, -weight, state);
        pull[node] -= state.fz;
        this.riding.push({ node, weight: (weight * length) / 3, arm: 0 });
        guys.push({
          level: levelIndex,
          anchor: anchorIndex,
          node,
          x: anchor.x,
          y: anchor.y,
          z: anchor.z,
          ea,
          weight,
          length,
          rigged: [state.ax, state.ay, state.az],
          state,
          qx: 0,
          qy: 0,
          qz: -weight,
          ax: anchor.x,
          ay: anchor.y,
          stretch: 1,
          lost: false,
          twin: null,
        });
      });
    });
    this.guys = guys;

    // compression when rigged, top down
    let compression = 0;
    for (let e = m - 1; e >= 0; e--) {
      compression += pull[e + 1] - this.deadLoad[e + 1];
      // half the element's own weight is lumped at its upper node: that is the compression at its middle
      this.rigged[e] = -compression;
    }
    this.riggedCompression = compression - this.deadLoad[0];
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
