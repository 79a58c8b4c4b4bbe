import type { FootingRow } from "../../model/catalog.ts";
import { barMass } from "../../physics/concrete/bars.ts";
import { blockBars } from "../../physics/concrete/cage.ts";
import { type BlockGeometry, blockResistance, blockTakeOff } from "../../physics/ground/block.ts";
import { blockOverturning } from "../../physics/ground/block-overturning.ts";
import { blockBeside } from "../../physics/ground/block-post.ts";
import { blockRocking } from "../../physics/ground/rocking.ts";
import { lateralMultiplier } from "../../physics/ground/soil.ts";
import { sizesOf } from "../sizes.ts";
import type { FootingLoads, FootingPart, Ground } from "../types.ts";
import { footingOf } from "./footing.ts";
import { standingLimits } from "./standing.ts";

type Row = Extract<FootingRow, { kind: "block" }>;

/** A deep square block: weight and the soil on its side hold it about the toe. */
export const block = (row: Row, size: BlockGeometry, ground: Ground): FootingPart => {
  const bars = blockBars(size.width, size.depth);
  return footingOf(
    {
      choice: { kind: "block", row: row.id, ...size },
      takeOff: { ...blockTakeOff(size), bars: barMass(bars) },
      bars,
      top: size.width,
      rocking: blockRocking(ground.soil, size.width, size.depth),
      normal: (r) => r.normal,
      response: (load) => blockResistance(size, load, ground.soil, ground.givens),
      limits: standingLimits(ground, (load) => besideNote(size, load, ground)),
    },
    ground,
  );
};

/** The hand way and the code's post beside the factor about the toe; none of them judges. */
function besideNote(size: BlockGeometry, loads: FootingLoads, ground: Ground): string {
  // the code's post formula is written for allowable lateral bearing
  const beside =
    ground.soil.values === "allowable" ? blockBeside(size, loads, ground.soil, ground.givens) : null;
  const feet = ((beside?.postDepth ?? 0) / 0.3048).toFixed(1);
  const post = beside
    ? `as an IBC 1807.3.2.1 post it would need ${feet} ft (${beside.postDepth.toFixed(2)} m)`
    : "";
  if (loads.moment <= 0) return post;
  const { factorHand, factorExact } = blockOverturning({
    width: size.width,
    breadth: size.width,
    depth: size.depth,
    concreteUnitWeight: ground.givens.concreteUnitWeight,
    soil: ground.soil,
    lateralMultiplier: lateralMultiplier(ground.soil, size.depth, ground.givens),
    verticalLoad: Math.max(loads.compression, 0),
    momentAtGround: loads.moment,
    shearAtGround: loads.shear,
    layerThickness: 0.3048,
  });
  const toe = `by hand, in layers of a foot about the ground line, the factor is ${factorHand.toFixed(2)}; exactly, about the toe, ${factorExact.toFixed(2)}`;
  if (!beside) return toe;
  return `${toe}; with the soil's push in balance, ${beside.balancedFactor.toFixed(2)}; ${post}`;
}

export const blockChoices = (row: Row): BlockGeometry[] =>
  sizesOf(row.width).flatMap((width) => sizesOf(row.depth).map((depth) => ({ width, depth })));
