import { solveCatenary } from "../guy/catenary.ts";
import { MATRIX } from "./element.ts";
import type { MastState } from "./state.ts";

/** Residual and tangent of the present state; returns the greatest out-of-balance force (moments per metre). */
export function assemble(mast: MastState): number {
  const per = mast.perNode;
  const band = 2 * per - 1;
  const width = band + 1;
  const n = mast.nodes * per;
  const { d, k, residual: r, g0d, g0, ks, lineLoad } = mast;
  k.fill(0, 0, n * width);
  for (let node = 0; node < mast.nodes; node++) {
    const at = node * per;
    r[at] = -mast.load[node];
    r[at + 1] = -mast.pointForce[node];
    r[at + 2] = -mast.pointMoment[node] - mast.lean[node] * d[at + 2];
    k[(at + 2) * width + band] -= mast.lean[node];
    if (per === 5) {
      r[at + 3] = 0;
      r[at + 4] = -mast.lean[node] * d[at + 4];
      k[(at + 4) * width + band] -= mast.lean[node];
    }
  }
  for (let e = 0; e < mast.elements; e++) {
    const at = e * per;
    const up = at + per;
    const ge = e * MATRIX;
    const length = mast.length[e];
    // mean tension: rigged, stretched by the ends and by bowing, less what warmth gives freely
    let bow = 0;
    for (let plane = 0; plane < mast.planes; plane++) {
      const o = 1 + 2 * plane;
      const d0 = d[at + o];
      const d1 = d[at + o + 1];
      const d2 = d[up + o];
      const d3 = d[up + o + 1];
      for (let i = 0; i < 4; i++) {
        const row = ge + 4 * i;
        const value = g0[row] * d0 + g0[row + 1] * d1 + g0[row + 2] * d2 + g0[row + 3] * d3;
        g0d[4 * plane + i] = value;
        bow += value * (i === 0 ? d0 : i === 1 ? d1 : i === 2 ? d2 : d3);
      }
    }
    const axial = mast.ea[e] / length;
    const tension = mast.rigged[e] + axial * (d[up] - d[at] + 0.5 * bow - mast.mastStrain * length);
    mast.tension[e] = tension;
    r[at] -= tension;
    r[up] += tension;
    k[at * width + band] += axial;
    k[up * width + band] += axial;
    k[up * width + band - per] -= axial;
    for (let plane = 0; plane < mast.planes; plane++) {
      const o = 1 + 2 * plane;
      for (let i = 0; i < 4; i++) {
        const gi = i < 2 ? at + o + i : up + o + i - 2;
        const row = ge + 4 * i;
        const diagonal = gi * width + band - gi;
        const coupling = axial * g0d[4 * plane + i];
        let force = 0;
        for (let j = 0; j < 4; j++) {
          const gj = j < 2 ? at + o + j : up + o + j - 2;
          const c = ks[row + j] + tension * g0[row + j];
          force += c * d[gj];
          if (j <= i) k[diagonal + gj] += c + coupling * g0d[4 * plane + j];
        }
        r[gi] += plane === 0 ? force - lineLoad[4 * e + i] : force;
        // bowing against the ends: the lower one comes before, the upper one after a displacement of the lower node
        k[diagonal + at] -= coupling;
        if (i < 2) k[up * width + band - up + gi] += coupling;
        else k[diagonal + up] += coupling;
        // and one plane against the other
        if (plane === 1)
          for (let j = 0; j < 4; j++) {
            const gj = j < 2 ? at + 1 + j : up + 1 + j - 2;
            if (gi > gj) k[diagonal + gj] += coupling * g0d[j];
            else k[gj * width + band - gj + gi] += coupling * g0d[j];
          }
      }
    }
  }
  if (mast.baseSpring > 0)
    for (let c = 2; c < per; c += 2) {
      r[c] += mast.baseSpring * d[c];
      mast.baseReaction[c] = -mast.baseSpring * d[c];
      k[c * width + band] += mast.baseSpring;
    }
  for (const guy of mast.guys) {
    if (guy.lost) continue;
    const at = guy.node * per;
    const v = per === 5 ? d[at + 3] : 0;
    const s = guy.state;
    const rise = mast.z[guy.node] + d[at] - guy.z;
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
  hold(mast, per, width, band);
  let worst = 0;
  for (let j = 0; j < n; j++) worst = Math.max(worst, Math.abs(r[j]));
  return worst;
}

/** The base: no displacement, and no rotation where fixed. What it takes for that is the reaction. */
function hold(mast: MastState, per: number, width: number, band: number): void {
  const { residual: r } = mast;
  for (let c = 0; c < per; c++) {
    if (mast.baseFree(c)) continue;
    mast.baseReaction[c] = r[c];
    r[c] = 0;
  }
  clamp(mast, per, width, band);
}

/** Rows and columns of what the base holds become those of the unit matrix. */
export function clamp(mast: MastState, per: number, width: number, band: number): void {
  const { k } = mast;
  for (let c = 0; c < per; c++) {
    if (mast.baseFree(c)) continue;
    for (let j = 0; j < 2 * per; j++) {
      if (j === c) k[c * width + band] = 1;
      else if (j < c) k[c * width + band + j - c] = 0;
      else k[j * width + band + c - j] = 0;
    }
  }
}

/** Tangent across the mirror plane of a planar state, the axial forces times `factor`. */
export function assembleAcross(mast: MastState, compressionFactor: number): void {
  const width = 4;
  const { k } = mast;
  k.fill(0, 0, mast.nodes * 2 * width);
  for (let node = 0; node < mast.nodes; node++)
    k[(2 * node + 1) * width + 3] -= compressionFactor * mast.lean[node];
  for (let e = 0; e < mast.elements; e++) {
    const ge = e * MATRIX;
    const tension = compressionFactor * mast.tension[e];
    const slope = compressionFactor * mast.pressing[e];
    for (let i = 0; i < 4; i++)
      for (let j = 0; j <= i; j++) {
        const m = ge + 4 * i + j;
        const gi = 2 * e + i;
        k[gi * width + 3 + j - i] += mast.kb[m] + tension * mast.g0[m] + slope * mast.g1[m];
      }
  }
  k[width + 3] += mast.baseSpring;
  for (const guy of mast.guys) k[2 * guy.node * width + 3] += guy.state.k[3];
  for (let c = 0; c < (mast.fixed ? 2 : 1); c++)
    for (let j = 0; j < 4; j++) {
      if (j === c) k[c * width + 3] = 1;
      else if (j < c) k[c * width + 3 + j - c] = 0;
      else k[j * width + 3 + c - j] = 0;
    }
}
