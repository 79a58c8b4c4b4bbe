import type { FootingRow } from "../../model/catalog.ts";
import { padResistance, padTakeOff } from "../../physics/ground/pad.ts";
import { sizesOf } from "../sizes.ts";
import type { FootingPart, Ground } from "../types.ts";
import { footingOf } from "./footing.ts";
import { standingLimits } from "./standing.ts";

type Row = Extract<FootingRow, { kind: "pad" }>;
interface PadSize {
  readonly width: number;
  readonly thickness: number;
  readonly depth: number;
}

/** A square pad with a pedestal up to grade: its own weight and that of the soil on it hold it. */
export function pad(row: Row, size: PadSize, ground: Ground): FootingPart {
  const geometry = { ...size, pedestal: row.pedestal };
  return footingOf(
    {
      choice: { kind: "pad", row: row.id, ...size },
      takeOff: padTakeOff(geometry),
      top: row.pedestal,
      response: (load) => padResistance(geometry, load, ground.soil, ground.givens),
      limits: standingLimits(ground),
    },
    ground,
  );
}

export const padChoices = (row: Row): PadSize[] =>
  sizesOf(row.width)
    .filter((width) => width >= row.pedestal)
    .flatMap((width) =>
      sizesOf(row.thickness).flatMap((thickness) =>
        sizesOf(row.depth)
          .filter((depth) => depth >= thickness)
          .map((depth) => ({ width, thickness, depth })),
      ),
    );
