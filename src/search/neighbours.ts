import { siteRefusal } from "../checks/site.ts";
import type { Design } from "../model/design.ts";
import type { AnchorPart, FootingPart } from "../parts/types.ts";
import type { Problem } from "../problem/types.ts";
import type { Change } from "./types.ts";

/** A design with one thing changed. */
export interface Neighbour {
  readonly design: Design;
  /** What it stands on or is held by instead, where that alone is other. */
  readonly part?: { readonly footing: FootingPart } | { readonly anchor: AnchorPart };
  readonly change: Change;
}

type Guys = NonNullable<Design["guys"]>;

/** Every design of the grid that has one thing other than this one. */
export function* neighbours(problem: Problem, design: Design): Generator<Neighbour> {
  const { guys } = design;
  const here = problem.stacks[problem.heights.findIndex((h) => Math.abs(h - design.height) < 1e-6)] ?? [];
  for (const stack of here) {
    const parts = stack.parts.map(({ section, length }) => ({ section: section.row.id, length }));
    if (JSON.stringify(parts) === JSON.stringify(design.stack)) continue;
    yield {
      design: { ...design, stack: parts },
      change: { what: "section", from: rowOf(design.stack), to: rowOf(parts), was: design.stack, now: parts },
    };
  }
  for (const footing of problem.footings)
    if (siteRefusal(footing, problem.ground) === null)
      yield {
        design: { ...design, footing: footing.choice },
        part: { footing },
        change: {
          what: "footing",
          from: design.footing.row,
          to: footing.choice.row,
          was: design.footing,
          now: footing.choice,
        },
      };
  if (!guys) return;
  const withGuys = (change: Partial<Guys>): Design => ({ ...design, guys: { ...guys, ...change } });
  const held = problem.holds.findIndex(({ anchors }) =>
    anchors.some((anchor) => anchor.choice.row === guys.anchor.row),
  );
  for (const anchor of problem.anchors)
    if (siteRefusal(anchor, problem.ground) === null)
      yield {
        design: withGuys({ anchor: anchor.choice }),
        // held at another height its guys are others
        part: problem.holds[held]?.head === anchor.head ? { anchor } : undefined,
        change: {
          what: "anchor",
          from: guys.anchor.row,
          to: anchor.choice.row,
          was: guys.anchor,
          now: anchor.choice,
        },
      };
  for (const { radius, rotation, anchors, hold } of problem.stars.get(guys.perLevel) ?? []) {
    if (hold !== held) continue;
    const radii = anchors.every((a) => a.radius === radius) ? undefined : anchors.map((a) => a.radius);
    if (radius !== guys.radius && rotation !== null)
      yield {
        design: withGuys({ radius, rotation, radii }),
        change: { what: "radius", from: guys.radius, to: radius },
      };
  }
  yield* otherArms(problem, design, guys);
  const { tensions, tensionEachLevel } = problem.study.parts;
  if (!tensionEachLevel)
    for (const tension of tensions)
      if (tension !== guys.tension)
        yield {
          design: withGuys({ tension }),
          change: { what: "tension", level: null, from: guys.tension, to: tension },
        };
  for (const [i, level] of guys.levels.entries()) {
    const replaced = (change: Partial<Guys["levels"][number]>) =>
      withGuys({ levels: guys.levels.map((l, k) => (k === i ? { ...l, ...change } : l)) });
    for (const strand of problem.strands)
      if (strand.id !== level.strand)
        yield {
          design: replaced({ strand: strand.id }),
          change: { what: "strand", level: i + 1, from: level.strand, to: strand.id },
        };
    const drawn = level.tension ?? guys.tension;
    if (tensionEachLevel)
      for (const tension of tensions)
        if (tension !== drawn)
          yield {
            design: replaced({ tension }),
            change: { what: "tension", level: i + 1, from: drawn, to: tension },
          };
    const below = i === 0 ? 0 : guys.levels[i - 1].height;
    const above = i + 1 < guys.levels.length ? guys.levels[i + 1].height : design.height + 1e-9;
    for (const height of problem.levelHeights)
      if (height > below && height < above && Math.abs(height - level.height) > 1e-6)
        yield {
          design: replaced({ height }),
          change: { what: "level", level: i + 1, from: level.height, to: height },
        };
    if (guys.levels.length > 1 && problem.study.parts.levelCounts.includes(guys.levels.length - 1))
      yield {
        design: withGuys({ levels: guys.levels.filter((_, k) => k !== i) }),
        change: { what: "levels", from: guys.levels.length, to: guys.levels.length - 1 },
      };
  }
}

/** The top guys on other torque arms, or on none. */
function* otherArms({ arms }: Problem, design: Design, guys: Guys): Generator<Neighbour> {
  const top = guys.levels.length - 1;
  const { arm: had, ...bare } = guys.levels[top];
  for (const arm of [undefined, ...arms.map(({ row }) => row.id)])
    if (arm !== had)
      yield {
        design: {
          ...design,
          guys: {
            ...guys,
            levels: [...guys.levels.slice(0, top), arm === undefined ? bare : { ...bare, arm }],
          },
        },
        change: { what: "arm", from: had ?? null, to: arm ?? null },
      };
}

/** The section that a stack stands on. */
const rowOf = (stack: Design["stack"]): string => stack[0].section;
