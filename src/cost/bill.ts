import type { Strand } from "../model/catalog.ts";
import type { Bill, BillLine } from "../model/verdict.ts";
import { cents, line, partLines } from "../parts/price.ts";
import type { AnchorPart, FootingPart } from "../parts/types.ts";
import type { PackageModel, Problem, StackModel } from "../problem/types.ts";

/** The search adds the same cents in the same groups: a test holds the two together. */

/** Strand to cut for one guy, m: chord, and what its two ends take. */
export const cutLength = (problem: Problem, height: number, radius: number): number =>
  Math.hypot(height, radius) + problem.prices.termination;

/** Whole cents of the guys of one level. */
export const levelCents = (
  problem: Problem,
  height: number,
  radius: number,
  strand: Strand,
  perLevel: number,
): number =>
  perLevel * (cents(cutLength(problem, height, radius) * strand.price) + cents(strand.fittings)) +
  cents(problem.prices.guyBracket);

/** Whole cents of what every mast of this height and package costs: antennas, raising, base steel, permit. */
export const fixedCents = (problem: Problem, pack: PackageModel, height: number): number =>
  pack.cents +
  cents(problem.prices.raising * height) +
  cents(problem.prices.baseHardware) +
  cents(problem.prices.permit);

export interface Billed {
  readonly pack: PackageModel;
  readonly stack: StackModel;
  readonly guys: {
    readonly perLevel: number;
    readonly radius: number;
    readonly levels: readonly { readonly height: number; readonly strand: Strand }[];
    readonly anchor: AnchorPart;
  } | null;
  readonly footing: FootingPart;
}

/** The bill of a design, line by line. */
export function bill(problem: Problem, { pack, stack, guys, footing }: Billed): Bill {
  const { prices } = problem;
  const lines: BillLine[] = [...pack.lines, ...stack.lines];
  if (guys) {
    guys.levels.forEach(({ height, strand }, level) => {
      const cut = cutLength(problem, height, guys.radius);
      const name = `guys of level ${level + 1}`;
      lines.push(
        line("guys", `${name}: strand ${strand.id}`, cut, "m", strand.price, guys.perLevel),
        line("guys", `${name}: ends and turnbuckles`, 1, "each", strand.fittings, guys.perLevel),
        line("guys", `${name}: bracket`, 1, "each", prices.guyBracket),
      );
    });
    const { anchor } = guys;
    lines.push(
      ...partLines("anchor", "anchors", anchor.takeOff, anchor.extras, problem.ground, guys.perLevel),
    );
  }
  lines.push(...partLines("base", "footing", footing.takeOff, footing.extras, problem.ground, 1));
  lines.push(
    line("footing", "base plate and bolts", 1, "each", prices.baseHardware),
    line("raising", "raising", stack.height, "m", prices.raising),
    line("other", "permit", 1, "each", prices.permit),
  );
  return { total: lines.reduce((sum, { amount }) => sum + amount, 0) / 100, lines };
}

/** Concrete in place and ground dug, m3. */
export function volumes({
  guys,
  footing,
}: {
  readonly guys: { readonly perLevel: number; readonly anchor: AnchorPart } | null;
  readonly footing: FootingPart;
}): {
  concrete: number;
  dug: number;
} {
  const count = guys?.perLevel ?? 0;
  return {
    concrete: footing.takeOff.concrete + count * (guys?.anchor.takeOff.concrete ?? 0),
    dug: footing.takeOff.dug + count * (guys?.anchor.takeOff.dug ?? 0),
  };
}
