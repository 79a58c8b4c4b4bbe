import type { Study } from "../../model/study.ts";
import { guyRoom } from "../../problem/lines.ts";
import { ON_THE_LINE, roomAt } from "../../problem/lot.ts";
import { type System, said } from "./figures.ts";

type Lot = Study["lot"];

/** Bearings that no anchor may stand toward, degrees clockwise from north; `to` may lie beyond 360. */
export interface BarredArc {
  readonly from: number;
  readonly to: number;
  readonly why: string;
}

/** Bearings tried, a turn: half a degree is less than a pace at any radius that a lot has room for. */
const TRIED = 720;

/** Where around the mast no anchor may stand so far out, and what bars it: the judge's own room, bearing by bearing. */
export const barredArcs = (lot: Lot, radius: number): readonly BarredArc[] => {
  const turn = 360 / TRIED;
  const whys = Array.from({ length: TRIED }, (_, i) => barredBy(lot, radius, i * turn));
  // begun where something changes, so that no arc is cut in two at north
  const begin = whys.findIndex((why, i) => why !== whys[(i + TRIED - 1) % TRIED]);
  if (begin < 0) return whys[0] === null ? [] : [{ from: 0, to: 360, why: whys[0] }];
  const arcs: BarredArc[] = [];
  for (let i = begin; i < begin + TRIED; ) {
    const why = whys[i % TRIED];
    let end = i;
    while (end < begin + TRIED && whys[end % TRIED] === why) end++;
    if (why !== null) arcs.push({ from: i * turn, to: (end - 1) * turn, why });
    i = end;
  }
  return arcs;
};

const barredBy = ({ keepOut = [], ...lot }: Lot, radius: number, bearing: number): string | null => {
  const angle = (bearing * Math.PI) / 180;
  const spot = [lot.mast[0] + radius * Math.sin(angle), lot.mast[1] + radius * Math.cos(angle)] as const;
  const barred = (stated: Lot) => roomAt(stated, spot) < -ON_THE_LINE;
  if (barred({ ...lot, setback: 0 })) return "outside the lot";
  if (barred(lot)) return "within the setback";
  const plot = keepOut.find((one) => barred({ ...lot, keepOut: [one] }));
  if (plot) return plot.name;
  const near = lot.powerLines.find((one) => guyRoom({ ...lot, powerLines: [one] }, spot) < -ON_THE_LINE);
  return near ? `too near ${near.name}` : null;
};

/** "No anchor 36 ft out may stand toward 40° to 85° (Septic field) or 120° to 130° (within the setback)." */
export const barredWords = (arcs: readonly BarredArc[], radius: number, system: System): string => {
  const bearings = arcs.map(({ from, to, why }) =>
    to - from >= 360
      ? `any side (${why})`
      : `${Math.round(from) % 360}° to ${Math.round(to) % 360}° (${why})`,
  );
  return `No anchor ${said(radius, "length", system)} out may stand toward ${bearings.join(" or ")}.`;
};
