import type { Strand } from "../model/catalog.ts";
import type { PlacedStar } from "../problem/star.ts";
import type { Problem } from "../problem/types.ts";
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

/** A node that its search has given away. */
type Handed = { -readonly [Key in keyof Node]: Node[Key] };

/**
 * Makes a partial design of an earlier tree one of this tree: the same mast with the prices and the ground of now;
 * false, counted, where nothing holds it. A mast that was analysed is to be asked again: its answer is remembered.
 * The node itself is changed: thousands are renewed for every edit, and a copy of each would only be collected.
 * @returns null where the trees do not walk the same masts
 */
export function renewal(before: Tree, now: Tree): ((node: Node) => boolean) | null {
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
  // siblings have one list
  const guys = new Map<Node["guys"], Node["guys"]>();
  const guysOf = (root: Root, { guys: old, levels }: Node, star: PlacedStar) => {
    let known = guys.get(old);
    if (!known) guys.set(old, (known = now.pricing.levels({ root, levels }, star)));
    return known;
  };
  const strands = new Map(now.problem.strands.map((strand) => [strand.id, strand]));
  const drawn = new Map<Node["strands"], Node["strands"]>();
  const strandsOf = (old: Node["strands"]) => {
    let known = drawn.get(old);
    if (!known) drawn.set(old, (known = old.map(({ id }) => strands.get(id) as Strand)));
    return known;
  };
  return (node) => {
    const mine: Handed = node;
    const own = node.star && stars.get(node.star);
    mine.stage = node.stage === "probed" ? "structure" : node.stage;
    mine.root = rootOf(node.root);
    mine.star = own?.star ?? null;
    mine.guys = mine.star ? guysOf(mine.root, node, mine.star) : NONE;
    mine.topStrands = own?.topStrands ?? NONE;
    mine.strands = strandsOf(node.strands);
    const worth = now.worth(mine);
    if (!worth) return false;
    mine.spent = worth.spent;
    mine.ground = worth.ground;
    return true;
  };
}
