import type { AnchorRow, FootingRow, Insulator } from "../model/catalog.ts";
import type { AnchorChoice, FootingChoice } from "../model/design.ts";
import { deadman, deadmanChoices } from "./anchors/deadman.ts";
import { post, postChoices } from "./anchors/post.ts";
import { rockRod, rockRodChoices } from "./anchors/rock-rod.ts";
import { screw } from "./anchors/screw.ts";
import { block, blockChoices } from "./footings/block.ts";
import { insulated } from "./footings/insulated.ts";
import { pad, padChoices } from "./footings/pad.ts";
import { pier, pierChoices } from "./footings/pier.ts";
import { rockPad, rockPadChoices } from "./footings/rock-pad.ts";
import { pricesOf } from "./price.ts";
import type { AnchorPart, FootingPart, Ground } from "./types.ts";

// the one place where the kinds are listed: a new kind is a file and a line here

/** Rows whose sizes are kept: all that the demo may ask, in four sorts of ground; one and its study took 8 MB. */
const MOST_KEPT = 40;
const kept = new Map<string, readonly (AnchorPart | FootingPart)[]>();

/**
 * The sizes of a row, worked out once for all prices: whoever drags a price, the wind or a lock asks for the same
 * ones again, and the strength of concrete and soil in them is most of what a study takes to read.
 */
function sized<T extends AnchorPart | FootingPart>(row: unknown, ground: Ground, make: () => T[]): T[] {
  const { prices: _, ...unpriced } = ground;
  const key = JSON.stringify([row, unpriced]);
  const parts = (kept.get(key) as readonly T[] | undefined) ?? make();
  // those asked last stand at the end
  kept.delete(key);
  kept.set(key, parts);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT) kept.delete(oldest);
  return parts.map((part) => ({ ...part, ...pricesOf(part, ground) }));
}

/** Every size of a row that its table allows. */
export function anchorParts(row: AnchorRow, ground: Ground): AnchorPart[] {
  return sized(row, ground, () => bareAnchors(row, ground));
}

function bareAnchors(row: AnchorRow, ground: Ground): AnchorPart[] {
  switch (row.kind) {
    case "deadman":
      return deadmanChoices(row).map((size) => deadman(row, size, ground));
    case "screw":
      return [screw(row, ground)];
    case "rock-rod":
      return rockRodChoices(row).map((size) => rockRod(row, size, ground));
    case "post":
      return postChoices(row).map((size) => post(row, size, ground));
  }
}

/** The anchor of a design, whatever its size; undefined where choice and row are of unlike kinds. */
export function anchorPart(row: AnchorRow, choice: AnchorChoice, ground: Ground): AnchorPart | undefined {
  if (row.kind === "deadman" && choice.kind === "deadman") {
    const { length, height, width, depth } = choice;
    return deadman(row, { length, height, width, depth }, ground);
  }
  if (row.kind === "screw" && choice.kind === "screw") return screw(row, ground);
  if (row.kind === "rock-rod" && choice.kind === "rock-rod")
    return rockRod(row, { socket: choice.socket }, ground);
  if (row.kind === "post" && choice.kind === "post")
    return post(row, { width: choice.width, depth: choice.depth }, ground);
  return undefined;
}

function bareFootings(row: FootingRow, ground: Ground): FootingPart[] {
  switch (row.kind) {
    case "block":
      return blockChoices(row).map((size) => block(row, size, ground));
    case "pad":
      return padChoices(row).map((size) => pad(row, size, ground));
    case "pier":
      return pierChoices(row).map((size) => pier(row, size, ground));
    case "rock-pad":
      return rockPadChoices(row).map((size) => rockPad(row, size, ground));
  }
}

/** Every size of a row that its table allows; for an insulated mast each with every insulator on it. */
export function footingParts(row: FootingRow, ground: Ground): FootingPart[] {
  const bare = sized(row, ground, () => bareFootings(row, ground));
  if (!ground.insulators) return bare;
  return ground.insulators.flatMap((insulator) => bare.map((part) => insulated(part, insulator, ground)));
}

/** The footing of a design, with the insulator that it names. */
export function footingPart(
  row: FootingRow,
  choice: FootingChoice,
  ground: Ground,
  insulator?: Insulator,
): FootingPart | undefined {
  const bare = bareFooting(row, choice, ground);
  return bare && insulator ? insulated(bare, insulator, ground) : bare;
}

function bareFooting(row: FootingRow, choice: FootingChoice, ground: Ground): FootingPart | undefined {
  if (row.kind === "block" && choice.kind === "block")
    return block(row, { width: choice.width, depth: choice.depth }, ground);
  if (row.kind === "pad" && choice.kind === "pad") {
    const { width, thickness, depth, steel, mats } = choice;
    return pad(row, { width, thickness, depth, steel, mats }, ground);
  }
  if (row.kind === "pier" && choice.kind === "pier")
    return pier(row, { diameter: choice.diameter, depth: choice.depth }, ground);
  if (row.kind === "rock-pad" && choice.kind === "rock-pad") {
    const { width, depth, dowels, socket } = choice;
    return rockPad(row, { width, depth, dowels, socket }, ground);
  }
  return undefined;
}
