import type { Strand } from "../model/catalog.ts";
import type { Star, StarAnchor } from "../problem/star.ts";
import { type ArmModel, guysAtAnchor, insetOf, tipsOf } from "../problem/torque-arm.ts";
import type { Problem } from "../problem/types.ts";
import { SLACK } from "./floors.ts";

/**
 * What the free body of mast and guys asks of a star of anchors, whatever the sharing of the thrust among its
 * levels. docs/theory/search.md has the argument, for even stars and for uneven ones.
 */

/** What is known of the guys of a star when its floor is asked for. */
export interface StarGuys {
  readonly star: Star;
  /** At the top level. */
  readonly arm: ArmModel | null;
  /** Highest and lowest level, m; the lowest that may still come. */
  readonly top: number;
  readonly lowest: number;
  /** Weight of all guys of one anchor, N, an upper bound. */
  readonly weight: number;
  /** Wind on all guys of one anchor if they lay square to it, N, an upper bound; read for uneven stars only. */
  readonly wind: number;
  /** What the guy check lets all guys of one anchor pull, N, an upper bound; read for uneven stars of four only. */
  readonly pull: number;
  /** Least moment about the base of the wind on the guys, N m; for an even star 0 where not known (never negative). */
  readonly moment: number;
}

export interface GuyFloor {
  /** Least uplift and lateral pull at the anchor that is pulled most under the worst wind, N. */
  readonly uplift: number;
  readonly lateral: number;
  /** Which one that is. */
  readonly anchor: StarAnchor;
}

/** Windward anchors resist with `arm` x uplift at most, and `loose` more that weight and wind on their guys lend. */
interface Resisting {
  readonly arm: number;
  readonly loose: number;
}

/**
 * An anchor that stands `upwind` of the mast. Its level pull has an arm as well where it stands above or below the
 * base: bounded by the slope of its guys.
 */
function resisting(anchor: StarAnchor, upwind: number, guys: StarGuys, lean: number): Resisting {
  const { elevation: e } = anchor;
  const { top, lowest, wind } = guys;
  if (e === 0) return { arm: upwind, loose: 0 };
  if (e < 0) return { arm: upwind + (e * (upwind - insetOf(guys.arm) - lean * top)) / (top - e), loose: 0 };
  const slope = (upwind + lean * lowest) / (lowest - e);
  return { arm: upwind + e * slope, loose: e * (slope * pressed(anchor, guys, lean) + 0.5 * wind) };
}

/** How far down the guys of an anchor may press it, N: half their weight, and wind on them where they hang slack. */
function pressed(anchor: StarAnchor, guys: StarGuys, lean: number): number {
  const { top, weight, wind } = guys;
  return 0.5 * weight + (0.5 * wind * (top - anchor.elevation)) / reachOf(anchor, guys, lean);
}

/** Least level distance from an anchor to the heads of its guys, m. */
const reachOf = ({ radius }: StarAnchor, { arm, top }: StarGuys, lean: number): number =>
  radius - insetOf(arm) - lean * top;

/** The mast's moment and the guys', less what drift and the guys' weight may take off, N m. */
function asked(moment: number, { star, top, weight, moment: guyMoment }: StarGuys, lean: number): number {
  return moment + guyMoment - 0.5 * star.perLevel * weight * lean * top;
}

/** An anchor pulled up by so much is pulled aside by the slope of its guys. */
function pulledUp(anchor: StarAnchor, uplift: number, guys: StarGuys, lean: number): GuyFloor {
  const reach = reachOf(anchor, guys, lean);
  const lateral = reach > 0 ? (Math.max(uplift, 0) * reach) / (guys.top - anchor.elevation) : 0;
  return { anchor, uplift, lateral };
}

