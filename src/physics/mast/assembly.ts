import { mirrorState, solveCatenary } from "../guy/catenary.ts";
import { MATRIX } from "./element.ts";
import type { Guy, MastState } from "./state.ts";

/**
 * Residual and tangent of the present state; returns the greatest out-of-balance force (moments per metre).
 * @param near how nearly the guys must be solved: `solveCatenary`
 */
export function assemble(mast: MastState, near = 0): number {
  const per = mast.perNode;
  const width = 2 * per;
  const n = mast.nodes * per;
  const { d, k, residual: r, load, pointForce, pointMoment, lean } = mast;
  k.fill(0, 0, n * width);
  for (let node = 0; node < mast.nodes; node++) {
    const at = node * per;
    const own = at * width + per;
    r[at] = -load[node];
    r[at + 1] = -pointForce[node];
    r[at + 2] = -pointMoment[node] - lean[node] * d[at + 2];
    k[own + 2 * width + 2] = -lean[node];
    if (per === 5) {
      r[at + 3] = 0;
      r[at + 4] = -lean[node] * d[at + 4];
      k[own + 4 * width + 4] = -lean[node];
    }
  }
  for (let e = 0; e < mast.elements; e++) assembleElement(mast, e);
  if (mast.baseSpring > 0)
    for (let c = 2; c < per; c += 2) {
      r[c] += mast.baseSpring * d[c];
      mast.baseReaction[c] = -mast.baseSpring * d[c];
      k[c * width + per + c] += mast.baseSpring;
    }
  if (!assembleGuys(mast, near)) return Number.NaN;
  // the base: no displacement, and no turn where fixed. What it takes for that is the reaction
  for (let c = 0; c < per; c++) {
    if (mast.baseFree(c)) continue;
    mast.baseReaction[c] = r[c];
    r[c] = 0;
  }
  clamp(mast, per);
  let worst = 0;
  for (let j = 0; j < n; j++) {
    const force = Math.abs(r[j]);
    // not a number is worse than any
    if (!(force <= worst)) worst = force;
  }
  return worst;
}

/** What bowing stretches an element by, differentiated by (r, theta1, theta2) of either plane. */
const bowing = new Float64Array(6);

function assembleElement(mast: MastState, e: number): void {
  const { d, k, residual: r, g0, ks, lineLoad } = mast;
  const per = mast.perNode;
  const width = 2 * per;
  const at = e * per;
  const up = at + per;
  const m = e * MATRIX;
  const length = mast.length[e];
  // mean tension: rigged, stretched by the ends and by bowing, less what warmth gives freely
  let bow = 0;
  for (let plane = 0; plane < mast.planes; plane++) {
    const o = 1 + 2 * plane;
    const rise = d[up + o] - d[at + o];
    const turn1 = d[at + o + 1];
    const turn2 = d[up + o + 1];
    const byRise = g0[m] * rise + g0[m + 1] * turn1 + g0[m + 2] * turn2;
    const byTurn1 = g0[m + 1] * rise + g0[m + 3] * turn1 + g0[m + 4] * turn2;
    const byTurn2 = g0[m + 2] * rise + g0[m + 4] * turn1 + g0[m + 5] * turn2;
    bowing[3 * plane] = byRise;
    bowing[3 * plane + 1] = byTurn1;
    bowing[3 * plane + 2] = byTurn2;
    bow += byRise * rise + byTurn1 * turn1 + byTurn2 * turn2;
  }
  const axial = mast.ea[e] / length;
  const tension = mast.rigged[e] + axial * (d[up] - d[at] + 0.5 * bow - mast.mastStrain * length);
  mast.tension[e] = tension;
  const rowW = up * width;
  r[at] -= tension;
  r[up] += tension;
  k[at * width + per] += axial;
  k[rowW + per] += axial;
  k[rowW] = -axial;
  for (let plane = 0; plane < mast.planes; plane++) {
    const o = 1 + 2 * plane;
    const own = per + o;
    const rise = d[up + o] - d[at + o];
    const turn1 = d[at + o + 1];
    const turn2 = d[up + o + 1];
    const rr = ks[m] + tension * g0[m];
    const r1 = ks[m + 1] + tension * g0[m + 1];
    const r2 = ks[m + 2] + tension * g0[m + 2];
    const t11 = ks[m + 3] + tension * g0[m + 3];
    const t12 = ks[m + 4] + tension * g0[m + 4];
    const t22 = ks[m + 5] + tension * g0[m + 5];
    const force = rr * rise + r1 * turn1 + r2 * turn2;
    r[at + o] -= force;
    r[at + o + 1] += r1 * rise + t11 * turn1 + t12 * turn2;
    r[up + o] += force;
    r[up + o + 1] += r2 * rise + t12 * turn1 + t22 * turn2;
    if (plane === 0) {
      r[at + 1] -= lineLoad[4 * e];
      r[at + 2] -= lineLoad[4 * e + 1];
      r[up + 1] -= lineLoad[4 * e + 2];
      r[up + 2] -= lineLoad[4 * e + 3];
    }
    const p = bowing[3 * plane];
    const q = bowing[3 * plane + 1];
    const s = bowing[3 * plane + 2];
    const ap = axial * p;
    const aq = axial * q;
    const as = axial * s;
    const lowU = (at + o) * width;
    const lowT = lowU + width;
    const upU = (up + o) * width;
    const upT = upU + width;
    k[lowU + own] += rr + ap * p;
    k[lowT + own] -= r1 + ap * q;
    k[lowT + own + 1] += t11 + aq * q;
    k[upU + o] = -rr - ap * p;
    k[upU + o + 1] = r1 + ap * q;
    k[upU + own] += rr + ap * p;
    k[upT + o] = -r2 - ap * s;
    k[upT + o + 1] = t12 + aq * s;
    k[upT + own] += r2 + ap * s;
    k[upT + own + 1] += t22 + as * s;
    // bowing against the ends
    k[lowU + per] += ap;
    k[lowT + per] -= aq;
    k[rowW + o] = -ap;
    k[rowW + o + 1] = aq;
    k[upU] = -ap;
    k[upU + per] += ap;
    k[upT] = -as;
    k[upT + per] += as;
    if (plane === 1) bothPlanes(k, lowU, upU, axial);
  }
}

