import type { Strand } from "../model/catalog.ts";
import { cents } from "../model/cents.ts";
import type { Bill, BillLine } from "../model/verdict.ts";
import { line, partLines } from "../parts/price.ts";
import type { AnchorPart, FootingPart } from "../parts/types.ts";
import type { Star } from "../problem/star.ts";
import { type ArmModel, guySpan, guysAtAnchor } from "../problem/torque-arm.ts";
import type { PackageModel, Problem, StackModel } from "../problem/types.ts";
import { concreteLines, type GroundOf } from "./concrete.ts";
import { byReel, cutLength, cutsOf, reelPlans, reelShare } from "./reels.ts";

/** The search adds the same cents in the same groups: a test holds the two together. */

/** Whole cents of the guys of one level, save strand that is paid by whole reels. */
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
  if (byReel(problem, strand)) return total;
  if (star.alike) {
    const cut = cutLength(problem, height - star.anchors[0].elevation, guySpan(star.radius, arm));
    return total + count * cents(cut * strand.price);
  }
  for (const { radius, elevation } of star.anchors)
    total += cents(cutLength(problem, height - elevation, radius) * strand.price);
  return total;
}

/** The least that a level adds to any bill, whole cents: strand by the reel counts by the best reel's price by length. */
export const levelFloor = (
  problem: Problem,
  height: number,
  star: Star,
  strand: Strand,
  arm: ArmModel | null = null,
): number =>
  levelCents(problem, height, star, strand, arm) + reelShare(problem, star, { height, strand, arm });

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
    const plans = reelPlans(problem, star, levels);
    // what can't be cut from reels is refused by a check, and stands here by its length
    const planned = new Set(
      plans.flatMap(({ strand, cutting }) => (cutting.status === "cut" ? [strand] : [])),
    );
    levels.forEach(({ height, strand, arm }, i) => {
      const level = i + 1;
      const count = star.perLevel * guysAtAnchor(arm);
      const cuts = planned.has(strand) ? [] : cutsOf(problem, star, { height, strand, arm });
      const each = (item: string, price: number, times = 1) =>
        line("guys", { item, level }, 1, "each", price, times);
      cuts.forEach(({ length, count: alike }, anchor) => {
        const item = { item: "strand", level, ...(!star.alike && { anchor: anchor + 1 }), row: strand.id };
        lines.push(line("guys", item, length, "m", strand.price, alike));
      });
      lines.push(each("ends and turnbuckles", strand.fittings, count));
      const { guyHardware } = problem.study.parts;
      if (guyHardware) lines.push(each("insulators and hardware", guyHardware.price, count));
      lines.push(arm ? each(arm.row.name, arm.row.price) : each("bracket", prices.guyBracket));
    });
    for (const { strand, cutting } of plans)
      if (cutting.status === "cut")
        for (const { stock, count } of cutting.cutUp)
          lines.push(
            line(
              "guys",
              { item: "reel of strand", row: strand.id, length: stock.length },
              1,
              "each",
              stock.cents / 100,
              count,
            ),
          );
    lines.push(...partLines("anchor", "anchors", anchor, problem.ground, star.perLevel));
  }
  lines.push(...partLines("base", "footing", footing, problem.ground, 1));
  lines.push(...concreteLines(problem, { guys, footing }));
  lines.push(
    line("footing", "base plate and bolts", 1, "each", prices.baseHardware),
    line("raising", "raising", stack.height, "m", prices.raising),
    line("other", "permit", 1, "each", prices.permit),
  );
  return { total: lines.reduce((sum, { amount }) => sum + amount, 0) / 100, lines };
}

/** Concrete in place and ground dug, m3. */
export function volumes({ guys, footing }: GroundOf): { concrete: number; dug: number } {
  const count = guys?.star.perLevel ?? 0;
  return {
    concrete: footing.takeOff.concrete + count * (guys?.anchor.takeOff.concrete ?? 0),
    dug: footing.takeOff.dug + count * (guys?.anchor.takeOff.dug ?? 0),
  };
}
