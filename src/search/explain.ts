import { DesignError, resolve } from "../checks/resolve.ts";

import { verify } from "../checks/verify.ts";
import { bill, volumes } from "../cost/bill.ts";
import { groundCents } from "../cost/concrete.ts";
import type { Design } from "../model/design.ts";

import type { Problem } from "../problem/types.ts";
import { type Amounts, litres, objectiveOf } from "./ground.ts";
import { neighbours } from "./neighbours.ts";
import { SearchDefect } from "./search.ts";
import type { Judged, Rejected } from "./types.ts";

type Resolved = ReturnType<typeof resolve>;

/** Rows shown, and at most this many of one kind of change, so that one axis does not crowd out the rest. */
const ROWS = 8;
const PER_KIND = 2;

/**
 * The cheapest designs one step away from the answer that save something, each with the check that rejects it: one by
 * one, as each is judged.
 * @throws SearchDefect where one of them is safe: then the answer was not the cheapest
 */
export function* whyNotCheaper(problem: Problem, best: Judged): Generator<Rejected> {
  const objective = objectiveOf(problem);
  const cents = Math.round(best.verdict.bill.total * 100);
  const value = objective({
    cents,
    concrete: litres(best.verdict.concreteVolume),
    dug: litres(best.verdict.dugVolume),
  });
  const own = resolve(problem, best.design);
  const mast = cents - groundCents(problem, groundOf(own));
  const priced = [...neighbours(problem, best.design)].flatMap((neighbour) => {
    const { part, design } = neighbour;
    const total = part ? onOtherGround(problem, mast, { ...own, ...part }) : priceOf(problem, design);
    return total && objective(total) < value ? [{ ...neighbour, ...total }] : [];
  });
  // nearest saving first
  priced.sort((a, b) => objective(b) - objective(a));
  const seen = new Map<string, number>();
  let rows = 0;
  for (const { design, change, cents: cost, concrete } of priced) {
    const kind =
      change.what === "level" || change.what === "strand" ? `${change.what} ${change.level}` : change.what;
    const count = seen.get(kind) ?? 0;
    if (count >= PER_KIND) continue;
    seen.set(kind, count + 1);
    const verdict = verify(problem, design);
    const failing = verdict.checks.find((check) => !check.passes);
    if (!failing) throw new SearchDefect(`a cheaper design passes every check: ${JSON.stringify(design)}`);
    yield {
      design,
      change,
      saves: (cents - cost) / 100,
      savesConcrete: best.verdict.concreteVolume - concrete / 1e4,
      failsIn: failing.title,
      utilisation: failing.utilisation,
    };
    if (++rows >= ROWS) break;
  }
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

/** What stands in the ground under it. */
const groundOf = ({ model, anchor, footing }: Resolved) => ({
  guys: model.guys && anchor ? { ...model.guys, anchor } : null,
  footing,
});

/** A mast of so many cents on other ground: that alone is priced anew. */
function onOtherGround(problem: Problem, mast: number, other: Resolved): Amounts {
  const ground = groundOf(other);
  const { concrete, dug } = volumes(ground);
  return { cents: mast + groundCents(problem, ground), concrete: litres(concrete), dug: litres(dug) };
}

function amountsOf(problem: Problem, design: Resolved): Amounts {
  const ground = groundOf(design);
  const { total } = bill(problem, { pack: design.model.package, stack: design.model.stack, ...ground });
  const { concrete, dug } = volumes(ground);
  return { cents: Math.round(total * 100), concrete: litres(concrete), dug: litres(dug) };
}
