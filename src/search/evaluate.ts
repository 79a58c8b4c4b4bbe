import { analyse } from "../checks/analysis.ts";
import { pipeBending } from "../checks/pipe.ts";
import { plateSide } from "../checks/plate.ts";
import { type StructureModel, windCases } from "../checks/structure.ts";
import { levelCents } from "../cost/bill.ts";
import { type Design, designKey } from "../model/design.ts";
import { type AnchorPart, type FootingPart, utilisation } from "../parts/types.ts";
import type { Problem } from "../problem/types.ts";
import {
  anchorUse,
  type Chosen,
  firstHolding,
  footingUse,
  leastOf,
  litres,
  nonDominated,
  type Objective,
} from "./ground.ts";
import type { Node } from "./node.ts";
import { guysOf, type Tree } from "./tree.ts";

/** A complete design that the analysis passed, with all that ranks it. `verify` has the last word. */
export interface Candidate {
  readonly design: Design;
  readonly cents: number;
  readonly concrete: number;
  readonly objective: number;
  readonly use: number;
  /** Room of the worst anchor inside the lot, m. */
  readonly spare: number;
  readonly key: string;
}

/** Two stars that fit the lot equally well differ by their rotation alone: the smaller one is taken. */
const sameButTurned = (a: Design, b: Design): boolean =>
  designKey({ ...a, guys: a.guys && { ...a.guys, rotation: 0 } }) ===
  designKey({ ...b, guys: b.guys && { ...b.guys, rotation: 0 } });

/** Cheaper first; equals by margin, then room on the lot, then key: the same answer whoever finds it first. */
export const better = (a: Candidate, b: Candidate | null): boolean => {
  if (!b) return true;
  if (a.objective !== b.objective) return a.objective < b.objective;
  // margins that differ by rounding only are one: unlike orders of summing must not choose
  if (Math.abs(a.use - b.use) > 1e-9) return a.use < b.use;
  if (Math.abs(a.spare - b.spare) > 1e-6) return a.spare > b.spare;
  const turn = (a.design.guys?.rotation ?? 0) - (b.design.guys?.rotation ?? 0);
  if (turn !== 0 && sameButTurned(a.design, b.design)) return turn < 0;
  return a.key < b.key;
};

export const modelOf = (node: Node, problem: Problem): StructureModel => ({
  package: node.root.pack,
  stack: node.root.stack,
  guys:
    node.perLevel === 0
      ? null
      : {
          perLevel: node.perLevel,
          radius: problem.radii[node.radius],
          tension: node.tension,
          levels: guysOf(node, problem),
        },
});

/** Whole cents of a node's structure, without its ground. */
function structureCents(node: Node, problem: Problem): number {
  if (node.perLevel === 0) return node.root.cents;
  const radius = problem.radii[node.radius];
  return guysOf(node, problem).reduce(
    (sum, { height, strand }) => sum + levelCents(problem, height, radius, strand, node.perLevel),
    node.root.cents,
  );
}

export type Probe =
  | { readonly status: "failed"; readonly limitState: string; readonly use: number }
  /** It passed the killing case; its reactions raise what it must at least cost. */
  | { readonly status: "passed"; readonly node: Node };

/** The killing case alone: most of what fails, fails in it, and its reactions price the ground better. */
export function probe(node: Node, tree: Tree): Probe {
  const { problem } = tree;
  const model = modelOf(node, problem);
  const cases = windCases(model.guys);
  const result = analyse(problem, model, problem.allowed, undefined, undefined, [cases[0]]);
  if (result.status === "failed")
    return { status: "failed", limitState: result.limitState, use: result.worst };
  const anchors =
    node.perLevel === 0
      ? { cents: 0, concrete: 0 }
      : leastOf(tree.ground.anchors, anchorUse(result.anchors), problem.allowed);
  if (!anchors) return { status: "failed", limitState: "anchors", use: Number.POSITIVE_INFINITY };
  const footing = leastOf(
    tree.ground.footings,
    footingUse(result.bases, plateSide(model.stack)),
    problem.allowed,
  );
  if (!footing) return { status: "failed", limitState: "footing", use: Number.POSITIVE_INFINITY };
  return {
    status: "passed",
    node: {
      ...node,
      stage: "probed",
      cents: Math.max(
        node.cents,
        structureCents(node, problem) + node.perLevel * anchors.cents + footing.cents,
      ),
      concrete: Math.max(node.concrete, node.perLevel * anchors.concrete + footing.concrete),
      use: Math.max(node.use, result.worst),
    },
  };
}

interface Analysed {
  readonly use: number;
  readonly anchors: readonly Chosen<AnchorPart>[];
  readonly footings: readonly Chosen<FootingPart>[];
}

