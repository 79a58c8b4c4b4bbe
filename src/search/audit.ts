import { verify } from "../checks/verify.ts";
import type { Problem } from "../problem/types.ts";
import type { Candidate } from "./candidate.ts";
import { designOf, structureCents } from "./evaluate.ts";
import { type Amounts, litres, objectiveOf } from "./ground.ts";
import { floorOf, holdOf, type Node } from "./node.ts";
import { SearchDefect } from "./search.ts";
import { Tree } from "./tree.ts";

export interface Audit {
  /** Distinct designs, cheaper than the answer, that `verify` was asked about. */
  readonly verified: number;
  /** Finer mesh, elements a span. */
  readonly elementsPerSpan: number;
}

/** A small generator with a long period: a poor one repeats itself and proves nothing. */
const random = (seed: number) => {
  let state = seed >>> 0;
  return (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

const AUDIT_MESH = 12;

/**
 * Looks again at what was pruned: random designs that would beat the answer, drawn from a tree that refuses
 * nothing, each through `verify` whole; and the answer itself on a finer mesh.
 * @param best null where the search says that nothing is safe: then any design that passes is a defect
 * @throws SearchDefect where one passes, or where the answer does not hold on the finer mesh within 1 %
 */
export function audit(
  problem: Problem,
  best: Pick<Candidate, "design" | "objective"> | null,
  sample: number,
  seed = 1,
): Audit {
  const next = random(seed);
  const pick = <T>(values: readonly T[]): T | undefined => values[Math.floor(next() * values.length)];
  const objective = objectiveOf(problem);
  const limit = best?.objective ?? Number.POSITIVE_INFINITY;
  const lenient = new Tree({ ...problem, allowed: Number.MAX_VALUE });
  const cheaper = (nodes: readonly Node[]) => nodes.filter((node) => floorOf(node) < limit);
  const roots = cheaper([...lenient.roots()]);
  const seen = new Set<string>();
  for (let tries = 0; roots.length > 0 && seen.size < sample && tries < 20 * sample; tries++) {
    let node = pick(roots) as Node;
    let open = true;
    while (node.stage !== "structure") {
      const child: Node | undefined = pick(cheaper(lenient.children(node)));
      if (!child) {
        open = false;
        break;
      }
      node = child;
    }
    if (!open) continue;
    // ground that leaves the whole cheaper than the answer, any such
    const { footings } = lenient.ground;
    const anchors = lenient.ground.anchorsOf(holdOf(node));
    const spent = structureCents(node, problem);
    const fits = ({ cents, concrete, dug }: Amounts) =>
      objective({ cents: spent + cents, concrete, dug }) < limit;
    const n = node.perLevel;
    const footing = pick(footings.filter(fits));
    if (!footing) continue;
    const anchor =
      n === 0
        ? null
        : pick(
            anchors.filter((a) =>
              fits({
                cents: footing.cents + n * a.cents,
                concrete: footing.concrete + n * a.concrete,
                dug: footing.dug + n * a.dug,
              }),
            ),
          );
    if (n > 0 && !anchor) continue;
    const { design } = designOf(node, lenient, anchor?.part ?? null, footing.part);
    const key = JSON.stringify(design);
    if (seen.has(key)) continue;
    const verdict = verify(problem, design);
    const judged = {
      cents: Math.round(verdict.bill.total * 100),
      concrete: litres(verdict.concreteVolume),
      dug: litres(verdict.dugVolume),
    };
    if (objective(judged) >= limit) continue;
    seen.add(key);
    if (verdict.passes)
      throw new SearchDefect(`a pruned design passes every check and beats the answer: ${key}`);
  }
  if (best) {
    const fine = verify(problem, best.design, AUDIT_MESH);
    const most = 1 / (1 + fine.smallestMargin);
    if (most > problem.allowed * 1.01)
      throw new SearchDefect(
        `on a mesh of ${AUDIT_MESH} elements a span the answer is used ${most.toFixed(4)}: ${JSON.stringify(best.design)}`,
      );
  }
  return { verified: seen.size, elementsPerSpan: AUDIT_MESH };
}
