import solver from "javascript-lp-solver";

/** A small integer program in our own words: every quantity is a whole number of at least 0. */
export interface IntegerProgram {
  /** Cost of one of each, minimised. */
  readonly cost: readonly number[];
  readonly rows: readonly {
    readonly coefficients: readonly number[];
    readonly least?: number;
    readonly most?: number;
  }[];
  /** Greatest number of each; absent means any. */
  readonly most: readonly (number | undefined)[];
}

export type IntegerOutcome =
  | { readonly status: "solved"; readonly counts: readonly number[]; readonly cost: number }
  | { readonly status: "impossible" };

const NEAR = 1e-6;

/**
 * Solves with javascript-lp-solver, which is right but says little: names that it reserves are avoided by
 * prefixes, and what comes back is checked again (whole numbers, every row, the cost) before anyone sees it.
 * @throws Error where the answer breaks its own program: a defect, never an outcome
 */
export function solveInteger(program: IntegerProgram): IntegerOutcome {
  const n = program.cost.length;
  const constraints: Record<string, { min?: number; max?: number }> = {};
  const variables: Record<string, Record<string, number>> = {};
  const ints: Record<string, 1> = {};
  program.rows.forEach((row, r) => {
    constraints[`row_${r}`] = {
      ...(row.least === undefined ? {} : { min: row.least }),
      ...(row.most === undefined ? {} : { max: row.most }),
    };
  });
  for (let i = 0; i < n; i++) {
    const column: Record<string, number> = { cost_: program.cost[i] };
    program.rows.forEach((row, r) => {
      column[`row_${r}`] = row.coefficients[i];
    });
    const most = program.most[i];
    if (most !== undefined) {
      column[`most_${i}`] = 1;
      constraints[`most_${i}`] = { max: most };
    }
    variables[`v_${i}`] = column;
    ints[`v_${i}`] = 1;
  }
  // programs this small need not be made smaller first: its code stays out of the build (vite.config.ts)
  const options = { presolve: false };
  const raw = solver.Solve({
    optimize: "cost_",
    opType: "min",
    constraints,
    variables,
    ints,
    options,
  }) as Record<string, unknown>;
  if (raw.feasible !== true) return { status: "impossible" };
  const counts = Array.from({ length: n }, (_, i) => Number(raw[`v_${i}`] ?? 0));
  const whole = counts.map(Math.round);
  const broken = (what: string) =>
    new Error(`the integer program came back with ${what}: ${JSON.stringify(counts)}`);
  if (counts.some((c, i) => !Number.isFinite(c) || Math.abs(c - whole[i]) > NEAR || whole[i] < 0))
    throw broken("fractions");
  for (const row of program.rows) {
    const sum = row.coefficients.reduce((total, c, i) => total + c * whole[i], 0);
    const slack = NEAR * Math.max(1, Math.abs(sum));
    if (
      (row.least !== undefined && sum < row.least - slack) ||
      (row.most !== undefined && sum > row.most + slack)
    )
      throw broken("a row broken");
  }
  if (whole.some((c, i) => c > (program.most[i] ?? Number.POSITIVE_INFINITY)))
    throw broken("more than there is");
  return { status: "solved", counts: whole, cost: whole.reduce((sum, c, i) => sum + c * program.cost[i], 0) };
}
