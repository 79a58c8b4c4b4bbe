import { type Matrix, solveDense } from "./dense.ts";

type Point = readonly [number, number, number];

/** A cable as a chain of bars between two fixed points, found by a plain Newton: slow, and apart from any catenary. */
export interface Chain {
  readonly ea: number;
  /** Unstressed, m. */
  readonly length: number;
  /** Load per unstressed length, N/m. */
  readonly load: Point;
}

const BARS = 24;

/** Force of the chain on its upper end, N. */
export function chainPull({ ea, length, load }: Chain, from: Point, to: Point): Point {
  const bar = length / BARS;
  const inner = BARS - 1;
  // it starts as a bow in the way of its load, long enough to be taut all along
  const chord = Math.hypot(...to.map((x, axis) => x - from[axis]));
  const sag = Math.sqrt(Math.max(0.375 * (length / chord - 1), 1e-6)) * chord * 1.2;
  const q = Math.hypot(...load);
  const at: number[][] = Array.from({ length: BARS + 1 }, (_, i) => {
    const share = i / BARS;
    return from.map(
      (x, axis) => x + (to[axis] - x) * share + (4 * share * (1 - share) * sag * load[axis]) / q,
    );
  });
  for (let step = 0; step < 40; step++) {
    const n = 3 * inner;
    const k: Matrix = Array.from({ length: n }, () => new Array<number>(n).fill(0));
    const out = Array.from({ length: n }, (_, j) => load[j % 3] * bar);
    for (let b = 0; b < BARS; b++) {
      const d = at[b + 1].map((x, axis) => x - at[b][axis]);
      const l = Math.hypot(...d);
      const c = d.map((x) => x / l);
      const pull = (ea * (l - bar)) / bar;
      for (const [end, sign] of [
        [b - 1, 1],
        [b, -1],
      ])
        if (end >= 0 && end < inner) for (let a = 0; a < 3; a++) out[3 * end + a] += sign * pull * c[a];
      for (let p = 0; p < 3; p++)
        for (let q = 0; q < 3; q++) {
          const stiff = (ea / bar) * c[p] * c[q] + (pull / l) * ((p === q ? 1 : 0) - c[p] * c[q]);
          for (const [i, j, sign] of [
            [b - 1, b - 1, 1],
            [b, b, 1],
            [b - 1, b, -1],
            [b, b - 1, -1],
          ])
            if (i >= 0 && i < inner && j >= 0 && j < inner) k[3 * i + p][3 * j + q] += sign * stiff;
        }
    }
    const move = solveDense(k, out);
    const furthest = Math.max(...move.map(Math.abs));
    const cut = Math.min(1, (0.05 * length) / furthest);
    for (let i = 0; i < inner; i++) for (let a = 0; a < 3; a++) at[i + 1][a] += cut * move[3 * i + a];
    if (furthest < 1e-11 * length) break;
    if (step === 39) throw new Error("the chain found no rest");
  }
  const d = at[BARS].map((x, axis) => x - at[BARS - 1][axis]);
  const l = Math.hypot(...d);
  const pull = (ea * (l - bar)) / bar;
  // half a bar's load hangs on the end itself
  return d.map((x, axis) => (-pull * x) / l + 0.5 * load[axis] * bar) as unknown as Point;
}
