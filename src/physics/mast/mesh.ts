import { ELEMENTS_PER_SPAN, type MastInput } from "./types.ts";

const SAME = 1e-9;

/** Node heights: every base, guy, load, joint of unlike segments and kink, and elements between. */
export function meshHeights(input: MastInput): number[] {
  const { segments, levels, pointWeights, kinks = [], elementsPerSpan = ELEMENTS_PER_SPAN } = input;
  const top = segments[segments.length - 1].to;
  const stations = [0];
  for (const { to } of segments) insert(stations, to, top);
  for (const { z } of levels) insert(stations, z, top);
  for (const { z } of pointWeights) insert(stations, z, top);
  for (const z of kinks) insert(stations, z, top);
  const heights = [0];
  let span = 0;
  let end = 0;
  let level = 0;
  for (let i = 1; i < stations.length; i++) {
    const from = stations[i - 1];
    if (from >= end - SAME) {
      while (level < levels.length && levels[level].z <= from + SAME) level++;
      // a free-standing mast bends in one sweep: it takes the elements of two spans
      const next = level < levels.length ? levels[level].z : top;
      span = levels.length === 0 ? top / 2 : next - from;
      end = next;
    }
    const length = stations[i] - from;
    const pieces = Math.max(1, Math.ceil((length / span) * elementsPerSpan - 1e-6));
    for (let k = 1; k <= pieces; k++) heights.push(from + (length * k) / pieces);
  }
  return heights;
}

/** Puts a height in its place, from the top down; not twice, and not outside the mast. */
function insert(stations: number[], z: number, top: number): void {
  if (!(z >= 0 && z <= top + SAME)) return;
  let at = stations.length;
  while (at > 0 && stations[at - 1] > z + SAME) at--;
  if (at > 0 && z - stations[at - 1] <= SAME) return;
  stations.splice(at, 0, z);
}
