import { type Analysis, analyse } from "../checks/analysis.ts";
import { demanded } from "../checks/demanded.ts";
import { gusty } from "../checks/gust.ts";
import { pipeBending } from "../checks/pipe.ts";
import { plateSide } from "../checks/plate.ts";
import type { LevelModel } from "../checks/rigging.ts";
import { anchorsTooNear } from "../checks/site.ts";
import type { StructureModel } from "../checks/structure.ts";
import { windCases } from "../checks/wind-cases.ts";
import { levelCents, volumes } from "../cost/bill.ts";
import { beyondShares } from "../cost/concrete.ts";
import { reelCents } from "../cost/reels.ts";
import type { AnchorChoice, Design } from "../model/design.ts";
import { designKey } from "../model/design-key.ts";
import {
  type AnchorPart,
  type AnchorReaction,
  type FootingLoads,
  type FootingPart,
  utilisation,
} from "../parts/types.ts";
import type { Star } from "../problem/star.ts";
import type { Problem } from "../problem/types.ts";
import type { LeftGround } from "./bars.ts";
import { better, type Candidate } from "./candidate.ts";
import {
  type Asked,
  anchorFloor,
  anchorUse,
  type Chosen,
  firstHolding,
  footingUse,
  greater,
  leastOf,
  NOTHING,
  nonDominated,
  type Priced,
  starAmounts,
} from "./ground.ts";
import { holdOf, type Node } from "./node.ts";
import { structureKey } from "./recall.ts";
import { guysOf, type Tree } from "./tree.ts";

export const modelOf = (node: Node, problem: Problem): StructureModel => ({
  package: node.root.pack,
  stack: node.root.stack,
  guys: node.star && { star: node.star, levels: guysOf(node, problem) },
});

/** Whole cents of a node's structure, without its ground. */
export function structureCents(node: Node, problem: Problem): number {
  const { star, root } = node;
  if (!star) return root.cents;
  const guys = guysOf(node, problem);
  return guys.reduce(
    (sum, { height, strand, arm }) => sum + levelCents(problem, height, star, strand, arm),
    root.cents + reelCents(problem, star, guys),
  );
}

/** The mast itself fails, or its guys: under every price and on every soil. */
type Failed = { readonly status: "failed"; readonly limitState: string };
/** Nothing holds it in the ground, or it is beyond a cap: of this study's parts and prices. */
type Unheld = { readonly status: "unheld"; readonly limitState: string };

export type Probe =
  | Failed
  | Unheld
  /** It passed the killing case; its reactions raise what it must at least cost. */
  | { readonly status: "passed"; readonly node: Node };

/**
 * The killing case alone: most of what fails, fails in it, and its reactions price the ground better.
 * @param allowed utilisation above which a design is of no use here: the wish's, or less
 */
export const killingCase = (node: Node, { problem, recall }: Tree, allowed: number): Analysis =>
  recall.analysis(`killing ${structureKey(node)}`, allowed, () => {
    const model = modelOf(node, problem);
    return analyse(problem, model, {
      giveUpAbove: allowed,
      cases: windCases(problem, model.guys).slice(0, 1),
    });
  });

/** The killing case, and the least that holds its reactions. */
export function probe(node: Node, tree: Tree): Probe {
  const { problem, ground } = tree;
  const { allowed } = problem;
  const result = killingCase(node, tree, allowed);
  if (result.status === "failed") return { status: "failed", limitState: result.limitState };
  const anchors =
    node.perLevel === 0
      ? NOTHING
      : leastOf(ground.anchorsOf(holdOf(node)), anchorFloor(result.anchors), allowed, tree.minded);
  if (!anchors) return { status: "unheld", limitState: "anchors" };
  const footing = leastOf(
    ground.footings,
    footingUse(result.bases, plateSide(node.root.stack)),
    allowed,
    tree.minded,
  );
  if (!footing) return { status: "unheld", limitState: "footing" };
  const least = starAmounts(node.perLevel, anchors, footing);
  return {
    status: "passed",
    node: {
      ...node,
      stage: "probed",
      spent: structureCents(node, problem),
      ground: greater(node.ground, least),
      use: Math.max(node.use, result.worst),
    },
  };
}

export type Evaluation =
  | Failed
  | Unheld
  | { readonly status: "safe"; readonly candidates: readonly Candidate[] };

/** The best complete design on a structure, under the aim. */
export function evaluate(node: Node, tree: Tree): Evaluation {
  const { problem, ground, bars } = tree;
  const { allowed } = problem;
  const { concreteCap, digCap, budget } = problem.study.wishes;
  const capped = [concreteCap, digCap, budget].some((cap) => cap !== undefined);
  // under a cap the dearest parts may be the only ones small enough, and concrete bought for all holes together is no
  // sum of theirs: keep all that none beats
  const choose = <T>(parts: readonly Priced<T>[], use: Asked<T>): Chosen<T>[] => {
    if (capped || problem.ground.concreteAsSold) return nonDominated(parts, use, allowed, 0, true);
    return firstHolding(parts, use, allowed);
  };
  const held = heldStructure(node, tree, allowed);
  if (held.status === "failed") return held;
  const left = bars.ground(node, ground);
  const anchors =
    node.perLevel === 0 ? [null] : left.anchors.flatMap((group) => choose(group, held.anchorUse));
  const footings = left.footings.flatMap((group) => choose(group, held.footingUse));
  let best: Candidate | null = null;
  for (const candidate of complete(node, tree, held.use, left, anchors, footings))
    if (better(candidate, best)) best = candidate;
  return best ? { status: "safe", candidates: [best] } : nothingHolds(anchors, footings);
}

/**
 * Every complete design on a structure that none on it beats in cost, concrete and margin.
 * @param leastUse utilisations below this count as this
 */
