import type { Problem, StackModel } from "../problem/types.ts";
import { leanOf, SLACK } from "./floors.ts";
import type { Spans } from "./span-floors.ts";
import { holdingArm, liftOf, pairFloor, type StarGuys } from "./star-floors.ts";
import type { Statics } from "./statics.ts";

/** Three elements a span find buckling of one half wave to 0.2 %; this much is given away for them. */
const BUCKLING_SLACK = 0.99;

/** What a star of guys asks of the mast, whatever the sharing of the thrust among its levels. */
export interface StarFloor {
  /** Least utilisation of the legs, and of whole-mast stability. */
  readonly use: number;
  /** Least thrust on the base under wind, N. */
  readonly thrust: number;
}

/**
 * Cut the mast at a guy level and take moments of what is above: the guys above must hold the wind there, less
 * what the legs can pass as a moment. Guys that hold pull down as well, so each span carries at least that thrust
 * on top of the weight; with it go the leg floor of the span and an upper bound on its buckling factor (Rayleigh's
 * quotient of a half wave that leaves every guy at rest). docs/theory/search.md has the argument.
 * Above the top guys the mast is a cantilever, whose moment the legs under them bear beside that thrust.
 * @param allowed utilisation above which a completion is of no use
 * @param levels indices into `s.z`, top down
 * @param moment of the wind on the mast about the base, less what its drift may take off, N m
 * @param uplift floor of the windward anchor's uplift, with no more wind on the guys than blows on them in this case, N
 * @param hung least weight of all guys of one anchor, N; 0 where it is not known
 */
export function starFloor(
  problem: Problem,
  allowed: number,
  stack: StackModel,
  s: Statics,
  spans: Spans,
  levels: readonly number[],
  guyed: StarGuys,
  moment: number,
  uplift: number,
  hung: number,
): StarFloor {
  const { rules } = problem;
  const lean = leanOf(problem);
  const pulled = pairFloor(moment, guyed, lean, uplift) + ownWeight(guyed, uplift, hung);
  const lift = liftOf(guyed);
  const { arm, top } = guyed;
  const heights = levels.map((at) => s.z[at]);
  let use = 0;
  let thrust = 0;
  for (let k = 0; k < levels.length; k++) {
    const upper = levels[k];
    const lower = k + 1 < levels.length ? levels[k + 1] : 0;
    const atBase = k + 1 === levels.length;
    // an arm's weight that drifts, and leeward guys that wind lifts by its tips
    const lent = arm ? lean * s.heavy * arm.row.weight * (top - s.z[lower]) + lift * arm.row.length : 0;
    const asked = SLACK * s.moment[lower] - lean * s.heavy * s.lever[lower] - lent;
    const lever = holdingArm(guyed.star, heights, k + 1, s.z[lower], lean, arm);
    // G >= (asked - M) / lever with M <= arm (C - share (W + G)) at a level, M = 0 at the pin
    let guys = Math.max(0, asked / lever);
    if (!atBase)
      for (const { lattice } of spans.touching(lower)) {
        const capacity = (allowed * lattice.legCompression) / rules.leg.required;
        const arm = lattice.momentArm;
        const eased = lever - arm * lattice.axialShare;
        const left = asked - arm * capacity + arm * lattice.axialShare * s.light * s.weight[lower];
        guys = Math.min(guys, eased > 0 ? Math.max(0, left / eased) : 0);
      }
    else guys = Math.max(guys, pulled);
    guys = Math.max(0, guys - lift);
    const press = s.light * s.weight[upper] + guys;
    use = Math.max(
      use,
      spans.pressed(lower, upper, atBase ? "pinned" : "free", press),
      bucklingFloor(problem, spans, s, levels, k, press, arm !== null),
    );
    // arms at the top guys bend the mast under them
    if (k === 0 && !arm) {
      const bent = Math.max(0, s.moment[upper] - lean * s.heavy * s.lever[upper]);
      const { lattice } = spans.under(upper);
      const force = press * lattice.axialShare + bent / lattice.momentArm;
      use = Math.max(use, (SLACK * force * rules.leg.required) / lattice.legCompression);
    }
    if (atBase) {
      thrust = s.light * s.weight[0] + guys;
      const { lattice } = stack.parts[0].section;
      use = Math.max(
        use,
        (SLACK * thrust * lattice.axialShare * rules.leg.required) / lattice.legCompression,
      );
    }
  }
  return { use, thrust };
}

/** Leeward guys over what `pairFloor` takes off for their weight: (4 - 1 - sqrt 2) of four. */
const TAKEN: Readonly<Record<3 | 4, number>> = { 3: 1, 4: 1.6 };

/** What the guys' own weight adds to the anchors' pull on the mast, N: known of an even star with all strands chosen. */
const ownWeight = ({ star: { even, perLevel }, weight }: StarGuys, uplift: number, hung: number): number =>
  even && uplift > weight ? Math.max(0, perLevel * hung - TAKEN[perLevel] * weight) : 0;

/** Required over the greatest buckling factor that a half wave in span `k` (from the top) leaves. */
function bucklingFloor(
  { rules }: Problem,
  spans: Spans,
  { z }: Statics,
  levels: readonly number[],
  k: number,
  press: number,
  armed: boolean,
): number {
  // guys on an arm resist the turn of the mast there, by what nobody knows yet
  if (armed && k === 0) return 0;
  const upper = levels[k];
  const lower = k + 1 < levels.length ? levels[k + 1] : 0;
  const length = z[upper] - z[lower];
  let stiffness = ((Math.PI * Math.PI) / (length * length)) * spans.stiffest(lower, upper);
  // the neighbours bend along: held at their far ends, or turning on the pin
  if (k > 0) {
    const above = levels[k - 1];
    stiffness += (8 * spans.stiffest(upper, above)) / (length * (z[above] - z[upper]));
  }
  if (k + 1 < levels.length) {
    const last = k + 2 === levels.length;
    const below = last ? 0 : levels[k + 2];
    stiffness += ((last ? 6 : 8) * spans.stiffest(below, lower)) / (length * (z[lower] - z[below]));
  }
  return (BUCKLING_SLACK * rules.stability.required * press) / stiffness;
}
