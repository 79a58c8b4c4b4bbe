import type { Strand } from "../model/catalog.ts";
import { cents } from "../model/cents.ts";
import type { Star } from "../problem/star.ts";
import { type ArmModel, guySpan, guysAtAnchor } from "../problem/torque-arm.ts";
import type { Problem } from "../problem/types.ts";
import { type Cut, type Cutting, cutFromStock } from "../purchase/cutting.ts";

/** What the guys of one level are made of. */
export interface GuyLevel {
  readonly height: number;
  readonly strand: Strand;
  readonly arm?: ArmModel | null;
}

/** Strand to cut for one guy, m: chord less the hardware in it, and what its two ends take. */
export const cutLength = (problem: Problem, rise: number, span: number): number =>
  Math.max(Math.hypot(rise, span) - (problem.study.parts.guyHardware?.length ?? 0), 0) +
  problem.prices.termination;

/** Guys of one level, those alike together. */
export function cutsOf(problem: Problem, star: Star, { height, arm = null }: GuyLevel): Cut[] {
  const count = guysAtAnchor(arm);
  const cut = ({ elevation, radius }: Star["anchors"][number]) =>
    cutLength(problem, height - elevation, guySpan(radius, arm));
  if (star.alike)
    return [{ length: cut({ ...star.anchors[0], radius: star.radius }), count: star.perLevel * count }];
  return star.anchors.map((anchor) => ({ length: cut(anchor), count }));
}

/** Is this strand paid by whole reels? */
export const byReel = ({ study }: Problem, strand: Strand): boolean =>
  study.parts.wholeReels === true && strand.reels !== undefined;

/**
 * What strand for these guys must at least add to any purchase, whole cents: each guy is cut whole from
 * some reel that is long enough, at that reel's price by length or more. docs/theory/search.md.
 */
function reelFloor({ reels = [] }: Strand, cuts: readonly Cut[]): number {
  const best = (longest: number) =>
    reels.reduce(
      (least, { length, price, have }) =>
        length > longest - SHORT && have !== 0 ? Math.min(least, cents(price) / length) : least,
      Number.POSITIVE_INFINITY,
    );
  const total = cuts.reduce((sum, { length, count }) => {
    const rate = best(length);
    // too long for any reel: no design, whatever it counts here
    return rate === Number.POSITIVE_INFINITY ? sum : sum + count * length * rate;
  }, 0);
  return Math.floor(total * (1 - 1e-6));
}
/** Far more than cuts and reels are rounded by, m. */
const SHORT = 1e-3;

/** The floor of a level's strand; 0 where it is paid by length. */
export const reelShare = (problem: Problem, star: Star, level: GuyLevel): number =>
  byReel(problem, level.strand) ? reelFloor(level.strand, cutsOf(problem, star, level)) : 0;

/** Plans by study: the same guys are asked about with every tension and every ground. */
const known = new WeakMap<Problem, Map<string, Cutting>>();

/** Whole reels for all guys, strand by strand, at the least money; strand that is paid by length has none. */
export function reelPlans(
  problem: Problem,
  star: Star,
  levels: readonly GuyLevel[],
): readonly { readonly strand: Strand; readonly cutting: Cutting }[] {
  if (problem.study.parts.wholeReels !== true) return [];
  const cutsBy = new Map<Strand, Cut[]>();
  for (const level of levels)
    if (byReel(problem, level.strand))
      cutsBy.set(level.strand, [...(cutsBy.get(level.strand) ?? []), ...cutsOf(problem, star, level)]);
  const plans = known.get(problem) ?? new Map<string, Cutting>();
  known.set(problem, plans);
  return [...cutsBy].map(([strand, cuts]) => {
    const key = `${strand.id} ${cuts
      .map(({ length, count }) => `${count}x${length.toFixed(6)}`)
      .sort()
      .join(" ")}`;
    let cutting = plans.get(key);
    if (!cutting) {
      const stock = (strand.reels ?? []).map(({ length, price, have }) => ({
        length,
        cents: cents(price),
        have,
      }));
      cutting = cutFromStock(stock, cuts);
      plans.set(key, cutting);
    }
    return { strand, cutting };
  });
}

/** Whole cents of the reels of all guys; Infinity where they can't be cut from what is sold. */
export const reelCents = (problem: Problem, star: Star, levels: readonly GuyLevel[]): number =>
  reelPlans(problem, star, levels).reduce(
    (sum, { cutting }) => sum + (cutting.status === "cut" ? cutting.cents : Number.POSITIVE_INFINITY),
    0,
  );
