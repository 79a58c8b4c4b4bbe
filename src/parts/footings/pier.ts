import type { FootingRow } from "../../model/catalog.ts";
import { barMass, tieBar } from "../../physics/concrete/bars.ts";
import { roundCage } from "../../physics/concrete/cage.ts";
import { roundMoment, roundShear } from "../../physics/concrete/section-strength.ts";
import type { Resistance } from "../../physics/ground/loads.ts";
import {
  type PierGeometry,
  pierAsPost,
  pierBearing,
  pierInClay,
  pierInSand,
  pierTakeOff,
  type SideHold,
} from "../../physics/ground/pier.ts";
import { pierRocking } from "../../physics/ground/rocking.ts";
import { stretches } from "../../physics/ground/soil.ts";
import { remembered } from "../remembered.ts";
import { sizesOf } from "../sizes.ts";
import type { FootingLoads, FootingPart, Ground } from "../types.ts";
import { bearingRule, type FootingLimit, footingOf } from "./footing.ts";

type Row = Extract<FootingRow, { kind: "pier" }>;

/** A way of holding a pier sideways, with the rule that its values want. */
interface Way {
  readonly limitState: string;
  readonly hold: SideHold;
  readonly rule: { readonly required: number; readonly source: string };
  readonly note: string;
}

/** Every way that this soil suits; the smallest governs, for each is a check of its own. */
function waysOf(size: PierGeometry, ground: Ground): readonly Way[] {
  const { soil, rules, givens } = ground;
  // the code's formula is written for allowable lateral bearing
  const post = soil.values === "allowable" ? pierAsPost(size, soil, givens) : null;
  // Broms's piles stand in sand or clay: rock is neither
  const rock = stretches(soil, 0, size.depth).every(({ layer }) => layer.digging === "rock");
  const sand = rock ? null : pierInSand(size, soil, givens);
  const clay = rock ? null : pierInClay(size, soil);
  return [
    ...(post
      ? [
          {
            limitState: "pier-as-post",
            hold: post,
            rule: bearingRule(ground),
            note: "IBC 1807.3.2.1 on the soil's allowable lateral bearing, depth over 12 ft not counted in its pressure",
          },
        ]
      : []),
    ...(sand
      ? [
          {
            limitState: "pier-in-sand",
            hold: sand,
            rule: rules.anchorLateral,
            note: "Broms 1964, short pile in sand, about its tip, ultimate",
          },
        ]
      : []),
    ...(clay
      ? [
          {
            limitState: "pier-in-clay",
            hold: clay,
            rule: rules.anchorLateral,
            note:
              size.depth > 1.5 * size.diameter
                ? "Broms 1964, short pile in clay, ultimate; the top 1.5 diameters hold nothing"
                : `no deeper than the 1.5 diameters (${(1.5 * size.diameter).toFixed(2)} m) that clay does not hold`,
          },
        ]
      : []),
  ];
}

const nothing: Resistance = { demand: Number.POSITIVE_INFINITY, capacity: 0 };

/** A soil that suits no method holds no pier, and says why. */
const refused = (ground: Ground): FootingLimit<FootingLoads> => ({
  limitState: "pier-as-post",
  ...bearingRule(ground),
  of: () => nothing,
  note: () =>
    `found a soil (${ground.soil.name}) with no allowable lateral bearing and, outside rock, neither friction angle nor undrained strength; IBC 1807.3.2.1 wants the first, Broms one of the others`,
});

/** Its cage and what it holds, N m and N, whatever it stands in; 0 where it has no room for one. */
const concreteOf = remembered(
  (row: Row, diameter: number, depth: number, strength: number, barYield: number) => {
    const cage = roundCage(diameter, depth, row.cage);
    const bars = cage?.runs ?? [];
    const mass = barMass(bars);
    if (!cage) return { cage, bars, mass, strength: 0, sheared: 0 };
    const { ring, count, bar, ties } = cage;
    return {
      cage,
      bars,
      mass,
      strength: roundMoment(diameter, ring, count, bar.area, strength, barYield),
      sheared: roundShear(diameter, count * bar.area, 2 * tieBar.area, ties, strength, barYield),
    };
  },
);

/** A drilled round pier: the ground beside it holds the mast's moment, its tip the weight. */
export function pier(row: Row, size: PierGeometry, ground: Ground): FootingPart {
  const { soil, givens, rules } = ground;
  const { concrete, concreteDesign } = rules;
  const ways = waysOf(size, ground);
  const { cage, bars, mass, strength, sheared } = concreteOf(
    row,
    size.diameter,
    size.depth,
    concrete.strength,
    concreteDesign.barYield,
  );
  const { loadFactor, source } = concreteDesign;
  /** Greatest moment and shear in the pier at strength level, as every way has it. */
  const inside = ({ shear, moment }: FootingLoads) => {
    const v = loadFactor * Math.abs(shear);
    const m = loadFactor * Math.abs(moment);
    let bending = m;
    let shearing = v;
    for (const { hold } of ways) {
      bending = Math.max(bending, hold.bending(v, m));
      shearing = Math.max(shearing, hold.shearing(v, m));
    }
    return { bending, shearing };
  };
  return footingOf<FootingLoads>(
    {
      choice: { kind: "pier", row: row.id, ...size },
      takeOff: { ...pierTakeOff(size), bars: mass },
      bars,
      top: size.diameter / Math.SQRT2,
      rocking: pierRocking(soil, size.diameter, size.depth),
      normal: (load) => load.compression,
      response: (load) => load,
      limits: [
        {
          limitState: "base-bearing",
          ...bearingRule(ground),
          of: ({ compression }) => pierBearing(size, compression, soil, givens),
          note: () => "at the tip; friction on the side is left out",
        },
        ...(ways.length === 0
          ? [refused(ground)]
          : ways.map(
              ({ limitState, hold, rule, note }): FootingLimit<FootingLoads> => ({
                limitState,
                ...rule,
                of: hold.of,
                note: () => note,
              }),
            )),
        {
          limitState: "pier-bending",
          required: 1,
          source,
          // the cage is asked for both: shear counts as the moment that would use the pier as much
          of(load) {
            const { bending, shearing } = inside(load);
            const asBending = sheared > 0 ? (shearing * strength) / sheared : 0;
            return { demand: Math.max(bending, asBending), capacity: strength };
          },
          note(load) {
            if (!cage) return "too narrow for its cage and 3 in of cover";
            const { bending, shearing } = inside(load);
            const words = `${cage.count} bars ${cage.bar.name} upright; loads times ${loadFactor}`;
            return shearing * strength > bending * sheared
              ? `its shear uses it more than its bending: ${(shearing / 1000).toFixed(1)} of ${(sheared / 1000).toFixed(1)} kN; ${words}`
              : words;
          },
        },
      ],
    },
    ground,
  );
}

export const pierChoices = (row: Row): PierGeometry[] =>
  sizesOf(row.diameter).flatMap((diameter) => sizesOf(row.depth).map((depth) => ({ diameter, depth })));
