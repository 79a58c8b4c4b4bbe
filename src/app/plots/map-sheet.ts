import type { CostMap } from "../../search/types.ts";

/** From heights and areas, or cells of the map, to pixels. */
export interface Sheet {
  readonly x: (i: number) => number;
  readonly y: (j: number) => number;
  readonly ofArea: (area: number) => number;
  readonly ofHeight: (height: number) => number;
  readonly right: number;
  readonly bottom: number;
}
export const MARGIN = { left: 44, right: 14, top: 8, bottom: 36 };

export const sheetOf = (map: CostMap, width: number, height: number): Sheet => {
  const right = width - MARGIN.right;
  const bottom = height - MARGIN.bottom;
  const x = (i: number) => MARGIN.left + (i / map.areas.length) * (right - MARGIN.left);
  const y = (j: number) => bottom - (j / map.heights.length) * (bottom - MARGIN.top);
  const along = (values: readonly number[], value: number) =>
    (value - values[0]) / Math.max(values[1] - values[0], 1e-9) + 0.5;
  return {
    x,
    y,
    ofArea: (area) => x(along(map.areas, area)),
    ofHeight: (value) => y(along(map.heights, value)),
    right,
    bottom,
  };
};
