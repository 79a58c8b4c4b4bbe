import { governing } from "../checks/governing.ts";
import type { Design } from "../model/design.ts";
import type { Check, Verdict } from "../model/verdict.ts";

/** A design under its own study, judged: one column. */
export interface Compared {
  readonly name: string;
  readonly design: Design;
  readonly verdict: Verdict;
}

export type FigureName =
  | "cost"
  | "concrete"
  | "digging"
  | "margin"
  | "work"
  | "curing"
  | "height"
  | "radius"
  | "levels"
  | "steel";

/** A figure of every column, SI and money, and by how much it differs from the first's; null where one has none. */
export interface FigureRow {
  readonly what: FigureName;
  readonly values: readonly (number | null)[];
  readonly differences: readonly (number | null)[];
}

/** A choice of every column as ids and sizes, and whether it is another than the first's. */
export interface ChoiceRow {
  readonly what: "stack" | "guys" | "anchor" | "footing" | "package";
  readonly designs: readonly Design[];
  readonly differs: readonly boolean[];
}

export interface Comparison {
  readonly columns: readonly { readonly name: string; readonly passes: boolean }[];
  readonly figures: readonly FigureRow[];
  readonly choices: readonly ChoiceRow[];
  /** What governs each: the first check that fails, or the strength check that is used most. */
  readonly governs: readonly (Check | null)[];
  /** Of every strength check that any column has, its utilisation in each; those used most in the first first. */
  readonly uses: readonly {
    readonly id: string;
    readonly title: string;
    readonly where: string;
    readonly values: readonly (number | null)[];
  }[];
}

const figures: Readonly<Record<FigureName, (column: Compared) => number | null>> = {
  cost: ({ verdict }) => verdict.bill.total,
  // a design that fails has no margin to speak of
  margin: ({ verdict }) => (verdict.passes ? verdict.smallestMargin : null),
  concrete: ({ verdict }) => verdict.concreteVolume,
  digging: ({ verdict }) => verdict.dugVolume,
  work: ({ verdict }) => verdict.work.hands,
  curing: ({ verdict }) => verdict.work.curing,
  steel: ({ verdict }) => groupCost(verdict, "sections"),
  height: ({ design }) => design.height,
  radius: ({ design }) => design.guys?.radius ?? null,
  levels: ({ design }) => design.guys?.levels.length ?? 0,
};

const groupCost = (verdict: Verdict, group: Verdict["bill"]["lines"][number]["group"]): number =>
  verdict.bill.lines.reduce((sum, line) => (line.group === group ? sum + line.amount : sum), 0) / 100;

const choices: Readonly<Record<ChoiceRow["what"], (design: Design) => unknown>> = {
  package: (design) => design.package,
  stack: (design) => design.stack,
  guys: ({ guys }) => guys && [guys.perLevel, guys.tension, guys.levels],
  anchor: ({ guys }) => guys && [guys.anchor, guys.radius, guys.radii, guys.rotation],
  footing: (design) => design.footing,
};

/** Rounding parts two equal numbers by less than this share. */
const SAME = 1e-9;

const less = (value: number | null, first: number | null): number | null => {
  if (value === null || first === null) return null;
  const difference = value - first;
  return Math.abs(difference) <= SAME * Math.max(Math.abs(value), Math.abs(first)) ? 0 : difference;
};

/**
 * Designs side by side, each under its own study, difference by difference against the first.
 * @throws RangeError where there is nothing to compare
 */
export function compare(columns: readonly Compared[]): Comparison {
  const [first] = columns;
  if (!first) throw new RangeError("comparison: found no design, expected one or more");
  const written = (name: ChoiceRow["what"], design: Design) => JSON.stringify(choices[name](design));
  const ids = new Map<string, Check>();
  for (const { verdict } of columns)
    for (const check of verdict.checks)
      if (check.kind === "strength" && !ids.has(check.id)) ids.set(check.id, check);
  return {
    columns: columns.map(({ name, verdict }) => ({ name, passes: verdict.passes })),
    figures: (Object.keys(figures) as FigureName[]).map((what) => {
      const values = columns.map(figures[what]);
      return { what, values, differences: values.map((value) => less(value, values[0])) };
    }),
    choices: (Object.keys(choices) as ChoiceRow["what"][]).map((what) => ({
      what,
      designs: columns.map(({ design }) => design),
      differs: columns.map(({ design }) => written(what, design) !== written(what, first.design)),
    })),
    governs: columns.map(({ verdict }) => governing(verdict.checks) ?? null),
    uses: [...ids].map(([id, { title, where }]) => ({
      id,
      title,
      where,
      values: columns.map(
        ({ verdict }) => verdict.checks.find((check) => check.id === id)?.utilisation ?? null,
      ),
    })),
  };
}
