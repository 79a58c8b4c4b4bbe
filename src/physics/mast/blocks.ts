/**
 * Symmetric LDL^T in place of a matrix whose nodes meet their neighbours only, without pivoting: the signs of D are
 * the inertia of the matrix, which is how loss of stability is seen.
 *
 * `per` displacements to a node. The row of displacement c of node i starts at `a[(i * per + c) * 2 * per]`: first
 * what couples it to the node below, then its own node's up to c. Factors are left in the same places, the pivots
 * inverted. Three and five displacements, which the solver spends its time on, are written out: a third of the time.
 */

/** Factors `a` and returns how many pivots are not positive. */
export function factor(a: Float64Array, nodes: number, per: number): number {
  const size = 2 * per * per;
  let notPositive = factorOwn(a, per, per);
  for (let node = 1; node < nodes; node++) {
    const at = node * size;
    if (per === 5) eliminate5(a, at);
    else if (per === 3) eliminate3(a, at);
    else eliminate(a, at, per);
    notPositive += per === 5 ? factorOwn5(a, at + 5) : factorOwn(a, at + per, per);
  }
  return notPositive;
}

/** The node below, factored, out of the node at `at`. */
function eliminate(a: Float64Array, at: number, per: number): void {
  const width = 2 * per;
  const below = at - per * width + per;
  for (let r = 0; r < per; r++) {
    const row = at + r * width;
    for (let j = 1; j < per; j++) {
      let sum = a[row + j];
      for (let k = 0; k < j; k++) sum -= a[row + k] * a[below + j * width + k];
      a[row + j] = sum;
    }
    for (let s = 0; s < r; s++) {
      let sum = a[row + per + s];
      for (let k = 0; k < per; k++) sum -= a[row + k] * a[at + s * width + k];
      a[row + per + s] = sum;
    }
    for (let k = 0; k < per; k++) {
      const scaled = a[row + k];
      a[row + k] = scaled * a[below + k * width + k];
      a[row + per + r] -= scaled * a[row + k];
    }
  }
}

/** A node's own block, what is below eliminated; returns how many of its pivots are not positive. */
function factorOwn(a: Float64Array, at: number, per: number): number {
  const width = 2 * per;
  let notPositive = 0;
  for (let c = 0; c < per; c++) {
    const row = at + c * width;
    for (let j = 1; j < c; j++) {
      let sum = a[row + j];
      for (let k = 0; k < j; k++) sum -= a[row + k] * a[at + j * width + k];
      a[row + j] = sum;
    }
    let pivot = a[row + c];
    for (let k = 0; k < c; k++) {
      const scaled = a[row + k];
      a[row + k] = scaled * a[at + k * width + k];
      pivot -= scaled * a[row + k];
    }
    a[row + c] = 1 / pivot;
    if (!(pivot > 0)) notPositive++;
  }
  return notPositive;
}

function eliminate3(a: Float64Array, at: number): void {
  const p = at - 15;
  const i0 = a[p];
  const l10 = a[p + 6];
  const i1 = a[p + 7];
  const l20 = a[p + 12];
  const l21 = a[p + 13];
  const i2 = a[p + 14];
  for (let r = 0; r < 3; r++) {
    const row = at + 6 * r;
    const c0 = a[row];
    const c1 = a[row + 1] - c0 * l10;
    const c2 = a[row + 2] - c0 * l20 - c1 * l21;
    a[row] = c0 * i0;
    a[row + 1] = c1 * i1;
    a[row + 2] = c2 * i2;
    for (let s = 0; s <= r; s++) {
      const o = at + 6 * s;
      a[row + 3 + s] -= c0 * a[o] + c1 * a[o + 1] + c2 * a[o + 2];
    }
  }
}

function eliminate5(a: Float64Array, at: number): void {
  const p = at - 45;
  const i0 = a[p];
  const l10 = a[p + 10];
  const i1 = a[p + 11];
  const l20 = a[p + 20];
  const l21 = a[p + 21];
  const i2 = a[p + 22];
  const l30 = a[p + 30];
  const l31 = a[p + 31];
  const l32 = a[p + 32];
  const i3 = a[p + 33];
  const l40 = a[p + 40];
  const l41 = a[p + 41];
  const l42 = a[p + 42];
  const l43 = a[p + 43];
  const i4 = a[p + 44];
  for (let r = 0; r < 5; r++) {
    const row = at + 10 * r;
    const c0 = a[row];
    const c1 = a[row + 1] - c0 * l10;
    const c2 = a[row + 2] - c0 * l20 - c1 * l21;
    const c3 = a[row + 3] - c0 * l30 - c1 * l31 - c2 * l32;
    const c4 = a[row + 4] - c0 * l40 - c1 * l41 - c2 * l42 - c3 * l43;
    a[row] = c0 * i0;
    a[row + 1] = c1 * i1;
    a[row + 2] = c2 * i2;
    a[row + 3] = c3 * i3;
    a[row + 4] = c4 * i4;
    for (let s = 0; s <= r; s++) {
      const o = at + 10 * s;
      a[row + 5 + s] -= c0 * a[o] + c1 * a[o + 1] + c2 * a[o + 2] + c3 * a[o + 3] + c4 * a[o + 4];
    }
  }
}

