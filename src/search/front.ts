import FlatQueue from "flatqueue";
import { plateSide } from "../checks/plate.ts";
import { DesignError } from "../checks/resolve.ts";
import { verify } from "../checks/verify.ts";
import type { Verdict } from "../model/verdict.ts";
import type { Problem } from "../problem/types.ts";
import { type Candidate, evaluateAll, probe, structureCents } from "./evaluate.ts";
import { anchorFloor, capped, footingUse, NOTHING } from "./ground.ts";
import { paired, type Trade, tradesOf } from "./ground-floors.ts";
import { holdOf, type Node } from "./node.ts";
import type { Recall } from "./recall.ts";
import type { Share } from "./share.ts";
import { CAP, Tree } from "./tree.ts";

/** Margins above this count as this: half as strong again as every rule asks is what reserve anybody pays for. */
export const MARGIN_COUNTED = 0.5;
const LEAST_USE = 1 / (1 + MARGIN_COUNTED);
/** Margins that differ by rounding only are one. */
const SAME_USE = 1e-9;

/** Has a point of the front at least the margin that counts? Then its own may be more. */
export const hasAllMargin = (margin: number): boolean => margin >= MARGIN_COUNTED - SAME_USE;

const BEATEN = "beaten in cost, concrete and margin";
const covers = (
  a: { cents: number; concrete: number; use: number },
  b: { cents: number; concrete: number; use: number },
) => a.cents <= b.cents && a.concrete <= b.concrete && a.use <= b.use + SAME_USE;

/** A partial design with the ways to hold it in the ground. */
interface Offer {
  readonly node: Node;
  /** Cents of all but the ground, or of everything. */
  readonly base: number;
  readonly trades: readonly Trade[];
}

/** The least cents of a way that no point beats, Infinity where all are beaten, and the most that one may use. */
interface Worth {
  readonly cents: number;
  readonly allowed: number;
}

/** An offer in the queue, with the most that it was found to be let use, and how many points were known then. */
interface Waiting extends Offer, Pick<Worth, "allowed"> {
  readonly known: number;
}

/**
 * The exact set of safe designs that none beats in cost, concrete and margin together. The tree is walked cheapest
 * first; a partial design falls when each way to hold it in the ground is beaten: a design found already is no
 * worse in all three than it can become that way.
 */
export class FrontSearch {
  readonly tree: Tree;
  points: Candidate[] = [];
  analysed = 0;
  finished = false;
  private readonly queue = new FlatQueue<Waiting>();
  /** Points found so far, those beaten since among them. */
  private found = 0;

  constructor(problem: Problem, share?: Share, recall?: Recall) {
    // what a part costs and pours counts here, and what it digs only under a cap
    this.tree = new Tree(problem, share, recall, { ...capped(problem), cents: true, concrete: true });
    for (const root of this.tree.roots()) this.push(this.offer(root));
  }

  step(milliseconds: number): boolean {
    const until = performance.now() + milliseconds;
    while (!this.finished && performance.now() < until) {
      const bound = this.queue.peekValue();
      const next = this.queue.pop();
      if (!next || bound === undefined) {
        this.finished = true;
        break;
      }
      // points found since may beat its cheapest ground
      const { cents, allowed } =
        next.known === this.found ? { cents: bound, allowed: next.allowed } : this.worth(next);
      if (cents === Number.POSITIVE_INFINITY) this.tree.prune(BEATEN, next.node.designs);
      else if (cents > bound) this.queue.push({ ...next, allowed, known: this.found }, cents);
      else this.open(next.node, allowed);
    }
    return this.finished;
  }

  private open(node: Node, allowed: number): void {
    if (node.stage === "structure") this.probe(node, allowed);
    else if (node.stage === "probed") this.analyse(node, allowed);
    else for (const child of this.tree.children(node)) this.push(this.offer(child));
  }

  /** Every design cheaper than this is decided: whole cents, Infinity at the end. */
  get exactBelow(): number {
    return this.finished ? Number.POSITIVE_INFINITY : (this.queue.peekValue() ?? Number.POSITIVE_INFINITY);
  }

  /** Points of another worker: they prune here too. */
  absorb(points: readonly Candidate[]): void {
    for (const point of points) this.keep(point);
  }

  /** A design that an earlier search found, where it is safe in this study and costs the same: a first point. */
  startFrom(known: Candidate): void {
    const { problem } = this.tree;
    let verdict: Verdict;
    try {
      verdict = verify(problem, known.design);
    } catch (error) {
      // of a study with other parts
      if (error instanceof DesignError) return;
      throw error;
    }
    if (verdict.passes && Math.round(verdict.bill.total * 100) === known.cents)
      this.keep({ ...known, use: Math.max(1 / (1 + verdict.smallestMargin), LEAST_USE) });
  }

  private offer(node: Node): Offer {
    const trades = node.star
      ? this.tree.pricing.floors.trades(node, LEAST_USE)
      : [{ cents: node.ground.cents, concrete: node.ground.concrete, use: 0 }];
    return { node, base: node.spent, trades };
  }

  private push(offer: Offer): void {
    const { node } = offer;
    if (this.tree.beyondCap(node)) {
      this.tree.prune(CAP, node.designs);
      return;
    }
    const { cents, allowed } = this.worth(offer);
    if (cents === Number.POSITIVE_INFINITY) this.tree.prune(BEATEN, node.designs);
    else this.queue.push({ ...offer, allowed, known: this.found }, cents);
  }

  private worth({ node, base, trades }: Offer): Worth {
    const { points } = this;
    const most = this.tree.problem.allowed;
    const least = Math.max(node.use, LEAST_USE);
    let cents = Number.POSITIVE_INFINITY;
    let allowed = 0;
    for (const trade of trades) {
      const total = base + trade.cents;
      // a design no cheaper and no smaller than this must use less than this to be worth having
      let usable = Number.POSITIVE_INFINITY;
      for (const point of points) {
        if (point.cents > total || usable <= allowed) break;
        if (point.use < usable && point.concrete <= trade.concrete) usable = point.use;
      }
      if (Math.max(least, trade.use) >= usable - SAME_USE) continue;
      cents = Math.min(cents, total);
      allowed = Math.max(allowed, usable);
      // trades come cheapest first: none that follows is cheaper or may use more
      if (allowed >= most) break;
    }
    return { cents, allowed: Math.min(allowed, most) };
  }

  private probe(node: Node, allowed: number): void {
    this.analysed++;
    const result = probe(node, this.tree, allowed);
    if (result.status === "failed" || result.status === "unheld") {
      this.tree.prune(`analysed and failed: ${result.limitState}`, node.designs);
      return;
    }
    const { ground, problem } = this.tree;
    const least = Math.max(LEAST_USE, result.node.use);
    const anchors =
      node.perLevel === 0
        ? [{ ...NOTHING, use: 0 }]
        : tradesOf(ground.anchorsOf(holdOf(node)), anchorFloor(result.anchors), least, allowed);
    const use = footingUse(result.bases, plateSide(node.root.stack));
    this.push({
      node: result.node,
      base: structureCents(node, problem),
      trades: paired(node.perLevel, anchors, tradesOf(ground.footings, use, least, allowed)),
    });
  }

  private analyse(node: Node, allowed: number): void {
    const result = evaluateAll(node, this.tree, allowed, LEAST_USE);
    if (result.status === "failed" || result.status === "unheld") {
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
    this.found++;
  }
}
