import { DesignError, resolve } from "../checks/resolve.ts";
import { siteRefusal } from "../checks/site.ts";
import { verify } from "../checks/verify.ts";
import { bill, volumes } from "../cost/bill.ts";
import type { Design } from "../model/design.ts";
import type { AnchorPart, FootingPart } from "../parts/types.ts";
import type { Problem } from "../problem/types.ts";
import { type Amounts, litres, objectiveOf } from "./ground.ts";
import { SearchDefect } from "./search.ts";
import type { Change, Judged, Rejected } from "./types.ts";

/** Rows shown, and at most this many of one kind of change, so that one axis does not crowd out the rest. */
const ROWS = 8;
const PER_KIND = 2;

interface Neighbour {
  readonly design: Design;
  /** What it stands on or is held by instead, where that alone is other. */
  readonly part?: { readonly footing: FootingPart } | { readonly anchor: AnchorPart };
  readonly change: Change;
}

type Guys = NonNullable<Design["guys"]>;

/** Designs one step of the grid away, in every direction that could be cheaper. */
function* neighbours(problem: Problem, design: Design): Generator<Neighbour> {
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
  const held = problem.anchors.find((anchor) => anchor.choice.row === guys.anchor.row)?.head;
  for (const anchor of problem.anchors)
    if (siteRefusal(anchor, problem.ground) === null)
      yield {
        design: withGuys({ anchor: anchor.choice }),
        // held at another height its guys are others
        part: anchor.head === held ? { anchor } : undefined,
        change: {
          what: "anchor",
          from: guys.anchor.row,
          to: anchor.choice.row,
          was: guys.anchor,
          now: anchor.choice,
        },
      };
  for (const { radius, rotation, anchors, head } of problem.stars.get(guys.perLevel) ?? []) {
    if (head !== held) continue;
    const radii = anchors.every((a) => a.radius === radius) ? undefined : anchors.map((a) => a.radius);
    if (radius !== guys.radius && rotation !== null)
      yield {
        design: withGuys({ radius, rotation, radii }),
        change: { what: "radius", from: guys.radius, to: radius },
      };
  }
  yield* otherArms(problem, design, guys);
  for (const [i, level] of guys.levels.entries()) {
    const replaced = (change: Partial<Guys["levels"][number]>) =>
      withGuys({ levels: guys.levels.map((l, k) => (k === i ? { ...l, ...change } : l)) });
    for (const strand of problem.strands)
      if (strand.id !== level.strand)
        yield {
          design: replaced({ strand: strand.id }),
          change: { what: "strand", level: i + 1, from: level.strand, to: strand.id },
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

/**
 * The cheapest designs one step away from the answer that save something, each with the check that rejects it.
 * @throws SearchDefect where one of them is safe: then the answer was not the cheapest
 */
export function whyNotCheaper(problem: Problem, best: Judged): Rejected[] {
  const objective = objectiveOf(problem);
  const cents = Math.round(best.verdict.bill.total * 100);
  const value = objective({
    cents,
    concrete: litres(best.verdict.concreteVolume),
    dug: litres(best.verdict.dugVolume),
  });
  const own = resolve(problem, best.design);
  const priced = [...neighbours(problem, best.design)].flatMap((neighbour) => {
    const { part, design } = neighbour;
    const total = part ? amountsOf(problem, { ...own, ...part }) : priceOf(problem, design);
    return total && objective(total) < value ? [{ ...neighbour, ...total }] : [];
  });
  // nearest saving first
  priced.sort((a, b) => objective(b) - objective(a));
  const seen = new Map<string, number>();
  const rows: Rejected[] = [];
  for (const { design, change, cents: cost, concrete } of priced) {
    const kind =
      change.what === "level" || change.what === "strand" ? `${change.what} ${change.level}` : change.what;
    const count = seen.get(kind) ?? 0;
    if (count >= PER_KIND) continue;
    seen.set(kind, count + 1);
    const verdict = verify(problem, design);
    const failing = verdict.checks.find((check) => !check.passes);
    if (!failing) throw new SearchDefect(`a cheaper design passes every check: ${JSON.stringify(design)}`);
    rows.push({
      design,
      change,
      saves: (cents - cost) / 100,
      savesConcrete: best.verdict.concreteVolume - concrete / 1e4,
      failsIn: failing.title,
      utilisation: failing.utilisation,
    });
    if (rows.length >= ROWS) break;
  }
  return rows;
}

/** Price and volumes without the mast's analysis. */
function priceOf(problem: Problem, design: Design): Amounts | null {
  try {
    return amountsOf(problem, resolve(problem, design));
  } catch (error) {
    if (error instanceof DesignError) return null;
    throw error;
  }
}

function amountsOf(problem: Problem, { model, anchor, footing }: ReturnType<typeof resolve>): Amounts {
  const guys = model.guys && anchor ? { ...model.guys, anchor } : null;
  const { total } = bill(problem, { pack: model.package, stack: model.stack, guys, footing });
  const { concrete, dug } = volumes({ guys, footing });
  return { cents: Math.round(total * 100), concrete: litres(concrete), dug: litres(dug) };
}
