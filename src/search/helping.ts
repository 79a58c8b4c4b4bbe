import type { Check } from "../model/verdict.ts";
import type { Cure } from "./cures.ts";

/** Used shares are shown with two digits: less than this is no gain. */
const GAIN = 0.005;

export interface Helping {
  readonly cure: Cure;
  /** The check in question, after the step. */
  readonly then: Check;
  /** Other checks that fail before and after it. */
  readonly failing: number;
}
/** What one step can do for a check. */
export interface Help {
  /** Steps after which no further check fails, cheapest first; of two the dearer one gains more. */
  readonly steps: readonly Helping[];
  /** Where there are none: the step that comes nearest, and the check that it makes fail. */
  readonly spoilt: (Helping & { readonly by: Check }) | null;
}

/** The steps that take load off a check, of a design with these checks. */
export function helping(check: Check, checks: readonly Check[], found: readonly Cure[]): Help {
  const held = new Set(checks.filter(({ passes }) => passes).map(({ id }) => id));
  const gains = found.flatMap((cure) => {
    const then = cure.checks.find(({ id }) => id === check.id);
    if (!then || !(then.utilisation < check.utilisation - GAIN)) return [];
    const failing = cure.checks.filter(({ passes, kind }) => !passes && kind !== "warning");
    const by = failing.find(({ id }) => held.has(id) || !checks.some((one) => one.id === id));
    return [{ cure, then, by, failing: failing.filter(({ id }) => id !== check.id).length }];
  });
  const cheapest = gains
    .filter(({ by }) => !by)
    .sort((a, b) => a.cure.costs - b.cure.costs || a.then.utilisation - b.then.utilisation);
  const steps = cheapest.filter(
    ({ then }, i) => !cheapest.slice(0, i).some((one) => one.then.utilisation <= then.utilisation),
  );
  if (steps.length > 0) return { steps, spoilt: null };
  const [nearest] = gains
    .flatMap(({ by, ...one }) => (by ? [{ ...one, by }] : []))
    .sort((a, b) => a.by.utilisation - b.by.utilisation);
  return { steps, spoilt: nearest ?? null };
}
