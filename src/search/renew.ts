import type { Strand } from "../model/catalog.ts";
import type { PlacedStar } from "../problem/star.ts";
import type { Problem } from "../problem/types.ts";
import { NOTHING } from "./ground.ts";
import type { Node, Root } from "./node.ts";
import { physicalBasis } from "./recall.ts";
import { mountCents } from "./roots.ts";
import type { OwnStar, Share } from "./share.ts";
import type { Tree } from "./tree.ts";

/**
 * All that a tree's masts are made of and what forbids them: the choices, the lot, the loads, the margin. Prices,
 * soil, caps and aim are not among it. Trees that agree in this differ in what their nodes cost and what holds them.
 */
function mastsOf(problem: Problem, share: Share): string {
  const { lot, wishes, parts } = problem.study;
  const { wholeReels: _r, concreteAsSold: _c, barsAsSold: _b, anchors: _a, footings: _f, ...choices } = parts;
  return JSON.stringify([
    physicalBasis(problem),
    share,
    problem.allowed,
    lot,
    wishes.heightLimit ?? null,
    choices,
    problem.heights,
    problem.stacks.map((stacks) =>
      stacks.map((stack) => stack.parts.map(({ section, length }) => [section.row.id, length])),
    ),
    problem.holds.map(({ head, sides, anchors }) => [head, sides, anchors.length]),
    problem.footings.length,
  ]);
}

const NONE: readonly never[] = [];

/**
 * How a partial design of an earlier tree stands in this one: the same mast with the prices and the ground of now;
 * null, counted, where nothing holds it. A mast that was analysed is to be asked again: its answer is remembered.
 * @returns null where the trees do not walk the same masts
 */
export function renewal(before: Tree, now: Tree): ((node: Node) => Node | null) | null {
  if (mastsOf(before.problem, before.share) !== mastsOf(now.problem, now.share)) return null;
  const roots = new Map<number, Root>();
  const rootOf = ({ index, ...known }: Root): Root => {
    let root = roots.get(index);
    if (!root) {
      const mount = now.mounts[index];
      root = { ...known, ...mount, index, cents: mountCents(now.problem, mount) };
      roots.set(index, root);
    }
    return root;
  };
  // both deal their stars in one order
  const stars = new Map<PlacedStar, OwnStar>();
  for (const [perLevel, { stars: old }] of before.own)
    for (const [i, own] of (now.own.get(perLevel)?.stars ?? []).entries()) stars.set(old[i].star, own);
  const strands = new Map(now.problem.strands.map((strand) => [strand.id, strand]));
  return (node) => {
    const own = node.star && stars.get(node.star);
    const root = rootOf(node.root);
    const star = own?.star ?? null;
    return now.priced({
      ...node,
      stage: node.stage === "probed" ? "structure" : node.stage,
      root,
      star,
      guys: star ? now.pricing.levels({ root, levels: node.levels }, star) : NONE,
      topStrands: own?.topStrands ?? NONE,
      strands: node.strands.map(({ id }) => strands.get(id) as Strand),
      ground: NOTHING,
    });
  };
}
