import { effectiveSquare } from "./eccentric.ts";
import type { FootingLoads, Resistance } from "./loads.ts";
import {
  baseHold,
  bearingUnder,
  type GroundRules,
  heldWeight,
  type SoilGivens,
  soilAt,
  submergedUnitWeight,
  unheld,
  weakestTo,
} from "./soil.ts";
import { upliftCone } from "./uplift-pyramid.ts";

/** A square pad cast on rock, held by upright bars grouted into it, in a square ring. m, Pa. */
export interface RockPadGeometry {
  readonly width: number;
  /** Grade to the rock it stands on: its thickness. */
  readonly depth: number;
  /** In all, a multiple of four. */
  readonly dowels: number;
  readonly socket: number;
  readonly bar: number;
  readonly yield: number;
  readonly hole: number;
  /** From the face of the pad to the middle of a dowel. */
  readonly edge: number;
}

/** What one dowel holds along its axis, nominal, N. */
export interface DowelStrength {
  readonly steel: number;
  readonly bond: number;
  /** Its share of the rock that lifts: of its own cone, of its row's prism or of the whole ring's, the least. */
  readonly cone: number;
}

/** All that one load does to the pad. Resistances in N, N m, Pa. */
export interface RockPadResponse {
  readonly bearing: Resistance;
  readonly overturning: Resistance;
  readonly sliding: Resistance;
  /** Greatest pull of a dowel, N, and its shear beyond what friction holds, N. */
  readonly pull: number;
  readonly shear: number;
  /** On the rock, N: with the dowels' pull, and without it. */
  readonly pressed: number;
  readonly normal: number;
  /** At the rock, N m. */
  readonly moment: number;
}

/** East and north of each dowel from the middle, m. */
export function dowelPlaces({
  width,
  edge,
  dowels,
}: RockPadGeometry): readonly (readonly [number, number])[] {
  const half = width / 2 - edge;
  const perSide = dowels / 4;
  return Array.from({ length: dowels }, (_, i) => {
    const along = -half + (2 * half * (i % perSide)) / perSide;
    const side = Math.floor(i / perSide);
    return (
      [
        [along, -half],
        [half, along],
        [-along, half],
        [-half, -along],
      ] as const
    )[side];
  });
}

/** Do the dowels stand inside the pad, each in a hole of its own? */
export const dowelsFit = ({
  width,
  edge,
  hole,
  dowels,
}: Pick<RockPadGeometry, "width" | "edge" | "hole" | "dowels">): boolean =>
  edge > hole / 2 && (width - 2 * edge) / (dowels / 4) > hole;

export function dowelStrength(pad: RockPadGeometry, soil: SoilGivens, rules: GroundRules): DowelStrength {
  const { width, depth, dowels, socket, bar, hole, edge } = pad;
  if (!(bar > 0 && hole > bar && socket > 0 && dowelsFit(pad)))
    throw new RangeError(
      `rock pad: found bar ${bar} m, hole ${hole} m, socket ${socket} m, edge ${edge} m, width ${width} m, ${dowels} dowels, expected a hole wider than the bar, a socket above 0, an edge inside the pad and holes that do not meet`,
    );
  const below = depth + socket;
  const wet = (rules.waterTable ?? Number.POSITIVE_INFINITY) < below;
  // what a dowel passes: the weakest from the pad down, and no other
  const passed = (soil.layers ?? []).some(({ from }) => from > depth && from < below)
    ? weakestTo(soil, below)
    : soilAt(soil, depth);
  const counted = { unitWeight: (rules.deadShare ?? 1) * passed.unitWeight };
  const weight = wet ? submergedUnitWeight(counted) : counted.unitWeight;
  const side = width - 2 * edge;
  const perRow = dowels / 4 + 1;
  // a cone, drawn out along a row and round a square
  const cone = upliftCone(0, socket, rules.upliftAngle);
  const wedge = socket ** 2 * Math.tan((rules.upliftAngle * Math.PI) / 180);
  const rock = Math.min(
    cone,
    (cone + side * wedge) / perRow,
    (cone + 2 * side * wedge + side ** 2 * socket) / dowels,
  );
  return {
    steel: (pad.yield * Math.PI * bar ** 2) / 4,
    bond: Math.PI * hole * socket * (passed.groutBond ?? 0),
    cone: rock * weight,
  };
}

