/**
 * One beam-column element: Timoshenko's beam with interdependent cubic shape functions (exact nodal values under
 * nodal loads), and the two matrices of the axial force, mean and slope. Per plane the displacements are
 * (u1, theta1, u2, theta2), theta being the rotation of the section. docs/theory/mast.md derives all three.
 *
 * Nothing resists a shift of both ends: each matrix is kept in (r, theta1, theta2) with r = u2 - u1, as
 * rr, r1, r2, 11, 12, 22.
 */

/** Entries of the matrix of an element. */
export const MATRIX = 6;

export const GAUSS3 = [
  [0.5 - 0.5 * Math.sqrt(0.6), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + 0.5 * Math.sqrt(0.6), 5 / 18],
] as const;

/** 12 EI / (GA L2): how much shear softens the element against bending. */
export const shearRatio = (ei: number, ga: number, length: number): number =>
  ga === Number.POSITIVE_INFINITY ? 0 : (12 * ei) / (ga * length * length);

/** Shape functions at xi in 0..1 into `n` from `at`. */
export function shape(xi: number, length: number, phi: number, n: Float64Array, at: number): void {
  const mu = 1 / (1 + phi);
  const xi2 = xi * xi;
  const xi3 = xi2 * xi;
  n[at] = mu * (1 - 3 * xi2 + 2 * xi3 + phi * (1 - xi));
  n[at + 1] = mu * length * (xi - 2 * xi2 + xi3 + 0.5 * phi * (xi - xi2));
  n[at + 2] = mu * (3 * xi2 - 2 * xi3 + phi * xi);
  n[at + 3] = mu * length * (xi3 - xi2 + 0.5 * phi * (xi2 - xi));
}

/** Their derivatives by z: the slope that P-delta acts on, shear slope included. */
export function shapeSlope(xi: number, length: number, phi: number, n: Float64Array, at: number): void {
  const mu = 1 / (1 + phi);
  const first = (mu / length) * (6 * xi * xi - 6 * xi - phi);
  n[at] = first;
  n[at + 1] = mu * (1 - 4 * xi + 3 * xi * xi + 0.5 * phi * (1 - 2 * xi));
  n[at + 2] = -first;
  n[at + 3] = mu * (3 * xi * xi - 2 * xi + 0.5 * phi * (2 * xi - 1));
}

const scratch = new Float64Array(4);

/** Bending-and-shear stiffness, and the matrices of the mean axial tension and of its slope along z. */
export function elementMatrices(
  ei: number,
  length: number,
  phi: number,
  kb: Float64Array,
  g0: Float64Array,
  g1: Float64Array,
  at: number,
): void {
  const c = ei / (length ** 3 * (1 + phi));
  kb[at] = 12 * c;
  kb[at + 1] = -6 * length * c;
  kb[at + 2] = -6 * length * c;
  kb[at + 3] = (4 + phi) * length * length * c;
  kb[at + 4] = (2 - phi) * length * length * c;
  kb[at + 5] = (4 + phi) * length * length * c;
  g0.fill(0, at, at + MATRIX);
  g1.fill(0, at, at + MATRIX);
  // products of slopes are of fourth degree, with the lever of fifth: three points are exact
  for (const [xi, weight] of GAUSS3) {
    shapeSlope(xi, length, phi, scratch, 0);
    addSquare(g0, at, weight * length);
    addSquare(g1, at, weight * length * (xi - 0.5) * length);
  }
}

/** The slopes in `scratch`, each times each. */
function addSquare(g: Float64Array, at: number, weight: number): void {
  const t1 = scratch[1];
  const r = scratch[2];
  const t2 = scratch[3];
  g[at] += weight * r * r;
  g[at + 1] += weight * r * t1;
  g[at + 2] += weight * r * t2;
  g[at + 3] += weight * t1 * t1;
  g[at + 4] += weight * t1 * t2;
  g[at + 5] += weight * t2 * t2;
}

/** Nodal forces of a line load, consistent with the shape functions; returns the mean load. */
export function lineLoadVector(
  line: (z: number) => number,
  z: number,
  length: number,
  phi: number,
  f: Float64Array,
  at: number,
): number {
  let mean = 0;
  f.fill(0, at, at + 4);
  for (let g = 0; g < 3; g++) {
    const [xi, weight] = GAUSS3[g];
    const q = line(z + xi * length);
    shape(xi, length, phi, scratch, 0);
    for (let i = 0; i < 4; i++) f[at + i] += weight * length * q * scratch[i];
    mean += weight * q;
  }
  return mean;
}
