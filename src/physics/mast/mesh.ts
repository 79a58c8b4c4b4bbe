import { ELEMENTS_PER_SPAN, type MastInput } from "./types.ts";

const SAME = 1e-9;

/** Node heights: every base, guy, load, joint of unlike segments and kink, and elements between. */
export function meshHeights(input: MastInput): number[] {
  const top = input.segments[input.segments.length - 1].to;
  const perSpan = input.elementsPerSpan ?? ELEMENTS_PER_SPAN;
  const stations = [
    0,
    top,
    ...input.segments.map((segment) => segment.to),
    ...input.levels.map((level) => level.z),
    ...input.pointWeights.map((point) => point.z),
    ...(input.kinks ?? []),
  ]
    .filter((z) => z >= 0 && z <= top + SAME)
    .sort((a, b) => a - b)
    .filter((z, index, all) => index === 0 || z - all[index - 1] > SAME);
  // a free-standing mast bends in one sweep: it takes the elements of two spans
  const supports = [0, ...input.levels.map((level) => level.z)];
  const spanAt = (z: number) => {
    const above = supports.find((support) => support > z + SAME);
    const below = supports.filter((support) => support <= z + SAME).at(-1) ?? 0;
    if (above !== undefined) return above - below;
    return input.levels.length === 0 ? top / 2 : top - below;
  };
  const heights = [0];
  for (let i = 1; i < stations.length; i++) {
    const from = stations[i - 1];
    const length = stations[i] - from;
    const pieces = Math.max(1, Math.ceil((length / spanAt(from)) * perSpan - 1e-6));
    for (let k = 1; k <= pieces; k++) heights.push(from + (length * k) / pieces);
  }
  return heights;
}
