import type { Work } from "../model/verdict.ts";
import { dugThrough } from "../parts/price.ts";
import type { AnchorPart, FootingPart } from "../parts/types.ts";
import { guysAtAnchor } from "../problem/torque-arm.ts";
import type { Problem } from "../problem/types.ts";
import { type Billed, volumes } from "./bill.ts";

/** What a design takes to build, by the price book's hours. docs/theory/cost.md. */
export function workOf({ prices, soil }: Problem, { stack, guys, footing }: Billed): Work {
  const { work } = prices;
  const { concrete } = volumes({ guys, footing });
  const anchors = guys?.star.perLevel ?? 0;
  const digging = ({ takeOff }: AnchorPart | FootingPart) =>
    dugThrough(soil, takeOff.hole).reduce(
      (sum, { digging: kind, share }) => sum + work.digging[kind] * takeOff.dug * share,
      0,
    );
  const lines = (
    [
      ["setting up", work.setUp],
      ["digging", digging(footing) + (guys ? anchors * digging(guys.anchor) : 0)],
      ["pouring", work.pouring * concrete],
      ["anchors", work.anchor * anchors],
      [
        "guys",
        work.guy * anchors * (guys?.levels ?? []).reduce((sum, { arm }) => sum + guysAtAnchor(arm), 0),
      ],
      ["raising", work.raising * stack.height],
      ["antennas", work.antennas],
    ] as const
  )
    .filter(([, hands]) => hands > 0)
    .map(([what, hands]) => ({ what, hands }));
  return {
    hands: lines.reduce((sum, { hands }) => sum + hands, 0),
    lines,
    curing: concrete > 0 ? work.curing : 0,
  };
}
