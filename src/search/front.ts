import FlatQueue from "flatqueue";
import type { Problem } from "../problem/types.ts";
import { type Candidate, evaluateAll, probe } from "./evaluate.ts";
import type { Node } from "./node.ts";
import type { Share } from "./share.ts";
import { CAP, Tree } from "./tree.ts";
import type { FrontPoint } from "./types.ts";

/** Margins above this count as this: nobody pays for a mast that is more than twice as strong as it must be. */
export const MARGIN_COUNTED = 1;
const LEAST_USE = 1 / (1 + MARGIN_COUNTED);

const BEATEN = "beaten in cost, concrete and margin";
/** Margins that differ by rounding only are one. */
const SAME_USE = 1e-9;

const covers = (
  a: { cents: number; concrete: number; use: number },
  b: { cents: number; concrete: number; use: number },
) => a.cents <= b.cents && a.concrete <= b.concrete && a.use <= b.use + SAME_USE;

/**
 * The exact set of safe designs that none beats in cost, concrete and margin together. The tree is walked cheapest
 * first; a partial design falls when a design found already is no worse in all three than it can become.
 */
export class FrontSearch {
  readonly tree: Tree;
  points: Candidate[] = [];
  analysed = 0;
  finished = false;
  private readonly queue = new FlatQueue<Node>();

  constructor(problem: Problem, share?: Share) {
    this.tree = new Tree(problem, share);
    for (const root of this.tree.roots()) this.queue.push(root, root.cents);
  }

  step(milliseconds: number): boolean {
    const until = performance.now() + milliseconds;
    while (!this.finished && performance.now() < until) {
      const node = this.queue.pop();
      if (!node) {
        this.finished = true;
        break;
      }
      if (this.covered(node)) this.tree.prune(BEATEN, node.designs);
      else if (node.stage === "structure") this.probe(node);
      else if (node.stage === "probed") this.analyse(node);
      else for (const child of this.tree.children(node)) this.push(child);
    }
    return this.finished;
  }

  /** Every design cheaper than this is decided: whole cents, Infinity at the end. */
  get exactBelow(): number {
    return this.finished ? Number.POSITIVE_INFINITY : (this.queue.peekValue() ?? Number.POSITIVE_INFINITY);
  }

  /** Points of another worker: they prune here too. */
  absorb(points: readonly Candidate[]): void {
    for (const point of points) this.keep(point);
  }

  private push(node: Node): void {
    if (this.tree.beyondCap(node)) this.tree.prune(CAP, node.designs);
    else if (this.covered(node)) this.tree.prune(BEATEN, node.designs);
    else this.queue.push(node, node.cents);
  }

  private covered(node: Node): boolean {
    return Math.max(node.use, LEAST_USE) >= this.usable(node) - SAME_USE;
  }

  /** A design no cheaper and no smaller than this must use less than this to be worth having. */
  private usable(node: Node): number {
    let least = Number.POSITIVE_INFINITY;
    for (const point of this.points) {
      if (point.cents > node.cents) break;
      if (point.concrete <= node.concrete) least = Math.min(least, point.use);
    }
    return least;
  }

  private allowed(node: Node): number {
    return Math.min(this.tree.problem.allowed, this.usable(node));
  }

  private probe(node: Node): void {
    this.analysed++;
    const result = probe(node, this.tree, this.allowed(node));
    if (result.status === "failed")
      this.tree.prune(`analysed and failed: ${result.limitState}`, node.designs);
    else this.push(result.node);
  }

  private analyse(node: Node): void {
    const result = evaluateAll(node, this.tree, ({ cents }) => cents, this.allowed(node), LEAST_USE);
    if (result.status === "failed") {
      this.tree.prune(`analysed and failed: ${result.limitState}`, node.designs);
      return;
    }
    for (const candidate of result.candidates)
      this.keep({ ...candidate, use: Math.max(candidate.use, LEAST_USE) });
  }

  /** Kept sorted by cost, none covering another; of equals the smaller key. */
  private keep(candidate: Candidate): void {
    for (const point of this.points) {
      if (point.cents > candidate.cents) break;
      if (!covers(point, candidate)) continue;
      const equal = covers(candidate, point);
      if (!equal || point.key <= candidate.key) return;
    }
    this.points = this.points.filter((point) => !covers(candidate, point));
    let at = this.points.findIndex(
      (point) =>
        point.cents > candidate.cents ||
        (point.cents === candidate.cents && point.concrete > candidate.concrete),
    );
    if (at < 0) at = this.points.length;
    this.points.splice(at, 0, candidate);
  }
}

export const frontPoint = (candidate: Candidate): FrontPoint => ({
  cost: candidate.cents / 100,
  concrete: candidate.concrete / 1e4,
  margin: 1 / candidate.use - 1,
  design: candidate.design,
});
