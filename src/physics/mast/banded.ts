/**
 * Symmetric banded LDL^T in place, without pivoting: the signs of D are the inertia of the matrix, which is how
 * loss of stability is seen. Row i holds columns i - band .. i at `a[i * (band + 1)]` onwards.
 */

/** Factors `a` (n rows) and returns how many pivots are not positive. */
export function factor(a: Float64Array, n: number, band: number): number {
  const width = band + 1;
  let notPositive = 0;
  for (let i = 0; i < n; i++) {
    const rowI = i * width + band - i;
    const first = i > band ? i - band : 0;
    // the row's entries of L times D, left to right
    for (let j = first; j < i; j++) {
      const rowJ = j * width + band - j;
      const from = Math.max(first, j - band);
      let sum = a[rowI + j];
      for (let k = from; k < j; k++) sum -= a[rowI + k] * a[rowJ + k];
      a[rowI + j] = sum;
    }
    // then L itself, and the pivot
    let pivot = a[rowI + i];
    for (let j = first; j < i; j++) {
      const scaled = a[rowI + j];
      const l = scaled / a[j * width + band];
      pivot -= scaled * l;
      a[rowI + j] = l;
    }
    a[rowI + i] = pivot;
    if (!(pivot > 0)) notPositive++;
  }
  return notPositive;
}

/** Solves with the factors of `factor`; `b` becomes the solution. */
export function solveFactored(a: Float64Array, n: number, band: number, b: Float64Array): void {
  const width = band + 1;
  for (let i = 0; i < n; i++) {
    const row = i * width + band - i;
    let sum = b[i];
    for (let k = i > band ? i - band : 0; k < i; k++) sum -= a[row + k] * b[k];
    b[i] = sum;
  }
  for (let i = 0; i < n; i++) b[i] /= a[i * width + band];
  for (let i = n - 1; i >= 0; i--) {
    const row = i * width + band - i;
    const value = b[i];
    for (let k = i > band ? i - band : 0; k < i; k++) b[k] -= a[row + k] * value;
  }
}
