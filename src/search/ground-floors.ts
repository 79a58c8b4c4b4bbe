import { plateSide } from "../checks/plate.ts";
import type { FootingLoads } from "../parts/types.ts";
import type { Problem, StackModel } from "../problem/types.ts";
import { SLACK } from "./floors.ts";
import {
  type Aimed,
  type Asked,
  type GroundChoices,
  leastOf,
  type Minded,
  type Priced,
  starAmounts,
} from "./ground.ts";
import { holdOf, type Node } from "./node.ts";

/** Reactions are rounded down to this before a floor is looked up, N: fewer lookups, and never too dear. */
const ROUND = 50;
/** The same where whole lists are looked up. */
const COARSE = 200;

/** A way to hold a mast in the ground: what it costs and pours, and the least that it is used. */
export interface Trade {
  readonly cents: number;
  readonly concrete: number;
  readonly use: number;
}

/** Work remembered by up to three numbers: names of text would cost more than most of the work. */
class Remembered<T> {
  private readonly known = new Map<number, Map<number, Map<number, T>>>();

  at(a: number, b: number, c: number, work: () => T): T {
    let byB = this.known.get(a);
    if (!byB) this.known.set(a, (byB = new Map()));
    let byC = byB.get(b);
    if (!byC) byB.set(b, (byC = new Map()));
    let found = byC.get(c);
    if (found === undefined) byC.set(c, (found = work()));
    return found;
  }
}

/** The least that anchors and base must cost, pour and dig to hold at least these reactions. Null: none holds. */
export class GroundFloors {
  private readonly allowed: number;
  private readonly ground: GroundChoices;
  private readonly minded: Minded;
  private readonly leastAnchors = new Remembered<Aimed | null>();
  private readonly leastFootings = new Remembered<Aimed | null>();
  private readonly anchorTrades = new Remembered<readonly Trade[]>();
  private readonly footingTrades = new Remembered<readonly Trade[]>();
  private readonly pairs = new WeakMap<readonly Trade[], WeakMap<readonly Trade[], (readonly Trade[])[]>>();

  constructor({ allowed }: Problem, ground: GroundChoices, minded: Minded) {
    this.allowed = allowed;
    this.ground = ground;
    this.minded = minded;
  }

  /** @param hold of the problem's, whose anchors are asked */
  anchor(hold: number, uplift: number, lateral: number): Aimed | null {
    const u = Math.floor(Math.max(uplift, 0) / ROUND);
    const l = Math.floor(Math.max(lateral, 0) / ROUND);
    return this.leastAnchors.at(hold, u, l, () =>
      leastOf(
        this.ground.anchorsOf(hold),
        (part, enough) => part.floor(u * ROUND, l * ROUND, enough),
        this.allowed,
        this.minded,
      ),
    );
  }

  /** A base under guys: it is asked with the thrust alone. */
  footing(stack: StackModel, thrust: number): Aimed | null {
    const plate = plateSide(stack);
    const t = Math.floor((thrust * SLACK) / (4 * ROUND));
    return this.leastFootings.at(plate, t, 0, () => {
      const load = { compression: t * 4 * ROUND, shear: 0, moment: 0 };
      return leastOf(this.ground.footings, (part) => part.floor(load, plate), this.allowed, this.minded);
    });
  }

  /** A base that stands free. */
  free(stack: StackModel, loads: FootingLoads): Aimed | null {
    const plate = plateSide(stack);
    return leastOf(
      this.ground.footings,
      (part) => part.floor(loads, plate) * SLACK,
      this.allowed,
      this.minded,
    );
  }

  /** Of a node whose star is known. */
  anchorOf(node: Node): Aimed | null {
    return this.anchor(holdOf(node), node.uplift, node.lateral);
  }

  /** Ground of a node whose star is known. */
  of(node: Node): Aimed | null {
    const anchor = this.anchorOf(node);
    const footing = this.footing(node.root.stack, node.thrust);
    return anchor && footing && starAmounts(node.perLevel, anchor, footing);
  }

  /**
   * Every anchor and base together that none beats in cents, concrete and use, asked with the floors of a node whose
   * star is known, cheapest first.
   * @param least uses below this count as this
   */
  trades(node: Node, least: number): readonly Trade[] {
    const u = Math.floor(Math.max(node.uplift, 0) / COARSE);
    const l = Math.floor(Math.max(node.lateral, 0) / COARSE);
    const t = Math.floor((node.thrust * SLACK) / COARSE);
    const plate = plateSide(node.root.stack);
    const hold = holdOf(node);
    const anchors = this.anchorTrades.at(hold, u, l, () =>
      tradesOf(
        this.ground.anchorsOf(hold),
        (part, enough) => part.floor(u * COARSE, l * COARSE, enough),
        least,
        this.allowed,
      ),
    );
    const footings = this.footingTrades.at(plate, t, 0, () => {
      const load = { compression: t * COARSE, shear: 0, moment: 0 };
      return tradesOf(this.ground.footings, (part) => part.floor(load, plate), least, this.allowed);
    });
    let others = this.pairs.get(anchors);
    if (!others) this.pairs.set(anchors, (others = new WeakMap()));
    let bySides = others.get(footings);
    if (!bySides) others.set(footings, (bySides = []));
    bySides[node.perLevel] ??= paired(node.perLevel, anchors, footings);
    return bySides[node.perLevel];
  }
}

/**
 * The parts that none beats in cents, concrete and use, cheapest first.
 * @param least uses below this count as this
 * @param matters is a part of these cents and this concrete worth having at that least use? Others are not asked
 */
export function tradesOf<T>(
  parts: readonly Priced<T>[],
  use: Asked<T>,
  least: number,
  allowed: number,
  matters: (cents: number, concrete: number) => boolean = () => true,
): Trade[] {
  const kept: Trade[] = [];
  // concrete of the smallest part that is used least: no dearer and larger one need be asked
  let idle = Number.POSITIVE_INFINITY;
  for (const { part, cents, concrete } of cheapestFirst(parts)) {
    if (concrete >= idle || !matters(cents, concrete)) continue;
    const here = Math.max(use(part, allowed), least);
    if (here > allowed) continue;
    if (here === least) idle = concrete;
    if (!kept.some((k) => k.concrete <= concrete && k.use <= here)) kept.push({ cents, concrete, use: here });
  }
  return kept;
}

const sorted = new WeakMap<readonly Priced<unknown>[], readonly Priced<unknown>[]>();

/** The same parts by cents: they are listed best first under the study's aim. */
function cheapestFirst<T>(parts: readonly Priced<T>[]): readonly Priced<T>[] {
  let known = sorted.get(parts);
  if (!known) {
    known = [...parts].sort((a, b) => a.cents - b.cents || a.concrete - b.concrete);
    sorted.set(parts, known);
  }
  return known as readonly Priced<T>[];
}

/** Anchors of a star, all alike, with each base: those that none beats, cheapest first. */
export function paired(
  perLevel: number,
  anchors: readonly Trade[],
  footings: readonly Trade[],
): readonly Trade[] {
  const all = footings.flatMap((footing) =>
    anchors.map((anchor) => ({
      cents: perLevel * anchor.cents + footing.cents,
      concrete: perLevel * anchor.concrete + footing.concrete,
      use: Math.max(anchor.use, footing.use),
    })),
  );
  all.sort((a, b) => a.cents - b.cents || a.concrete - b.concrete || a.use - b.use);
  const kept: Trade[] = [];
  for (const pair of all)
    if (!kept.some((k) => k.concrete <= pair.concrete && k.use <= pair.use)) kept.push(pair);
  return kept;
}