/** One plane's bowing against the other's: rows of v and phi, and of u and theta against what is below. */
function bothPlanes(k: Float64Array, lowV: number, upV: number, axial: number): void {
  const p = bowing[0];
  const q = bowing[1];
  const s = bowing[2];
  const ap = axial * bowing[3];
  const aq = axial * bowing[4];
  const as = axial * bowing[5];
  k[lowV + 6] += ap * p;
  k[lowV + 7] -= ap * q;
  k[lowV + 16] -= aq * p;
  k[lowV + 17] += aq * q;
  k[upV + 1] = -ap * p;
  k[upV + 2] = ap * q;
  k[upV + 6] += ap * p;
  k[upV + 7] += ap * s;
  k[upV + 11] = -as * p;
  k[upV + 12] = as * q;
  k[upV + 16] += as * p;
  k[upV + 17] += as * s;
  k[upV - 17] = -ap * p;
  k[upV - 16] = aq * p;
  k[upV - 7] = -ap * s;
  k[upV - 6] = aq * s;
}

/** The guys at the present place of the mast; false where one finds no equilibrium. */
function assembleGuys(mast: MastState, near: number): boolean {
  const { d, k, residual: r, guys } = mast;
  const per = mast.perNode;
  const width = 2 * per;
  let settled = true;
  for (let g = 0; g < guys.length; g++) {
    const guy = guys[g];
    if (guy.lost) continue;
    const at = guy.node * per;
    const s = guy.state;
    if (guy.twin !== null) mirrorState(guy.twin.state, s);
    else {
      const v = per === 5 ? d[at + 3] : 0;
      // on a torque arm its head goes down as the mast leans that way
      const sunk = guy.hx * d[at + 2] + (per === 5 ? guy.hy * d[at + 4] : 0);
      const rise = mast.z[guy.node] + d[at] - sunk - guy.z;
      const stretched = guy.length * guy.stretch;
      solveCatenary(d[at + 1] - guy.ax, v - guy.ay, rise, stretched, guy.ea, guy.qx, guy.qy, guy.qz, s, near);
      if (!s.converged) return false;
      settled &&= s.settled;
    }
    const own = at * width + per;
    r[at] -= s.fz;
    r[at + 1] -= s.fx;
    k[own] += s.k[5];
    k[own + width] += s.k[2];
    k[own + width + 1] += s.k[0];
    if (per === 5) {
      r[at + 3] -= s.fy;
      k[own + 30] += s.k[4];
      k[own + 31] += s.k[1];
      k[own + 33] += s.k[3];
    }
    if (guy.hx !== 0 || guy.hy !== 0) assembleHead(mast, guy);
  }
  mast.settled = settled;
  return true;
}

