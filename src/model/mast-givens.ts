import { z } from "zod";
import { force, length, positiveForce, price } from "./fields.ts";
import { refuse } from "./refuse.ts";

/** Degrees Celsius that air on earth has. */
const celsius = z.number().min(-70).max(60);

/** Air when the guys are drawn to their initial tension, and the extremes that the mast meets in wind. Celsius. */
export const temperature = z
  .strictObject({
    installed: celsius,
    coldest: celsius,
    hottest: celsius,
    /** While ice hangs: freezing rain falls about there (ASCE 7-16 figure 10.6-1 has places apart, from memory). */
    iced: celsius.default(0),
  })
  .superRefine(({ installed, coldest, hottest }, context) => {
    if (coldest > installed) refuse(context, ["coldest"], `at most ${installed}, the air when installed`);
    if (hottest < installed) refuse(context, ["hottest"], `at least ${installed}, the air when installed`);
  });

/** Insulators, turnbuckles and links in one guy, all together. */
export const guyHardware = z.strictObject({
  weight: force,
  /** Of the guy's length that they take the place of: no strand is cut for it, and it does not stretch. */
  length: length.default(0),
  price: price.default(0),
  /** What breaks the weakest of it. Absent: the strand and its ends break before. */
  breakingStrength: positiveForce.optional(),
});

/** A mast on an insulator is held by its guys alone, each parted from it, and by nothing against twist. */
export function refuseOddInsulation(
  wishes: {
    readonly insulatedBase: boolean;
    readonly packages: readonly { readonly items: readonly { readonly offset: number }[] }[];
  },
  parts: {
    readonly supports: readonly string[];
    readonly guyHardware?: { readonly breakingStrength?: number };
  },
  context: z.core.$RefinementCtx<unknown>,
): void {
  if (!wishes.insulatedBase) return;
  if (parts.supports.includes("freestanding"))
    refuse(
      context,
      ["parts", "supports"],
      '["guyed"]: a mast on a base insulator turns freely and stands by its guys alone',
    );
  if (parts.guyHardware?.breakingStrength === undefined)
    refuse(
      context,
      ["parts", "guyHardware"],
      'the insulators at the mast end of every guy, with their "breakingStrength": an insulated mast is the aerial',
    );
  wishes.packages.forEach(({ items }, p) => {
    items.forEach(({ offset }, i) => {
      if (offset > 0)
        refuse(
          context,
          ["wishes", "packages", p, "items", i, "offset"],
          "0: what holds a mast on an insulator against twist is not worked out",
        );
    });
  });
}

/** What is not worked out beside torque arms. */
export function refuseOddArms(
  {
    wishes,
    parts,
    lot,
  }: {
    readonly wishes: { readonly insulatedBase: boolean; readonly lossOfOneGuy: boolean };
    readonly parts: { readonly guysPerLevel: readonly number[]; readonly drawnIn: boolean };
    readonly lot: { readonly slope?: unknown };
  },
  context: z.core.$RefinementCtx<unknown>,
): void {
  if (parts.guysPerLevel.some((count) => count !== 3))
    refuse(
      context,
      ["parts", "guysPerLevel"],
      "[3] beside torque arms: their three tips stand between three anchors",
    );
  if (lot.slope !== undefined || parts.drawnIn)
    refuse(
      context,
      ["parts", "torqueArms"],
      "no torque arms where anchors differ: no two tensions of a pair would leave such a mast plumb",
    );
  if (wishes.lossOfOneGuy)
    refuse(
      context,
      ["wishes", "lossOfOneGuy"],
      "false beside torque arms: with one guy of a pair gone the other turns the mast further than is worked out",
    );
  if (wishes.insulatedBase)
    refuse(
      context,
      ["wishes", "insulatedBase"],
      "false beside torque arms: what holds a mast on an insulator against twist is not worked out",
    );
}

/** Degrees from plumb or about the axis. */
export const turn = z.number().gt(0).max(10);
