import type { CaseResponse } from "../model/verdict.ts";
import type { CaseReactions } from "./analysis.ts";
import { handMethod } from "./hand-method.ts";
import type { SolvedCase } from "./mast-checks.ts";

/** Sway frequencies told of the mast as rigged. */
const FREQUENCIES = 3;

function twisted({ mast, forces, twist }: SolvedCase) {
  if (!twist) return {};
  const stations = Array.from({ length: forces.count }, (_, s) => s);
  return {
    twist: stations.map((s) => {
      const e = forces.element[s];
      const share = (forces.z[s] - mast.z[e]) / mast.length[e];
      return twist.turn[e] + share * (twist.turn[e + 1] - twist.turn[e]);
    }),
    torque: stations.map((s) => twist.torque[forces.element[s]]),
  };
}

/**
 * Place, displacements and forces of every station. Stations share elements in threes: lower end, vertex, upper end;
 * displacements between nodes are the chord's.
 */
function atStations({ mast, forces }: SolvedCase) {
  const { d, perNode: per } = mast;
  const z: number[] = [];
  const along: number[] = [];
  const across: number[] = [];
  const moment: number[] = [];
  const shear: number[] = [];
  const compression: number[] = [];
  for (let s = 0; s < forces.count; s++) {
    const e = forces.element[s];
    const low = e * per;
    const share = (forces.z[s] - mast.z[e]) / mast.length[e];
    z.push(forces.z[s]);
    along.push(d[low + 1] + share * (d[low + per + 1] - d[low + 1]));
    across.push(per === 5 ? d[low + 3] + share * (d[low + per + 3] - d[low + 3]) : 0);
    moment.push(forces.along[s] < 0 ? -forces.moment[s] : forces.moment[s]);
    shear.push(forces.shear[s]);
    compression.push(forces.compression[s]);
  }
  return { z, along, across, moment, shear, compression };
}

/** The full response of a solved case, as plain data for drawings, sheets and files. */
export function caseResponse(c: SolvedCase, reactions: CaseReactions): CaseResponse {
  const { mast, problem, wind } = c;
  const still = wind.toward === null;
  const iced = wind.weather === "iced" ? problem.iced?.(c.model.stack.height, wind.ice) : undefined;
  const pressure = iced?.pressure ?? problem.pressure;
  const top = mast.z[mast.nodes - 1];
  return {
    id: wind.id,
    title: wind.title,
    windToward: wind.toward,
    stable: true,
    bucklingFactor: mast.bucklingFactor(),
    frequencies: still && !iced ? mast.swayFrequencies(FREQUENCIES) : undefined,
    ...atStations(c),
    ...twisted(c),
    hand: mast.guys.length > 0 && !still && wind.purpose === undefined ? handMethod(c) : undefined,
    guys: mast.guys.map((guy, g) => ({
      level: guy.level + 1,
      anchor: guy.anchor + 1,
      tensionAnchor: guy.state.tensionAnchor + (c.twist?.guyTension[g] ?? 0),
      tensionMast: guy.state.tensionMast + (c.twist?.guyTension[g] ?? 0),
      unstressedLength: guy.length,
    })),
    anchors: reactions.anchors,
    base: reactions.base,
    pressure: Array.from({ length: 9 }, (_, i) => ({
      z: (top * i) / 8,
      q: still ? 0 : (wind.share ?? 1) * pressure((top * i) / 8),
    })),
  };
}
