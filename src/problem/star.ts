import type { Study } from "../model/study.ts";
import { onSide, type Side } from "./barred.ts";
import { guyRoom } from "./lines.ts";
import { ON_THE_LINE, roomAt } from "./lot.ts";

type Point = readonly [number, number];
type Lot = Study["lot"];

/** Where the guys of one direction are tied down. */
export interface StarAnchor {
  /** Level distance from the mast, m. */
  readonly radius: number;
  /** Where the anchor holds its guys, over the base of the mast, m. */
  readonly elevation: number;
}

/** One anchor a direction, the directions equally round; the first at a bearing that the star does not know. */
export interface Star {
  readonly perLevel: 3 | 4;
  /** From anchor 1, clockwise. */
  readonly anchors: readonly StarAnchor[];
  /** Distance of the farthest anchor, m. */
  readonly radius: number;
  /** Of the anchors' hold above their ground, m. */
  readonly head: number;
  /** Are all anchors alike? Then nothing above ground depends on how the star is turned. */
  readonly alike: boolean;
  /** And do they hold their guys at the height of the base? */
  readonly even: boolean;
  /** One name for it among the stars of a study. */
  readonly key: string;
}

/** A star with the bearing that suits the lot best, and how many places of the grid come to the same mast. */
export interface PlacedStar extends Star {
  /** Bearing of anchor 1, degrees clockwise from north. Null where no place fits the lot. */
  readonly rotation: number | null;
  /** Room of the worst anchor inside the lot and its setback, or of its guys beside power lines, m. */
  readonly spare: number;
  /** Pairs of radius and rotation that it stands for. */
  readonly places: number;
  /** Which anchors may stand there: their place among the holds of the problem. */
  readonly hold: number;
}

/** What anchors that may stand in the same places have in common. */
export interface Hold {
  /** Height above ground at which they hold their guys, m. */
  readonly head: number;
  /** Sides of the mast that are barred to them. */
  readonly sides: readonly Side[];
}
const AT_GRADE: Hold = { head: 0, sides: [] };

type Guys = { readonly perLevel: 3 | 4; readonly radius: number; readonly rotation: number } & {
  readonly radii?: readonly number[];
};

const bearingOf = (guys: { perLevel: number; rotation: number }, index: number): number =>
  guys.rotation + (360 * index) / guys.perLevel;

/** Of each anchor in turn, degrees clockwise from north. */
export const bearingsOf = (guys: { readonly perLevel: number; readonly rotation: number }): number[] =>
  Array.from({ length: guys.perLevel }, (_, i) => bearingOf(guys, i));

/** Anchor heads of a star: east and north of the lot's origin. Bearings in degrees clockwise from north. */
export const anchorPoints = (mast: Point, guys: Guys): Point[] =>
  Array.from({ length: guys.perLevel }, (_, i) => pointAt(mast, bearingOf(guys, i), radiusOf(guys, i)));

const radiusOf = (guys: Guys, index: number): number => guys.radii?.[index] ?? guys.radius;

const pointAt = (mast: Point, bearing: number, radius: number): Point => {
  const angle = (bearing * Math.PI) / 180;
  return [mast[0] + radius * Math.sin(angle), mast[1] + radius * Math.cos(angle)];
};

/** Ground at a place over the ground at the mast, m: the lot falls evenly. */
const elevationAt = ({ slope }: Lot, bearing: number, radius: number): number =>
  slope ? -slope.fall * radius * Math.cos(((bearing - slope.toward) * Math.PI) / 180) : 0;

/** Distance of the two nearest anchors of a star, m. */
export function nearestAnchors({ perLevel, anchors }: Pick<Star, "perLevel" | "anchors">): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < perLevel; i++)
    for (let j = 0; j < i; j++) {
      const [a, b] = [anchors[i].radius, anchors[j].radius];
      const turn = (2 * Math.PI * (i - j)) / perLevel;
      nearest = Math.min(nearest, Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(turn)));
    }
  return nearest;
}

/** How far inside its setback, and out of plots kept free, the worst anchor stands, m. */
export const anchorSpare = (lot: Lot, guys: Guys): number =>
  Math.min(...anchorPoints(lot.mast, guys).map((point) => roomAt(lot, point)));