/** A guy on a torque arm bends the mast by that arm, which turns with it (docs/theory/mast.md). */
function assembleHead(mast: MastState, { node, hx, hy, state: s }: Guy): void {
  const { d, k, residual: r } = mast;
  const per = mast.perNode;
  const at = node * per;
  const theta = d[at + 2];
  const both = 0.5 * (s.fx * hy + s.fy * hx);
  const along = (at + 2) * 2 * per + per;
  r[at + 2] += hx * (s.fz + s.fx * theta);
  k[along] -= hx * s.k[5];
  k[along + 1] -= hx * s.k[2];
  k[along + 2] += hx * (hx * s.k[5] + s.fx);
  if (per !== 5) return;
  const phi = d[at + 4];
  const across = along + 20;
  r[at + 2] += both * phi;
  r[at + 4] += hy * (s.fz + s.fy * phi) + both * theta;
  k[along + 12] -= hx * s.k[4];
  k[across] -= hy * s.k[5];
  k[across + 1] -= hy * s.k[2];
  k[across + 2] += hx * hy * s.k[5] + both;
  k[across + 3] -= hy * s.k[4];
  k[across + 4] += hy * (hy * s.k[5] + s.fy);
}

/** Rows and columns of what the base holds become those of the unit matrix. */
export function clamp(mast: MastState, per: number): void {
  const { k } = mast;
  const width = 2 * per;
  for (let c = 0; c < per; c++) {
    if (mast.baseFree(c)) continue;
    for (let j = 0; j < per; j++) {
      if (j < c) k[c * width + per + j] = 0;
      else if (j > c) k[j * width + per + c] = 0;
      k[(per + j) * width + c] = 0;
    }
    k[c * width + per + c] = 1;
  }
}

/** Adds `mean` times the matrix of the mean tension and `slope` times that of its slope, in one plane. */
export function addAxial(
  mast: MastState,
  e: number,
  per: number,
  o: number,
  mean: number,
  slope: number,
): void {
  const { g0, g1 } = mast;
  const m = e * MATRIX;
  addBending(
    mast.k,
    e,
    per,
    o,
    mean * g0[m] + slope * g1[m],
    mean * g0[m + 1] + slope * g1[m + 1],
    mean * g0[m + 2] + slope * g1[m + 2],
    mean * g0[m + 3] + slope * g1[m + 3],
    mean * g0[m + 4] + slope * g1[m + 4],
    mean * g0[m + 5] + slope * g1[m + 5],
  );
}

function addBending(
  k: Float64Array,
  e: number,
  per: number,
  o: number,
  rr: number,
  r1: number,
  r2: number,
  t11: number,
  t12: number,
  t22: number,
): void {
  const width = 2 * per;
  const own = per + o;
  const lowU = (e * per + o) * width;
  const lowT = lowU + width;
  const upU = lowU + per * width;
  const upT = upU + width;
  k[lowU + own] += rr;
  k[lowT + own] -= r1;
  k[lowT + own + 1] += t11;
  k[upU + o] -= rr;
  k[upU + o + 1] += r1;
  k[upU + own] += rr;
  k[upT + o] -= r2;
  k[upT + o + 1] += t12;
  k[upT + own] += r2;
  k[upT + own + 1] += t22;
}

/** Tangent across the mirror plane of a planar state, the axial forces times `factor`. */
export function assembleAcross(mast: MastState, compressionFactor: number): void {
  const { k, kb } = mast;
  k.fill(0, 0, mast.nodes * 8);
  for (let node = 0; node < mast.nodes; node++) k[8 * node + 7] = -compressionFactor * mast.lean[node];
  for (let e = 0; e < mast.elements; e++) {
    const m = e * MATRIX;
    addBending(k, e, 2, 0, kb[m], kb[m + 1], kb[m + 2], kb[m + 3], kb[m + 4], kb[m + 5]);
    addAxial(mast, e, 2, 0, compressionFactor * mast.tension[e], compressionFactor * mast.pressing[e]);
  }
  k[7] += mast.baseSpring;
  for (const { node, state: s, hy } of mast.guys) {
    k[8 * node + 2] += s.k[3];
    k[8 * node + 6] -= hy * s.k[4];
    k[8 * node + 7] += hy * (hy * s.k[5] + s.fy);
  }
  clampAcross(mast);
}

/** The base does not shift, and where fixed does not turn. */
function clampAcross({ k, fixed }: MastState): void {
  k[2] = 1;
  k[6] = 0;
  k[8] = 0;
  k[12] = 0;
  if (!fixed) return;
  k[7] = 1;
  k[9] = 0;
  k[13] = 0;
}
