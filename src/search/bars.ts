import type { AnchorPart, FootingPart } from "../parts/types.ts";
import {
  asksAnchor,
  asksFooting,
  type Barred,
  speaksOfAnchor,
  speaksOfFooting,
  speaksOfMast,
} from "../problem/barred.ts";
import type { Problem } from "../problem/types.ts";
import type { GroundChoices, Priced } from "./ground.ts";
import { holdOf, type Node } from "./node.ts";

/** The rule under which designs are counted whose mast the study bars. */
export const BARRED = "barred by the study";

/** The ground that the study leaves to a mast. */
export interface LeftGround {
  /** In groups whose anchors every entry speaks of alike: the best of a group may stand for it. */
  readonly anchors: readonly (readonly Priced<AnchorPart>[])[];
  readonly footings: readonly (readonly Priced<FootingPart>[])[];
  readonly together: (anchor: AnchorPart, footing: FootingPart) => boolean;
}

/** What a study bars, save sides: a star is placed off those (`holds`). */
export class Bars {
  private readonly entries: readonly Barred[];
  /** Ground left by the entries that speak of a mast, and by the hold of its anchors. */
  private readonly left = new Map<string, LeftGround>();

  constructor({ study }: Problem) {
    this.entries = (study.parts.barred ?? []).filter(({ side }) => side === undefined);
  }

  private over({ root, strands }: Pick<Node, "root" | "strands">): readonly Barred[] {
    if (this.entries.length === 0) return this.entries;
    const has = {
      sections: root.stack.parts.map(({ section }) => section.row.id),
      strands: strands.map(({ id }) => id),
    };
    return this.entries.filter((entry) => speaksOfMast(entry, has));
  }

  /** Is every completion barred by what is chosen already? */
  mast(node: Pick<Node, "root" | "strands">): boolean {
    return this.over(node).some((entry) => !asksAnchor(entry) && !asksFooting(entry));
  }

  /** Anchors and footings that a complete mast may have, best first in each group. */
  ground(node: Node, choices: GroundChoices): LeftGround {
    const entries = this.over(node);
    const hold = holdOf(node);
    const key = `${hold} ${entries.map((entry) => this.entries.indexOf(entry)).join()}`;
    let left = this.left.get(key);
    if (!left) this.left.set(key, (left = leftBy(entries, choices.anchorsOf(hold), choices.footings)));
    return left;
  }
}

function leftBy(
  entries: readonly Barred[],
  anchors: readonly Priced<AnchorPart>[],
  footings: readonly Priced<FootingPart>[],
): LeftGround {
  const pairs = entries.filter((entry) => asksAnchor(entry) && asksFooting(entry));
  const held = entries.filter((entry) => asksAnchor(entry) && !asksFooting(entry));
  const stood = entries.filter((entry) => asksFooting(entry) && !asksAnchor(entry));
  return {
    anchors: grouped(
      anchors.filter(({ part }) => !held.some((entry) => speaksOfAnchor(entry, part.choice))),
      ({ choice }) => pairs.map((entry) => speaksOfAnchor(entry, choice)).join(),
    ),
    footings: grouped(
      footings.filter(({ part }) => !stood.some((entry) => speaksOfFooting(entry, part.choice))),
      ({ choice }) => pairs.map((entry) => speaksOfFooting(entry, choice)).join(),
    ),
    together: (anchor, footing) =>
      !pairs.some((entry) => speaksOfAnchor(entry, anchor.choice) && speaksOfFooting(entry, footing.choice)),
  };
}

function grouped<T>(parts: readonly Priced<T>[], keyOf: (part: T) => string): (readonly Priced<T>[])[] {
  const groups = new Map<string, Priced<T>[]>();
  for (const priced of parts) {
    const key = keyOf(priced.part);
    const group = groups.get(key);
    if (group) group.push(priced);
    else groups.set(key, [priced]);
  }
  return [...groups.values()];
}
