/** A pin-jointed truss in space by direct stiffness, for small cases: an outside judge of the bracing formulas. */
export interface Truss {
  readonly nodes: readonly (readonly [number, number, number])[];
  /** Two nodes and EA, N. */
  readonly bars: readonly (readonly [number, number, number])[];
  /** Nodes held in every direction. */
  readonly held: ReadonlySet<number>;
  /** Directions that no node moves in: 2 makes it a plane truss in x and z when its y is held. */
  readonly frozen?: "y";
  readonly loads: ReadonlyMap<number, readonly [number, number, number]>;
}

/** Displacements of every node, m, and bar forces, N (pull positive); null where it is a mechanism. */
export function solveTruss(truss: Truss): { moved: number[][]; forces: number[] } | null {
  const { nodes, bars, held, frozen, loads } = truss;
  const at = new Map<string, number>();
  nodes.forEach((_, node) => {
    for (const axis of [0, 1, 2])
      if (!held.has(node) && !(frozen && axis === 1)) at.set(`${node} ${axis}`, at.size);
  });
  const n = at.size;
  const k = Array.from({ length: n }, () => new Array<number>(n + 1).fill(0));
  const along = ([a, b]: readonly number[]) => {
    const d = [0, 1, 2].map((axis) => nodes[b][axis] - nodes[a][axis]);
    const length = Math.hypot(...d);
    return { unit: d.map((x) => x / length), length };
  };
  for (const bar of bars) {
    const { unit, length } = along(bar);
    const stiff = bar[2] / length;
    for (const [p, sp] of [
      [bar[0], -1],
      [bar[1], 1],
    ])
      for (const [q, sq] of [
        [bar[0], -1],
        [bar[1], 1],
      ])
        for (const i of [0, 1, 2])
          for (const j of [0, 1, 2]) {
            const row = at.get(`${p} ${i}`);
            const column = at.get(`${q} ${j}`);
            if (row !== undefined && column !== undefined)
              k[row][column] += stiff * sp * sq * unit[i] * unit[j];
          }
  }
  for (const [node, force] of loads)
    force.forEach((value, axis) => {
      const row = at.get(`${node} ${axis}`);
      if (row !== undefined) k[row][n] += value;
    });
  const largest = Math.max(...k.map((row, i) => Math.abs(row[i])));
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(k[r][c]) > Math.abs(k[pivot][c])) pivot = r;
    if (Math.abs(k[pivot][c]) < 1e-11 * largest) return null;
    [k[c], k[pivot]] = [k[pivot], k[c]];
    for (let r = c + 1; r < n; r++) {
      const share = k[r][c] / k[c][c];
      if (share !== 0) for (let j = c; j <= n; j++) k[r][j] -= share * k[c][j];
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--)
    x[r] = (k[r][n] - k[r].slice(r + 1, n).reduce((sum, v, j) => sum + v * x[r + 1 + j], 0)) / k[r][r];
  const moved = nodes.map((_, node) => [0, 1, 2].map((axis) => x[at.get(`${node} ${axis}`) ?? -1] ?? 0));
  const forces = bars.map((bar) => {
    const { unit, length } = along(bar);
    const stretch = unit.reduce((sum, u, axis) => sum + u * (moved[bar[1]][axis] - moved[bar[0]][axis]), 0);
    return (bar[2] / length) * stretch;
  });
  return { moved, forces };
}
