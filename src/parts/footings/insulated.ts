import type { Insulator } from "../../model/catalog.ts";
import { pricesOf } from "../price.ts";
import { type FootingLoads, type FootingPart, type Ground, type Measure, used } from "../types.ts";

/** One rating of an insulator against what a load brings to its top. */
interface Rating {
  readonly limitState: string;
  readonly capacity: number;
  readonly required: number;
  readonly source: string;
  /** Hot. */
  demand(load: FootingLoads): number;
}

/**
 * A footing with an insulator on it, asked and bought as one. The foot of the mast stands `ground.stand` above the
 * concrete, so that what the wind pushes there turns the footing as well; the insulator weighs on it.
 */
export function insulated(footing: FootingPart, row: Insulator, ground: Ground): FootingPart {
  const { required, source } = ground.rules.baseInsulator;
  const ratings: readonly Rating[] = [
    {
      limitState: "insulator-compression",
      // what lifts off its insulator does not stand
      demand: ({ compression }) => (compression < 0 ? Number.POSITIVE_INFINITY : compression),
      capacity: row.compression,
      required,
      source,
    },
    {
      limitState: "insulator-shear",
      demand: ({ shear }) => shear,
      capacity: row.shear,
      required,
      source,
    },
    {
      limitState: "insulator-turn",
      demand: ({ turn = 0 }) => turn,
      capacity: (row.turn * Math.PI) / 180,
      required: 1,
      source: `stated by the row of ${row.name}`,
    },
  ];
  const rated = (load: FootingLoads): number => {
    let most = 0;
    for (const { demand, capacity, required } of ratings)
      most = Math.max(most, used(demand(load), capacity, required));
    return most;
  };
  const under = ({ compression, shear, moment }: FootingLoads): FootingLoads => ({
    compression: compression + row.weight,
    shear,
    moment: moment + shear * ground.stand,
  });
  const extras = [
    ...footing.extras,
    { item: row.name, price: row.price, quantity: 1, unit: "each" as const },
  ];
  return {
    ...footing,
    choice: { ...footing.choice, insulator: row.id },
    extras,
    ...pricesOf({ ...footing, extras }, ground),
    worst(loads) {
      let most = footing.worst(loads.map(under), row.plate);
      for (const load of loads) most = Math.max(most, rated(load));
      return most;
    },
    floor: (load) => Math.max(rated(load), footing.floor(under(load), row.plate)),
    measures: (loads) => [
      ...footing.measures(loads.map(under), row.plate),
      ...ratings.map(({ demand, ...rating }): Measure => {
        const demands = loads.map(demand);
        const of = demands.indexOf(Math.max(...demands));
        return {
          ...rating,
          demand: demands[of],
          of,
          note: demands[of] === Number.POSITIVE_INFINITY ? "the mast lifts off its insulator" : undefined,
        };
      }),
    ],
  };
}
