import FlatQueue from "flatqueue";
import type { Analysis } from "../checks/analysis.ts";
import { plateSide } from "../checks/plate.ts";
import { DesignError } from "../checks/resolve.ts";
import { verify } from "../checks/verify.ts";
import type { Verdict } from "../model/verdict.ts";
import type { Problem } from "../problem/types.ts";
import type { Candidate } from "./candidate.ts";
import { evaluateAll, killingCase, structureCents } from "./evaluate.ts";
import { FrontPoints, MARGIN_COUNTED, SAME_USE } from "./front-points.ts";
import { anchorFloor, capped, footingUse, NOTHING } from "./ground.ts";
import { paired, type Trade, tradesOf } from "./ground-floors.ts";
import { holdOf, type Node } from "./node.ts";
import type { Recall } from "./recall.ts";
import type { Share } from "./share.ts";
import { CAP, Tree } from "./tree.ts";

const LEAST_USE = 1 / (1 + MARGIN_COUNTED);

const BEATEN = "beaten in cost, concrete and margin, or held by nothing";

/** A mast that stands in a case, with its reactions. */
type Solved = Extract<Analysis, { status: "complete" }>;

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
  analysed = 0;
  finished = false;
  private readonly queue = new FlatQueue<Waiting>();
  private readonly known = new FrontPoints();

  constructor(problem: Problem, share?: Share, recall?: Recall) {
    // what comes last stands on one star: of whole stars, one of two workers had the last third of the demo alone.
    // What a part costs and pours counts here, and what it digs only under a cap
    this.tree = new Tree(problem, share && { ...share, finely: true }, recall, {
      ...capped(problem),
      cents: true,
      concrete: true,
    });
    for (const root of this.tree.roots()) this.push(this.offer(root));
  }

  /** Cheapest first. */
  get points(): readonly Candidate[] {
    return this.known.all;
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
        next.known === this.known.found ? { cents: bound, allowed: next.allowed } : this.worth(next);
      if (cents === Number.POSITIVE_INFINITY) this.tree.prune(BEATEN, next.node.designs);
      else if (cents > bound) this.queue.push({ ...next, allowed, known: this.known.found }, cents);
      else this.open(next, allowed);
    }
    return this.finished;
  }

  private open(offer: Offer, allowed: number): void {
    const { node } = offer;
    if (node.stage === "structure") this.probe(offer, allowed);
    else if (node.stage === "probed") this.analyse(node, allowed);
    else for (const child of this.tree.children(node, allowed)) this.push(this.offer(child));
  }

  /** Every design cheaper than this is decided: whole cents, Infinity at the end. */
  get exactBelow(): number {
    return this.finished ? Number.POSITIVE_INFINITY : (this.queue.peekValue() ?? Number.POSITIVE_INFINITY);
  }

  /** Points of another worker: they prune here too. */
  absorb(points: readonly Candidate[]): void {
    for (const point of points) this.known.keep(point);
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
      this.known.keep({ ...known, use: Math.max(1 / (1 + verdict.smallestMargin), LEAST_USE) });
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
    else this.queue.push({ ...offer, allowed, known: this.known.found }, cents);
  }

  private worth({ node, base, trades }: Offer): Worth {
    const most = this.tree.problem.allowed;
    const least = Math.max(node.use, LEAST_USE);
    let cents = Number.POSITIVE_INFINITY;
    let allowed = 0;
    for (const trade of trades) {
      const total = base + trade.cents;
      const usable = this.known.usable(total, trade.concrete);
      if (Math.max(least, trade.use) >= usable - SAME_USE) continue;
      cents = Math.min(cents, total);
      allowed = Math.max(allowed, usable);
      // trades come cheapest first: none that follows is cheaper or may use more
      if (allowed >= most) break;
    }
    return { cents, allowed: Math.min(allowed, most) };
  }

  private probe({ node, trades }: Offer, allowed: number): void {
    this.analysed++;
    const { problem } = this.tree;
    const result = killingCase(node, this.tree, allowed);
    if (result.status === "failed") {
      this.tree.prune(`analysed and failed: ${result.limitState}`, node.designs);
      return;
    }
    const base = structureCents(node, problem);
    const probed: Node = { ...node, stage: "probed", spent: base, use: Math.max(node.use, result.worst) };
    // at what the mast itself uses, most are beaten before any part of the ground is asked
    const beaten = this.worth({ node: probed, base, trades }).cents === Number.POSITIVE_INFINITY;
    const held = beaten ? [] : this.grounds(probed, base, result, allowed);
    this.push({ node: probed, base, trades: held });
  }

  /** Every way to hold the reactions of the killing case that no point beats, cheapest first. */
  private grounds(node: Node, base: number, { anchors, bases }: Solved, allowed: number): readonly Trade[] {
    const { ground, pricing } = this.tree;
    const { perLevel, root } = node;
    const least = Math.max(LEAST_USE, node.use);
    const matters = (cents: number, concrete: number) =>
      least < this.known.usable(base + cents, concrete) - SAME_USE;
    const anchor = perLevel === 0 ? NOTHING : (pricing.floors.anchorOf(node) ?? NOTHING);
    const footings = tradesOf(
      ground.footings,
      footingUse(bases, plateSide(root.stack)),
      least,
      allowed,
      (cents, concrete) => matters(perLevel * anchor.cents + cents, perLevel * anchor.concrete + concrete),
    );
    if (perLevel === 0 || footings.length === 0) return footings;
    const smallest = Math.min(...footings.map(({ concrete }) => concrete));
    const held = tradesOf(
      ground.anchorsOf(holdOf(node)),
      anchorFloor(anchors),
      least,
      allowed,
      (cents, concrete) => matters(perLevel * cents + footings[0].cents, perLevel * concrete + smallest),
    );
    return paired(perLevel, held, footings);
  }

  private analyse(node: Node, allowed: number): void {
    const result = evaluateAll(node, this.tree, allowed, LEAST_USE);
    if (result.status === "failed" || result.status === "unheld") {
      this.tree.prune(`analysed and failed: ${result.limitState}`, node.designs);
      return;
    }
    for (const candidate of result.candidates)
      this.known.keep({ ...candidate, use: Math.max(candidate.use, LEAST_USE) });
  }
}
