import type { Design } from "../../model/design.ts";
import type { StudyFile } from "../../model/study.ts";
import { fromUnits, inUnits, type System, unitOf } from "../wording/figures.ts";
import { book, change, type Fault } from "./book.ts";
import { gridOf, nearestOf, nextOf, rawBeforeLock } from "./locks.ts";
import { withValue } from "./path.ts";

/** East and north, m. */
export type Spot = readonly [east: number, north: number];

/** What can be taken hold of on the plan. */
export type Hold =
  | { readonly kind: "mast" }
  | { readonly kind: "corner"; readonly index: number }
  /** A corner of a plot where no anchor may stand. */
  | { readonly kind: "plot"; readonly plot: number; readonly index: number }
  | { readonly kind: "line"; readonly line: number; readonly index: number }
  /** Held where it is nearest to the mast. */
  | { readonly kind: "whole-line"; readonly line: number }
  | { readonly kind: "anchor"; readonly index: number };

/** Places are set out to a foot or a quarter of a metre; with Shift to a quarter of that. */
const stepOf = (system: System, fine: boolean): number => (system === "us" ? 1 : 0.25) / (fine ? 4 : 1);

const exact = (si: number, system: System): string =>
  `${Number(inUnits(si, "length", system).toFixed(4))} ${unitOf("length", system)}`;

const rounded = (si: number, system: System, fine: boolean): string => {
  const grain = fromUnits(stepOf(system, fine), "length", system);
  return exact(Math.round(si / grain) * grain, system);
};

type OneSpot = Exclude<Hold, { kind: "anchor" } | { kind: "whole-line" }>;

const pathOf = (hold: OneSpot): (string | number)[] => {
  if (hold.kind === "mast") return ["lot", "mast"];
  if (hold.kind === "corner") return ["lot", "corners", hold.index];
  if (hold.kind === "plot") return ["lot", "keepOut", hold.plot, "corners", hold.index];
  return ["lot", "powerLines", hold.line, "points", hold.index];
};

export const holdName = (hold: Hold): string => {
  if (hold.kind === "mast") return "mast";
  if (hold.kind === "whole-line") return `power line ${hold.line + 1}`;
  if (hold.kind === "plot") return `plot ${hold.plot + 1}, corner ${hold.index + 1}`;
  return hold.kind === "line"
    ? `power line ${hold.line + 1}, point ${hold.index + 1}`
    : `${hold.kind} ${hold.index + 1}`;
};

interface Edit {
  readonly system: System;
  readonly fine: boolean;
  readonly gesture: string;
}

/** Moves a corner, of the lot or of a plot, the mast or a point of a power line to the nearest place that is set out. */
const moveSpot = (hold: OneSpot, [east, north]: Spot, { system, fine, gesture }: Edit): readonly Fault[] => {
  const { present } = book.get().history;
  const to = [rounded(east, system, fine), rounded(north, system, fine)];
  const study = withValue(present.study, pathOf(hold), to);
  return change({ ...present, study }, `${holdName(hold)} to ${to[0]} east, ${to[1]} north`, gesture);
};

/** Straight toward the mast or away from it: lines are moved whole where they run past the sheet. */
const moveLine = (index: number, from: Spot, to: Spot, edit: Edit): readonly Fault[] => {
  const { history, reading } = book.get();
  const lot = reading?.study.lot;
  const points = lot?.powerLines[index]?.points;
  if (!points) return [];
  const [ux, uy] = [from[0] - lot.mast[0], from[1] - lot.mast[1]];
  const share = ((to[0] - from[0]) * ux + (to[1] - from[1]) * uy) / (ux * ux + uy * uy || 1);
  const grain = fromUnits(stepOf(edit.system, edit.fine), "length", edit.system);
  const whole = (by: number) => Math.round(by / grain) * grain;
  const moved = points.map(([east, north]) => [
    exact(east + whole(share * ux), edit.system),
    exact(north + whole(share * uy), edit.system),
  ]);
  const study = withValue(history.present.study, ["lot", "powerLines", index, "points"], moved);
  return change({ ...history.present, study }, `power line ${index + 1} moved`, edit.gesture);
};

const RADIUS = ["parts", "radius"] as const;
const ROTATION = ["parts", "rotation"] as const;

/** Holds the star to one radius and one turn, both of the grid. */
const lockStar = (radius: number, rotation: number, { system, gesture }: Edit): readonly Fault[] => {
  const { present } = book.get().history;
  const far = exact(radius, system);
  const turned = Number(rotation.toFixed(4));
  const study = withValue(withValue(present.study, RADIUS, far), ROTATION, turned) as StudyFile;
  return change({ ...present, study }, `anchors held ${far} out, turned to ${turned}°`, gesture);
};

type Guys = Pick<NonNullable<Design["guys"]>, "perLevel" | "radius" | "rotation">;

/** An anchor dropped at a place: the star that comes nearest to it, among those of the grid. */
const moveAnchor = (index: number, guys: Guys, [east, north]: Spot, edit: Edit): readonly Fault[] => {
  const mast = book.get().reading?.study.lot.mast ?? [0, 0];
  const [dx, dy] = [east - mast[0], north - mast[1]];
  const period = 360 / guys.perLevel;
  const bearing = (Math.atan2(dx, dy) * 180) / Math.PI - index * period;
  const apart = (rotation: number) =>
    Math.abs(((((bearing - rotation) % period) + 1.5 * period) % period) - period / 2);
  const turns = gridOf(ROTATION);
  const rotation = turns.reduce(
    (best, one) => (apart(one) < apart(best) - 1e-9 ? one : best),
    turns[0] ?? guys.rotation,
  );
  return lockStar(nearestOf(gridOf(RADIUS), Math.hypot(dx, dy)), rotation, edit);
};

/** One arrow key: out and in by a step of the radius, round by a step of the turn. */
const stepAnchor = (guys: Guys, [right, up]: Spot, edit: Edit): readonly Fault[] => {
  const direction = (sign: number): 1 | -1 => (sign > 0 ? 1 : -1);
  const radius = up === 0 ? guys.radius : nextOf(gridOf(RADIUS), guys.radius, direction(up));
  const rotation = right === 0 ? guys.rotation : nextOf(gridOf(ROTATION), guys.rotation, direction(right));
  return lockStar(radius, rotation, edit);
};

/** Takes what is held to a place; what can't stand there is refused in words and stays where it was. */
export const drag = (hold: Hold, from: Spot, to: Spot, guys: Guys | null, edit: Edit): readonly Fault[] => {
  if (hold.kind === "anchor") return guys ? moveAnchor(hold.index, guys, to, edit) : [];
  return hold.kind === "whole-line" ? moveLine(hold.line, from, to, edit) : moveSpot(hold, to, edit);
};

/** One arrow key. */
export const step = (
  hold: Hold,
  from: Spot,
  arrow: Spot,
  guys: Guys | null,
  edit: Edit,
): readonly Fault[] => {
  if (hold.kind === "anchor") return guys ? stepAnchor(guys, arrow, edit) : [];
  const by = fromUnits(stepOf(edit.system, edit.fine), "length", edit.system);
  return drag(hold, from, [from[0] + arrow[0] * by, from[1] + arrow[1] * by], guys, edit);
};

/** Gives radius and turn of the star back to the search. */
export const freeStar = (): readonly Fault[] => {
  const { present } = book.get().history;
  const free = (study: unknown, path: readonly string[]) => withValue(study, path, rawBeforeLock(path));
  return change(
    { ...present, study: free(free(present.study, RADIUS), ROTATION) as StudyFile },
    "anchors free again",
  );
};
