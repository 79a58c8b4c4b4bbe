import { reelPlans } from "../cost/reels.ts";
import type { Check } from "../model/verdict.ts";
import type { Problem } from "../problem/types.ts";
import type { StructureModel } from "./structure.ts";

/** Can every guy be cut whole from the reels on sale? Asked where a study pays strand by whole reels. */
export function reelsChecks(
  problem: Problem,
  { star, levels }: NonNullable<StructureModel["guys"]>,
): Check[] {
  return reelPlans(problem, star, levels).map(({ strand, cutting }) => {
    const refused = cutting.status === "refused" ? cutting : null;
    return {
      id: `reels/${strand.id}`,
      limitState: "reels",
      title: "Guys cut from reels",
      kind: "limit",
      where: strand.id,
      loadCase: "",
      unit: "ratio",
      demand: refused ? 1 : 0,
      capacity: 0,
      required: 1,
      utilisation: refused ? Number.POSITIVE_INFINITY : 0,
      passes: refused === null,
      source: "reels of the catalog",
      note: refused ? `found ${refused.found}, expected ${refused.expected}` : undefined,
    };
  });
}
