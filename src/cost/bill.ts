import type { Strand } from "../model/catalog.ts";
import type { Bill, BillLine } from "../model/verdict.ts";
import { cents, line, partLines } from "../parts/price.ts";
import type { AnchorPart, FootingPart } from "../parts/types.ts";
import type { Star } from "../problem/star.ts";
import { type ArmModel, guySpan, guysAtAnchor } from "../problem/torque-arm.ts";
import type { PackageModel, Problem, StackModel } from "../problem/types.ts";

/** The search adds the same cents in the same groups: a test holds the two together. */

/** Strand to cut for one guy, m: chord less the hardware in it, and what its two ends take. */
export const cutLength = (problem: Problem, rise: number, span: number): number =>
  Math.max(Math.hypot(rise, span) - (problem.study.parts.guyHardware?.length ?? 0), 0) +
  problem.prices.termination;

/** Whole cents of the guys of one level. */
export function levelCents(
  problem: Problem,
  height: number,
  star: Star,
  strand: Strand,
  arm: ArmModel | null = null,
): number {
  const { guyHardware } = problem.study.parts;
  const count = star.perLevel * guysAtAnchor(arm);
  let total =
    cents(arm ? arm.row.price : problem.prices.guyBracket) +
    count * (cents(strand.fittings) + cents(guyHardware?.price ?? 0));
  if (star.alike) {
    const cut = cutLength(problem, height - star.anchors[0].elevation, guySpan(star.radius, arm));
    return total + count * cents(cut * strand.price);
  }
  for (const { radius, elevation } of star.anchors)
    total += cents(cutLength(problem, height - elevation, radius) * strand.price);
  return total;
}

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
    readonly star: Star;
    readonly levels: readonly {
      readonly height: number;
      readonly strand: Strand;
      readonly arm?: ArmModel | null;
    }[];
    readonly anchor: AnchorPart;
  } | null;
  readonly footing: FootingPart;
}

/** The bill of a design, line by line. */
export function bill(problem: Problem, { pack, stack, guys, footing }: Billed): Bill {
  const { prices } = problem;
  const lines: BillLine[] = [...pack.lines, ...stack.lines];
  if (guys) {
    const { anchor, star, levels } = guys;
    levels.forEach(({ height, strand, arm }, level) => {
      const name = `guys of level ${level + 1}`;
      const count = star.perLevel * guysAtAnchor(arm);
      const cut = (elevation: number, radius: number) =>
        cutLength(problem, height - elevation, guySpan(radius, arm));
      lines.push(
        ...(star.alike
          ? [
              line(
                "guys",
                `${name}: strand ${strand.id}`,
                cut(star.anchors[0].elevation, star.radius),
                "m",
                strand.price,
                count,
              ),
            ]
          : star.anchors.map(({ elevation, radius }, i) =>
              line(
                "guys",
                `${name}, anchor ${i + 1}: strand ${strand.id}`,
                cut(elevation, radius),
                "m",
                strand.price,
              ),
            )),
        line("guys", `${name}: ends and turnbuckles`, 1, "each", strand.fittings, count),
        ...(problem.study.parts.guyHardware
          ? [
              line(
                "guys",
                `${name}: insulators and hardware`,
                1,
                "each",
                problem.study.parts.guyHardware.price,
                count,
              ),
            ]
          : []),
        arm
          ? line("guys", `${name}: ${arm.row.name}`, 1, "each", arm.row.price)
          : line("guys", `${name}: bracket`, 1, "each", prices.guyBracket),
      );
    });
    lines.push(
      ...partLines("anchor", "anchors", anchor.takeOff, anchor.extras, problem.ground, star.perLevel),
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
  readonly guys: { readonly star: Pick<Star, "perLevel">; readonly anchor: AnchorPart } | null;
  readonly footing: FootingPart;
}): {
  concrete: number;
  dug: number;
} {
  const count = guys?.star.perLevel ?? 0;
  return {
    concrete: footing.takeOff.concrete + count * (guys?.anchor.takeOff.concrete ?? 0),
    dug: footing.takeOff.dug + count * (guys?.anchor.takeOff.dug ?? 0),
  };
}