/** One way that the wind may blow: where the pressed rock bears, and how the dowels share what turns the pad. */
interface Way {
  /** From the middle of the pad to the middle of the pressed part, m. */
  readonly pivot: number;
  /** Sum of the squares of arms over the longest, m; sum of arms over the longest. */
  readonly moment: number;
  readonly pulls: number;
}

function way(places: RockPadGeometry, direction: readonly [number, number], pivot: number): Way {
  let [longest, squares, sum] = [0, 0, 0];
  for (const [x, y] of dowelPlaces(places)) {
    const arm = pivot - (x * direction[0] + y * direction[1]);
    if (arm <= 0) continue;
    longest = Math.max(longest, arm);
    squares += arm ** 2;
    sum += arm;
  }
  return { pivot, moment: squares / longest, pulls: sum / longest };
}

/**
 * Answers for a pad on rock: turning about a pressed part of a quarter of its plan (a strip along a face, a square in
 * a corner), its dowels pull by their distance from it. An equilibrium, so what it holds is held. docs/theory/ground.md.
 */
export function rockPadAnswers(
  pad: RockPadGeometry,
  soil: SoilGivens,
  rules: GroundRules,
): (loads: FootingLoads) => RockPadResponse {
  const { width, depth, dowels } = pad;
  const strength = dowelStrength(pad, soil, rules);
  const holds = Math.min(strength.steel, strength.bond, strength.cone);
  const ways = [
    way(pad, [1, 0], (3 * width) / 8),
    way(pad, [Math.SQRT1_2, Math.SQRT1_2], (Math.SQRT2 * width) / 4),
  ];
  const wet = Math.max(0, depth - (rules.waterTable ?? Number.POSITIVE_INFINITY));
  const dry = width ** 2 * depth * rules.concreteUnitWeight;
  const own = heldWeight(dry, width ** 2 * wet, rules);
  const more = unheld(dry, rules);
  const bearing = bearingUnder(soil, depth, width);
  const rock = soilAt(soil, depth);
  const dowelShear = (dowels * strength.steel) / Math.sqrt(3);
  const rim = dowelPlaces(pad).reduce((most, [x, y]) => Math.max(most, Math.hypot(x, y)), 0);
  const polar = dowelPlaces(pad).reduce((all, [x]) => all + x ** 2, 0);
  return (loads) => {
    const normal = loads.compression + own;
    const moment = Math.abs(loads.moment) + Math.abs(loads.shear) * depth;
    let pull = 0;
    let pressure = 0;
    let pressed = Math.max(0, normal);
    let held = Number.POSITIVE_INFINITY;
    if (normal > 0) {
      for (const turn of ways) {
        held = Math.min(held, normal * turn.pivot + holds * turn.moment);
        const left = moment - normal * turn.pivot;
        const here = Math.max(0, left) / turn.moment;
        const onRock = normal + here * turn.pulls;
        pull = Math.max(pull, here);
        pressed = Math.max(pressed, onRock);
        if (left > 0) pressure = Math.max(pressure, onRock / (width ** 2 / 4));
      }
      // where no dowel is needed the rock bears as any soil; the pressed quarter is its limit
      const bears = (load: number) => load / Math.max(effectiveSquare(width, moment / load), width ** 2 / 4);
      pressure = Math.max(pressure, bears(normal), bears(normal + more));
      pressed = Math.max(pressed, normal + more);
    } else {
      // lifted whole: every dowel by its share, and about the middle of the ring
      pull = -normal / dowels + (moment * rim) / polar;
      held = (Math.max(0, holds + normal / dowels) * polar) / rim;
    }
    const friction = baseHold(rock, Math.max(0, normal), width ** 2 / 4);
    return {
      bearing: { demand: pressure, capacity: bearing },
      overturning: { demand: moment, capacity: held },
      sliding: { demand: Math.abs(loads.shear), capacity: friction + dowelShear },
      pull,
      shear: Math.max(0, Math.abs(loads.shear) - friction) / dowels,
      pressed,
      normal,
      moment,
    };
  };
}
