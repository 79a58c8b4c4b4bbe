import { z } from "zod";
import { dimensioned } from "../quantity/schema.ts";
import { statedSpeed } from "./place.ts";
import { refuse } from "./refuse.ts";

const speed = dimensioned("speed", { min: 0 });
const size = dimensioned("size", { min: 0 });
/** Of a value that the study, the catalog or the design states. */
const share = z.number().min(0.2).max(3);

const ordered = (
  { from, to }: { from: number; to: number },
  context: z.core.$RefinementCtx<unknown>,
): void => {
  if (from > to) refuse(context, ["to"], 'a value at or above "from"');
};
const aboutOne = (range: { from: number; to: number }, context: z.core.$RefinementCtx<unknown>): void => {
  ordered(range, context);
  if (range.from > 1) refuse(context, ["from"], "1 or less: what is stated lies in its own range");
  if (range.to < 1) refuse(context, ["to"], "1 or more: what is stated lies in its own range");
};

/** Safety over a box of givens; docs/theory/robust.md says for which of them the corners prove the whole. */
export const rangesSchema = z.strictObject({
  /** Times every strength of the soil and every rating in it that is stated; weights stay. */
  soilStrength: z.strictObject({ from: share, to: share }).superRefine(aboutOne).optional(),
  /** About the speed that the wind basis states; the wind in ice goes with it. */
  windSpeed: z.strictObject({ from: speed, to: speed }).superRefine(ordered).optional(),
  /** Off the leg walls of every tube and angle, beyond what its row has measured. */
  wallLoss: z
    .strictObject({ from: size.default(0), to: size })
    .superRefine(ordered)
    .optional(),
  /** Times the initial tension that the design states. */
  tension: z.strictObject({ from: share, to: share }).superRefine(aboutOne).optional(),
  /** Further points tried between neighbours on each axis that the corners prove nothing for. */
  between: z.int().min(0).max(4).default(0),
});

const distribution = z.enum(["normal", "lognormal", "gumbel"]);
const positive = z.number().gt(0);

/** What is uncertain, each by its mean and standard deviation, each independent of the others. */
export const uncertainSchema = z.strictObject({
  /** Times what is stated. */
  soilStrength: z
    .strictObject({ distribution: distribution.default("lognormal"), mean: positive, deviation: positive })
    .optional(),
  /** The greatest of one year, as the wind basis states its speed. */
  windSpeed: z
    .strictObject({
      distribution: distribution.default("gumbel"),
      mean: dimensioned("speed", { above: 0 }),
      deviation: dimensioned("speed", { above: 0 }),
    })
    .optional(),
  wallLoss: z
    .strictObject({
      distribution: distribution.default("lognormal"),
      mean: dimensioned("size", { above: 0 }),
      deviation: dimensioned("size", { above: 0 }),
    })
    .optional(),
  tension: z
    .strictObject({ distribution: distribution.default("normal"), mean: positive, deviation: positive })
    .optional(),
  /** Years that the probability is for: the greatest wind of so many, taken as independent of each other. */
  years: z.int().min(1).max(200).default(1),
});

export type Ranges = z.output<typeof rangesSchema>;
export type Uncertain = z.output<typeof uncertainSchema>;

/** Ranges of speed want a basis that states one, inside them. */
export function refuseOddSpeeds(
  {
    site: { wind },
    ranges,
    uncertain,
  }: {
    site: { wind: Parameters<typeof statedSpeed>[0] };
    ranges?: Ranges | undefined;
    uncertain?: Uncertain | undefined;
  },
  context: z.core.$RefinementCtx<unknown>,
): void {
  const speedStated = statedSpeed(wind);
  for (const [part, asked] of [
    ["ranges", ranges?.windSpeed],
    ["uncertain", uncertain?.windSpeed],
  ] as const)
    if (asked && (speedStated === null || speedStated === 0))
      refuse(context, [part, "windSpeed"], "a wind basis that states a speed above 0");
  const range = ranges?.windSpeed;
  if (range && speedStated !== null && !(range.from <= speedStated && speedStated <= range.to))
    refuse(context, ["ranges", "windSpeed"], `a range that holds the stated ${speedStated} m/s`);
}
