import FlatQueue from "flatqueue";
import { verify } from "../checks/verify.ts";
import type { Problem } from "../problem/types.ts";
import { better, type Candidate } from "./candidate.ts";
import { evaluate, probe } from "./evaluate.ts";
import { capped } from "./ground.ts";
import { floorOf, type Node } from "./node.ts";
import type { Recall } from "./recall.ts";
import { renewal } from "./renew.ts";
import type { Share } from "./share.ts";
import { MOST_FALLEN } from "./tally.ts";
import type { ShareReport } from "./together.ts";
import { SAFE } from "./together.ts";
import { CAP, Tree } from "./tree.ts";
import type { Judged } from "./types.ts";

/** Roots far apart in price, the first to be tried last: dear enough to hold, then dearer, then cheaper. */
const DIVES = [0, 0.15, 1, 0.25, 0.4, 0.9, 0.6, 0.75, 0.5];
const spread = (byPrice: readonly Node[]): Node[] => {
  const places = new Set(DIVES.map((share) => Math.round(share * (byPrice.length - 1))));
  return byPrice.length === 0 ? [] : [...places].map((place) => byPrice[place]);
};

const DEARER = "dearer than the answer by its lower bound";

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
  best: Candidate | null = null;
  /** What `verify` says of the best that a step ended with. */
  judged: Judged | null = null;
  analysed = 0;
  /** Partial designs and structures whose least cost was worked out. */
  bounded = 0;
  finished = false;
  private readonly queue = new FlatQueue<Node>();
  /** Has another search taken what is left of this one? */
  private handedOn = false;
  /** Best objective known to other workers. */
  private elsewhere = Number.POSITIVE_INFINITY;

  /** @param before an earlier search of this worker: where it walked the same masts, this one goes on from it */
  constructor(problem: Problem, share?: Share, recall?: Recall, before?: Search) {
    this.problem = problem;
    this.tree = new Tree(problem, share, recall, capped(problem));
    if (before && this.goesOn(before)) return;
    const roots = [...this.tree.roots()];
    for (const root of roots) this.push(root);
    // one worker looks for a first safe design; the others hear of it
    if ((share?.index ?? 0) === 0) this.dives = spread(roots.sort((a, b) => a.spent - b.spent));
  }

  /**
   * Takes over what an earlier search left of the same masts under other prices, on other ground: what is dead stays
   * dead, and all else is priced anew. Every design of the grid is in one of the two, whenever it was stopped.
   */
  private goesOn(before: Search): boolean {
    const { revivable } = before.tree.tally;
    if (!revivable || before.handedOn || before.queue.length > MOST_FALLEN) return false;
    const again = renewal(before.tree, this.tree);
    if (!again) return false;
    before.handedOn = true;
    this.tree.tally.inherit(before.tree.tally);
    this.analysed = before.analysed;
    const renew = (node: Node) => {
      // its answer is remembered, and counted when it is asked again
      if (node.stage === "probed") this.analysed--;
      if (again(node)) this.push(node);
    };
    for (const node of revivable) renew(node);
    for (let node = before.queue.pop(); node; node = before.queue.pop()) renew(node);
    return true;
  }

  /** Objective that a design must beat, or equal, to matter. */
  get cutoff(): number {
    return Math.min(this.best?.objective ?? Number.POSITIVE_INFINITY, this.elsewhere);
  }

  /** Another worker found this: it prunes here too. */
  absorb(objective: number): void {
    this.elsewhere = Math.min(this.elsewhere, objective);
  }

  /** Walks for about this long; true when the search has ended. What it ends with as the best, `verify` has passed. */
  step(milliseconds: number): boolean {
    this.walk(milliseconds);
    if (this.best && this.judged?.design !== this.best.design) this.judged = this.judge(this.best);
    return this.finished;
  }

  private walk(milliseconds: number): void {
    const until = performance.now() + milliseconds;
    while (!this.finished && performance.now() < until) {
      const start = this.best ? undefined : this.dives.pop();
      if (start) {
        this.dive(start);
        continue;
      }
      // the stopping rule: the cheapest of what is left is dearer than what is safe already
      const bound = this.queue.length > 0 ? (this.queue.peekValue() as number) : Number.POSITIVE_INFINITY;
      if (bound > this.cutoff || this.queue.length === 0) {
        this.finish();
        break;
      }
      const node = this.queue.pop() as Node;
      if (node.stage === "structure") this.probe(node);
      else if (node.stage === "probed") this.analyse(node);
      else for (const child of this.tree.children(node)) this.push(child);
    }
  }

  /** Roots from which a first safe design is sought, the next one last. */
  private dives: Node[] = [];

  /**
   * Something safe soon: from a root down, always the child that must use the least. It proves nothing and is
   * counted nowhere; the walk below meets the same structure again.
   */
  private dive(start: Node): void {
    const node = this.tree.tally.uncounted(() => {
      let lowest: Node | undefined = start;
      while (lowest && lowest.stage !== "structure") {
        let best: Node | undefined;
        for (const child of this.tree.children(lowest))
          if (!best || child.use < best.use || (child.use === best.use && floorOf(child) < floorOf(best)))
            best = child;
        lowest = best;
      }
      return lowest;
    });
    if (!node) return;
    this.analysed++;
    const result = evaluate(node, this.tree);
    if (result.status !== "safe") return;
    for (const candidate of result.candidates) this.keep(candidate);
  }

  private keep(candidate: Candidate): void {
    if (better(candidate, this.best)) this.best = candidate;
  }

  private push(node: Node): void {
    this.bounded++;
    if (this.tree.beyondCap(node)) this.tree.prune(CAP, node.designs, node);
    else {
      const objective = floorOf(node);
      // what can't beat the best so far is not kept until the end to be told so
      if (objective > this.cutoff) this.tree.prune(DEARER, node.designs, node);
      else this.queue.push(node, objective);
    }
  }

  private probe(node: Node): void {
    this.analysed++;
    const result = probe(node, this.tree);
    if (result.status === "passed") this.push(result.node);
    else this.reject(node, result);
  }

  private analyse(node: Node): void {
    const result = evaluate(node, this.tree);
    if (result.status !== "safe") {
      this.reject(node, result);
      return;
    }
    this.tree.prune(SAFE, node.designs, node);
    for (const candidate of result.candidates) this.keep(candidate);
  }

  private reject(
    node: Node,
    { status, limitState }: { status: "failed" | "unheld"; limitState: string },
  ): void {
    const revivable = status === "unheld" ? ({ ...node, stage: "probed" } as const) : undefined;
    this.tree.prune(`analysed and failed: ${limitState}`, node.designs, revivable);
  }

  /** The only judge has the last word on every incumbent that leaves a step. @throws SearchDefect */
  private judge(candidate: Candidate): Judged {
    const { design } = candidate;
    const verdict = verify(this.problem, design);
    const worst = 1 / (1 + verdict.smallestMargin);
    if (!verdict.passes)
      throw new SearchDefect(
        `the search took ${candidate.key} for safe; verify fails it in ${verdict.checks.find((c) => !c.passes)?.id}`,
      );
    if (Math.round(verdict.bill.total * 100) !== candidate.cents || Math.abs(worst - candidate.use) > 1e-9)
      throw new SearchDefect(
        `the search has ${candidate.cents} cents and utilisation ${candidate.use} for ${candidate.key}; verify has ${verdict.bill.total * 100} and ${worst}`,
      );
    return { design, verdict };
  }

  private finish(): void {
    this.finished = true;
    for (let node = this.queue.pop(); node; node = this.queue.pop())
      this.tree.prune(DEARER, node.designs, node);
  }

  /** Nothing safe that is left, or found, has a smaller objective. */
  get bound(): number {
    const next = this.queue.length > 0 ? (this.queue.peekValue() as number) : Number.POSITIVE_INFINITY;
    return Math.min(next, this.cutoff);
  }

  /** What this share knows, to be put together with the others. */
  report(): ShareReport {
    return {
      best: this.best,
      bound: this.bound,
      analysed: this.analysed,
      pruned: { ...this.tree.pruned },
      finished: this.finished,
    };
  }
}
