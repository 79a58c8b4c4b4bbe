import FlatQueue from "flatqueue";
import { analyse } from "../checks/analysis.ts";
import { plateSide } from "../checks/plate.ts";
import { verify } from "../checks/verify.ts";
import type { Problem } from "../problem/types.ts";
import { designOf, modelOf } from "./evaluate.ts";
import { holdOf, type Node } from "./node.ts";
import { Tree } from "./tree.ts";
import type { Judged } from "./types.ts";

/** Structures analysed to find the nearest miss: enough for a good one, quick enough not to be waited for. */
const TRIES = 300;

/**
 * When nothing is safe: the design that comes nearest, found by walking the tree least utilisation first with
 * nothing refused. It is the nearest of those analysed, not proven nearest; the page says so.
 */
export function nearestMiss(problem: Problem): Judged | null {
  const lenient: Problem = { ...problem, allowed: Number.MAX_VALUE };
  const tree = new Tree(lenient);
  const queue = new FlatQueue<Node>();
  for (const root of tree.roots()) queue.push(root, root.use);
  let best: { node: Node; use: number } | null = null;
  for (let tries = 0; tries < TRIES; ) {
    const node = queue.pop();
    if (!node || (best && node.use >= best.use)) break;
    if (node.stage === "structure") {
      tries++;
      const use = strongest(node, tree)?.use ?? Number.POSITIVE_INFINITY;
      if (!best || use < best.use) best = { node, use };
    } else for (const child of tree.children(node)) queue.push(child, child.use);
  }
  const ground = best && strongest(best.node, tree);
  if (!best || !ground) return null;
  const { design } = designOf(best.node, tree, ground.anchor, ground.footing);
  return { design, verdict: verify(problem, design) };
}

/** The ground that holds a structure best, whatever it costs. */
function strongest(node: Node, tree: Tree) {
  const model = modelOf(node, tree.problem);
  const result = analyse(tree.problem, model);
  if (result.status === "failed") return null;
  const least = <T>(parts: readonly { part: T }[], use: (part: T) => number) =>
    parts.reduce<{ part: T; use: number } | null>((found, { part }) => {
      const here = use(part);
      return !found || here < found.use ? { part, use: here } : found;
    }, null);
  const plate = plateSide(model.stack);
  const anchor =
    node.perLevel === 0
      ? null
      : least(tree.ground.anchorsOf(holdOf(node)), (part) => part.worst(result.anchors));
  const footing = least(tree.ground.footings, (part) => part.worst(result.bases, plate));
  if (!footing || (node.perLevel !== 0 && !anchor)) return null;
  return {
    anchor: anchor?.part ?? null,
    footing: footing.part,
    use: Math.max(result.worst, footing.use, anchor?.use ?? 0),
  };
}
