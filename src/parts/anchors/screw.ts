import type { AnchorRow } from "../../model/catalog.ts";
import { screwCapacity } from "../../physics/ground/screw.ts";
import { stretches } from "../../physics/ground/soil.ts";
import { pricesOf } from "../price.ts";
import type { AnchorPart, AnchorReaction, Ground } from "../types.ts";
import { largest } from "./deadman.ts";

type Row = Extract<AnchorRow, { kind: "screw" }>;

const pull = (r: AnchorReaction) => Math.hypot(r.uplift, r.lateral);

/**
 * An earth screw, turned in along the greatest pull: the rating holds along the shaft, a share of it across, and
 * no pull of consequence (half the greatest) may leave the shaft by more than the rating's angle.
 */
export function screw(row: Row, ground: Ground): AnchorPart {
  const { rules } = ground;
  // turned through every layer down to its helix: the rating of the one that holds it least
  const classes = stretches(ground.soil, 0, row.length).map(({ layer }) => layer.digging);
  const digging = classes.reduce((least, here) =>
    screwCapacity(row, here).axial < screwCapacity(row, least).axial ? here : least,
  );
  const capacity = screwCapacity(row, digging);
  const extras = [
    { item: row.name, price: row.price, quantity: 1, unit: "each" as const },
    { item: `${row.name}: turning in`, price: row.install, quantity: 1, unit: "each" as const },
  ];
  const takeOff = { concrete: 0, dug: 0, hole: 0, formed: 0 };
  const { required, source } = rules.screw;
  /** Pull along and across the shaft at each reaction, worst of each. */
  const demands = (reactions: readonly AnchorReaction[]) => {
    const shaft = largest(reactions, pull);
    const most = pull(reactions[shaft]);
    const sx = most > 0 ? reactions[shaft].lateral / most : 0;
    const sz = most > 0 ? reactions[shaft].uplift / most : 1;
    let across = 0;
    let acrossOf = shaft;
    let angle = 0;
    let angleOf = shaft;
    reactions.forEach((r, i) => {
      const off = Math.abs(r.lateral * sz - r.uplift * sx);
      if (off > across) {
        across = off;
        acrossOf = i;
      }
      const here = pull(r);
      if (here > 0.5 * most) {
        const degrees = (Math.asin(Math.min(1, off / here)) * 180) / Math.PI;
        if (degrees > angle) {
          angle = degrees;
          angleOf = i;
        }
      }
    });
    return { shaft, most, across, acrossOf, angle, angleOf };
  };
  return {
    choice: { kind: "screw", row: row.id },
    takeOff,
    extras,
    depth: null,
    head: 0,
    // its rating is that of one alone: a test of one
    spread: 0,
    ...pricesOf({ takeOff, extras }, ground),
    floor: (uplift, lateral) => {
      if (capacity.axial <= 0) return Number.POSITIVE_INFINITY;
      const up = Math.max(uplift, 0);
      const side = Math.max(lateral, 0);
      return (Math.sqrt(up * up + side * side) * required) / capacity.axial;
    },
    worst(reactions) {
      if (capacity.axial <= 0) return Number.POSITIVE_INFINITY;
      const d = demands(reactions);
      if (d.angle > capacity.offAxis) return Number.POSITIVE_INFINITY;
      return Math.max(
        (d.most * required) / capacity.axial,
        d.across > 0 ? (d.across * required) / capacity.across : 0,
      );
    },
    measures(reactions) {
      const d = demands(reactions);
      const beyond = d.angle > capacity.offAxis;
      return [
        {
          limitState: "screw-pull-out",
          demand: d.most,
          capacity: capacity.axial,
          required,
          source,
          of: d.shaft,
          note: capacity.axial <= 0 ? `this screw has no rating in ${digging} ground` : undefined,
        },
        {
          limitState: "screw-sideways",
          demand: beyond ? Number.POSITIVE_INFINITY : d.across,
          capacity: capacity.across,
          required,
          source,
          of: beyond ? d.angleOf : d.acrossOf,
          note: beyond
            ? `a pull leaves the shaft by ${d.angle.toFixed(0)} degrees, the rating covers ${capacity.offAxis}`
            : undefined,
        },
      ];
    },
  };
}
