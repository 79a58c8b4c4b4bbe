import type { StructureModel } from "../../checks/structure.ts";
import { strandStiffness } from "../../checks/structure.ts";
import { resolve } from "../../checks/verify.ts";
import type { Strand } from "../../model/catalog.ts";
import type { Design } from "../../model/design.ts";
import type { Verdict } from "../../model/verdict.ts";
import type { AnchorPart, FootingPart } from "../../parts/types.ts";
import { riggedLength } from "../../physics/guy/catenary.ts";
import { starPoints } from "../../problem/lot.ts";
import type { Problem } from "../../problem/types.ts";
import { levelNames } from "./words.ts";

/** Air at which the guys are cut and drawn to their initial tension, degrees Celsius: 60 F, our choice. */
export const REFERENCE = (60 - 32) / 1.8;

/** One level of guys as rigged: all guys of a level are alike on level ground. */
export interface Level {
  readonly name: string;
  readonly letter: string;
  readonly height: number;
  readonly span: number;
  readonly chord: number;
  readonly strand: Strand;
  readonly stiffness: number;
  /** At the anchor end, N. */
  readonly tension: number;
  readonly unstressed: number;
  /** Strand to cut for one guy, m. */
  readonly cut: number;
}

/** All that the sheets are made from, its keys resolved. */
export interface Given {
  readonly problem: Problem;
  readonly design: Design;
  readonly verdict: Verdict;
  readonly model: StructureModel;
  readonly anchor: AnchorPart | null;
  readonly footing: FootingPart;
  readonly levels: readonly Level[];
  readonly perLevel: number;
  /** Anchor heads, east and north of the lot's origin. */
  readonly anchors: readonly (readonly [number, number])[];
  /** Slope of the greatest pull on an anchor, radians above level; null without guys. */
  readonly pull: number | null;
  /** Height of everything that can fall, m. */
  readonly reach: number;
}

export function givenOf(problem: Problem, design: Design, verdict: Verdict): Given {
  const { model, anchor, footing } = resolve(problem, design);
  const { guys } = model;
  const names = levelNames(guys?.levels.length ?? 0);
  const levels = (guys?.levels ?? []).map(({ height, strand }, i): Level => {
    const span = guys?.radius ?? 0;
    const stiffness = strandStiffness(strand);
    const tension = (guys?.tension ?? 0) * strand.breakingStrength;
    const unstressed = riggedLength(span, height, tension, stiffness, strand.weight);
    return {
      ...names[i],
      height,
      span,
      chord: Math.hypot(span, height),
      strand,
      stiffness,
      tension,
      unstressed,
      cut: unstressed + problem.prices.termination,
    };
  });
  const pulls = verdict.cases.flatMap((c) => c.anchors);
  const greatest = pulls.reduce(
    (most, pull) =>
      Math.hypot(pull.uplift, pull.lateral) > Math.hypot(most.uplift, most.lateral) ? pull : most,
    { uplift: 0, lateral: 0 },
  );
  return {
    problem,
    design,
    verdict,
    model,
    anchor,
    footing,
    levels,
    perLevel: guys?.perLevel ?? 0,
    anchors: design.guys
      ? starPoints(problem.study.lot.mast, design.guys.perLevel, design.guys.radius, design.guys.rotation)
      : [],
    pull: design.guys ? Math.atan2(greatest.uplift, greatest.lateral) : null,
    reach: model.stack.height + model.package.exposed,
  };
}
