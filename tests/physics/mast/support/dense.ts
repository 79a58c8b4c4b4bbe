/** Small dense linear algebra for tests: plain, slow and apart from the solver. */
export type Matrix = number[][];

/** Gaussian elimination with pivoting. */
export function solveDense(a: Matrix, b: readonly number[]): number[] {
  const n = b.length;
  const m = a.map((row, i) => [...row, b[i]]);
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(m[r][c]) > Math.abs(m[best][c])) best = r;
    [m[c], m[best]] = [m[best], m[c]];
    for (let r = c + 1; r < n; r++) {
      const share = m[r][c] / m[c][c];
      for (let k = c; k <= n; k++) m[r][k] -= share * m[c][k];
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    let sum = m[r][n];
    for (let k = r + 1; k < n; k++) sum -= m[r][k] * x[k];
    x[r] = sum / m[r][r];
  }
  return x;
}

/** Eigenvalues of a symmetric matrix by Jacobi's rotations, rising. */
export function eigenvalues(symmetric: Matrix): number[] {
  const a = symmetric.map((row) => [...row]);
  const n = a.length;
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) off += a[p][q] ** 2;
    if (off < 1e-22) break;
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) {
        if (a[p][q] === 0) continue;
        const angle = 0.5 * Math.atan2(2 * a[p][q], a[q][q] - a[p][p]);
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        for (let k = 0; k < n; k++) {
          const [kp, kq] = [a[k][p], a[k][q]];
          a[k][p] = c * kp - s * kq;
          a[k][q] = s * kp + c * kq;
        }
        for (let k = 0; k < n; k++) {
          const [pk, qk] = [a[p][k], a[q][k]];
          a[p][k] = c * pk - s * qk;
          a[q][k] = s * pk + c * qk;
        }
      }
  }
  return a.map((row, i) => row[i]).sort((x, y) => x - y);
}