/** Floor of the anchor that stands alone against the wind. */
export function windwardFloor(moment: number, guys: StarGuys, lean: number): GuyFloor {
  const { star, weight } = guys;
  const left = asked(moment, guys, lean);
  const [first] = star.anchors;
  // three guys: half of two leeward ones; four: the one behind; either way no less than the weight of one
  if (star.even) return pulledUp(first, left / star.radius - weight, guys, lean);
  let most = pulledUp(first, Number.NEGATIVE_INFINITY, guys, lean);
  if (guys.lowest <= highestOf(star)) return { ...most, uplift: 0 };
  // a head that may lean out over an anchor says nothing of its pull
  if (star.anchors.some((anchor) => reachOf(anchor, guys, lean) <= 0)) return { ...most, uplift: 0 };
  const aside = sideways(guys, lean);
  for (const anchor of star.anchors) {
    const { arm, loose } = resisting(anchor, anchor.radius, guys, lean);
    const uplift = (left - star.radius * weight - loose - aside) / arm;
    if (uplift > most.uplift) most = pulledUp(anchor, uplift, guys, lean);
  }
  return most;
}

/**
 * The two guys across the wind (four a level) hold the drifted head back: where they are held above the base, with
 * a moment, N m, an upper bound.
 */
function sideways({ star, top, pull }: StarGuys, lean: number): number {
  if (star.perLevel === 3) return 0;
  let most = 0;
  for (const { radius, elevation } of star.anchors)
    most = Math.max(most, Math.max(0, elevation) * Math.min(1, (lean * top) / radius));
  return 2 * most * pull;
}

const highestOf = (star: Star): number => Math.max(...star.anchors.map((a) => a.elevation));

/** Distance upwind of the two windward anchors, over their radius: wind toward a guy, or between four. */
const PAIR: Readonly<Record<3 | 4, number>> = { 3: 0.5, 4: Math.SQRT1_2 };

/** Least sum of the uplifts of the two windward anchors, N, wind toward a guy (three) or between guys (four). */
export function pairFloor(moment: number, guys: StarGuys, lean: number, uplift: number): number {
  const { star, weight } = guys;
  if (star.even)
    return star.perLevel === 3 ? 2 * Math.max(uplift, 0) : Math.max(Math.SQRT2 * uplift - weight, 0);
  if (guys.lowest <= highestOf(star)) return 0;
  if (star.anchors.some((anchor) => reachOf(anchor, guys, lean) <= 0)) return 0;
  const each = star.anchors.map((anchor) =>
    resisting(anchor, PAIR[star.perLevel] * anchor.radius, guys, lean),
  );
  const arm = Math.max(...each.map((one) => one.arm));
  const loose = Math.max(...each.map((one) => one.loose));
  // the one with the shorter arm may be pressed down while the other pulls
  let lent = 0;
  star.anchors.forEach((anchor, i) => {
    if (each[i].arm < arm) lent = Math.max(lent, pressed(anchor, guys, lean) * (1 - each[i].arm / arm));
  });
  const leeward = (star.perLevel === 3 ? 1 : Math.SQRT2) * star.radius * weight;
  return Math.max(0, (asked(moment, guys, lean) - leeward - 2 * loose) / arm - 2 * lent);
}

/** Greatest moment at z that the first of these levels can hold, over what they press the mast with, m. */
export function holdingArm(
  star: Star,
  heights: readonly number[],
  count: number,
  z: number,
  lean: number,
  arm: ArmModel | null,
): number {
  const top = heights[0];
  const share = PAIR[star.perLevel];
  // what presses on the upwind tip of an arm holds by that tip as well
  const tip = arm ? arm.row.length : 0;
  if (star.even) return ((share * star.radius) / top + 2 * lean) * (top - z) + (tip * z) / top;
  let most = 0;
  for (let k = 0; k < count; k++) {
    const height = heights[k];
    for (const { radius, elevation } of star.anchors)
      most = Math.max(most, ((share * radius + lean * height) / (height - elevation)) * (height - z));
  }
  return most + lean * (top - z) + tip;
}

/** Lift of a cable by wind, over the wind on it if it lay square: the most of sin2 cos. */
const LIFT = 2 / (3 * Math.sqrt(3));

/** What wind may lift the leeward guys by, N: 0 for an even star, whose windward guys are pressed down by more. */
export const liftOf = ({ star, arm, wind }: StarGuys): number =>
  star.even && !arm ? 0 : star.perLevel * LIFT * wind;

/** Chords for curves: this is given away for sag. */
const SAG = 0.05;

