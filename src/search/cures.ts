import { verify } from "../checks/verify.ts";
import type { Design } from "../model/design.ts";
import type { Check } from "../model/verdict.ts";
import type { Problem } from "../problem/types.ts";
import { type Neighbour, neighbours } from "./neighbours.ts";
import type { Change } from "./types.ts";

/** A design one step of the grid away, judged whole. */
export interface Cure {
  readonly design: Design;
  readonly change: Change;
  /** More than the design itself, in the catalog's currency; less where negative. */
  readonly costs: number;
  readonly checks: readonly Check[];
}

/**
 * What one step of each part would do to the checks: every part, tension, height and radius by itself one step of the
 * grid up or down, each asked of the judge. Some tens of analyses: for a worker.
 */
export function cures(problem: Problem, design: Design): Cure[] {
  const own = verify(problem, design).bill.total;
  return oneStep(problem, design).map(({ design: other, change }) => {
    const { bill, checks } = verify(problem, other);
    return { design: other, change, costs: Math.round(100 * (bill.total - own)) / 100, checks };
  });
}

/** Where a change stands on its axis of the grid, and where the design itself does. */
interface Place {
  readonly axis: string;
  readonly at: number;
  readonly own: number;
}
/** Stacks are ordered by price alone, which says little of strength: more of them are tried each way. */
const STEPS = { section: 4, other: 1 };

function oneStep(problem: Problem, design: Design): Neighbour[] {
  const axes = new Map<string, { neighbour: Neighbour; by: number }[]>();
  for (const neighbour of neighbours(problem, design)) {
    const place = placeOf(problem, neighbour.change);
    if (place && place.at !== place.own)
      axes.set(place.axis, [...(axes.get(place.axis) ?? []), { neighbour, by: place.at - place.own }]);
  }
  return [...axes].flatMap(([axis, ways]) => {
    const steps = axis === "section" ? STEPS.section : STEPS.other;
    const toward = (sign: 1 | -1) =>
      ways
        .filter(({ by }) => by * sign > 0)
        .sort((a, b) => (a.by - b.by) * sign)
        .slice(0, steps);
    return [...toward(1), ...toward(-1)].map(({ neighbour }) => neighbour);
  });
}

/**
 * Null where a change is no step along one axis: another kind of anchor, a block of another width and depth, or from
 * what the grid does not have.
 */
function placeOf(problem: Problem, change: Change): Place | null {
  switch (change.what) {
    case "radius":
      return { axis: "radius", at: change.to, own: change.from };
    case "level":
    case "tension":
      return { axis: `${change.what} ${change.level}`, at: change.to, own: change.from };
    case "strand": {
      const strength = (id: string) => problem.strands.find((row) => row.id === id)?.breakingStrength ?? 0;
      return { axis: `strand ${change.level}`, at: strength(change.to), own: strength(change.from) };
    }
    case "section": {
      const [at, own] = [stackCents(problem, change.now), stackCents(problem, change.was)];
      return at === undefined || own === undefined ? null : { axis: "section", at, own };
    }
    case "arm":
      return { axis: `arm ${change.to}`, at: 1, own: 0 };
    case "levels":
      return { axis: "levels", at: change.to, own: change.from };
    case "anchor":
      return choicePlace("anchor", change.was, change.now, problem.anchors);
    case "footing":
      return choicePlace("footing", change.was, change.now, problem.footings);
  }
}

function stackCents(problem: Problem, stack: Design["stack"]): number | undefined {
  const same = problem.stacks
    .flat()
    .find(
      ({ parts }) =>
        parts.length === stack.length &&
        parts.every(
          ({ section, length }, i) =>
            section.row.id === stack[i].section && Math.abs(length - stack[i].length) < 1e-6,
        ),
    );
  return same?.cents;
}

/** A part other in one size alone is a step of that size; other in its row alone, a step among rows by price. */
function choicePlace<C extends { readonly kind: string }>(
  part: string,
  was: C,
  now: C,
  parts: readonly { readonly choice: C; readonly cents: number }[],
): Place | null {
  const value = (choice: C, key: string): unknown => (choice as Readonly<Record<string, unknown>>)[key];
  const keys = Object.keys({ ...was, ...now }).filter((key) => value(was, key) !== value(now, key));
  if (keys.length !== 1) return null;
  const [key] = keys;
  const [at, own] = [value(now, key), value(was, key)];
  if (typeof at === "number" && typeof own === "number") return { axis: `${part} ${key}`, at, own };
  const cents = (choice: C) =>
    parts.find((one) => Object.keys(choice).every((k) => value(one.choice, k) === value(choice, k)))?.cents;
  const [dearness, ownDearness] = [cents(now), cents(was)];
  if (dearness === undefined || ownDearness === undefined) return null;
  return { axis: `${part} ${key}`, at: dearness, own: ownDearness };
}
