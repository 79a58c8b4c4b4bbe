import { type DeadmanGeometry, deadmanCapacity, deadmanTakeOff } from "./deadman.ts";
import type { Resistance, TakeOff } from "./loads.ts";
import { type RockRodGeometry, rockRodCapacity } from "./rock-rod.ts";
import { type ScrewRating, screwCapacity } from "./screw.ts";
import type { GroundRules, SoilGivens } from "./soil.ts";

export type Anchor =
  | ({ readonly kind: "deadman" } & DeadmanGeometry)
  | ({ readonly kind: "screw" } & ScrewRating)
  | ({ readonly kind: "rock-rod" } & RockRodGeometry);

/** Resultant of all guys on one anchor. N, degrees. */
export interface AnchorPull {
  readonly uplift: number;
  readonly lateral: number;
  /** Between this pull and the shaft; a shaft is set along the pull of the rigged guys. */
  readonly offAxis: number;
}

type AnchorLimit =
  | "uplift"
  | "lateral"
  | "screw-axial"
  | "screw-across"
  | "screw-angle"
  | "rod-steel"
  | "rod-bond"
  | "rod-cone";

/** One limit state of an anchor, nominal; demand and capacity of "screw-angle" are degrees, all others N. */
export interface AnchorResistance extends Resistance {
  readonly limit: AnchorLimit;
}

interface AnchorKind<A> {
  readonly resistances: (
    anchor: A,
    pull: AnchorPull,
    soil: SoilGivens & { readonly digging: string },
    rules: GroundRules,
  ) => readonly AnchorResistance[];
  readonly takeOff: (anchor: A) => TakeOff;
}

const RADIANS = Math.PI / 180;
const nothingDug: TakeOff = { concrete: 0, dug: 0, formed: 0 };

/** Each kind answers for itself; a new kind is one file and one entry here. */
const kinds: { readonly [K in Anchor["kind"]]: AnchorKind<Extract<Anchor, { kind: K }>> } = {
  deadman: {
    resistances: (deadman, pull, soil, rules) => {
      const { uplift, lateral } = deadmanCapacity(deadman, soil, rules);
      return [
        { limit: "uplift", demand: Math.max(0, pull.uplift), capacity: uplift },
        { limit: "lateral", demand: Math.abs(pull.lateral), capacity: lateral },
      ];
    },
    takeOff: deadmanTakeOff,
  },
  screw: {
    resistances: (screw, pull, soil) => {
      const { axial, across, offAxis } = screwCapacity(screw, soil.digging);
      const resultant = Math.hypot(pull.uplift, pull.lateral);
      return [
        { limit: "screw-axial", demand: resultant * Math.cos(pull.offAxis * RADIANS), capacity: axial },
        { limit: "screw-across", demand: resultant * Math.sin(pull.offAxis * RADIANS), capacity: across },
        { limit: "screw-angle", demand: pull.offAxis, capacity: offAxis },
      ];
    },
    takeOff: () => nothingDug,
  },
  "rock-rod": {
    resistances: (rod, pull, soil, rules) => {
      const { steel, bond, cone } = rockRodCapacity(rod, soil, rules);
      const demand = Math.hypot(pull.uplift, pull.lateral);
      return [
        { limit: "rod-steel", demand, capacity: steel },
        { limit: "rod-bond", demand, capacity: bond },
        { limit: "rod-cone", demand, capacity: cone },
      ];
    },
    takeOff: () => nothingDug,
  },
};

const kindOf = <A extends Anchor>(anchor: A) => kinds[anchor.kind] as unknown as AnchorKind<A>;

/** Every limit state of any anchor under one pull. */
export function anchorResistances(
  anchor: Anchor,
  pull: AnchorPull,
  soil: SoilGivens & { readonly digging: string },
  rules: GroundRules,
): readonly AnchorResistance[] {
  return kindOf(anchor).resistances(anchor, pull, soil, rules);
}

export function anchorTakeOff(anchor: Anchor): TakeOff {
  return kindOf(anchor).takeOff(anchor);
}
