import type { Analysis } from "../checks/analysis.ts";
import type { Problem } from "../problem/types.ts";
import type { Node } from "./node.ts";

/** Analyses kept at most, and givens that they are kept for: the oldest are forgotten, which costs time, never an answer. */
const MOST = 50_000;
const MOST_BASES = 6;

/**
 * Analyses of masts, whole or of the killing case alone, by all that they depend on. Prices, stock, soil, frost, the
 * lot, the margin and the aim are not among it:
 * a study that differs in those alone is searched again without solving a mast twice.
 */
export class Recall {
  /** Masts solved, and masts remembered instead. */
  solved = 0;
  remembered = 0;
  /** By the givens that they were solved under, those asked last at the end: whoever drags the wind drags it back. */
  private readonly bases = new Map<string, Map<string, Analysis>>();
  private known = new Map<string, Analysis>();
  /** What guys of a level press and hold (sharing-floors.ts), under the same givens; forgotten with them. */
  shares = new Map<string, Float64Array | null>();
  private readonly sharesOf = new WeakMap<Map<string, Analysis>, Recall["shares"]>();

  /** Turns to what was solved under these givens. */
  open(problem: Problem): void {
    const basis = physicalBasis(problem);
    this.known = this.bases.get(basis) ?? new Map();
    this.bases.delete(basis);
    this.bases.set(basis, this.known);
    this.shares = this.sharesOf.get(this.known) ?? new Map();
    this.sharesOf.set(this.known, this.shares);
    if (this.bases.size > MOST_BASES) this.forget();
  }

  private forget(): void {
    for (const [basis, known] of this.bases) {
      if (known === this.known) known.clear();
      else this.bases.delete(basis);
      return;
    }
  }

  /**
   * What is known of a mast whose use may be at most `allowed`. A complete analysis answers whatever is allowed, one
   * given up answers wherever no more is allowed than it had passed.
   */
  analysis(key: string, allowed: number, solve: () => Analysis): Analysis {
    const known = this.known.get(key);
    if (known && (known.status === "complete" || known.worst > allowed)) {
      this.remembered++;
      const { worst, limitState } = known;
      return worst > allowed ? { status: "failed", worst, limitState } : known;
    }
    this.solved++;
    const found = solve();
    this.known.set(key, found);
    let kept = 0;
    for (const { size } of this.bases.values()) kept += size;
    if (kept > MOST) this.forget();
    return found;
  }
}

/** Everything outside a structure that its analysis reads. */
export function physicalBasis(problem: Problem): string {
  const { study, rules, packages, strands, arms, sections, ground } = problem;
  return JSON.stringify([
    study.site.wind,
    study.site.ice,
    study.site.temperature,
    study.site.baseStiffness,
    study.parts.guyHardware,
    ground.stand,
    study.wishes.swayLimit,
    study.wishes.twistLimit,
    study.wishes.serviceWind,
    study.wishes.lossOfOneGuy,
    study.ranges,
    rules,
    packages.map(({ lines: _l, cents: _c, ...pack }) => pack),
    strands.map(({ price: _p, fittings: _f, ...strand }) => strand),
    arms.map(({ row: { price: _p, ...row }, hung }) => [row, hung]),
    [...sections.values()].map(({ row: { pieces: _s, ...row } }) => row),
  ]);
}

/** One name for a complete structure. Joined at once: a name put together by pieces is kept in pieces, thrice as large. */
export const structureKey = (node: Node): string => {
  const { root, star, levels, strands, tensions } = node;
  const words: (string | number)[] = [root.pack.row.id, root.stack.height];
  for (const { section, length } of root.stack.parts) words.push(section.row.id, length);
  if (star) {
    if (root.arm) words.push(root.arm.row.id);
    words.push(star.perLevel, star.key);
    levels.forEach((index, i) => {
      words.push(root.statics.z[root.candidates[index]], strands[i].id, tensions[i]);
    });
  }
  return words.join(" ");
};
