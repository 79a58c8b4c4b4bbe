import type { DesignPoint } from "./form.ts";
import { bothBelow } from "./normal.ts";

/** Bounds of the probability that at least one of several limit states fails. */
export interface SeriesBounds {
  readonly least: number;
  readonly most: number;
}

/**
 * Ditlevsen's bounds of a series of limit states, each taken for its tangent plane: pairs fail together as two normals
 * whose correlation is the cosine between their directions. The most probable first. docs/theory/robust.md.
 */
export function seriesBounds(
  points: readonly Pick<DesignPoint, "beta" | "probability" | "alpha">[],
): SeriesBounds {
  const sorted = [...points].sort((a, b) => b.probability - a.probability);
  let least = 0;
  let most = 0;
  sorted.forEach((point, i) => {
    let shared = 0;
    let greatest = 0;
    for (const other of sorted.slice(0, i)) {
      const cosine = point.alpha.reduce((sum, x, k) => sum + x * other.alpha[k], 0);
      const both = bothBelow(-point.beta, -other.beta, Math.min(1, Math.max(-1, cosine)));
      shared += both;
      greatest = Math.max(greatest, both);
    }
    least += Math.max(0, point.probability - shared);
    most += point.probability - greatest;
  });
  return { least: Math.min(least, 1), most: Math.min(Math.max(most, least), 1) };
}
