import { resolve } from "../../checks/resolve.ts";
import type { LevelModel } from "../../checks/rigging.ts";
import { levelTensions, ropeOf } from "../../checks/rigging.ts";
import type { StructureModel } from "../../checks/structure.ts";
import type { Strand } from "../../model/catalog.ts";
import type { Design } from "../../model/design.ts";
import type { Verdict } from "../../model/verdict.ts";
import type { AnchorPart, FootingPart } from "../../parts/types.ts";
import { riggedLength } from "../../physics/guy/catenary.ts";
import { anchorPoints, type Star } from "../../problem/star.ts";
import { type ArmModel, guySpan, guysAtAnchor } from "../../problem/torque-arm.ts";
import type { Problem } from "../../problem/types.ts";
import { letteredLevels } from "./words.ts";

/** Air at which the guys are cut and drawn to their tension where the study states none, Celsius: 60 F, our choice. */
const REFERENCE = (60 - 32) / 1.8;

/** Guys of one level that are alike: all of them where the anchors are alike, else one alone. */
export interface Level {
  readonly name: string;
  readonly letter: string;
  readonly height: number;
  /** How many. */
  readonly count: number;
  /** Anchor head over the base, m. */
  readonly elevation: number;
  /** Level distance from the anchor to the guy's head, m. */
  readonly span: number;
  /** Whose tips take two guys from each anchor. */
  readonly arm: ArmModel | null;
  readonly chord: number;
  readonly strand: Strand;
  /** Of the guy as one rope, its hardware smeared over it: N, and N per unstressed length. */
  readonly stiffness: number;
  readonly weight: number;
  /** At the anchor end, N. */
  readonly tension: number;
  readonly unstressed: number;
  /** Air at which it is cut and drawn to its tension, Celsius. */
  readonly rigged: number;
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
  /** Bottom up, each level once, by its tautest guy. */
  readonly levels: readonly Level[];
  /** Every kind of guy: what is cut, drawn and counted alike. */
  readonly rigs: readonly Level[];
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
  const names = letteredLevels(guys?.levels.length ?? 0);
  const alike = guys
    ? guys.levels.map((level, i) =>
        guys.star.alike
          ? [
              rig(problem, level, guys.star, 0, {
                ...names[i],
                count: guys.star.perLevel * guysAtAnchor(level.arm),
              }),
            ]
          : guys.star.anchors.map((_, k) =>
              rig(problem, level, guys.star, k, {
                name: `${names[i].name}, anchor ${k + 1}`,
                letter: `${names[i].letter}${k + 1}`,
                count: 1,
              }),
            ),
      )
    : [];
  const levels = alike.map((rigs, i) => ({
    ...rigs.reduce((a, b) => (b.tension > a.tension ? b : a)),
    ...names[i],
  }));
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
    rigs: alike.flat(),
    perLevel: guys?.star.perLevel ?? 0,
    anchors: design.guys ? anchorPoints(problem.study.lot.mast, design.guys) : [],
    pull: design.guys ? Math.atan2(greatest.uplift, greatest.lateral) : null,
    reach: model.stack.height + model.package.exposed,
  };
}

function rig(
  problem: Problem,
  level: LevelModel,
  star: Star,
  anchor: number,
  named: Pick<Level, "name" | "letter" | "count">,
): Level {
  const { strand, height, arm = null } = level;
  const { radius, elevation } = star.anchors[anchor];
  const span = guySpan(radius, arm);
  const chord = Math.hypot(span, height - elevation);
  const { ea: stiffness, weight } = ropeOf(level, chord);
  const tension = levelTensions(star, level)[anchor];
  const unstressed = riggedLength(span, height - elevation, tension, stiffness, weight);
  return {
    ...named,
    height,
    elevation,
    span,
    arm,
    chord,
    strand,
    stiffness,
    weight,
    tension,
    unstressed,
    rigged: problem.study.site.temperature?.installed ?? REFERENCE,
    cut: unstressed + problem.prices.termination - (level.hardware?.length ?? 0),
  };
}
