import type { Problem } from "../problem/types.ts";

/** n over k. */
export function choose(n: number, k: number): number {
  if (k < 0 || k > n) return 0;
  let value = 1;
  for (let i = 1; i <= k; i++) value = (value * (n - k + i)) / i;
  return Math.round(value);
}

/** Every way to fill `size` places from the values. */
export function* tuples<T>(values: readonly T[], size: number): Generator<T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (const value of values) for (const rest of tuples(values, size - 1)) yield [value, ...rest];
}

/** The grid: its sizes, known before the search starts, and the choices that are lists of lists. */
export class Grid {
  /** Footings of one free-standing structure. */
  readonly perFree: number;
  private readonly problem: Problem;
  private readonly ways: (readonly (readonly number[])[])[] = [];

  constructor(problem: Problem) {
    this.problem = problem;
    this.perFree = problem.footings.length;
  }

  /** Anchors of a hold, x footings. */
  perPlaceAt(hold: number): number {
    return this.problem.holds[hold].anchors.length * this.problem.footings.length;
  }

  /** Ways to finish a set of levels when `chosen` stand and `below` candidates remain under the lowest. */
  completions(chosen: number, below: number): number {
    const strands = this.problem.strands.length;
    let ways = 0;
    for (const count of this.problem.study.parts.levelCounts)
      if (count >= chosen) ways += choose(below, count - chosen) * strands ** count * this.tensions(count);
    return ways;
  }

  /** Ways to draw a number of levels to their initial tensions. */
  tensions(levels: number): number {
    const { tensions, tensionEachLevel } = this.problem.study.parts;
    return tensionEachLevel ? tensions.length ** levels : tensions.length;
  }

  /** Each of those ways, a tension a level: the same lists each time, for every structure that is kept has one. */
  drawn(levels: number): readonly (readonly number[])[] {
    const { tensions, tensionEachLevel } = this.problem.study.parts;
    this.ways[levels] ??= tensionEachLevel
      ? [...tuples(tensions, levels)]
      : tensions.map((tension) => Array.from({ length: levels }, () => tension));
    return this.ways[levels];
  }

  /** Structures of one stack, and the designs on them. */
  ofStack(candidates: number): { structures: number; designs: number } {
    const { supports, guysPerLevel } = this.problem.study.parts;
    let structures = 0;
    let designs = 0;
    if (supports.includes("freestanding")) {
      structures += 1;
      designs += this.perFree;
    }
    if (supports.includes("guyed")) {
      const ways = this.completions(0, candidates) * (1 + this.problem.arms.length);
      for (const perLevel of guysPerLevel)
        structures += ways * (this.problem.stars.get(perLevel)?.length ?? 0);
      const { radii, rotations, anchors, footings } = this.problem;
      designs +=
        guysPerLevel.length * ways * radii.length * rotations.length * anchors.length * footings.length;
    }
    return { structures, designs };
  }

  /** Candidate guy heights of a mast: those of the study that are on it. */
  candidates(height: number): number[] {
    return this.problem.levelHeights.filter((z) => z > 0 && z <= height + 1e-9);
  }

  total(): { structures: number; designs: number } {
    let structures = 0;
    let designs = 0;
    this.problem.heights.forEach((height, h) => {
      const one = this.ofStack(this.candidates(height).length);
      const times = this.problem.stacks[h].length * this.problem.packages.length;
      structures += times * one.structures;
      designs += times * one.designs;
    });
    return { structures, designs };
  }
}
