import type { FootingResistance } from "../../physics/ground/loads.ts";
import type { FootingLoads, Ground } from "../types.ts";
import { bearingRule, type FootingLimit } from "./footing.ts";

/** Bearing, overturning and sliding: the limit states of a footing that stands on its underside. */
export const standingLimits = <R extends FootingResistance>(
  ground: Ground,
  overturningNote?: (load: FootingLoads) => string,
): readonly FootingLimit<R>[] => [
  { limitState: "base-bearing", ...bearingRule(ground), of: (r) => r.bearing },
  {
    limitState: "overturning",
    ...ground.rules.overturning,
    of: (r) => r.overturning,
    note: overturningNote && ((_, load) => overturningNote(load)),
  },
  { limitState: "sliding", ...ground.rules.sliding, of: (r) => r.sliding },
];
