import type { Design } from "../model/design.ts";
import { keptFromLines } from "../model/lot.ts";
import type { Check } from "../model/verdict.ts";
import type { AnchorPart, FootingPart, Ground } from "../parts/types.ts";
import { nearestGuy } from "../problem/lines.ts";
import { nearestLine, ON_THE_LINE } from "../problem/lot.ts";
import { anchorPoints, anchorSpare, nearestAnchors, type Star } from "../problem/star.ts";
import type { Problem } from "../problem/types.ts";

type Part = Pick<AnchorPart | FootingPart, "depth" | "takeOff"> & Partial<Pick<FootingPart, "onRock">>;

const SAME = 1e-9;

/** Reasons of the site against a thing in the ground; the search never considers what has one. */
export function siteRefusal(part: Part, ground: Ground): "frost" | "dig" | "water" | null {
  if (part.depth === null) return null;
  if (!part.onRock && part.depth < ground.frostDepth - SAME) return "frost";
  if (part.depth > ground.greatestDig + SAME) return "dig";
  if (!ground.pourBelowWater && part.depth > ground.waterTable + SAME) return "water";
  return null;
}

const limit = (
  id: string,
  title: string,
  where: string,
  demand: number,
  capacity: number,
  passes: boolean,
  source: string,
  note?: string,
): Check => ({
  id,
  limitState: id.split("/")[0],
  title,
  kind: "limit",
  where,
  loadCase: "",
  unit: "length",
  demand,
  capacity,
  required: 1,
  utilisation: demand <= 0 ? 0 : capacity <= 0 ? Number.POSITIVE_INFINITY : demand / capacity,
  passes,
  source,
  note,
});

/** Frost, greatest dig and water table for one thing in the ground. */
export function depthChecks(part: Part, where: string, ground: Ground): Check[] {
  const { depth } = part;
  if (depth === null) return [];
  const checks = [
    limit(
      `frost/${where}`,
      "Frost depth",
      where,
      part.onRock ? 0 : ground.frostDepth,
      depth,
      part.onRock || depth >= ground.frostDepth - SAME,
      part.onRock
        ? "IBC 1809.5: on solid rock no depth is asked, from memory"
        : "IBC 1809.5: below the frost line, from memory",
    ),
    limit(
      `dig/${where}`,
      "Depth of digging",
      where,
      depth,
      ground.greatestDig,
      depth <= ground.greatestDig + SAME,
      "greatest dig stated by the study",
    ),
  ];
  if (!ground.pourBelowWater && ground.waterTable < Number.POSITIVE_INFINITY)
    checks.push(
      limit(
        `water/${where}`,
        "Pour above water",
        where,
        depth,
        ground.waterTable,
        depth <= ground.waterTable + SAME,
        "common practice, no source",
      ),
    );
  return checks;
}

/** Anchors inside the lot and its setback, and out of plots kept free of them. */
export function lotCheck(problem: Problem, guys: NonNullable<Design["guys"]>): Check {
  const { lot } = problem.study;
  const spare = anchorSpare(lot, guys);
  return limit(
    "lot",
    "Anchors inside the lot",
    "anchors",
    lot.setback,
    lot.setback + spare,
    spare >= -ON_THE_LINE,
    lot.keepOut ? "setback and plots without anchors stated by the study" : "setback stated by the study",
  );
}

/** Guys and anchors beside power lines, seen from above: nothing is asked of heights, so nothing passes under a line. */
export function lineCheck({ study: { lot } }: Problem, guys: NonNullable<Design["guys"]>): Check[] {
  const nearest = nearestGuy(lot, anchorPoints(lot.mast, guys));
  if (!nearest) return [];
  const kept = keptFromLines(lot);
  return [
    limit(
      "line-clearance",
      "Clear of power lines",
      nearest.name,
      kept,
      nearest.distance,
      nearest.distance >= kept - ON_THE_LINE,
      lot.lineClearance === undefined
        ? "OSHA 29 CFR 1926.1408 table A, lines of up to 50 kV, from memory; the owner of the line decides"
        : "clearance stated by the study",
      `guy toward anchor ${nearest.anchor + 1}`,
    ),
  ];
}

/** Would two anchors of a star lift the same ground? Then neither has all of its own. */
export const anchorsTooNear = (star: Pick<Star, "perLevel" | "anchors">, { spread }: AnchorPart): boolean =>
  2 * spread > nearestAnchors(star) + SAME;

/** Ground that each anchor lifts apart from its neighbours'. */
export const spacingCheck = (star: Star, anchor: AnchorPart): Check =>
  limit(
    "anchor-spacing",
    "Anchors apart",
    "anchors",
    2 * anchor.spread,
    nearestAnchors(star),
    !anchorsTooNear(star, anchor),
    "statics: soil lifted by one anchor holds no other",
  );

export function heightCheck(problem: Problem, height: number): Check[] {
  const most = problem.study.wishes.heightLimit;
  return most === undefined
    ? []
    : [
        limit(
          "height-limit",
          "Height limit",
          "mast top",
          height,
          most,
          height <= most + SAME,
          "limit stated by the study",
        ),
      ];
}

/** What may be poured, dug and spent in all. */
export function capChecks(
  problem: Problem,
  spent: { readonly concrete: number; readonly dug: number; readonly money: number },
): Check[] {
  const { concreteCap, digCap, budget } = problem.study.wishes;
  const cap = (
    id: string,
    title: string,
    where: string,
    demand: number,
    most: number | undefined,
    unit: Check["unit"],
  ): Check[] =>
    most === undefined
      ? []
      : [
          {
            ...limit(id, title, where, demand, most, demand <= most + SAME, "cap stated by the study"),
            unit,
          },
        ];
  return [
    ...cap("concrete-cap", "Concrete allowed", "all footings", spent.concrete, concreteCap, "volume"),
    ...cap("dig-cap", "Digging allowed", "all holes", spent.dug, digCap, "volume"),
    ...cap("budget", "Budget", "all in", spent.money, budget, "money"),
  ];
}

/** What a mast that falls whole must be farther from power lines than, m: antennas over its top, and the clearance. */
export const fallReach = (problem: Problem, height: number, exposed: number): number =>
  height + exposed + keptFromLines(problem.study.lot);

/** May nothing of this height stand here, for what falls would come nearer to a power line than is kept? */
export function fallsOnLine(problem: Problem, height: number, exposed: number): boolean {
  const { lot } = problem.study;
  const nearest = lot.linesWithinFall ? null : nearestLine(lot);
  return nearest !== null && fallReach(problem, height, exposed) > nearest.distance + ON_THE_LINE;
}

/** A falling mast, antennas included, and the nearest power line: said alone where the study lets a line stand so near. */
export function fallCheck(problem: Problem, height: number, exposed: number): Check[] {
  const { lot } = problem.study;
  const nearest = nearestLine(lot);
  if (!nearest) return [];
  const demand = fallReach(problem, height, exposed);
  const check = limit(
    "fall-zone",
    "Power lines out of the fall zone",
    nearest.name,
    demand,
    nearest.distance,
    !fallsOnLine(problem, height, exposed),
    "common practice, no source: nothing that falls may come near a power line",
    demand <= nearest.distance + ON_THE_LINE
      ? "the line is beyond the reach of a falling mast and the clearance"
      : `a falling mast or antenna would come too near to this line${lot.linesWithinFall ? ", which the study allows" : ""}: move the mast, have the line moved, or build lower`,
  );
  return [lot.linesWithinFall ? { ...check, kind: "warning" } : check];
}
