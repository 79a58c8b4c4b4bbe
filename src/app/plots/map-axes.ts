import type { MapAxes } from "../../../workers/protocol.ts";
import type { Catalog } from "../../model/catalog.ts";
import type { Study } from "../../model/study.ts";
import { compile } from "../../problem/compile.ts";
import { packageArea } from "../../search/map.ts";
import type { CostMap, MapCell } from "../../search/types.ts";
import type { System } from "../wording/figures.ts";

/** Each cell is a whole search, a second or so and some of them many: more columns would not be waited for. */
const COLUMNS = 12;

const round = (value: number, step: number) => Math.round(value / step) * step;
const steps = (from: number, to: number, step: number): number[] =>
  Array.from(
    { length: Math.round((to - from) / step) + 1 },
    (_, i) => Math.round((from + i * step) * 1e9) / 1e9,
  );

/** Effective area of the study's first package: what its antennas multiply the wind by. */
export const wishArea = (study: Study, catalog: Catalog): number =>
  packageArea(compile(study, catalog).packages[0]);

/** The wish and what lies around it: a good way up, and from little antenna to twice as much. */
export const mapAxes = (study: Study, catalog: Catalog, system: System): MapAxes => {
  const us = system === "us";
  const { height } = study.wishes;
  const wish =
    typeof height === "number"
      ? height
      : Array.isArray(height)
        ? Math.max(...height)
        : (height as { to: number }).to;
  const foot = us ? 0.3048 : 0.3;
  const heightStep = 5 * foot;
  const centre = round(wish, heightStep);
  const lowest = Math.max(heightStep * 4, centre - 5 * heightStep);
  const area = wishArea(study, catalog);
  const unit = us ? 0.09290304 : 0.1;
  const areaStep = ([1, 2, 5, 10].find((count) => (area * 2) / (count * unit) <= COLUMNS + 1) ?? 20) * unit;
  const widest = Math.max(round(area * 2, areaStep), areaStep * 6);
  return {
    heights: steps(lowest, centre + 6 * heightStep, heightStep),
    areas: steps(areaStep, widest, areaStep),
  };
};

/** How far the roads from the wish lead: taller, and bigger. */
export const roadSteps = (system: System): { readonly taller: number; readonly bigger: number } =>
  system === "us" ? { taller: 3.048, bigger: 0.4645152 } : { taller: 3, bigger: 0.5 };

/** The cells between which the ends of the roads lie: what is wanted first of the whole map. */
export const roadCells = (axes: MapAxes, wish: { height: number; area: number }, system: System): MapAxes => {
  const { taller, bigger } = roadSteps(system);
  const around = (values: readonly number[], ends: readonly number[]) =>
    values.filter((value, i) =>
      ends.some(
        (end) =>
          Math.abs(value - end) < 1e-9 ||
          (value < end && (values[i + 1] ?? Number.POSITIVE_INFINITY) > end) ||
          (value > end && (values[i - 1] ?? Number.NEGATIVE_INFINITY) < end),
      ),
    );
  return {
    heights: around(axes.heights, [wish.height, wish.height + taller]),
    areas: around(axes.areas, [wish.area, wish.area + bigger]),
  };
};

export const cellAt = (map: CostMap) => {
  const width = map.areas.length;
  const index = new Map(map.cells.map((cell) => [`${cell.height.toFixed(6)}/${cell.area.toFixed(6)}`, cell]));
  return (i: number, j: number): MapCell | undefined =>
    i < width ? index.get(`${map.heights[j]?.toFixed(6)}/${map.areas[i]?.toFixed(6)}`) : undefined;
};

/** Cost between the cells, where all four around are safe. */
export const costBetween = (map: CostMap, height: number, area: number): number | null => {
  const at = cellAt(map);
  const find = (values: readonly number[], value: number) => {
    const above = values.findIndex((v) => v >= value - 1e-9);
    return above <= 0 ? Math.max(above, 0) : above - 1;
  };
  const [i, j] = [find(map.areas, area), find(map.heights, height)];
  const [i2, j2] = [Math.min(i + 1, map.areas.length - 1), Math.min(j + 1, map.heights.length - 1)];
  const outside =
    area < map.areas[0] - 1e-9 ||
    area > map.areas.at(-1)! + 1e-9 ||
    height < map.heights[0] - 1e-9 ||
    height > map.heights.at(-1)! + 1e-9;
  if (outside) return null;
  const u = i2 > i ? (area - map.areas[i]) / (map.areas[i2] - map.areas[i]) : 0;
  const v = j2 > j ? (height - map.heights[j]) / (map.heights[j2] - map.heights[j]) : 0;
  const corners: readonly (readonly [cell: MapCell | undefined, share: number])[] = [
    [at(i, j), (1 - u) * (1 - v)],
    [at(i2, j), u * (1 - v)],
    [at(i, j2), (1 - u) * v],
    [at(i2, j2), u * v],
  ];
  let sum = 0;
  for (const [cell, share] of corners) {
    // on a line of the map the cells beside it have no say
    if (share < 1e-9) continue;
    const cost = cell?.cost ?? null;
    if (cost === null) return null;
    sum += share * cost;
  }
  return sum;
};

/** The check that stops most of the unsafe cells. */
export const stopper = (map: CostMap): string | null => {
  const counts = new Map<string, number>();
  for (const { cost, stoppedBy } of map.cells)
    if (cost === null && stoppedBy) counts.set(stoppedBy, (counts.get(stoppedBy) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null;
};