/**
 * Moment about the base of the wind on the three or four guys of a level, N m: wind away from a guy (three) or
 * along two (four); for an uneven star the least of all winds that floors speak of.
 */
export function guyWindMoment(wind: number, height: number, star: Star): number {
  if (!star.even) return leastMoment(height, star, (term) => wind * (term - SAG * Math.abs(term)));
  const { radius, perLevel } = star;
  const chord2 = height * height + radius * radius;
  const chord = Math.sqrt(chord2);
  const inLine = 0.5 * wind * height * height * ((height * height - radius * radius) / chord2);
  if (perLevel === 4) return (1 - SAG) * (2 * inLine + wind * chord * height);
  const oblique = (radius * radius) / (4 * chord2);
  const side = wind * chord * Math.sqrt(1 - oblique) * height * (0.5 - oblique);
  return (1 - SAG) * (inLine + 2 * side);
}

/** The part of it that may be negative, before the strand is known; 0 for an even star. */
export const guyWindLoss = (wind: number, height: number, star: Star): number =>
  star.even ? 0 : leastMoment(height, star, (term) => wind * (1 + SAG) * Math.min(0, term));

/**
 * The same of the six guys of a level on arms, each along the chord to its own tip, N m: the least of all winds that
 * floors speak of. It grows with the wind on a guy, whichever sign it has.
 */
export function pairWindMoment(
  wind: number,
  height: number,
  { anchors, perLevel }: Star,
  arm: ArmModel,
): number {
  const winds = 2 * perLevel;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < winds; k++) {
    let sum = 0;
    anchors.forEach(({ radius, elevation }, i) => {
      const out = 2 * Math.PI * (i / perLevel - k / winds);
      for (const [toward, aside] of tipsOf(arm)) {
        const foot = radius * Math.cos(out);
        const head = toward * Math.cos(out) - aside * Math.sin(out);
        const rise = height - elevation;
        const chord2 = (radius - toward) ** 2 + aside ** 2 + rise ** 2;
        const along = head - foot;
        const square = Math.sqrt(Math.max(0, chord2 - along * along));
        // force q L |n| n at the middle of the chord: up along the wind, down where it blows down the guy
        const level = square * (1 - (along * along) / chord2);
        const up = (-square * along * rise) / chord2;
        const term = 0.5 * (level * (height + elevation) - up * (head + foot));
        sum += wind * (term - SAG * Math.abs(term));
      }
    });
    least = Math.min(least, sum);
  }
  return least;
}

/** Least over the winds of the sum over the guys of `value`, asked of the moment of unit wind on each, m2. */
function leastMoment(height: number, star: Star, value: (term: number) => number): number {
  const { anchors, perLevel } = star;
  const winds = perLevel === 3 ? 6 : 8;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < winds; k++) {
    let sum = 0;
    anchors.forEach(({ radius, elevation }, i) => {
      const rise = height - elevation;
      const chord2 = radius * radius + rise * rise;
      const along = radius * Math.cos(2 * Math.PI * (i / perLevel - k / winds));
      const part = (along * along) / chord2;
      const square = Math.sqrt(Math.max(0, chord2 * (1 - part)));
      sum += value(0.5 * square * (height + elevation - 2 * height * part));
    });
    least = Math.min(least, sum);
  }
  return least;
}

/** Utilisation of the guys together that the uplift of their anchor can't go without. */
export function guyFloor(
  problem: Problem,
  { uplift, anchor }: GuyFloor,
  levels: readonly { readonly height: number; readonly arm?: ArmModel | null }[],
  strandOf: (level: number) => Strand,
  lean: number,
): number {
  let most = 0;
  for (let i = 0; i < levels.length; i++) {
    const { height, arm } = levels[i];
    const strand = strandOf(i);
    const reach = Math.max(anchor.radius - insetOf(arm) - lean * height, 0);
    const rise = height - anchor.elevation;
    most +=
      guysAtAnchor(arm) * strand.breakingStrength * strand.efficiency * (rise / Math.hypot(reach, rise));
  }
  return (SLACK * Math.max(uplift, 0) * problem.rules.guy.required) / most;
}
