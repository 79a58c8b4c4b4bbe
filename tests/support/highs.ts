import loadHighs from "highs";

const highs = await loadHighs();

/** A mixed-integer program as HiGHS reads it. */
export interface LinearProgram {
  /** Minimised: coefficient and name of each variable. */
  readonly cost: readonly (readonly [number, string])[];
  readonly rows: readonly {
    readonly terms: readonly (readonly [number, string])[];
    readonly sense: ">=" | "<=" | "=";
    readonly than: number;
  }[];
  /** Whole numbers of at least 0, and at most what is stated; any other variable is a real number of at least 0. */
  readonly whole: Readonly<Record<string, number | undefined>>;
}

const sum = (terms: readonly (readonly [number, string])[]): string =>
  terms.map(([c, name]) => `${c < 0 ? "-" : "+"} ${Math.abs(c)} ${name}`).join(" ");

/** The least cost by HiGHS, an outside solver. */
export function leastCost({ cost, rows, whole }: LinearProgram): number | "impossible" {
  const names = Object.keys(whole);
  const text = [
    "Minimize",
    ` obj: ${sum(cost)}`,
    "Subject To",
    ...rows.map(({ terms, sense, than }, r) => ` row${r}: ${sum(terms)} ${sense} ${than}`),
    "Bounds",
    ...names.map((name) => (whole[name] === undefined ? ` ${name} >= 0` : ` 0 <= ${name} <= ${whole[name]}`)),
    "General",
    ` ${names.join(" ")}`,
    "End",
  ].join("\n");
  const answer = highs.solve(text, { mip_rel_gap: 0, mip_abs_gap: 1e-6 });
  if (answer.Status === "Infeasible") return "impossible";
  if (answer.Status !== "Optimal") throw new Error(`HiGHS ends with ${answer.Status}`);
  return answer.ObjectiveValue;
}
