import type { AnchorRow } from "../../model/catalog.ts";
import { rockRodCapacity } from "../../physics/ground/rock-rod.ts";
import { pricesOf } from "../price.ts";
import { sizesOf } from "../sizes.ts";
import type { AnchorPart, AnchorReaction, Ground } from "../types.ts";
import { largest, pullOf } from "./deadman.ts";

type Row = Extract<AnchorRow, { kind: "rock-rod" }>;

/** A bar grouted into rock along the pull, or a row of them: steel, bond or cone of rock, the weakest. */
export function rockRod(row: Row, choice: { socket: number }, ground: Ground): AnchorPart {
  const { required, source } = ground.rules.rockRod;
  const capacity = rockRodCapacity(
    {
      bar: row.bar,
      yield: row.yield,
      hole: row.hole,
      socket: choice.socket,
      rods: row.rods,
      spacing: row.spacing,
    },
    ground.soil,
    ground.givens,
  );
  const use = capacity.axial > 0 ? required / capacity.axial : Number.POSITIVE_INFINITY;
  // a rod lies along its greatest pull; flatter than this the cone about it does not come out at grade
  const flattest = Math.tan((ground.givens.upliftAngle * Math.PI) / 180);
  const tooFlat = ({ uplift, lateral }: AnchorReaction) =>
    Math.max(uplift, 0) < flattest * Math.max(lateral, 0);
  const extras = [
    { item: `${row.name}: rod and grout`, price: row.price, quantity: row.rods, unit: "each" as const },
    {
      item: `${row.name}: drilling`,
      price: row.drilling,
      quantity: row.rods * choice.socket,
      unit: "m" as const,
    },
  ];
  const takeOff = { concrete: 0, dug: 0, hole: 0, formed: 0 };
  const floor = (uplift: number, lateral: number) => {
    const demand = pullOf({ uplift, lateral });
    return demand > 0 ? demand * use : 0;
  };
  return {
    choice: { kind: "rock-rod", row: row.id, socket: choice.socket },
    takeOff,
    extras,
    depth: null,
    head: 0,
    // slanting away from the mast it comes out no further toward its neighbours than this
    spread: choice.socket * Math.max(1, flattest) + 0.5 * (row.rods - 1) * (row.spacing ?? 0),
    ...pricesOf({ takeOff, extras }, ground),
    floor,
    worst(reactions) {
      let greatest = reactions[0];
      for (const r of reactions) if (pullOf(r) > pullOf(greatest)) greatest = r;
      if (!greatest || pullOf(greatest) === 0) return 0;
      return tooFlat(greatest) ? Number.POSITIVE_INFINITY : pullOf(greatest) * use;
    },
    measures(reactions) {
      const of = largest(reactions, pullOf);
      const flat = pullOf(reactions[of]) > 0 && tooFlat(reactions[of]);
      return [
        {
          limitState: "rod-pull-out",
          demand: flat ? Number.POSITIVE_INFINITY : pullOf(reactions[of]),
          capacity: capacity.axial,
          required,
          source,
          of,
          note: flat
            ? `the greatest pull rises less than ${ground.givens.upliftAngle} degrees: the cone of rock about a rod so flat does not come out at grade`
            : capacity.axial > 0
              ? `${capacity.governs} is the weakest of steel, bond and cone${row.rods > 1 ? ` of ${row.rods} rods together` : ""}`
              : "no rock here bonds a rod",
        },
      ];
    },
  };
}

export const rockRodChoices = (row: Row) => sizesOf(row.socket).map((socket) => ({ socket }));
