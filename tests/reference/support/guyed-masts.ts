import { readFileSync } from "node:fs";
import type { GuyedMastCase } from "../../../src/report/reference/guyed-mast.ts";
import type { CaseResult, ComputedBlock, ComputedValue } from "../../../src/report/reference/run-case.ts";

/** Results of one state of a mast, by the names of its file. */
export interface Blocks extends ComputedBlock {
  readonly guy_levels: readonly ComputedBlock[];
  readonly top: ComputedBlock;
  readonly spans: readonly ComputedBlock[];
  readonly guys: readonly ComputedBlock[];
  readonly anchors: readonly ComputedBlock[];
  readonly base: ComputedBlock;
  readonly max: ComputedBlock;
}

/** A reference mast with its author's answers. */
export interface JudgedMast extends GuyedMastCase {
  readonly title: string;
  readonly output: Blocks;
  readonly no_wind_state: Blocks;
  readonly no_wind_state_reference_temperature?: Blocks;
  readonly buckling_factor_linearised: number;
  readonly variants: Readonly<Record<string, Blocks>>;
}

export const judgedMasts: readonly JudgedMast[] = ["P1", "P2", "P3", "P4", "P5", "P6"].map((name) =>
  JSON.parse(readFileSync(new URL(`../cases/guyed-mast-${name}.json`, import.meta.url), "utf8")),
);

export const nameOf = (mast: JudgedMast): string => mast.id.replace("guyed-mast-", "");

export function computedOf(result: CaseResult): Blocks {
  if ("error" in result) throw new Error(`${result.id}: ${result.error}`);
  return result.computed as Blocks;
}

/** The same mast under other loads. */
export const altered = (mast: JudgedMast, input: Partial<JudgedMast["input"]>): JudgedMast => ({
  ...mast,
  input: { ...mast.input, ...input },
});

const noGuyWind = (mast: JudgedMast) =>
  mast.input.guy_levels.map((level) => ({ ...level, guy_wind_N_per_m: 0 }));

export const withoutGuyWind = (mast: JudgedMast): JudgedMast =>
  altered(mast, { guy_levels: noGuyWind(mast) });

export const inStillAir = (mast: JudgedMast): JudgedMast =>
  altered(mast, {
    guy_levels: noGuyWind(mast),
    loads: {
      ...mast.input.loads,
      wind_line_load_N_per_m: mast.input.loads.wind_line_load_N_per_m.map(([z]) => [z, 0] as const),
      point_loads: mast.input.loads.point_loads.map((p) => ({ ...p, wind_force_N: 0 })),
    },
  });

export const atReferenceTemperature = (mast: JudgedMast): JudgedMast =>
  altered(mast, { temperature: { ...mast.input.temperature, delta_K: 0 } });

/** The mast takes the temperature of its guys. */
export const asColdAsGuys = (mast: JudgedMast): JudgedMast =>
  altered(mast, {
    temperature: {
      ...mast.input.temperature,
      mast_alpha_per_K: mast.input.guy_levels[0].cable.alpha_per_K,
    },
  });

/** Bracing that gives: shear stiffness a tenth of the axial. */
export const withSoftBracing = (mast: JudgedMast): JudgedMast =>
  altered(mast, {
    mast: {
      ...mast.input.mast,
      segments: mast.input.mast.segments.map((s) => ({ ...s, GAs_N: 0.1 * s.EA_N })),
    },
  });

export interface NumberPair {
  readonly path: string;
  readonly expected: number;
  readonly computed: number;
}

/** Every number of `expected` beside the computed one, save paths to leave out; a missing one is an error. */
export function numberPairs(
  expected: ComputedValue | undefined,
  computed: ComputedValue | undefined,
  without: RegExp,
  path = "",
): NumberPair[] {
  if (without.test(path)) return [];
  if (typeof expected === "number") {
    if (typeof computed !== "number") throw new Error(`${path}: found ${computed}, expected a number`);
    return [{ path, expected, computed }];
  }
  if (typeof expected !== "object" || expected === null) return [];
  return Object.entries(expected).flatMap(([key, value]) =>
    numberPairs(value, (computed as ComputedBlock)?.[key], without, path === "" ? key : `${path}.${key}`),
  );
}
