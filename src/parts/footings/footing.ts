import type { FootingChoice } from "../../model/design.ts";
import type { BarRun } from "../../physics/concrete/bars.ts";
import type { Resistance } from "../../physics/ground/loads.ts";
import type { Rocking } from "../../physics/ground/rocking.ts";
import { concreteBearing } from "../../physics/steel/bearing.ts";
import { pricesOf } from "../price.ts";
import type { Extra, FootingLoads, FootingPart, Ground, Measure, TakeOff } from "../types.ts";
import { used, utilisation } from "../types.ts";

/** One limit state of a kind: what it reads of all that one load does. `R` is what the kind works out for a load. */
export interface FootingLimit<R> {
  readonly limitState: string;
  readonly required: number;
  readonly source: string;
  /** May it be used less under more shear and moment? Then a floor does not ask it. */
  readonly mayFall?: true;
  /** Hot. */
  of(response: R, load: FootingLoads): Resistance;
  /** At the load that governs. */
  note?(response: R, load: FootingLoads): string;
}

/** What one kind of footing must answer; the rest is shared, and never asks which kind it is. */
interface FootingKind<R> {
  readonly choice: FootingChoice;
  readonly takeOff: TakeOff;
  readonly extras?: readonly Extra[];
  readonly bars?: readonly BarRun[];
  /** Does it stand on solid rock, which frost does not lift? */
  readonly onRock?: boolean;
  /** Side of the square of concrete that the base plate may stand on, m. */
  readonly top: number;
  /** All that one load does to it, worked out once for every limit state. Hot. */
  response(load: FootingLoads): R;
  /** How it turns on its soil; absent where the soil states no modulus. */
  readonly rocking?: Rocking;
  /** On the base under a load, N: what holds a side of it down. */
  normal(response: R): number;
  /** In the order that a reader expects. */
  readonly limits: readonly FootingLimit<R>[];
}

/**
 * A limit state of the concrete: the rule set's load factor on the demand, the code's resistance factor in the
 * capacity.
 */
export const concreteLimit =
  <R>({ loadFactor, source }: Ground["rules"]["concreteDesign"]) =>
  (limitState: string, demand: (response: R) => number, capacity: number, note: string): FootingLimit<R> => ({
    limitState,
    required: 1,
    source,
    of: (response) => ({ demand: loadFactor * demand(response), capacity }),
    note: () => note,
  });

/** Allowable soil values hold their safety already; ultimate ones do not. */
export const bearingRule = ({ soil, rules }: Ground): { required: number; source: string } => ({
  required: soil.values === "allowable" ? rules.bearing.required : 2 * rules.bearing.required,
  source: rules.bearing.source,
});

/** A part from a kind. The crushing of the concrete under the plate is every kind's last limit state. */
export function footingOf<R>(kind: FootingKind<R>, ground: Ground): FootingPart {
  const { concrete, baseCompression } = ground.rules;
  const { takeOff, extras = [], bars = [] } = kind;
  const limits = [...kind.limits, ...stiffnessLimit(kind, ground)];
  const rising = limits.filter(({ mayFall }) => !mayFall);
  const plateStrength = (plate: number) => {
    const side = Math.min(plate, kind.top);
    return concreteBearing(concrete.strength, side * side, kind.top * kind.top);
  };
  const worstOf = (
    asked: typeof limits,
    loads: readonly FootingLoads[],
    plate: number,
    enough = Number.POSITIVE_INFINITY,
  ): number => {
    let most = 0;
    let compression = 0;
    for (const load of loads) {
      if (most > enough) return most;
      const response = kind.response(load);
      for (const limit of asked) {
        const { demand, capacity } = limit.of(response, load);
        const use = used(demand, capacity, limit.required);
        // a use that is no number must not pass for a small one
        if (use > most || Number.isNaN(use)) most = use;
      }
      if (load.compression > compression) compression = load.compression;
    }
    return Math.max(most, (compression * baseCompression.required) / plateStrength(plate));
  };
  return {
    choice: kind.choice,
    takeOff,
    extras,
    bars,
    onRock: kind.onRock ?? false,
    depth: kind.choice.depth,
    rotationalStiffness: kind.rocking?.stiffness,
    ...pricesOf({ takeOff, extras, bars }, ground),
    worst: (loads, plate, enough) => worstOf(limits, loads, plate, enough),
    floor: (load, plate) => worstOf(rising, [load], plate),
    measures(loads, plate) {
      const responses = loads.map((load) => kind.response(load));
      const heaviest = indexOfMost(loads.map((load) => load.compression));
      return [
        ...limits.map((limit): Measure => {
          const { limitState, required, source } = limit;
          const of = indexOfMost(
            responses.map((r, i) => utilisation({ ...limit.of(r, loads[i]), required })),
          );
          const note = limit.note?.(responses[of], loads[of]);
          return { limitState, ...limit.of(responses[of], loads[of]), required, source, of, note };
        }),
        {
          limitState: "base-compression",
          demand: Math.max(loads[heaviest].compression, 0),
          capacity: plateStrength(plate),
          required: baseCompression.required,
          source: baseCompression.source,
          of: heaviest,
        },
      ];
    },
  };
}

/** A base that was analysed on a spring must turn no easier than it. A pin has no moment, and is not asked. */
function stiffnessLimit<R>(kind: FootingKind<R>, ground: Ground): FootingLimit<R>[] {
  const { baseStiffness } = ground;
  if (baseStiffness === undefined) return [];
  return [
    {
      limitState: "base-stiffness",
      required: 1,
      // the shear turns it too: of a larger moment that is a smaller share
      mayFall: true,
      source: "Winkler's springs (docs/theory/ground.md); stiffness stated by the study",
      of: (response, load) => ({
        demand: load.moment === 0 ? 0 : baseStiffness,
        capacity: kind.rocking?.under(load, kind.normal(response)) ?? 0,
      }),
      note: () =>
        kind.rocking
          ? "moment at grade over the turn of the footing, per radian"
          : `found no subgrade modulus of ${ground.soil.name}, expected one to know how the base turns`,
    },
  ];
}

const indexOfMost = (values: readonly number[]): number =>
  values.reduce((best, value, i) => (value > values[best] ? i : best), 0);
