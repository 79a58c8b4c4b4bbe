import { type CatenaryState, catenaryState, riggedLength, solveCatenary } from "../guy/catenary.ts";
import { factor, solveFactored } from "./banded.ts";
import { elementMatrices, GAUSS3, lineLoadVector, MATRIX, shape, shapeSlope, shearRatio } from "./element.ts";
import { meshHeights } from "./mesh.ts";
import { largestEigenvalue } from "./tridiagonal.ts";
import type { LoadCase, MastInput } from "./types.ts";

/**
 * Of 18,000 random structures none that passed its leg check took more than 8 steps, and loading in steps
 * rescued none that failed: a mast that has not settled by then is called unstable.
 */
const NEWTON_STEPS = 20;
/** Out-of-balance force, as a share of the loads, at which equilibrium is called reached. */
const BALANCE = 1e-9;
/** A Newton step that moves the mast by more than this share of its height is cut. */
const LONGEST_STEP = 0.1;
const LANCZOS_STEPS = 60;
/** What is left of a new direction, against the eigenvalue, when it is rounding only. */
const SPENT = 1e-9;

interface Guy {
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
}

/**
 * A mast with its guys, in three dimensions or, where guys and wind share a mirror plane, in that plane: the same
 * code with fewer displacements per node. Build once a structure, then solve case after case; each case starts
 * from the rigged state, so that the answer never depends on the order of asking.
 *
 * Displacements per node: w up, then (u, theta) along the wind and (v, phi) across it.
 */
export class Mast {
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
  /** Weight per length of each element in the case, N/m: also the slope of its axial tension. */
  readonly pressing: Float64Array;
  /** Weight x arm at each node in the case: what a pipe above leans on its joint with. */
  readonly lean: Float64Array;
  readonly guys: readonly Guy[];
  /** Point masses: what rides at each node, and how far above it; guys with a third of their weight. */
  private readonly riding: { node: number; weight: number; arm: number }[] = [];
  /** Compression on the base when rigged, N. */
  readonly riggedCompression: number;
  /** Weight of mast and everything on it, without guys, N. */
  readonly deadWeight: number;

  // the case being solved
  planes = 1;
  perNode = 3;
  /** Displacements, `perNode` to a node. */
  readonly d: Float64Array;
  /** Mean tension of each element, N. */
  readonly tension: Float64Array;
  /** Wind of the case: consistent nodal load of each element (4) and its mean. */
  readonly lineLoad: Float64Array;
  readonly lineMean: Float64Array;
  iterations = 0;

  private readonly fixed: boolean;
  private readonly deadLoad: Float64Array;
  private readonly deadLean: Float64Array;
  /** Vertical load at each node in the case, N up. */
  private readonly load: Float64Array;
  private readonly pointForce: Float64Array;
  private readonly pointMoment: Float64Array;
  private readonly residual: Float64Array;
  private readonly step: Float64Array;
  private readonly k: Float64Array;
  private readonly g0d = new Float64Array(8);
  private loadScale = 1;