const notAbove0 = (pivot: number): number => (pivot > 0 ? 0 : 1);

function factorOwn5(a: Float64Array, p: number): number {
  const d0 = a[p];
  const s10 = a[p + 10];
  const s20 = a[p + 20];
  const s30 = a[p + 30];
  const s40 = a[p + 40];
  const i0 = 1 / d0;
  const l10 = s10 * i0;
  const l20 = s20 * i0;
  const l30 = s30 * i0;
  const l40 = s40 * i0;
  const d1 = a[p + 11] - s10 * l10;
  const s21 = a[p + 21] - s20 * l10;
  const s31 = a[p + 31] - s30 * l10;
  const s41 = a[p + 41] - s40 * l10;
  const i1 = 1 / d1;
  const l21 = s21 * i1;
  const l31 = s31 * i1;
  const l41 = s41 * i1;
  const d2 = a[p + 22] - s20 * l20 - s21 * l21;
  const s32 = a[p + 32] - s30 * l20 - s31 * l21;
  const s42 = a[p + 42] - s40 * l20 - s41 * l21;
  const i2 = 1 / d2;
  const l32 = s32 * i2;
  const l42 = s42 * i2;
  const d3 = a[p + 33] - s30 * l30 - s31 * l31 - s32 * l32;
  const s43 = a[p + 43] - s40 * l30 - s41 * l31 - s42 * l32;
  const i3 = 1 / d3;
  const l43 = s43 * i3;
  const d4 = a[p + 44] - s40 * l40 - s41 * l41 - s42 * l42 - s43 * l43;
  a[p] = i0;
  a[p + 10] = l10;
  a[p + 11] = i1;
  a[p + 20] = l20;
  a[p + 21] = l21;
  a[p + 22] = i2;
  a[p + 30] = l30;
  a[p + 31] = l31;
  a[p + 32] = l32;
  a[p + 33] = i3;
  a[p + 40] = l40;
  a[p + 41] = l41;
  a[p + 42] = l42;
  a[p + 43] = l43;
  a[p + 44] = 1 / d4;
  return notAbove0(d0) + notAbove0(d1) + notAbove0(d2) + notAbove0(d3) + notAbove0(d4);
}

/** Solves with the factors of `factor`; `b` becomes the solution. */
export function solveFactored(a: Float64Array, nodes: number, per: number, b: Float64Array): void {
  const width = 2 * per;
  const n = nodes * per;
  for (let first = 0; first < n; first += per)
    for (let c = 0; c < per; c++) {
      const row = (first + c) * width;
      let sum = first > 0 ? b[first + c] - dot(a, row, b, first - per, per) : b[first + c];
      for (let k = 0; k < c; k++) sum -= a[row + per + k] * b[first + k];
      b[first + c] = sum;
    }
  for (let first = 0, own = per; first < n; first += per)
    for (let c = 0; c < per; c++, own += width) b[first + c] *= a[own + c];
  for (let first = n - per; first >= 0; first -= per)
    for (let c = per - 1; c >= 0; c--) {
      const row = (first + c) * width;
      const value = b[first + c];
      for (let k = 0; k < c; k++) b[first + k] -= a[row + per + k] * value;
      if (first > 0) subtract(a, row, value, b, first - per, per);
    }
}

/** A row of `a` times as many entries of `b`. */
function dot(a: Float64Array, row: number, b: Float64Array, first: number, per: number): number {
  if (per === 3) return a[row] * b[first] + a[row + 1] * b[first + 1] + a[row + 2] * b[first + 2];
  if (per === 5)
    return (
      a[row] * b[first] +
      a[row + 1] * b[first + 1] +
      a[row + 2] * b[first + 2] +
      a[row + 3] * b[first + 3] +
      a[row + 4] * b[first + 4]
    );
  let sum = 0;
  for (let k = 0; k < per; k++) sum += a[row + k] * b[first + k];
  return sum;
}

/** Takes a row of `a` times `value` from as many entries of `b`. */
function subtract(
  a: Float64Array,
  row: number,
  value: number,
  b: Float64Array,
  first: number,
  per: number,
): void {
  b[first] -= a[row] * value;
  if (per === 1) return;
  b[first + 1] -= a[row + 1] * value;
  if (per === 2) return;
  b[first + 2] -= a[row + 2] * value;
  for (let k = 3; k < per; k++) b[first + k] -= a[row + k] * value;
}
