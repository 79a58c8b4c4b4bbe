import type { AnchorRow } from "../../model/catalog.ts";
import {
  aslant,
  type BeamStrength,
  beamStrengths,
  bendingUse,
  momentLevel,
  momentUp,
  shearUse,
} from "../../physics/concrete/anchor-beam.ts";
import { barMass, footingBars } from "../../physics/concrete/bars.ts";
import { deadmanCapacity, deadmanTakeOff, heldAtEnds } from "../../physics/ground/deadman.ts";
import { pricesOf } from "../price.ts";
import { remembered } from "../remembered.ts";
import { sizesOf } from "../sizes.ts";
import type { AnchorPart, AnchorReaction, Ground } from "../types.ts";

type Row = Extract<AnchorRow, { kind: "deadman" }>;

/** What an anchor is pulled by in all, N: nothing that presses it counts. */
export const pullOf = ({ uplift, lateral }: AnchorReaction): number =>
  aslant(Math.max(0, uplift), Math.max(0, lateral));

/** Its concrete, however deep it lies. */
const concreteOf = remembered(
  (row: Row, length: number, height: number, width: number, strength: number, barYield: number) => {
    const bar = footingBars.find(({ name }) => name === row.bars) ?? null;
    const { cage, ways } = beamStrengths({ length, height, width, bar }, strength, barYield);
    return { cage: cage?.runs ?? [], mass: barMass(cage?.runs ?? []), ways };
  },
);

/**
 * A buried concrete beam: uplift and lateral pull are held apart, each with its own factor, and bend the block between
 * them, which its rod pulls in the middle.
 */