/** That, or the room that is left between guys and power lines, where it is less, m. */
export const spareOf = (lot: Lot, guys: Guys): number =>
  Math.min(...anchorPoints(lot.mast, guys).map((point) => spareAt(lot, point)));

const spareAt = (lot: Lot, point: Point): number => Math.min(roomAt(lot, point), guyRoom(lot, point));

/** A nanometre: lengths that differ by less are one. */
const SAME = 1e-9;
const rounded = (value: number): number => Math.round(value / SAME) * SAME + 0;

/**
 * The star of a design on its lot.
 * @param head of the anchors' hold above their ground, m
 * @param stand of the mast's foot above its footing, m
 */
export function starOf(lot: Lot, guys: Guys, head = 0, stand = 0): Star {
  const anchors = Array.from({ length: guys.perLevel }, (_, i): StarAnchor => {
    const radius = radiusOf(guys, i);
    return { radius, elevation: elevationAt(lot, bearingOf(guys, i), radius) + head - stand };
  });
  const [first] = anchors;
  const alike = anchors.every(
    (a) => Math.abs(a.radius - first.radius) < SAME && Math.abs(a.elevation - first.elevation) < SAME,
  );
  const even = alike && Math.abs(first.elevation) < SAME;
  const radius = Math.max(...anchors.map((a) => a.radius));
  const key = even
    ? `${radius}`
    : anchors.map((a) => `${rounded(a.radius)}@${rounded(a.elevation)}`).join(",");
  return { perLevel: guys.perLevel, anchors, radius, head, alike, even, key };
}

export interface StarAxes {
  readonly lot: Lot;
  readonly radii: readonly number[];
  readonly rotations: readonly number[];
  /** May an anchor stand nearer where the lot is short? */
  readonly drawnIn: boolean;
  /** Of the mast's foot above its footing, m. */
  readonly stand?: number;
}

/** Radii of a place of the grid: one for all, or each as far out as the lot lets it. Undefined where there is none. */
export function radiiAt(
  { lot, radii, drawnIn }: StarAxes,
  perLevel: 3 | 4,
  radius: number,
  rotation: number,
): readonly number[] | undefined {
  const fits = (bearing: number, r: number) => spareAt(lot, pointAt(lot.mast, bearing, r)) >= -ON_THE_LINE;
  const guys = { perLevel, radius, rotation };
  const own = Array.from({ length: perLevel }, (_, i) => {
    const bearing = bearingOf(guys, i);
    if (!drawnIn || fits(bearing, radius)) return radius;
    return radii.reduce((most, r) => (r < radius && r > most && fits(bearing, r) ? r : most), 0);
  });
  // a place whose radius no anchor reaches is the place of a smaller radius
  return own.every((r) => r > 0) && own.includes(radius) ? own : undefined;
}

/**
 * Every star of the grid for the anchors of one hold, those apart that are another mast; places that don't fit the
 * lot, or have an anchor on a side that is barred to it, are one star.
 * @param hold its place among the holds of the problem
 */
export function placedStars(
  axes: StarAxes,
  perLevel: 3 | 4,
  { head, sides } = AT_GRADE,
  hold = 0,
): PlacedStar[] {
  const { lot, radii, rotations } = axes;
  const known = new Map<string, PlacedStar>();
  for (const radius of radii)
    for (const rotation of rotations) {
      const own = radiiAt(axes, perLevel, radius, rotation);
      const guys = { perLevel, radius, rotation, radii: own };
      const star = starOf(lot, guys, head, axes.stand);
      const allowed = own && bearingsOf(guys).every((at) => !sides.some((side) => onSide(side, at)));
      const spare = allowed ? spareOf(lot, guys) : Number.NEGATIVE_INFINITY;
      const fits = spare >= -ON_THE_LINE;
      // on an even lot the places that don't fit count with those of their radius that do
      const key = star.even || fits ? star.key : "outside";
      const before = known.get(key);
      const places = (before?.places ?? 0) + 1;
      // the most room, the first of equals
      const better = !before || spare > before.spare + ON_THE_LINE;
      known.set(
        key,
        better ? { ...star, rotation: fits ? rotation : null, spare, places, hold } : { ...before, places },
      );
    }
  return [...known.values()];
}
