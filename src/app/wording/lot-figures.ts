import type { Catalog } from "../../model/catalog.ts";
import type { Design } from "../../model/design.ts";
import type { Study } from "../../model/study.ts";
import { compile } from "../../problem/compile.ts";
import { anchorPoints } from "../../problem/star.ts";
import { type BarredArc, barredArcs } from "./barred.ts";

type Spot = readonly [east: number, north: number];

export interface LotFigures {
  readonly pegs: readonly {
    readonly name: string;
    readonly bearing: number | null;
    readonly east: number;
    readonly north: number;
    readonly toLine: number;
  }[];
  readonly lines: readonly { readonly name: string; readonly distance: number; readonly nearest: Spot }[];
  /** Where so far out no anchor may stand; null without guys. */
  readonly barred: { readonly radius: number; readonly arcs: readonly BarredArc[] } | null;
  /** How far mast, pipe and antennas reach when they lie on the ground. */
  readonly reach: number;
  /** How far that goes past the nearest lot line; 0 where it stays inside. */
  readonly pastLot: number;
}

const nearestOn = ([px, py]: Spot, [ax, ay]: Spot, [bx, by]: Spot): Spot => {
  const [dx, dy] = [bx - ax, by - ay];
  const length = dx * dx + dy * dy;
  const share = length > 0 ? Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / length)) : 0;
  return [ax + share * dx, ay + share * dy];
};

/** The nearest spot of a run of straight pieces; closed where it comes back to its start. */
export const nearestSpot = (
  from: Spot,
  points: readonly Spot[],
  closed: boolean,
): { spot: Spot; distance: number } => {
  const ends = closed ? points : points.slice(0, -1);
  const spots = ends.map((point, i) => nearestOn(from, point, points[(i + 1) % points.length]));
  return spots
    .map((spot) => ({ spot, distance: Math.hypot(spot[0] - from[0], spot[1] - from[1]) }))
    .reduce((a, b) => (b.distance < a.distance ? b : a));
};

/** As `verify` reckons it: the mast, and the pipe that stands out above it. */
const reachOf = (study: Study, catalog: Catalog, design: Design): number => {
  const set = compile(study, catalog).packages.find((one) => one.row.id === design.package);
  return design.height + (set?.exposed ?? 0);
};

/** What of the guys the plan shows. */
export type PlacedGuys = Pick<NonNullable<Design["guys"]>, "perLevel" | "radius" | "radii" | "rotation">;

export const lotFigures = (
  study: Study,
  catalog: Catalog,
  design: Design,
  guys: PlacedGuys | undefined,
): LotFigures => {
  const { corners, mast, powerLines } = study.lot;
  const toLine = (spot: Spot) => nearestSpot(spot, corners, true).distance;
  const peg = (name: string, [east, north]: Spot, bearing: number | null) => ({
    name,
    bearing,
    east,
    north,
    toLine: toLine([east, north]),
  });
  const star = guys ? anchorPoints(mast, guys) : [];
  const reach = reachOf(study, catalog, design);
  return {
    pegs: [
      peg("Mast", mast, null),
      ...star.map((spot, i) =>
        peg(`Anchor ${i + 1}`, [spot[0], spot[1]], (guys!.rotation + (360 / guys!.perLevel) * i) % 360),
      ),
    ],
    lines: powerLines
      .map((line) => ({ line, ...nearestSpot(mast, line.points, false) }))
      .map(({ line, spot, distance }) => ({ name: line.name, distance, nearest: spot }))
      .sort((a, b) => a.distance - b.distance),
    barred: guys ? { radius: guys.radius, arcs: barredArcs(study.lot, guys.radius) } : null,
    reach,
    pastLot: Math.max(0, reach - toLine(mast)),
  };
};