export function deadman(
  row: Row,
  choice: { length: number; height: number; width: number; depth: number },
  ground: Ground,
): AnchorPart {
  const { rules } = ground;
  const capacity = deadmanCapacity({ ...choice, shape: row.lifts }, ground.soil, ground.givens);
  const beyond = capacity.ratio > capacity.mostRatio;
  // lateral bearing of a code's table already holds its safety; an ultimate value does not
  const allowable = capacity.lateralBasis === "lateral-bearing" && ground.soil.values === "allowable";
  const lateralRule = allowable ? rules.bearing : rules.anchorLateral;
  const { concrete, concreteDesign } = rules;
  const { length, height, width } = choice;
  const beam = { length, ends: heldAtEnds({ ...choice, shape: row.lifts }, ground.givens) };
  const { cage, mass, ways } = concreteOf(
    row,
    length,
    height,
    width,
    concrete.strength,
    concreteDesign.barYield,
  );
  const factored = (pull: number) => concreteDesign.loadFactor * Math.max(0, pull);
  const bendsBy = (way: BeamStrength, { uplift, lateral }: AnchorReaction) =>
    bendingUse(beam, way, factored(uplift), factored(lateral));
  const shearsBy = (way: BeamStrength, { uplift, lateral }: AnchorReaction) =>
    shearUse(way, factored(uplift), factored(lateral));
  /** The most that any reaction uses of the concrete, as the sort that it is less of. Hot. */
  const concreteUse = (reactions: readonly AnchorReaction[], enough: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (const way of ways) {
      let most = 0;
      for (const r of reactions) {
        most = Math.max(most, bendsBy(way, r));
        if (most <= enough) most = Math.max(most, shearsBy(way, r));
        if (most > enough || most >= least) break;
      }
      if (most < least) least = most;
    }
    return least;
  };
  const rodHolds = row.rodHolds ?? Number.POSITIVE_INFINITY;
  const use = (uplift: number, lateral: number) =>
    Math.max(
      uplift > 0 ? (uplift * rules.uplift.required) / capacity.uplift : 0,
      lateral > 0 ? (lateral * lateralRule.required) / capacity.lateral : 0,
      (pullOf({ uplift, lateral }) * rules.guy.required) / rodHolds,
    );
  const takeOff = { ...deadmanTakeOff(choice), bars: mass };
  const extras = [{ item: `${row.name}: rod`, price: row.rod, quantity: 1, unit: "each" as const }];
  return {
    choice: { kind: "deadman", row: row.id, ...choice },
    takeOff,
    extras,
    depth: choice.depth,
    head: 0,
    spread:
      Math.hypot(choice.length, choice.width) / 2 +
      choice.depth * Math.tan(((row.lifts === "cone" ? 30 : rules.upliftAngle.degrees) * Math.PI) / 180),
    ...pricesOf({ takeOff, extras }, ground),
    cage,
    floor(uplift, lateral, enough = Number.POSITIVE_INFINITY) {
      const held = use(uplift, lateral);
      return held > enough ? held : Math.max(held, concreteUse([{ uplift, lateral }], enough));
    },
    worst(reactions, enough = Number.POSITIVE_INFINITY) {
      let most = 0;
      for (const { uplift, lateral } of reactions) {
        const here = use(uplift, lateral);
        if (here > most) most = here;
        if (most > enough) return most;
      }
      return Math.max(most, concreteUse(reactions, enough));
    },
    measures(reactions) {
      const up = largest(reactions, (r) => r.uplift);
      const side = largest(reactions, (r) => r.lateral);
      const way = ways.reduce((best, one) => {
        const most = (w: BeamStrength) =>
          Math.max(...reactions.map((r) => Math.max(bendsBy(w, r), shearsBy(w, r))));
        return most(one) < most(best) ? one : best;
      });
      const pulled = largest(reactions, pullOf);
      const bent = largest(reactions, (r) => bendsBy(way, r));
      const sheared = largest(reactions, (r) => shearsBy(way, r));
      const { uplift, lateral } = reactions[bent];
      const { loadFactor, source } = concreteDesign;
      const words =
        way.sort === "plain"
          ? `as plain concrete, ACI 318-19 chapter 14${cage.length > 0 ? ", which holds more than its bars" : row.bars ? `: no room in it for bars ${row.bars} and their cover` : ""}`
          : `4 bars ${row.bars} along its edges, in ties`;
      const kNm = (moment: number) => (moment / 1000).toFixed(1);
      return [
        {
          limitState: "anchor-uplift",
          demand: Math.max(reactions[up].uplift, 0),
          capacity: capacity.uplift,
          required: rules.uplift.required,
          source: rules.uplift.source,
          of: up,
          note: beyond
            ? `the block lies ${capacity.ratio.toFixed(1)} of its widths deep; the soil over it breaks out to grade up to ${capacity.mostRatio.toFixed(1)}, and no method here covers more`
            : row.lifts === "cone"
              ? "lifts its soil in cones of 30 degrees from its edges"
              : `lifts its soil in a prism of ${rules.upliftAngle.degrees} degrees`,
        },
        {
          limitState: "anchor-lateral",
          demand: Math.max(reactions[side].lateral, 0),
          capacity: capacity.lateral,
          required: lateralRule.required,
          source: lateralRule.source,
          of: side,
          note:
            capacity.lateralBasis === "rankine"
              ? "held by passive pressure on the face, less active behind it"
              : "held by the soil's lateral bearing on the face",
        },
        {
          limitState: "anchor-bending",
          demand: bendsBy(way, reactions[bent]),
          capacity: 1,
          required: 1,
          source,
          of: bent,
          note: `sideways ${kNm(momentLevel(beam, factored(lateral)))} of ${kNm(way.level.moment)} kN m, upward ${kNm(momentUp(beam, factored(uplift)))} of ${kNm(way.up.moment)} kN m, added; loads times ${loadFactor}; ${words}`,
        },
        {
          limitState: "anchor-shear",
          demand: shearsBy(way, reactions[sheared]),
          capacity: 1,
          required: 1,
          source,
          of: sheared,
          note: `half of the pull beside its rod, or its plate through the block; loads times ${loadFactor}; ${words}`,
        },
        ...(row.rodHolds === undefined
          ? []
          : [
              {
                limitState: "anchor-rod",
                demand: pullOf(reactions[pulled]),
                capacity: row.rodHolds,
                required: rules.guy.required,
                source: `${rules.guy.source}; of the guys, whose pull it takes`,
                of: pulled,
                note: "what breaks the rod or its plate, as its row states it",
              },
            ]),
      ];
    },
  };
}

export const deadmanChoices = (row: Row) =>
  sizesOf(row.length).flatMap((length) =>
    sizesOf(row.height).flatMap((height) =>
      sizesOf(row.width).flatMap((width) =>
        sizesOf(row.depth)
          .filter((depth) => depth >= height)
          .map((depth) => ({ length, height, width, depth })),
      ),
    ),
  );

export const largest = (reactions: readonly AnchorReaction[], of: (r: AnchorReaction) => number): number => {
  let best = 0;
  for (let i = 1; i < reactions.length; i++) if (of(reactions[i]) > of(reactions[best])) best = i;
  return best;
};
