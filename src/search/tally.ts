import type { Node } from "./node.ts";

/** Partial designs kept at most for a later search: a study with more is walked anew. */
export const MOST_FALLEN = 40_000;

/**
 * Where the designs of a grid went. What the mast itself forbids is dead under every price and every soil; what fell
 * by what it costs, or by what holds it in the ground, may stand again when those change, and is kept to be asked.
 */
export class Tally {
  /** Designs removed, by rule. */
  readonly pruned: Record<string, number> = {};
  private readonly dead: Record<string, number> = {};
  private fallen: Node[] | null = [];

  /** @param node what fell, where another price or another ground may bring it back */
  prune(rule: string, designs: number, node?: Node): void {
    this.pruned[rule] = (this.pruned[rule] ?? 0) + designs;
    if (!node) this.dead[rule] = (this.dead[rule] ?? 0) + designs;
    else if (this.fallen && this.fallen.length < MOST_FALLEN) this.fallen.push(node);
    else this.fallen = null;
  }

  /** A walk that is counted nowhere. */
  uncounted<T>(walk: () => T): T {
    const { fallen } = this;
    const before = { pruned: { ...this.pruned }, dead: { ...this.dead }, fallen: fallen?.length ?? 0 };
    const result = walk();
    for (const counts of ["pruned", "dead"] as const)
      for (const rule of Object.keys(this[counts])) this[counts][rule] = before[counts][rule] ?? 0;
    if (fallen) fallen.length = before.fallen;
    this.fallen = fallen;
    return result;
  }

  /** What fell and may stand again; null where it was not kept. */
  get revivable(): readonly Node[] | null {
    return this.fallen;
  }

  /** Goes on from another tally: its dead are dead here too. */
  inherit({ dead }: Tally): void {
    for (const [rule, designs] of Object.entries(dead)) this.prune(rule, designs);
  }
}
