import { MATRIX } from "./element.ts";
import type { Mast } from "./solver.ts";

/** Stations to an element: its lower end, the vertex of its moment, its upper end. */
const STATIONS = 3;

/** Forces in the mast after a solved case, three stations an element, bottom up. Reused from case to case. */
export class Forces {
  count = 0;
  element = new Int32Array(0);
  z = new Float64Array(0);
  /** Bending moment along the wind, across it, and their resultant, N m. */
  along = this.z;
  across = this.z;
  moment = this.z;
  /** Resultant shear square to the bent axis, N. */
  shear = this.z;
  /** Compression, N. */
  compression = this.z;

  constructor(elements: number) {
    this.fit(elements);
  }

  /** Makes room for a mast of so many elements. */
  fit(elements: number): void {
    this.count = elements * STATIONS;
    if (this.count <= this.z.length) return;
    this.element = new Int32Array(this.count);
    for (const each of ["z", "along", "across", "moment", "shear", "compression"] as const)
      this[each] = new Float64Array(this.count);
  }
}

const end = new Float64Array(8);

/**
 * Moments and shears by equilibrium of each element with its displacements (never by curvature, which is a degree
 * poorer). Sampling at nodes would miss the greatest moment by 2 %: the vertex of the parabola between them is
 * taken as well, the load on it being the wind and what the compression adds by bending.
 */
export function recoverForces(mast: Mast, forces: Forces): void {
  const per = mast.perNode;
  const { d, ks, g0, lineLoad } = mast;
  for (let e = 0; e < mast.elements; e++) {
    const length = mast.length[e];
    const tension = mast.tension[e];
    const slope = mast.pressing[e];
    const m = e * MATRIX;
    const rr = ks[m] + tension * g0[m];
    const r1 = ks[m + 1] + tension * g0[m + 1];
    const r2 = ks[m + 2] + tension * g0[m + 2];
    const t11 = ks[m + 3] + tension * g0[m + 3];
    const t12 = ks[m + 4] + tension * g0[m + 4];
    const t22 = ks[m + 5] + tension * g0[m + 5];
    for (let plane = 0; plane < 2; plane++) {
      const o = 4 * plane;
      if (plane >= mast.planes) {
        end.fill(0, o, o + 4);
        continue;
      }
      const low = e * per + 1 + 2 * plane;
      const up = low + per;
      const rise = d[up] - d[low];
      const turn1 = d[low + 1];
      const turn2 = d[up + 1];
      const force = rr * rise + r1 * turn1 + r2 * turn2;
      end[o] = -force;
      end[o + 1] = r1 * rise + t11 * turn1 + t12 * turn2;
      end[o + 2] = force;
      end[o + 3] = r2 * rise + t12 * turn1 + t22 * turn2;
      if (plane === 0) for (let i = 0; i < 4; i++) end[i] -= lineLoad[4 * e + i];
    }
    const at = e * STATIONS;
    // internal moment EI u'': minus the end moment below, plus the end moment above
    const m1 = -end[1];
    const m2 = end[3];
    const n1 = -end[5];
    const n2 = end[7];
    // effective line load: wind, and tension times curvature
    const bend = tension / length;
    const low = e * per;
    const up = low + per;
    const q = mast.lineMean[e] + bend * (d[up + 2] - d[low + 2]);
    const p = mast.planes === 2 ? bend * (d[up + 4] - d[low + 4]) : 0;
    let xi = 0.5;
    if (q !== 0) {
      const vertex = 0.5 - (m2 - m1) / (q * length * length);
      xi = vertex > 0 && vertex < 1 ? vertex : vertex <= 0 ? 0 : 1;
    }
    const sag = 0.5 * length * length * xi * (1 - xi);
    write(forces, at, e, mast.z[e], m1, n1);
    write(
      forces,
      at + 1,
      e,
      mast.z[e] + xi * length,
      m1 + (m2 - m1) * xi - q * sag,
      n1 + (n2 - n1) * xi - p * sag,
    );
    write(forces, at + 2, e, mast.z[e + 1], m2, n2);
    // shear square to the axis: the lateral force less the axial force's part of it
    const half = 0.5 * slope * length;
    const s1 = end[0] + (tension - half) * mast.slopeAt(e, 0, 0);
    const s2 = (tension + half) * mast.slopeAt(e, 1, 0) - end[2];
    let c1 = 0;
    let c2 = 0;
    if (mast.planes === 2) {
      c1 = end[4] + (tension - half) * mast.slopeAt(e, 0, 1);
      c2 = (tension + half) * mast.slopeAt(e, 1, 1) - end[6];
    }
    forces.shear[at] = Math.sqrt(s1 * s1 + c1 * c1);
    forces.shear[at + 2] = Math.sqrt(s2 * s2 + c2 * c2);
    const sx = s1 + (s2 - s1) * xi;
    const cx = c1 + (c2 - c1) * xi;
    forces.shear[at + 1] = Math.sqrt(sx * sx + cx * cx);
    forces.compression[at] = half - tension;
    forces.compression[at + 1] = half - tension - slope * xi * length;
    forces.compression[at + 2] = -half - tension;
  }
}

function write(forces: Forces, at: number, e: number, z: number, along: number, across: number): void {
  forces.element[at] = e;
  forces.z[at] = z;
  forces.along[at] = along;
  forces.across[at] = across;
  forces.moment[at] = Math.sqrt(along * along + across * across);
}
