import { clearState } from "../guy/catenary.ts";
import { loadGuy } from "../guy/wind.ts";
import { lineLoadVector, MATRIX } from "./element.ts";
import type { MastState } from "./state.ts";
import type { LoadCase } from "./types.ts";

/** Puts the loads of a case on the mast and its guys. */
export function setLoads(mast: MastState, load: LoadCase): void {
  const [cx, cy] = load.toward;
  const dead = load.dead ?? 1;
  let scale = mast.deadWeight;
  for (let i = 0; i < mast.nodes; i++) {
    mast.load[i] = dead * mast.deadLoad[i];
    mast.lean[i] = dead * mast.deadLean[i];
  }
  for (const point of load.addedPoints ?? []) {
    const node = mast.nodeAt(point.z);
    mast.load[node] -= point.weight;
    mast.lean[node] += point.weight * point.arm;
  }
  for (let e = 0; e < mast.elements; e++) {
    if (load.line !== mast.line)
      mast.lineMean[e] = lineLoadVector(
        load.line,
        mast.z[e],
        mast.length[e],
        mast.shear[e],
        mast.lineLoad,
        4 * e,
      );
    scale += Math.abs(mast.lineMean[e]) * mast.length[e];
    const added = load.added?.(mast.z[e] + 0.5 * mast.length[e]) ?? 0;
    const pressing = dead * mast.weight[e] + added;
    mast.pressing[e] = pressing;
    for (let m = e * MATRIX; m < (e + 1) * MATRIX; m++) mast.ks[m] = mast.kb[m] + pressing * mast.g1[m];
    mast.load[e] -= 0.5 * added * mast.length[e];
    mast.load[e + 1] -= 0.5 * added * mast.length[e];
  }
  mast.line = load.line;
  mast.pointForce.fill(0);
  mast.pointMoment.fill(0);
  for (const point of load.points) {
    const node = mast.nodeAt(point.z);
    mast.pointForce[node] += point.force;
    mast.pointMoment[node] += point.moment;
    scale += Math.abs(point.force);
  }
  for (let g = 0; g < mast.guys.length; g++) {
    const guy = mast.guys[g];
    guy.hx = cx * guy.headX + cy * guy.headY;
    guy.hy = -cy * guy.headX + cx * guy.headY;
    guy.ax = cx * guy.x + cy * guy.y - guy.hx;
    guy.ay = -cy * guy.x + cx * guy.y - guy.hy;
    guy.stretch = load.guyStretch?.[guy.level] ?? 1;
    guy.lost = guy.level === load.lost?.level && guy.anchor === load.lost.anchor;
    if (guy.lost) clearState(guy.state);
    loadGuy(
      guy,
      guy.ax,
      guy.ay,
      mast.z[guy.node] - guy.z,
      load.guyWind[guy.level] ?? 0,
      dead * guy.weight + (load.guyAdded?.[guy.level] ?? 0),
    );
    scale += guy.weight * guy.length;
  }
  pair(mast, load.planar);
  mast.hung = load;
  mast.mastStrain = load.mastStrain ?? 0;
  mast.loadScale = scale;
}

/** In a plane state every guy beside the plane has its mirror image: one of the two is solved. */
function pair({ guys }: MastState, planar: boolean): void {
  for (const guy of guys) {
    guy.twin = null;
    if (!planar || guy.lost) continue;
    for (const other of guys) {
      if (other === guy) break;
      const near = 1e-9 * Math.abs(guy.ax) + 1e-9;
      if (other.level !== guy.level || other.lost || other.twin !== null) continue;
      if (Math.abs(other.ax - guy.ax) < near && Math.abs(other.ay + guy.ay) < near) guy.twin = other;
    }
  }
}

/** The rigged state, plumb: where every case starts, each guy at its rigged tension under the load of the case. */
export function rest(mast: MastState, load: LoadCase): void {
  mast.d.fill(0);
  const [cx, cy] = load.toward;
  for (const guy of mast.guys) {
    if (guy.lost) continue;
    const q = Math.sqrt(guy.qx * guy.qx + guy.qy * guy.qy + guy.qz * guy.qz);
    const tx = cx * guy.rigged[0] + cy * guy.rigged[1];
    const ty = -cy * guy.rigged[0] + cx * guy.rigged[1];
    const tz = guy.rigged[2];
    const sigma = -(tx * guy.qx + ty * guy.qy + tz * guy.qz) / q;
    guy.state.sigma = sigma;
    guy.state.fxx = 0;
    guy.state.h = Math.sqrt(Math.max(tx * tx + ty * ty + tz * tz - sigma * sigma, 0));
  }
}
