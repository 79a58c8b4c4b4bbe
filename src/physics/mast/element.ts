/**
 * One beam-column element: Timoshenko's beam with interdependent cubic shape functions (exact nodal values under
 * nodal loads), and the two matrices of the axial force, mean and slope. Per plane the displacements are
 * (u1, theta1, u2, theta2), theta being the rotation of the section. docs/theory/mast.md derives all three.
 */

/** Entries of a 4 x 4 matrix, row by row. */
export const MATRIX = 16;

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
  const l = length;
  const rows = [
    [12, 6 * l, -12, 6 * l],
    [6 * l, (4 + phi) * l * l, -6 * l, (2 - phi) * l * l],
    [-12, -6 * l, 12, -6 * l],
    [6 * l, (2 - phi) * l * l, -6 * l, (4 + phi) * l * l],
  ];
  for (let i = 0; i < 4; i++) for (let j = 0; j < 4; j++) kb[at + 4 * i + j] = c * rows[i][j];
  g0.fill(0, at, at + MATRIX);
  g1.fill(0, at, at + MATRIX);
  // products of slopes are of fourth degree, with the lever of fifth: three points are exact
  for (const [xi, weight] of GAUSS3) {
    shapeSlope(xi, length, phi, scratch, 0);
    const lever = (xi - 0.5) * length;
    for (let i = 0; i < 4; i++)
      for (let j = 0; j < 4; j++) {
        const product = weight * length * scratch[i] * scratch[j];
        g0[at + 4 * i + j] += product;
        g1[at + 4 * i + j] += lever * product;
      }
  }
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
  for (let i = 0; i < 4; i++) f[at + i] = 0;
  for (const [xi, weight] of GAUSS3) {
    const q = line(z + xi * length);
    shape(xi, length, phi, scratch, 0);
    for (let i = 0; i < 4; i++) f[at + i] += weight * length * q * scratch[i];
    mean += weight * q;
  }
  return mean;
}
