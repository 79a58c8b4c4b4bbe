import { plateSide } from "../checks/plate.ts";
import type { FootingLoads } from "../parts/types.ts";
import type { Problem, StackModel } from "../problem/types.ts";
import { SLACK } from "./floors.ts";
import { type Amounts, type GroundChoices, leastOf, starAmounts } from "./ground.ts";
import { headOf, type Node } from "./node.ts";

/** Reactions are rounded down to this before a floor is looked up, N: fewer lookups, and never too dear. */
const ROUND = 50;

/** The least that anchors and base must cost, pour and dig to hold at least these reactions. Null: none holds. */
export class GroundFloors {
  private readonly allowed: number;
  private readonly ground: GroundChoices;
  private readonly leastAnchors = new Map<string, Amounts | null>();
  private readonly leastFootings = new Map<string, Amounts | null>();

  constructor({ allowed }: Problem, ground: GroundChoices) {
    this.allowed = allowed;
    this.ground = ground;
  }

  /** @param head height above ground at which the anchors hold their guys, m */
  anchor(head: number, uplift: number, lateral: number): Amounts | null {
    const u = Math.floor(Math.max(uplift, 0) / ROUND);
    const l = Math.floor(Math.max(lateral, 0) / ROUND);
    const key = `${head} ${u} ${l}`;
    let least = this.leastAnchors.get(key);
    if (least === undefined) {
      const [up, side] = [u * ROUND, l * ROUND];
      least = leastOf(this.ground.anchorsAt(head), (part) => part.floor(up, side), this.allowed);
      this.leastAnchors.set(key, least);
    }
    return least;
  }

  /** A base under guys: it is asked with the thrust alone. */
  footing(stack: StackModel, thrust: number): Amounts | null {
    const plate = plateSide(stack);
    const t = Math.floor((thrust * SLACK) / (4 * ROUND));
    const key = `${t} ${plate}`;
    let least = this.leastFootings.get(key);
    if (least === undefined) {
      const loads = [{ compression: t * 4 * ROUND, shear: 0, moment: 0 }];
      least = leastOf(this.ground.footings, (part) => part.worst(loads, plate), this.allowed);
      this.leastFootings.set(key, least);
    }
    return least;
  }

  /** A base that stands free. */
  free(stack: StackModel, loads: FootingLoads): Amounts | null {
    const plate = plateSide(stack);
    return leastOf(this.ground.footings, (part) => part.worst([loads], plate) * SLACK, this.allowed);
  }

  /** Ground of a node whose star is known. */
  of(node: Node): Amounts | null {
    const anchor = this.anchor(headOf(node), node.uplift, node.lateral);
    const footing = this.footing(node.root.stack, node.thrust);
    return anchor && footing && starAmounts(node.perLevel, anchor, footing);
  }
}
