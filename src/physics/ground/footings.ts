import { type BlockGeometry, blockResistance, blockTakeOff } from "./block.ts";
import type { FootingLoads, FootingResistance, TakeOff } from "./loads.ts";
import { type PadGeometry, padResistance, padTakeOff } from "./pad.ts";
import type { GroundRules, SoilGivens } from "./soil.ts";

export type Footing = ({ readonly kind: "block" } & BlockGeometry) | ({ readonly kind: "pad" } & PadGeometry);

interface FootingKind<G> {
  readonly resistance: (
    geometry: G,
    loads: FootingLoads,
    soil: SoilGivens,
    rules: GroundRules,
  ) => FootingResistance;
  readonly takeOff: (geometry: G) => TakeOff;
}

/** Each kind answers for itself; a new kind is one file and one line here. */
const kinds: { readonly [K in Footing["kind"]]: FootingKind<Extract<Footing, { kind: K }>> } = {
  block: { resistance: blockResistance, takeOff: blockTakeOff },
  pad: { resistance: padResistance, takeOff: padTakeOff },
};

const kindOf = <F extends Footing>(footing: F) => kinds[footing.kind] as unknown as FootingKind<F>;

/** Bearing, overturning and sliding of any footing. */
export function footingResistance(
  footing: Footing,
  loads: FootingLoads,
  soil: SoilGivens,
  rules: GroundRules,
): FootingResistance {
  return kindOf(footing).resistance(footing, loads, soil, rules);
}

export function footingTakeOff(footing: Footing): TakeOff {
  return kindOf(footing).takeOff(footing);
}
