import type { CaseResponse } from "../model/verdict.ts";
import type { CaseReactions } from "./analysis.ts";
import { handMethod } from "./hand-method.ts";
import type { SolvedCase } from "./mast-checks.ts";

/** Sway frequencies told of the mast as rigged. */
const FREQUENCIES = 3;

function twisted({ mast, forces, twist }: SolvedCase, stations: readonly number[]) {
  if (!twist) return {};
  return {
    twist: stations.map((s) => {
      const e = forces.element[s];
      const share = (forces.z[s] - mast.z[e]) / mast.length[e];
      return twist.turn[e] + share * (twist.turn[e + 1] - twist.turn[e]);
    }),
    torque: stations.map((s) => twist.torque[forces.element[s]]),
  };
}

/** The full response of a solved case, as plain data for drawings, sheets and files. */
export function caseResponse(c: SolvedCase, reactions: CaseReactions): CaseResponse {
  const { mast, forces, problem, wind } = c;
  const per = mast.perNode;
  const still = wind.toward === null;
  const iced = wind.weather === "iced" ? problem.iced?.(c.model.stack.height, wind.ice) : undefined;
  const pressure = iced?.pressure ?? problem.pressure;
  // stations share elements in threes: lower end, vertex, upper end; displacements between nodes are the chord's
  const between = (s: number, component: number) => {
    const e = forces.element[s];
    const low = mast.d[e * per + component];
    const share = (forces.z[s] - mast.z[e]) / mast.length[e];
    return low + share * (mast.d[(e + 1) * per + component] - low);
  };
  const stations = Array.from({ length: forces.count }, (_, s) => s);
  const top = mast.z[mast.nodes - 1];
  return {
    id: wind.id,
    title: wind.title,
    windToward: wind.toward,
    stable: true,
    bucklingFactor: mast.bucklingFactor(),
    frequencies: still && !iced ? mast.swayFrequencies(FREQUENCIES) : undefined,
    z: stations.map((s) => forces.z[s]),
    along: stations.map((s) => between(s, 1)),
    across: stations.map((s) => (per === 5 ? between(s, 3) : 0)),
    moment: stations.map((s) => (forces.along[s] < 0 ? -forces.moment[s] : forces.moment[s])),
    shear: stations.map((s) => forces.shear[s]),
    compression: stations.map((s) => forces.compression[s]),
    ...twisted(c, stations),
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
