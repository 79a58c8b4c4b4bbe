import FlatQueue from "flatqueue";
import { verify } from "../checks/verify.ts";
import type { Problem } from "../problem/types.ts";
import { better, type Candidate, evaluate, probe } from "./evaluate.ts";
import { type Objective, objectiveInWords, objectiveOf } from "./ground.ts";
import type { Node } from "./node.ts";
import { Tree } from "./tree.ts";
import type { Judged, Proof } from "./types.ts";

/** Which share of the tree a worker walks. */
export interface Share {
  readonly index: number;
  readonly of: number;
}

/** The disagreement that may never happen: the search accepted what `verify` rejects, or priced it otherwise. */
export class SearchDefect extends Error {}

/**
 * The exact search. Partial designs are walked cheapest lower bound first; it ends when the next bound is above
 * the best safe design, and then nothing left can be cheaper. It can be stopped between any two steps and goes on
 * where it was.
 */
export class Search {
  readonly tree: Tree;
  readonly problem: Problem;
  readonly objective: Objective;
  best: Candidate | null = null;
  judged: Judged | null = null;
  analysed = 0;
  finished = false;
  private readonly queue = new FlatQueue<Node>();
  /** Best objective known to other workers. */
  private elsewhere = Number.POSITIVE_INFINITY;
  private readonly share: Share;
  private ordinal = 0;
  private spent = 0;

  constructor(problem: Problem, share: Share = { index: 0, of: 1 }) {
    this.problem = problem;
    this.tree = new Tree(problem);
    this.objective = objectiveOf(problem);
    this.share = share;
    for (const root of this.tree.roots()) this.push(root);
    if (share.index > 0) for (const rule of Object.keys(this.tree.pruned)) delete this.tree.pruned[rule];
  }

  /** Objective that a design must beat, or equal, to matter. */
  get cutoff(): number {
    return Math.min(this.best?.objective ?? Number.POSITIVE_INFINITY, this.elsewhere);
  }

  /** Another worker found this: it prunes here too. */
  absorb(objective: number): void {
    this.elsewhere = Math.min(this.elsewhere, objective);
  }

  /** Walks for about this long; true when the search has ended. */
  step(milliseconds: number): boolean {
    const until = performance.now() + milliseconds;
    const from = performance.now();
    while (!this.finished && performance.now() < until) {
      // the stopping rule: the cheapest of what is left is dearer than what is safe already
      const bound = this.queue.length > 0 ? (this.queue.peekValue() as number) : Number.POSITIVE_INFINITY;
      if (bound > this.cutoff || this.queue.length === 0) {
        this.finish();
        break;
      }
      const node = this.queue.pop() as Node;
      if (node.stage === "structure") this.probe(node);
      else if (node.stage === "probed") this.analyse(node);
      else for (const child of this.tree.children(node)) this.take(node, child);
    }
    this.spent += performance.now() - from;
    return this.finished;
  }

  /** Under the roots each child is one worker's; the others pass over it. */
  private take(parent: Node, child: Node): void {
    if (parent.stage === "root" && this.ordinal++ % this.share.of !== this.share.index) return;
    this.push(child);
  }

  private push(node: Node): void {
    this.queue.push(node, this.objective(node.cents, node.concrete));
  }

  private probe(node: Node): void {
    this.analysed++;
    const result = probe(node, this.tree);
    if (result.status === "failed") this.reject(node, result.limitState, result.use);
    else this.push(result.node);
  }

  private analyse(node: Node): void {
    const result = evaluate(node, this.tree, this.objective);
    if (result.status === "failed") return this.reject(node, result.limitState, result.use);
    this.tree.prune("same mast on dearer ground", node.designs - 1);
    for (const candidate of result.candidates)
      if (better(candidate, this.best)) {
        this.judged = this.judge(candidate);
        this.best = candidate;
      }
  }

  private reject(node: Node, limitState: string, use: number): void {
    this.tree.prune(`analysed and failed: ${limitState}`, node.designs);
    if (use < this.nearestUse) {
      this.nearestUse = use;
      this.nearest = node;
    }
  }
  /** The failed structure that came nearest to holding. */
  nearest: Node | null = null;
  private nearestUse = Number.POSITIVE_INFINITY;

  /** The only judge has the last word on every incumbent. @throws SearchDefect */
  private judge(candidate: Candidate): Judged {
    const verdict = verify(this.problem, candidate.design);
    const worst = 1 / (1 + verdict.smallestMargin);
    if (!verdict.passes)
      throw new SearchDefect(
        `the search took ${candidate.key} for safe; verify fails it in ${verdict.checks.find((c) => !c.passes)?.id}`,
      );
    if (Math.round(verdict.bill.total * 100) !== candidate.cents || Math.abs(worst - candidate.use) > 1e-9)
      throw new SearchDefect(
        `the search has ${candidate.cents} cents and utilisation ${candidate.use} for ${candidate.key}; verify has ${verdict.bill.total * 100} and ${worst}`,
      );
    return { design: candidate.design, verdict };
  }

  private finish(): void {
    this.finished = true;
    for (let node = this.queue.pop(); node; node = this.queue.pop())
      this.tree.prune("dearer than the answer by its lower bound", node.designs);
  }

  /** Nothing safe that is left, or found, has a smaller objective. */
  get bound(): number {
    const next = this.queue.length > 0 ? (this.queue.peekValue() as number) : Number.POSITIVE_INFINITY;
    return Math.min(next, this.cutoff);
  }

  proof(): Proof {
    const total = this.tree.grid.total();
    const decided = Object.values(this.tree.pruned).reduce((sum, n) => sum + n, 0) + (this.best ? 1 : 0);
    return {
      gridSize: total.designs,
      decided: this.finished && this.share.of === 1 ? total.designs : Math.min(decided, total.designs),
      structures: total.structures,
      analysed: this.analysed,
      pruned: { ...this.tree.pruned },
      bound: this.words(this.bound),
      gap: this.best ? this.words(this.best.objective) - this.words(this.bound) : Number.POSITIVE_INFINITY,
      seconds: this.spent / 1000,
      workers: this.share.of,
    };
  }

  private words(objective: number): number {
    return objective === Number.POSITIVE_INFINITY ? objective : objectiveInWords(this.problem, objective);
  }
}
