import type { FootingRow } from "../../model/catalog.ts";
import { type Bar, barMass, developed, developmentLength, EARTH_COVER } from "../../physics/concrete/bars.ts";
import { slabStrength } from "../../physics/concrete/slab.ts";
import { blockTakeOff } from "../../physics/ground/block.ts";
import {
  dowelStrength,
  dowelsFit,
  type RockPadResponse,
  rockPadAnswers,
} from "../../physics/ground/rock-pad.ts";
import { padRocking } from "../../physics/ground/rocking.ts";
import { sizesOf } from "../sizes.ts";
import type { FootingPart, Ground } from "../types.ts";
import { bearingRule, concreteLimit, type FootingLimit, footingOf } from "./footing.ts";
import { matOf, matRun } from "./pad-bars.ts";

type Row = Extract<FootingRow, { kind: "rock-pad" }>;
interface RockPadSize {
  readonly width: number;
  readonly depth: number;
  readonly dowels: number;
  readonly socket: number;
}

/** Shrinkage bars, share of the section. ACI 318-19 24.4.3.2. */
const LEAST_STEEL = 0.0018;

/** A pad on rock, held down by grouted dowels: what it lacks in weight the rock lends. */
export function rockPad(row: Row, size: RockPadSize, ground: Ground): FootingPart {
  const { soil, givens, rules } = ground;
  const { width, depth } = size;
  const geometry = { ...size, bar: row.bar, yield: row.yield, hole: row.hole, edge: row.edge };
  const { barYield } = rules.concreteDesign;
  const { strength } = rules.concrete;
  const dowel = dowelStrength(geometry, soil, givens);
  // a dowel too short in the concrete pulls out of it before it yields
  const needs = developmentLength(barOf(row), strength, row.yield, false);
  const steel = dowel.steel * developed(depth - EARTH_COVER, needs);
  const answers = rockPadAnswers(geometry, soil, givens);

  // both mats alike: the upper one, which holds less
  const mat = matOf(
    { width, thickness: depth, steel: LEAST_STEEL, room: width / 2 - EARTH_COVER, top: true },
    strength,
    barYield,
  );
  const bars = ["below", "above"].flatMap((where) => matRun(mat, width, where));
  const slab = slabStrength({
    width,
    thickness: depth,
    pedestal: 0,
    barDepth: Math.max(1e-3, depth - EARTH_COVER - 1.5 * (mat.bar?.diameter ?? 0)),
    bottomArea: mat.area,
    topArea: 0,
    strength,
    barYield,
  });

  const rod = rules.rockRod;
  const noRock = `found no grout bond of ${soil.name}, expected rock that holds a dowel`;
  const dowelLimit = (
    limitState: string,
    capacity: number,
    demand: (r: RockPadResponse) => number,
    note: string,
  ): FootingLimit<RockPadResponse> => ({
    limitState,
    ...rod,
    // a rock pad where nothing bonds is refused, needed or not
    of: (r) => ({ demand: dowel.bond > 0 ? demand(r) : Number.POSITIVE_INFINITY, capacity }),
    note: () => (dowel.bond > 0 ? note : noRock),
  });
  const concrete = concreteLimit<RockPadResponse>(rules.concreteDesign);
  return footingOf<RockPadResponse>(
    {
      choice: { kind: "rock-pad", row: row.id, ...size },
      takeOff: { ...blockTakeOff(size), bars: barMass(bars) },
      extras: [
        { item: `${row.name}: dowels and grout`, price: row.price, quantity: size.dowels, unit: "each" },
        {
          item: `${row.name}: drilling`,
          price: row.drilling,
          quantity: size.dowels * size.socket,
          unit: "m",
        },
      ],
      bars,
      onRock: true,
      top: width,
      rocking: padRocking(soil, width, depth),
      normal: (r) => r.normal,
      response: answers,
      limits: [
        { limitState: "base-bearing", ...bearingRule(ground), of: (r) => r.bearing },
        {
          limitState: "overturning",
          ...rules.overturning,
          of: (r) => r.overturning,
          note: () => "about the middle of a pressed quarter of its plan, dowels pulling by their distance",
        },
        { limitState: "sliding", ...rules.sliding, of: (r) => r.sliding },
        dowelLimit(
          "dowel-steel",
          steel,
          (r) => Math.hypot(r.pull, Math.sqrt(3) * r.shear),
          "pull and shear together",
        ),
        dowelLimit("dowel-bond", dowel.bond, (r) => r.pull, "grout to rock, over the socket"),
        dowelLimit(
          "dowel-cone",
          dowel.cone,
          (r) => r.pull,
          "weight of the rock that lifts, its row and ring counted",
        ),
        concrete(
          "pad-flexure",
          (r) => r.moment + (Math.max(0, r.normal) * width) / 8,
          slab.bottomMoment,
          "all of the moment and an even pressure, at the middle; mats alike below and above",
        ),
        concrete("pad-shear", (r) => r.pressed, slab.shear, "all that presses on the rock, on no ties"),
      ],
    },
    ground,
  );
}

const barOf = (row: Row): Bar => ({
  name: "dowel",
  diameter: row.bar,
  area: (Math.PI / 4) * row.bar ** 2,
  mass: 0,
});

export const rockPadChoices = (row: Row): RockPadSize[] =>
  sizesOf(row.width).flatMap((width) =>
    sizesOf(row.depth).flatMap((depth) =>
      row.dowels
        .filter((dowels) => dowelsFit({ ...row, width, dowels }))
        .flatMap((dowels) => sizesOf(row.socket).map((socket) => ({ width, depth, dowels, socket }))),
    ),
  );
