/**
 * Eigenvalue of a symmetric tridiagonal matrix, counted down from the largest (rank 1), by bisection on its inertia
 * (Sturm); -Infinity where the matrix has fewer.
 */
export function eigenvalueFromTop(
  diagonal: Float64Array,
  off: Float64Array,
  n: number,
  rank: number,
): number {
  if (rank > n) return Number.NEGATIVE_INFINITY;
  // Gershgorin holds all of them
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < n; i++) {
    const reach = (i > 0 ? Math.abs(off[i - 1]) : 0) + (i < n - 1 ? Math.abs(off[i]) : 0);
    low = Math.min(low, diagonal[i] - reach);
    high = Math.max(high, diagonal[i] + reach);
  }
  for (let k = 0; k < 60 && high - low > 1e-12 * Math.max(Math.abs(low), Math.abs(high)); k++) {
    const x = 0.5 * (low + high);
    // are that many above x? as many pivots of T - x are positive
    let above = 0;
    let pivot = 1;
    for (let i = 0; i < n && above < rank; i++) {
      pivot = diagonal[i] - x - (i > 0 ? (off[i - 1] * off[i - 1]) / pivot : 0);
      if (pivot === 0) pivot = 1e-300;
      if (pivot > 0) above++;
    }
    if (above === rank) low = x;
    else high = x;
  }
  return 0.5 * (low + high);
}