export function evaluateAll(node: Node, tree: Tree, allowed: number, leastUse: number): Evaluation {
  const left = tree.bars.ground(node, tree.ground);
  const held = heldStructure(node, tree, allowed);
  if (held.status === "failed") return held;
  // under a cap on digging the part that digs least may be the only one
  const minded = tree.problem.study.wishes.digCap !== undefined;
  // no part of the ground need be better than the mast on it
  const least = Math.max(leastUse, held.use);
  const anchors =
    node.perLevel === 0
      ? [null]
      : left.anchors.flatMap((group) => nonDominated(group, held.anchorUse, allowed, least, minded));
  const footings = left.footings.flatMap((group) =>
    nonDominated(group, held.footingUse, allowed, least, minded),
  );
  const candidates = [...complete(node, tree, held.use, left, anchors, footings)];
  return candidates.length > 0 ? { status: "safe", candidates } : nothingHolds(anchors, footings);
}

const nothingHolds = (anchors: readonly unknown[], footings: readonly unknown[]): Unheld => ({
  status: "unheld",
  limitState: anchors.length === 0 ? "anchors" : footings.length === 0 ? "footing" : "caps or what is barred",
});

/** A structure whose mast and guys hold in every case, and how to ask the ground about it. */
interface Held {
  readonly status: "held";
  readonly use: number;
  readonly anchorUse: Asked<AnchorPart>;
  readonly footingUse: Asked<FootingPart>;
}

function heldStructure(node: Node, tree: Tree, allowed: number): Held | Failed {
  const { problem } = tree;
  const model = modelOf(node, problem);
  const key = structureKey(node);
  let use = 0;
  let anchors: AnchorReaction[] = [];
  let bases: FootingLoads[] = [];
  let places = 0;
  for (const at of demanded(problem, model)) {
    const result = tree.recall.analysis(`${key} at ${places++}`, allowed, () =>
      analyse(at.problem, at.model, { giveUpAbove: allowed }),
    );
    if (result.status === "failed") return { status: "failed", limitState: result.limitState };
    // the tree asked with the least gusts; this mast's own may be more
    const blown = gusty(at.problem, result.gusts);
    const pipe = utilisation(pipeBending(blown, node.root.pack, node.root.stack.height));
    if (pipe > allowed * (1 + 1e-12)) return { status: "failed", limitState: "pipe-bending" };
    use = Math.max(use, result.worst, pipe);
    anchors = anchors.concat(result.anchors);
    bases = bases.concat(result.bases);
  }
  return {
    status: "held",
    use,
    anchorUse: (part, enough) =>
      node.star && anchorsTooNear(node.star, part)
        ? Number.POSITIVE_INFINITY
        : anchorUse(anchors)(part, enough),
    footingUse: footingUse(bases, plateSide(model.stack)),
  };
}

function* complete(
  node: Node,
  tree: Tree,
  use: number,
  { together }: LeftGround,
  anchors: readonly (Chosen<AnchorPart> | null)[],
  footings: readonly Chosen<FootingPart>[],
): Generator<Candidate> {
  const { problem } = tree;
  const { wishes } = problem.study;
  const structure = structureCents(node, problem);
  for (const footing of footings)
    for (const anchor of anchors) {
      if (anchor && !together(anchor.part, footing.part)) continue;
      const guys = anchor && node.star && { star: node.star, anchor: anchor.part };
      // the same sum as verify's, so that both see the same side of the cap
      const { concrete: poured, dug: turned } = volumes({ guys, footing: footing.part });
      if (poured > (wishes.concreteCap ?? Number.POSITIVE_INFINITY) + 1e-9) continue;
      if (turned > (wishes.digCap ?? Number.POSITIVE_INFINITY) + 1e-9) continue;
      const amounts = starAmounts(node.perLevel, anchor ?? NOTHING, footing);
      const beyond = beyondShares(problem, { guys, footing: footing.part });
      const cents = structure + amounts.cents + beyond;
      if (cents > 100 * (wishes.budget ?? Number.POSITIVE_INFINITY) + 1e-6) continue;
      const { design, spare } = designOf(node, tree, anchor?.part ?? null, footing.part);
      yield {
        design,
        cents,
        concrete: amounts.concrete,
        objective: structure + amounts.aimed + beyond,
        use: Math.max(use, footing.use, anchor?.use ?? 0),
        spare,
        key: designKey(design),
      };
    }
}

/** Guys of a design, written in the one way that enumeration writes them too. */
export function guyChoice(
  star: Star,
  rotation: number,
  levels: readonly LevelModel[],
  anchor: AnchorChoice,
): NonNullable<Design["guys"]> {
  const radii = star.anchors.map((a) => a.radius);
  const { tension } = levels[0];
  return {
    perLevel: star.perLevel,
    radius: star.radius,
    ...(radii.every((r) => r === star.radius) ? {} : { radii }),
    rotation,
    tension,
    levels: levels.map(({ height, strand, tension: own, arm }) => ({
      height,
      strand: strand.id,
      ...(own === tension ? {} : { tension: own }),
      ...(arm ? { arm: arm.row.id } : {}),
    })),
    anchor,
  };
}

export function designOf(
  node: Node,
  tree: Tree,
  anchor: AnchorPart | null,
  footing: FootingPart,
): { design: Design; spare: number } {
  const { problem } = tree;
  const { pack, stack } = node.root;
  const { star } = node;
  return {
    spare: star?.spare ?? 0,
    design: {
      package: pack.row.id,
      height: stack.height,
      stack: stack.parts.map(({ section, length }) => ({ section: section.row.id, length })),
      guys: star && anchor ? guyChoice(star, star.rotation ?? 0, guysOf(node, problem), anchor.choice) : null,
      footing: footing.choice,
    },
  };
}
