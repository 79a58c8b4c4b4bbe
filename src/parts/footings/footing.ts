import type { FootingChoice } from "../../model/design.ts";
import type { BarRun } from "../../physics/concrete/bars.ts";
import type { Resistance } from "../../physics/ground/loads.ts";
import { concreteBearing } from "../../physics/steel/bearing.ts";
import { partCents } from "../price.ts";
import type { Extra, FootingLoads, FootingPart, Ground, Measure, TakeOff } from "../types.ts";
import { utilisation } from "../types.ts";

/** One limit state of a kind: what it reads of all that one load does. `R` is what the kind works out for a load. */
export interface FootingLimit<R> {
  readonly limitState: string;
  readonly required: number;
  readonly source: string;
  /** Hot. */
  of(response: R): Resistance;
  /** At the load that governs. */
  note?(response: R, load: FootingLoads): string;
}

/** What one kind of footing must answer; the rest is shared, and never asks which kind it is. */
interface FootingKind<R> {
  readonly choice: FootingChoice;
  readonly takeOff: TakeOff;
  readonly extras?: readonly Extra[];
  readonly bars?: readonly BarRun[];
  /** Side of the square of concrete that the base plate may stand on, m. */
  readonly top: number;
  /** All that one load does to it, worked out once for every limit state. Hot. */
  response(load: FootingLoads): R;
  /** In the order that a reader expects. */
  readonly limits: readonly FootingLimit<R>[];
}

/** Allowable soil values hold their safety already; ultimate ones do not. */
export const bearingRule = ({ soil, rules }: Ground): { required: number; source: string } => ({
  required: soil.values === "allowable" ? rules.bearing.required : 2 * rules.bearing.required,
  source: rules.bearing.source,
});

/** A part from a kind. The crushing of the concrete under the plate is every kind's last limit state. */
export function footingOf<R>(kind: FootingKind<R>, ground: Ground): FootingPart {
  const { concrete, baseCompression } = ground.rules;
  const { limits, takeOff, extras = [], bars = [] } = kind;
  const plateStrength = (plate: number) => {
    const side = Math.min(plate, kind.top);
    return concreteBearing(concrete.strength, side * side, kind.top * kind.top);
  };
  return {
    choice: kind.choice,
    takeOff,
    extras,
    bars,
    depth: kind.choice.depth,
    cents: partCents(takeOff, extras, ground),
    worst(loads, plate) {
      let most = 0;
      let compression = 0;
      for (const load of loads) {
        const response = kind.response(load);
        for (const limit of limits) {
          const use = ratio(limit.of(response), limit.required);
          // a use that is no number must not pass for a small one
          if (use > most || Number.isNaN(use)) most = use;
        }
        if (load.compression > compression) compression = load.compression;
      }
      return Math.max(most, (compression * baseCompression.required) / plateStrength(plate));
    },
    measures(loads, plate) {
      const responses = loads.map((load) => kind.response(load));
      const heaviest = indexOfMost(loads.map((load) => load.compression));
      return [
        ...limits.map((limit): Measure => {
          const { limitState, required, source } = limit;
          const of = indexOfMost(responses.map((r) => utilisation({ ...limit.of(r), required })));
          const note = limit.note?.(responses[of], loads[of]);
          return { limitState, ...limit.of(responses[of]), required, source, of, note };
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

const indexOfMost = (values: readonly number[]): number =>
  values.reduce((best, value, i) => (value > values[best] ? i : best), 0);

const ratio = ({ demand, capacity }: Resistance, required: number) =>
  demand <= 0 ? 0 : capacity <= 0 ? Number.POSITIVE_INFINITY : (demand * required) / capacity;