  /** @throws RangeError where a guy can't be rigged at its tension */
  constructor(input: MastInput) {
    const heights = meshHeights(input);
    const n = heights.length;
    const m = n - 1;
    this.nodes = n;
    this.elements = m;
    this.fixed = input.base === "fixed";
    this.z = Float64Array.from(heights);
    this.length = new Float64Array(m);
    this.ei = new Float64Array(m);
    this.ea = new Float64Array(m);
    this.weight = new Float64Array(m);
    this.segment = new Int32Array(m);
    this.shear = new Float64Array(m);
    this.kb = new Float64Array(m * MATRIX);
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
      level.anchors.forEach((anchor, anchorIndex) => {
        const thisSpan = Math.hypot(anchor.x, anchor.y);
        const thisRise = level.z - anchor.z;
        // the guys of a level star are alike: rig one
        if (Math.abs(thisSpan - span) > 1e-12 * span || Math.abs(thisRise - rise) > 1e-12) {
          span = thisSpan;
          rise = thisRise;
          length = riggedLength(span, rise, level.tension, level.ea, level.weight);
        }
        const state = catenaryState();
        solveCatenary(-anchor.x, -anchor.y, rise, length, level.ea, 0, 0, -level.weight, state);
        pull[node] -= state.fz;
        this.riding.push({ node, weight: (level.weight * length) / 3, arm: 0 });
        guys.push({
          level: levelIndex,
          anchor: anchorIndex,
          node,
          x: anchor.x,
          y: anchor.y,
          z: anchor.z,
          ea: level.ea,
          weight: level.weight,
          length,
          rigged: [state.ax, state.ay, state.az],
          state,
          qx: 0,
          qy: 0,
          qz: -level.weight,
          ax: anchor.x,
          ay: anchor.y,
          stretch: 1,
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

  /** Finds equilibrium from the rigged state. False where none is found: it is unstable under this load. */
  solve(load: LoadCase): boolean {
    this.planes = load.planar ? 1 : 2;
    this.perNode = load.planar ? 3 : 5;
    this.setLoads(load);
    this.rest(load);
    this.iterations = 0;
    this.buckling = null;
    return this.newton();
  }

  /** Factors the tangent that `solve` left; false where a pivot is not positive: the equilibrium is unstable. */
  stable(): boolean {
    const n = this.nodes * this.perNode;
    if (factor(this.k, n, 2 * this.perNode - 1) > 0) return false;
    if (this.planes === 2) return true;
    this.assembleAcross(1);
    return factor(this.k, this.nodes * 2, 3) === 0;
  }

  private rest(load: LoadCase): void {
    this.d.fill(0);
    const [cx, cy] = load.toward;
    for (const guy of this.guys) {
      const q = Math.hypot(guy.qx, guy.qy, guy.qz);
      const tx = cx * guy.rigged[0] + cy * guy.rigged[1];
      const ty = -cy * guy.rigged[0] + cx * guy.rigged[1];
      const tz = guy.rigged[2];
      const sigma = -(tx * guy.qx + ty * guy.qy + tz * guy.qz) / q;
      guy.state.sigma = sigma;
      guy.state.h = Math.sqrt(Math.max(tx * tx + ty * ty + tz * tz - sigma * sigma, 0));
    }
  }

  private setLoads(load: LoadCase): void {
    const [cx, cy] = load.toward;
    const dead = load.dead ?? 1;
    let scale = this.deadWeight;
    for (let i = 0; i < this.nodes; i++) {
      this.load[i] = dead * this.deadLoad[i];
      this.lean[i] = dead * this.deadLean[i];
    }
    for (const point of load.addedPoints ?? []) {
      const node = this.nodeAt(point.z);
      this.load[node] -= point.weight;
      this.lean[node] += point.weight * point.arm;
    }
    for (let e = 0; e < this.elements; e++) {
      const at = 4 * e;
      this.lineMean[e] = lineLoadVector(
        load.line,
        this.z[e],
        this.length[e],
        this.shear[e],
        this.lineLoad,
        at,
      );
      scale += Math.abs(this.lineMean[e]) * this.length[e];
      const added = load.added?.(this.z[e] + 0.5 * this.length[e]) ?? 0;
      this.pressing[e] = dead * this.weight[e] + added;
      this.load[e] -= 0.5 * added * this.length[e];
      this.load[e + 1] -= 0.5 * added * this.length[e];
    }
    this.pointForce.fill(0);
    this.pointMoment.fill(0);
    for (const point of load.points) {
      const node = this.nodeAt(point.z);
      this.pointForce[node] += point.force;
      this.pointMoment[node] += point.moment;
      scale += Math.abs(point.force);
    }
    for (const guy of this.guys) {
      guy.ax = cx * guy.x + cy * guy.y;
      guy.ay = -cy * guy.x + cx * guy.y;
      guy.stretch = load.guyStretch?.[guy.level] ?? 1;
      // wind square to the chord, taken to the chord as rigged: qw |e| e, e the wind's part across the guy
      const wind = load.guyWind[guy.level] ?? 0;
      const rise = this.z[guy.node] - guy.z;
      const chord = Math.hypot(guy.ax, guy.ay, rise);
      const along = -guy.ax / chord;
      const ex = 1 - along * along;
      const ey = (along * guy.ay) / chord;
      const ez = (-along * rise) / chord;
      const norm = Math.sqrt(ex * ex + ey * ey + ez * ez) * wind;
      guy.qx = norm * ex;
      guy.qy = norm * ey;
      guy.qz = norm * ez - dead * guy.weight - (load.guyAdded?.[guy.level] ?? 0);
      scale += guy.weight * guy.length;
    }
    this.mastStrain = load.mastStrain ?? 0;
    this.loadScale = scale;
  }
  private mastStrain = 0;
  /** Known for the state last solved: it is asked for more than once. */
  private buckling: number | null = null;

  private newton(): boolean {
    const per = this.perNode;
    const n = this.nodes * per;
    const longest = LONGEST_STEP * this.z[this.nodes - 1];
    for (let i = 0; i < NEWTON_STEPS; i++) {
      this.iterations++;
      const unbalanced = this.assemble();
      if (!Number.isFinite(unbalanced)) return false;
      if (unbalanced < BALANCE * this.loadScale) return true;
      factor(this.k, n, 2 * per - 1);
      const step = this.step;
      for (let j = 0; j < n; j++) step[j] = -this.residual[j];
      solveFactored(this.k, n, 2 * per - 1, step);
      let furthest = 0;
      for (let j = 0; j < n; j += per) {
        furthest = Math.max(furthest, Math.abs(step[j]), Math.abs(step[j + 1]));
        if (per === 5) furthest = Math.max(furthest, Math.abs(step[j + 3]));
      }
      if (!Number.isFinite(furthest)) return false;
      const cut = furthest > longest ? longest / furthest : 1;
      for (let j = 0; j < n; j++) this.d[j] += cut * step[j];
    }
    return false;
  }

  /** Residual and tangent of the present state; returns the greatest out-of-balance force (moments per metre). */
  private assemble(): number {
    const per = this.perNode;
    const band = 2 * per - 1;
    const width = band + 1;
    const n = this.nodes * per;
    const { d, k, residual: r, g0d } = this;
    k.fill(0, 0, n * width);
    for (let node = 0; node < this.nodes; node++) {
      const at = node * per;
      r[at] = -this.load[node];
      r[at + 1] = -this.pointForce[node];
      r[at + 2] = -this.pointMoment[node] - this.lean[node] * d[at + 2];
      k[(at + 2) * width + band] -= this.lean[node];
      if (per === 5) {
        r[at + 3] = 0;
        r[at + 4] = -this.lean[node] * d[at + 4];
        k[(at + 4) * width + band] -= this.lean[node];
      }
    }
    for (let e = 0; e < this.elements; e++) {
      const at = e * per;
      const up = at + per;
      const ge = e * MATRIX;
      const length = this.length[e];
      // mean tension: rigged, stretched by the ends and by bowing, less what warmth gives freely
      let bow = 0;
      for (let plane = 0; plane < this.planes; plane++) {
        const o = 1 + 2 * plane;
        const d0 = d[at + o];
        const d1 = d[at + o + 1];
        const d2 = d[up + o];
        const d3 = d[up + o + 1];
        for (let i = 0; i < 4; i++) {
          const row = ge + 4 * i;
          const value =
            this.g0[row] * d0 + this.g0[row + 1] * d1 + this.g0[row + 2] * d2 + this.g0[row + 3] * d3;
          g0d[4 * plane + i] = value;
          bow += value * (i === 0 ? d0 : i === 1 ? d1 : i === 2 ? d2 : d3);
        }
      }
      const axial = this.ea[e] / length;
      const tension = this.rigged[e] + axial * (d[up] - d[at] + 0.5 * bow - this.mastStrain * length);
      this.tension[e] = tension;
      r[at] -= tension;
      r[up] += tension;
      k[at * width + band] += axial;
      k[up * width + band] += axial;
      k[up * width + band - per] -= axial;
      const slope = this.pressing[e];
      for (let plane = 0; plane < this.planes; plane++) {
        const o = 1 + 2 * plane;
        for (let i = 0; i < 4; i++) {
          const gi = i < 2 ? at + o + i : up + o + i - 2;
          let force = 0;
          const g0i = g0d[4 * plane + i];
          for (let j = 0; j < 4; j++) {
            const gj = j < 2 ? at + o + j : up + o + j - 2;
            const m = ge + 4 * i + j;
            const c = this.kb[m] + tension * this.g0[m] + slope * this.g1[m];
            force += c * d[gj];
            if (j <= i) k[gi * width + band + gj - gi] += c + axial * g0i * g0d[4 * plane + j];
          }
          r[gi] += force;
          if (plane === 0) r[gi] -= this.lineLoad[4 * e + i];
          // bowing against the ends, and one plane against the other
          const coupling = axial * g0i;
          addSymmetric(k, width, band, gi, up, coupling);
          addSymmetric(k, width, band, gi, at, -coupling);
          if (plane === 1)
            for (let j = 0; j < 4; j++) {
              const gj = j < 2 ? at + 1 + j : up + 1 + j - 2;
              addSymmetric(k, width, band, gi, gj, coupling * g0d[j]);
            }
        }
      }
    }
    for (const guy of this.guys) {
      const at = guy.node * per;
      const v = per === 5 ? d[at + 3] : 0;
      const s = guy.state;
      const rise = this.z[guy.node] + d[at] - guy.z;
      solveCatenary(
        d[at + 1] - guy.ax,
        v - guy.ay,
        rise,
        guy.length * guy.stretch,
        guy.ea,
        guy.qx,
        guy.qy,
        guy.qz,
        s,
      );
      if (!s.converged) return Number.NaN;
      r[at] -= s.fz;
      r[at + 1] -= s.fx;
      k[at * width + band] += s.k[5];
      k[(at + 1) * width + band] += s.k[0];
      k[(at + 1) * width + band - 1] += s.k[2];
      if (per === 5) {
        r[at + 3] -= s.fy;
        k[(at + 3) * width + band] += s.k[3];
        k[(at + 3) * width + band - 3] += s.k[4];
        k[(at + 3) * width + band - 2] += s.k[1];
      }
    }
    this.hold(per, width, band);
    let worst = 0;
    for (let j = 0; j < n; j++) worst = Math.max(worst, Math.abs(r[j]));
    return worst;
  }

  /** The base: no displacement, and no rotation where fixed. What it takes for that is the reaction. */
  private hold(per: number, width: number, band: number): void {
    const { residual: r } = this;
    for (let c = 0; c < per; c++) {
      if (this.free(c)) continue;
      this.baseReaction[c] = r[c];
      r[c] = 0;
    }
    this.clamp(per, width, band);
  }

  private clamp(per: number, width: number, band: number): void {
    const { k } = this;
    for (let c = 0; c < per; c++) {
      if (this.free(c)) continue;
      for (let j = 0; j < 2 * per; j++) {
        if (j === c) k[c * width + band] = 1;
        else if (j < c) k[c * width + band + j - c] = 0;
        else k[j * width + band + c - j] = 0;
      }
    }
  }

  /** A pinned base turns. */
  private free(component: number): boolean {
    return !this.fixed && (component === 2 || component === 4);
  }

  /** What the base pushes on the mast with: up, along, moment along, across, moment across. */
  readonly baseReaction = new Float64Array(5);

  /** Tangent across the mirror plane of a planar state, the axial forces times `factor`. */
  private assembleAcross(compressionFactor: number): void {
    const width = 4;
    const { k } = this;
    k.fill(0, 0, this.nodes * 2 * width);
    for (let node = 0; node < this.nodes; node++)
      k[(2 * node + 1) * width + 3] -= compressionFactor * this.lean[node];
    for (let e = 0; e < this.elements; e++) {
      const ge = e * MATRIX;
      const tension = compressionFactor * this.tension[e];
      const slope = compressionFactor * this.pressing[e];
      for (let i = 0; i < 4; i++)
        for (let j = 0; j <= i; j++) {
          const m = ge + 4 * i + j;
          const gi = 2 * e + i;
          k[gi * width + 3 + j - i] += this.kb[m] + tension * this.g0[m] + slope * this.g1[m];
        }
    }
    for (const guy of this.guys) k[2 * guy.node * width + 3] += guy.state.k[3];
    for (let c = 0; c < (this.fixed ? 2 : 1); c++)
      for (let j = 0; j < 4; j++) {
        if (j === c) k[c * width + 3] = 1;
        else if (j < c) k[c * width + 3 + j - c] = 0;
        else k[j * width + 3 + c - j] = 0;
      }
  }

  /**
   * Would the state just solved still be stable with its compression times this factor? One factoring a plane
   * where `bucklingFactor` takes a dozen solutions.
   */
  standsAt(compressionFactor: number): boolean {
    this.assemble();
    const { perNode: per, k } = this;
    const width = 2 * per;
    const band = width - 1;
    const more = compressionFactor - 1;
    for (let plane = 0; plane < this.planes; plane++) {
      const o = 1 + 2 * plane;
      for (let node = 0; node < this.nodes; node++)
        k[(node * per + o + 1) * width + band] -= more * this.lean[node];
      for (let e = 0; e < this.elements; e++)
        for (let i = 0; i < 4; i++)
          for (let j = 0; j <= i; j++) {
            const m = e * MATRIX + 4 * i + j;
            const gi = (i < 2 ? e : e + 1) * per + o + (i % 2);
            const gj = (j < 2 ? e : e + 1) * per + o + (j % 2);
            k[gi * width + band + gj - gi] +=
              more * (this.tension[e] * this.g0[m] + this.pressing[e] * this.g1[m]);
          }
    }
    this.clamp(per, width, band);
    if (factor(k, this.nodes * per, band) > 0) return false;
    if (this.planes === 2) return true;
    this.assembleAcross(compressionFactor);
    return factor(k, this.nodes * 2, 3) === 0;
  }

  /**
   * Factor on the mast's compression at which the state just solved buckles: the tangent, linearised there, loses
   * its stiffness. 0 where it has none left; Infinity where nothing compresses.
   */
  bucklingFactor(): number {
    if (this.buckling !== null) return this.buckling;
    this.assemble();
    let least = factorOf(this.largest(this.softening, this.perNode, this.planes, 1));
    if (this.planes === 1) {
      this.assembleAcross(1);
      least = Math.min(least, factorOf(this.largest(this.softening, 2, 1, 0)));
    }
    this.buckling = least;
    return least;
  }

  /**
   * First sway frequency of the state just solved, Hz: its tangent against the mass that hangs on it. Guys count
   * with a third of their mass, as a string whose one end moves (Rayleigh).
   */
  swayFrequency(): number {
    this.assemble();
    const mu = this.largest(this.inertia, this.perNode, this.planes, 1);
    return mu === Number.POSITIVE_INFINITY ? 0 : Math.sqrt(1 / mu) / (2 * Math.PI);
  }

  /** y = M x: distributed mass by the shape functions, point masses where they ride. */
  private inertia(x: Float64Array, y: Float64Array, per: number, planes: number, offset: number): void {
    y.fill(0, 0, this.nodes * per);
    const n = slopes;
    for (let e = 0; e < this.elements; e++) {
      const mass = (this.pressing[e] * this.length[e]) / GRAVITY;
      for (let plane = 0; plane < planes; plane++) {
        const low = e * per + offset + 2 * plane;
        const up = low + per;
        for (const [xi, weight] of GAUSS3) {
          shape(xi, this.length[e], this.shear[e], n, 0);
          const u = n[0] * x[low] + n[1] * x[low + 1] + n[2] * x[up] + n[3] * x[up + 1];
          const force = weight * mass * u;
          y[low] += force * n[0];
          y[low + 1] += force * n[1];
          y[up] += force * n[2];
          y[up + 1] += force * n[3];
        }
      }
    }
    for (const { node, weight, arm } of this.riding)
      for (let plane = 0; plane < planes; plane++) {
        const at = node * per + offset + 2 * plane;
        const force = (weight / GRAVITY) * (x[at] + arm * x[at + 1]);
        y[at] += force;
        y[at + 1] += arm * force;
      }
  }

  /**
   * Lanczos on K^-1 A in the inner product of K: with K v = p carried along, a step costs one product with A and
   * one solution. Returns the largest eigenvalue; Infinity where K is not positive definite.
   */
  private largest(operator: Operator, per: number, planes: number, offset: number): number {
    const n = this.nodes * per;
    const band = 2 * per - 1;
    if (factor(this.k, n, band) > 0) return Number.POSITIVE_INFINITY;
    const steps = Math.min(LANCZOS_STEPS, n);
    const basis = (step: number) => (this.basis[step] ??= new Float64Array(this.nodes * 5));
    const forces = (step: number) => (this.forces[step] ??= new Float64Array(this.nodes * 5));
    // an arbitrary force that no mode is square to, and what it does
    let p = forces(0);
    let v = basis(0);
    for (let node = 0; node < this.nodes; node++)
      for (let c = 0; c < per; c++) p[node * per + c] = c < offset ? 0 : 1 + 0.37 * Math.sin(1.7 * node + c);
    this.release(p, per, offset);
    v.set(p);
    solveFactored(this.k, n, band, v);
    scale(v, p, 1 / Math.sqrt(dot(v, p, n)), n);
    let mu = 0;
    let calm = 0;
    for (let step = 0; step < steps; step++) {
      const y = forces(step + 1);
      const u = basis(step + 1);
      operator.call(this, v, y, per, planes, offset);
      this.release(y, per, offset);
      this.alphas[step] = dot(v, y, n);
      u.set(y);
      solveFactored(this.k, n, band, u);
      // against all that came before, twice: without it, rounding revives modes that are known already
      for (let pass = 0; pass < 2; pass++)
        for (let k = step; k >= 0; k--) {
          const share = dot(u, forces(k), n);
          const vk = basis(k);
          const pk = forces(k);
          for (let j = 0; j < n; j++) {
            u[j] -= share * vk[j];
            y[j] -= share * pk[j];
          }
        }
      const next = largestEigenvalue(this.alphas, this.betas, step + 1);
      // two modes close together hold it for a step or two at a value between them
      calm = Math.abs(next - mu) < 1e-10 * Math.abs(next) ? calm + 1 : 0;
      mu = next;
      const left = dot(u, y, n);
      // nothing new is left: the modes that the start can reach are all found
      if (calm === 3 || !(left > (SPENT * mu) ** 2)) break;
      this.betas[step] = Math.sqrt(left);
      scale(u, y, 1 / this.betas[step], n);
      v = u;
      p = y;
    }
    return mu;
  }
  private readonly basis: Float64Array[] = [];
  private readonly forces: Float64Array[] = [];
  private readonly alphas = new Float64Array(LANCZOS_STEPS);
  private readonly betas = new Float64Array(LANCZOS_STEPS);

  /** y = -Kg x: what compression takes from the stiffness. */
  private softening(x: Float64Array, y: Float64Array, per: number, planes: number, offset: number): void {
    y.fill(0, 0, this.nodes * per);
    for (let node = 0; node < this.nodes; node++)
      for (let plane = 0; plane < planes; plane++) {
        const at = node * per + offset + 2 * plane + 1;
        y[at] = this.lean[node] * x[at];
      }
    for (let e = 0; e < this.elements; e++) {
      const ge = e * MATRIX;
      for (let plane = 0; plane < planes; plane++) {
        const low = e * per + offset + 2 * plane;
        for (let i = 0; i < 4; i++) {
          let sum = 0;
          for (let j = 0; j < 4; j++) {
            const m = ge + 4 * i + j;
            const gj = j < 2 ? low + j : low + per + j - 2;
            sum += (this.tension[e] * this.g0[m] + this.pressing[e] * this.g1[m]) * x[gj];
          }
          y[i < 2 ? low + i : low + per + i - 2] -= sum;
        }
      }
    }
  }

  /** Held displacements of the base stay zero. */
  private release(x: Float64Array, per: number, offset: number): void {
    for (let c = 0; c < per; c++) {
      const rotation = (c - offset) % 2 === 1 && c >= offset;
      if (this.fixed || !rotation) x[c] = 0;
    }
  }

  /** Slope of the mast's axis at an end of an element, shear slope included. */
  slopeAt(e: number, xi: 0 | 1, plane: number): number {
    const n = slopes;
    shapeSlope(xi, this.length[e], this.shear[e], n, 0);
    const low = e * this.perNode + 1 + 2 * plane;
    const up = low + this.perNode;
    return n[0] * this.d[low] + n[1] * this.d[low + 1] + n[2] * this.d[up] + n[3] * this.d[up + 1];
  }
}

/** Standard gravity, m/s2. */
const GRAVITY = 9.80665;

type Operator = (
  this: Mast,
  x: Float64Array,
  y: Float64Array,
  per: number,
  planes: number,
  offset: number,
) => void;

/** The factor on compression at which K + (factor - 1) Kg is singular, from the largest eigenvalue of K^-1 (-Kg). */
const factorOf = (mu: number): number =>
  mu === Number.POSITIVE_INFINITY ? 0 : mu > 0 ? 1 + 1 / mu : Number.POSITIVE_INFINITY;

const slopes = new Float64Array(4);

function scale(a: Float64Array, b: Float64Array, factor: number, n: number): void {
  for (let i = 0; i < n; i++) {
    a[i] *= factor;
    b[i] *= factor;
  }
}

function dot(a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += a[i] * b[i];
  return sum;
}

function addSymmetric(
  k: Float64Array,
  width: number,
  band: number,
  i: number,
  j: number,
  value: number,
): void {
  if (i >= j) k[i * width + band + j - i] += value;
  else k[j * width + band + i - j] += value;
}
