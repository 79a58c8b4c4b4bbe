import type { MastLimitState } from "./mast-checks.ts";

/** The tightest guy of each level, at its tighter end, against its strand less what the end fittings lose, or its hardware. */
export const guyStrength: MastLimitState = {
  id: "guy-strength",
  title: "Guy strength",
  unit: "force",
  kind: "strength",
  measure(c) {
    const levels = c.model.guys?.levels ?? [];
    const most = levels.map(() => 0);
    const { guys } = c.mast;
    for (let g = 0; g < guys.length; g++) {
      const { level, state } = guys[g];
      const tension = Math.max(state.tensionAnchor, state.tensionMast) + (c.twist?.guyTension[g] ?? 0);
      most[level] = Math.max(most[level], tension);
    }
    const { required, source } = c.problem.rules.guy;
    return levels.map(({ strand, height, hardware }, level) => ({
      limitState: guyStrength.id,
      demand: most[level],
      capacity: Math.min(
        strand.breakingStrength * strand.efficiency,
        hardware?.breakingStrength ?? Number.POSITIVE_INFINITY,
      ),
      required,
      source,
      of: 0,
      at: height,
      level,
    }));
  },
};