/** Every case of a structure, and what ground holds it. `pick` chooses among the parts. */
function analysed(
  node: Node,
  tree: Tree,
  allowed: number,
  pick: <T>(
    parts: readonly Chosen<T>[] | "anchors" | "footings",
    use: (part: T) => number,
  ) => readonly Chosen<T>[],
): Analysed | { failed: string; use: number } {
  const { problem } = tree;
  const model = modelOf(node, problem);
  const result = analyse(problem, model, allowed);
  if (result.status === "failed") return { failed: result.limitState, use: result.worst };
  const pipe = utilisation(pipeBending(problem, node.root.pack, node.root.stack.height));
  const use = Math.max(result.worst, pipe);
  const anchors = node.perLevel === 0 ? [] : pick<AnchorPart>("anchors", anchorUse(result.anchors));
  if (node.perLevel > 0 && anchors.length === 0) return { failed: "anchors", use: Number.POSITIVE_INFINITY };
  const footings = pick<FootingPart>("footings", footingUse(result.bases, plateSide(model.stack)));
  if (footings.length === 0) return { failed: "footing", use: Number.POSITIVE_INFINITY };
  return { use, anchors, footings };
}

export type Evaluation =
  | { readonly status: "failed"; readonly limitState: string; readonly use: number }
  | { readonly status: "safe"; readonly candidates: readonly Candidate[] };

/** The best complete design on a structure, under the aim. */
export function evaluate(node: Node, tree: Tree, objective: Objective): Evaluation {
  const { problem, ground } = tree;
  const cap = problem.study.wishes.concreteCap;
  const result = analysed(node, tree, problem.allowed, (kind, use) => {
    const parts = (kind === "anchors" ? ground.anchors : ground.footings) as never;
    // under a cap the dearest parts may be the only ones small enough: keep all that none beats
    if (cap !== undefined) return nonDominated(parts, use as never, problem.allowed, 0) as never;
    const first = firstHolding(parts, use as never, problem.allowed, objective);
    return (first ? [first] : []) as never;
  });
  if ("failed" in result) return { status: "failed", limitState: result.failed, use: result.use };
  let best: Candidate | null = null;
  for (const candidate of complete(node, tree, result, objective)) {
    if (cap !== undefined && candidate.concrete > litres(cap)) continue;
    if (better(candidate, best)) best = candidate;
  }
  return best
    ? { status: "safe", candidates: [best] }
    : { status: "failed", limitState: "concrete-cap", use: Number.POSITIVE_INFINITY };
}

/** Every complete design on a structure that none on it beats in cost, concrete and margin. */
export function evaluateAll(node: Node, tree: Tree, objective: Objective, leastUse: number): Evaluation {
  const { problem, ground } = tree;
  const cap = problem.study.wishes.concreteCap;
  const result = analysed(node, tree, problem.allowed, (kind, use) => {
    const parts = (kind === "anchors" ? ground.anchors : ground.footings) as never;
    return nonDominated(parts, use as never, problem.allowed, leastUse) as never;
  });
  if ("failed" in result) return { status: "failed", limitState: result.failed, use: result.use };
  const all = [...complete(node, tree, result, objective)].filter(
    (c) => cap === undefined || c.concrete <= litres(cap),
  );
  return { status: "safe", candidates: all };
}

function* complete(
  node: Node,
  tree: Tree,
  { use, anchors, footings }: Analysed,
  objective: Objective,
): Generator<Candidate> {
  const { problem } = tree;
  const cents = structureCents(node, problem);
  for (const footing of footings)
    for (const anchor of node.perLevel === 0 ? [null] : anchors) {
      const { design, spare } = designOf(node, tree, anchor?.part ?? null, footing.part);
      const totalCents = cents + footing.cents + node.perLevel * (anchor?.cents ?? 0);
      const concrete = footing.concrete + node.perLevel * (anchor?.concrete ?? 0);
      yield {
        design,
        cents: totalCents,
        concrete,
        objective: objective(totalCents, concrete),
        use: Math.max(use, footing.use, anchor?.use ?? 0),
        spare,
        key: designKey(design),
      };
    }
}

export function designOf(
  node: Node,
  tree: Tree,
  anchor: AnchorPart | null,
  footing: FootingPart,
): { design: Design; spare: number } {
  const { problem } = tree;
  const { pack, stack } = node.root;
  const star = node.perLevel === 0 ? null : (tree.stars.get(node.perLevel)?.[node.radius] ?? null);
  return {
    spare: star?.spare ?? 0,
    design: {
      package: pack.row.id,
      height: stack.height,
      stack: stack.parts.map(({ section, length }) => ({ section: section.row.id, length })),
      guys:
        star && anchor && node.perLevel !== 0
          ? {
              perLevel: node.perLevel,
              radius: star.radius,
              rotation: star.rotation ?? 0,
              tension: node.tension,
              levels: guysOf(node, problem).map(({ height, strand }) => ({ height, strand: strand.id })),
              anchor: anchor.choice,
            }
          : null,
      footing: footing.choice,
    },
  };
}
