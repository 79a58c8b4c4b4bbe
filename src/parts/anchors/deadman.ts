import type { AnchorRow } from "../../model/catalog.ts";
import { deadmanCapacity, deadmanTakeOff } from "../../physics/ground/deadman.ts";
import { pricesOf } from "../price.ts";
import { sizesOf } from "../sizes.ts";
import type { AnchorPart, AnchorReaction, Ground } from "../types.ts";

type Row = Extract<AnchorRow, { kind: "deadman" }>;

/** A buried concrete beam: uplift and lateral pull are held apart, each with its own factor. */
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
  const use = (uplift: number, lateral: number) =>
    Math.max(
      uplift > 0 ? (uplift * rules.uplift.required) / capacity.uplift : 0,
      lateral > 0 ? (lateral * lateralRule.required) / capacity.lateral : 0,
    );
  const takeOff = deadmanTakeOff(choice);
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
    floor: use,
    worst(reactions) {
      let most = 0;
      for (const { uplift, lateral } of reactions) {
        const here = use(uplift, lateral);
        if (here > most) most = here;
      }
      return most;
    },
    measures(reactions) {
      const up = largest(reactions, (r) => r.uplift);
      const side = largest(reactions, (r) => r.lateral);
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
