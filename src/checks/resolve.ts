import type { Insulator } from "../model/catalog.ts";
import type { Design } from "../model/design.ts";
import { anchorPart, footingPart } from "../parts/index.ts";
import type { AnchorPart, FootingPart } from "../parts/types.ts";
import { windAction } from "../physics/wind/wind-action.ts";
import { armModel } from "../problem/compile.ts";
import { stackOf } from "../problem/stacks.ts";
import { type Star, starOf } from "../problem/star.ts";
import type { ArmModel } from "../problem/torque-arm.ts";
import type { Problem } from "../problem/types.ts";
import type { StructureModel } from "./structure.ts";

/** A design that can't be judged: a key, kind or stock that the study does not have. */
export class DesignError extends Error {
  constructor(
    readonly path: string,
    readonly found: string,
    readonly expected: string,
  ) {
    super(`${path}: found ${found}, expected ${expected}`);
  }
}

/** Resolves a design's keys. @throws DesignError */
export function resolve(
  problem: Problem,
  design: Design,
): { model: StructureModel; anchor: AnchorPart | null; footing: FootingPart } {
  const need = <T>(value: T | undefined | null, path: string, found: string, expected: string): T => {
    if (value === undefined || value === null) throw new DesignError(path, found, expected);
    return value;
  };
  const { catalog } = problem;
  const pack = need(
    problem.packages.find((p) => p.row.id === design.package),
    "package",
    `"${design.package}"`,
    "the id of one of the study's packages",
  );
  const parts = design.stack.map(({ section, length }, i) => ({
    section: need(
      problem.sections.get(section),
      `stack[${i}].section`,
      `"${section}"`,
      problem.uncovered.has(section)
        ? `a section that the rule set's steel covers: ${problem.uncovered.get(section)}`
        : "a section of the catalog",
    ),
    length,
  }));
  const total = parts.reduce((sum, part) => sum + part.length, 0);
  if (Math.abs(total - design.height) > 1e-6)
    throw new DesignError("stack", `${total} m in all`, `the height, ${design.height} m`);
  const stack = need(
    stackOf(parts),
    "stack",
    "lengths that the stock can't make up",
    "lengths that pieces on sale add up to",
  );
  let guys: StructureModel["guys"] = null;
  let anchor: AnchorPart | null = null;
  if (design.guys) {
    const { levels } = design.guys;
    const choice = design.guys.anchor;
    const row = need(
      catalog.anchors.find((a) => a.id === choice.row),
      "guys.anchor.row",
      `"${choice.row}"`,
      "an anchor of the catalog",
    );
    anchor = need(
      anchorPart(row, choice, problem.ground),
      "guys.anchor.kind",
      `"${choice.kind}"`,
      `"${row.kind}", the kind of row "${row.id}"`,
    );
    const star = starOf(problem.study.lot, design.guys, anchor.head, problem.ground.stand);
    const highest = Math.max(...star.anchors.map((a) => a.elevation));
    const { tension: common } = design.guys;
    guys = {
      star,
      levels: levels.map(({ height, strand, tension, arm }, i) => {
        const above = i === 0 ? 0 : levels[i - 1].height;
        if (height <= above || height > design.height + 1e-9)
          throw new DesignError(
            `guys.levels[${i}].height`,
            `${height} m`,
            `a height above ${above} m and at most the mast's ${design.height} m`,
          );
        if (height <= highest)
          throw new DesignError(
            `guys.levels[${i}].height`,
            `${height} m`,
            `a height above the highest anchor, ${highest.toFixed(2)} m over the base`,
          );
        return {
          height,
          tension: tension ?? common,
          hardware: problem.study.parts.guyHardware,
          arm: arm === undefined ? null : armOf(problem, star, arm, `guys.levels[${i}].arm`),
          strand: need(
            catalog.strand.find((s) => s.id === strand),
            `guys.levels[${i}].strand`,
            `"${strand}"`,
            "a strand of the catalog",
          ),
        };
      }),
    };
  }
  const row = need(
    catalog.footings.find((f) => f.id === design.footing.row),
    "footing.row",
    `"${design.footing.row}"`,
    "a footing of the catalog",
  );
  const footing = need(
    footingPart(row, design.footing, problem.ground, insulatorOf(problem, design)),
    "footing.kind",
    `"${design.footing.kind}"`,
    `"${row.kind}", the kind of row "${row.id}"`,
  );
  return { model: { package: pack, stack, guys }, anchor, footing };
}

/** What an insulated mast stands on; nothing under another. */
function insulatorOf({ study, catalog }: Problem, { guys, footing }: Design): Insulator | undefined {
  const { insulator } = footing;
  if (!study.wishes.insulatedBase) {
    if (insulator === undefined) return undefined;
    throw new DesignError("footing.insulator", `"${insulator}"`, "none: the study wishes no insulated mast");
  }
  if (!guys) throw new DesignError("guys", "none", "guys: a mast on a base insulator stands by them alone");
  const row = catalog.insulators.find(({ id }) => id === insulator);
  if (!row)
    throw new DesignError(
      "footing.insulator",
      insulator === undefined ? "none" : `"${insulator}"`,
      "a base insulator of the catalog: the study wishes an insulated mast",
    );
  return row;
}

/** A torque arm of the catalog, where what it does is worked out. */
function armOf({ study, catalog }: Problem, star: Star, id: string, path: string): ArmModel {
  const row = catalog.torqueArms.find((one) => one.id === id);
  if (!row) throw new DesignError(path, `"${id}"`, "a torque arm of the catalog");
  const { lossOfOneGuy, insulatedBase } = study.wishes;
  if (star.perLevel !== 3 || !star.alike || lossOfOneGuy || insulatedBase)
    throw new DesignError(
      path,
      `"${id}"`,
      "none: torque arms are worked out for three anchors alike, every guy in its place, on a base that does not turn",
    );
  return armModel(row, windAction(study.site.wind));
}
