import type { MastLimitState, MastMeasure, SolvedCase } from "./mast-checks.ts";

/** Share of a guy's pull that twist may add or take: beyond it the guys of a pair leave their tangents. */
const GREATEST_SHARE = 0.3;

/** The guy of each level with an arm that `of` is greatest for, and that value. */
function worstOnArms(c: SolvedCase, of: (guy: number) => number): { level: number; most: number }[] {
  const levels = c.model.guys?.levels ?? [];
  return levels.flatMap(({ arm }, level) => {
    if (!arm) return [];
    let most = 0;
    c.mast.guys.forEach((guy, g) => {
      if (guy.level === level) most = Math.max(most, of(g));
    });
    return [{ level, most }];
  });
}

const at = (c: SolvedCase, level: number): Pick<MastMeasure, "of" | "at" | "level"> => ({
  of: 0,
  at: c.model.guys?.levels[level].height,
  level,
});

/** What twist takes of a guy's pull on an arm: the range of the method. */
export const pairRange: MastLimitState = {
  id: "pair-range",
  title: "Twist that pairs of guys hold",
  unit: "ratio",
  kind: "limit",
  measure: (c) =>
    worstOnArms(c, (g) => {
      const turned = c.twist?.guyTension[g] ?? 0;
      const { fx, fy, fz } = c.mast.guys[g].state;
      return turned === 0 ? 0 : turned / Math.hypot(fx, fy, fz);
    }).map(({ level, most }) => ({
      limitState: pairRange.id,
      demand: most,
      capacity: GREATEST_SHARE,
      required: 1,
      source: "range of the method: share of a guy's pull that the twist takes (docs/theory/mast.md)",
      ...at(c, level),
      note:
        most > GREATEST_SHARE
          ? `found a twist that takes ${(100 * most).toFixed(0)} % of a guy's pull, expected at most 30 %: a longer arm, more initial tension, antennas nearer to the axis`
          : undefined,
    })),
};

/** The tightest guy on an arm against what the arm is rated for. */
export const armPull: MastLimitState = {
  id: "arm-pull",
  title: "Torque arm",
  unit: "force",
  kind: "strength",
  measure: (c) =>
    worstOnArms(c, (g) => {
      const { tensionMast } = c.mast.guys[g].state;
      return tensionMast + (c.twist?.guyTension[g] ?? 0);
    }).map(({ level, most }) => ({
      limitState: armPull.id,
      demand: most,
      capacity: c.model.guys?.levels[level].arm?.row.pull ?? 0,
      ...c.problem.rules.pipe,
      ...at(c, level),
      note: "capacity as rated: one guy at a tip, the other there pulling as much",
    })),
};
