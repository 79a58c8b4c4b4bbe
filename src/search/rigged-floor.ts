import { guyWeight, type LevelModel, levelTensions } from "../checks/rigging.ts";
import type { Star } from "../problem/star.ts";
import { guySpan, guysAtAnchor, insetOf } from "../problem/torque-arm.ts";

/** What one level asks in still air at the least, N: of each anchor, up and level, and down the mast. */
export interface RiggedLevel {
  readonly uplifts: readonly number[];
  readonly laterals: readonly number[];
  readonly pull: number;
}

/** Least reactions of still air, N: of the anchor pulled up most, and down the mast. */
export interface RiggedFloor {
  readonly uplift: number;
  readonly lateral: number;
  readonly pull: number;
}

/** Still air leaves the mast as it was rigged, plumb, and everything is closed form. docs/theory/search.md. */
export function riggedLevel(star: Star, level: LevelModel): RiggedLevel {
  const uplifts: number[] = [];
  const laterals: number[] = [];
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
    uplifts.push(
      (count * (force * rise * Math.sqrt(1 - flatter * flatter) - 0.5 * weight * span * span)) / chord,
    );
    // of a pair what pulls aside is held by its twin
    laterals.push((count * force * (radius - insetOf(level.arm))) / chord);
    pull += (count * force * rise) / chord;
  });
  return { uplifts, laterals, pull };
}

/** The least that one of these asks, each amount by itself. */
export const leastRigged = (levels: readonly RiggedLevel[]): RiggedLevel => ({
  uplifts: levels[0].uplifts.map((_, i) => Math.min(...levels.map(({ uplifts }) => uplifts[i]))),
  laterals: levels[0].laterals.map((_, i) => Math.min(...levels.map(({ laterals }) => laterals[i]))),
  pull: Math.min(...levels.map(({ pull }) => pull)),
});

/** All levels together. */
export function riggedFloor(levels: readonly RiggedLevel[]): RiggedFloor {
  let uplift = Number.NEGATIVE_INFINITY;
  let most = 0;
  for (let anchor = 0; anchor < levels[0].uplifts.length; anchor++) {
    let up = 0;
    for (const { uplifts } of levels) up += uplifts[anchor];
    if (up > uplift) [uplift, most] = [up, anchor];
  }
  let lateral = 0;
  let pull = 0;
  for (const level of levels) {
    lateral += level.laterals[most];
    pull += level.pull;
  }
  return { uplift, lateral, pull };
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
