import type { Analysis } from "../checks/analysis.ts";
import type { Problem } from "../problem/types.ts";
import type { Node } from "./node.ts";

/** Analyses kept at most; beyond it all are forgotten, which costs time and never an answer. */
const MOST = 50_000;

/**
 * Analyses of masts, whole or of the killing case alone, by all that they depend on. Prices, stock, soil, frost, the
 * lot, the margin and the aim are not among it:
 * a study that differs in those alone is searched again without solving a mast twice.
 */
export class Recall {
  /** Masts solved, and masts remembered instead. */
  solved = 0;
  remembered = 0;
  private basis = "";
  private known = new Map<string, Analysis>();

  /** Forgets what was solved under other givens. */
  open(problem: Problem): void {
    const basis = physicalBasis(problem);
    if (basis === this.basis) return;
    this.basis = basis;
    this.known = new Map();
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
    if (this.known.size >= MOST) this.known = new Map();
    this.known.set(key, found);
    return found;
  }
}

/** Everything outside a structure that its analysis reads. */
function physicalBasis(problem: Problem): string {
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
    rules,
    packages.map(({ lines: _l, cents: _c, ...pack }) => pack),
    strands.map(({ price: _p, fittings: _f, ...strand }) => strand),
    arms.map(({ row: { price: _p, ...row }, hung }) => [row, hung]),
    [...sections.values()].map(({ row: { pieces: _s, ...row } }) => row),
  ]);
}

/** One name for a complete structure. */
export const structureKey = (node: Node): string => {
  const { root, star, levels, strands, tensions } = node;
  let key = `${root.pack.row.id} ${root.stack.height}`;
  for (const { section, length } of root.stack.parts) key += ` ${section.row.id} ${length}`;
  if (!star) return key;
  if (root.arm) key += ` ${root.arm.row.id}`;
  key += ` ${star.perLevel} ${star.key}`;
  levels.forEach((index, i) => {
    key += ` ${root.statics.z[root.candidates[index]]} ${strands[i].id} ${tensions[i]}`;
  });
  return key;
};
