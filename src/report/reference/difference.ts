import type { CaseResult, ComputedBlock, ComputedValue } from "./run-case.ts";

/** The largest relative difference in one group of results. */
export interface Difference {
  readonly group: string;
  readonly largest: number;
  /** Path of the number that differs most, in the case's own names. */
  readonly at: string;
  readonly expected: number;
  readonly computed: number;
  /** How many numbers were compared. */
  readonly count: number;
}

/** One number of the answer beside the author's. */
interface Pair {
  readonly path: string;
  readonly expected: number;
  readonly computed: number;
}

/** What one group of a guyed mast holds, and the number that its differences are taken relative to. */
interface Group {
  readonly name: string;
  readonly holds: RegExp;
  /** Paths whose greatest magnitude is the measure. */
  readonly measure: RegExp;
}

/** First match wins. Places of flat maxima are a group of their own: a peak moves far before its height does. */
const groups: readonly Group[] = [
  {
    name: "guy tensions",
    holds: /^guys\.\d+\.(tension_|force_)/,
    measure: /^guys\.\d+\.tension_/,
  },
  {
    name: "unstressed lengths",
    holds: /^guys\.\d+\.unstressed_length_ref_m/,
    measure: /^guys\.\d+\.unstressed_length_ref_m/,
  },
  {
    name: "moments",
    holds: /(^|\.)(M_|max_M_resultant|interior_peak_M|moment_resultant)(?!z_m)/,
    measure: /^max\.M_resultant_Nm/,
  },
  { name: "displacements", holds: /\.(u[xyz]_m|u_horizontal_m)$/, measure: /^max\.u_horizontal_m/ },
  { name: "slopes", holds: /^top\.slope_/, measure: /^top\.slope_/ },
  {
    name: "anchors",
    holds: /^anchors\.\d+\.(force_|horizontal|uplift|radial|resultant)/,
    measure: /^anchors\.\d+\.resultant_N/,
  },
  { name: "base compression", holds: /^base\.compression_N/, measure: /^base\.compression_N/ },
  { name: "base shear", holds: /^base\.shear_/, measure: /^base\.shear_resultant_N/ },
  {
    name: "thrust of guy levels",
    holds: /^guy_levels\.\d+\.guy_force_/,
    measure: /^guy_levels\.\d+\.guy_force_/,
  },
  {
    name: "axial force",
    holds: /\.(axial_|max_compression_N|compression_N)/,
    measure: /^base\.compression_N/,
  },
  { name: "shear", holds: /\.max_shear_/, measure: /\.max_shear_/ },
  { name: "places of peaks", holds: /(max_M_z_m|interior_peak_z_m|M_z_m|u_z_m)$/, measure: /^top\.z_m/ },
  { name: "buckling factor", holds: /^buckling_factor/, measure: /^buckling_factor/ },
];

/**
 * How far an answer lies from its author's, group by group. A guyed mast is compared as its own measure says
 * (tensions by the greatest tension, moments by the greatest moment ...); a closed form number by number. Empty
 * where the case states no answer or was refused.
 */
export function differences(outside: unknown, result: CaseResult): readonly Difference[] {
  if ("error" in result || typeof outside !== "object" || outside === null) return [];
  const file = outside as { readonly [name: string]: ComputedValue | undefined };
  if (result.kind !== "guyed-mast") {
    const pairs = pairsOf(file.expected, result.computed);
    return [...new Set(pairs.map(({ path }) => path.split(".")[0]))].flatMap((key) =>
      worst(
        key,
        pairs.filter(({ path }) => path.split(".")[0] === key),
        ({ expected }) => Math.abs(expected),
      ),
    );
  }
  const stated = {
    ...(file.output as ComputedBlock | undefined),
    ...(file.buckling_factor_linearised === undefined
      ? {}
      : { buckling_factor_linearised: file.buckling_factor_linearised }),
  };
  const pairs = pairsOf(stated, result.computed);
  return groups.flatMap(({ name, holds, measure }, g) => {
    const scale = Math.max(
      0,
      ...pairs.filter(({ path }) => measure.test(path)).map(({ expected }) => Math.abs(expected)),
    );
    const own = pairs.filter(
      ({ path }) => holds.test(path) && !groups.slice(0, g).some((earlier) => earlier.holds.test(path)),
    );
    return worst(name, own, () => scale);
  });
}

function worst(group: string, pairs: readonly Pair[], scale: (pair: Pair) => number): Difference[] {
  if (pairs.length === 0) return [];
  const off = pairs.map((pair) => {
    const gap = Math.abs(pair.computed - pair.expected);
    return gap === 0 ? 0 : gap / scale(pair);
  });
  const at = off.reduce((most, value, i) => (value > off[most] || Number.isNaN(value) ? i : most), 0);
  const { path, expected, computed } = pairs[at];
  return [{ group, largest: off[at], at: path, expected, computed, count: pairs.length }];
}

/** Numbers that both sides have, by their path. */
function pairsOf(
  expected: ComputedValue | undefined,
  computed: ComputedValue | undefined,
  path = "",
): Pair[] {
  if (typeof expected === "number" && typeof computed === "number") return [{ path, expected, computed }];
  if (typeof expected !== "object" || typeof computed !== "object" || !expected || !computed) return [];
  return Object.entries(expected).flatMap(([key, value]) =>
    pairsOf(value, (computed as ComputedBlock)[key], path === "" ? key : `${path}.${key}`),
  );
}
