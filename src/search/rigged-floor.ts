import { type GuyModel, guyWeight, type LevelModel, levelTensions } from "../checks/rigging.ts";
import type { Star } from "../problem/star.ts";
import { guySpan, guysAtAnchor, insetOf } from "../problem/torque-arm.ts";

/** Least reactions of still air, N: of the anchor pulled up most, and down the mast, in all and by each level. */
export interface RiggedFloor {
  readonly uplift: number;
  readonly lateral: number;
  readonly pull: number;
  readonly pulls: readonly { readonly height: number; readonly pull: number }[];
}

/** Still air leaves the mast as it was rigged, plumb, and everything is closed form. docs/theory/search.md. */
export function riggedFloor({ star, levels }: GuyModel): RiggedFloor {
  const uplifts = star.anchors.map(() => 0);
  const laterals = star.anchors.map(() => 0);
  const pulls = levels.map((level) => {
    let pull = 0;
    const count = guysAtAnchor(level.arm);
    riggedTensions(star, level).forEach((force, i) => {
      const { radius, elevation } = star.anchors[i];
      const span = guySpan(radius, level.arm);
      const rise = level.height - elevation;
      const chord = Math.hypot(rise, span);
      const weight = guyWeight(level.strand, chord, level.hardware) / chord;
      // the guy leaves its anchor flatter than its chord by the angle whose sine this is
      const flatter = force > 0 ? Math.min((0.5 * weight * span) / force, 1) : 0;
      uplifts[i] +=
        (count * (force * rise * Math.sqrt(1 - flatter * flatter) - 0.5 * weight * span * span)) / chord;
      // of a pair what pulls aside is held by its twin
      laterals[i] += (count * force * (radius - insetOf(level.arm))) / chord;
      pull += (count * force * rise) / chord;
    });
    return { height: level.height, pull };
  });
  const most = uplifts.indexOf(Math.max(...uplifts));
  return {
    uplift: uplifts[most],
    lateral: laterals[most],
    pull: pulls.reduce((sum, { pull }) => sum + pull, 0),
    pulls,
  };
}

/** As rigged; nothing is known where a guy can't be: the analysis refuses it. */
const riggedTensions = (star: Star, level: LevelModel): readonly number[] => {
  try {
    return levelTensions(star, level);
  } catch (error) {
    if (error instanceof RangeError) return star.anchors.map(() => 0);
    throw error;
  }
};
